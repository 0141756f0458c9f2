package lsp

import (
	"fmt"
	"testing"
)

func TestLook(t *testing.T) {
	h := lookingAt(t, able, puttyFile, putty)
	for _, c := range []struct {
		piece   string
		further int
	}{{"pour.at <=", 1}, {"pour.at <=", 6}, {"<=", 1}, {"seal.holds_to - ", 2}, {"holds_to - ", 2}, {"- option", 0}, {"option.in_hand", 9}, {"degrees(", 2}, {"show(pour", 1}, {`== "putty"`, 1}, {"sound {", 1}, {"faulty {", 1}, {"mold.seal.kind", 11}, {"mold.seal.kind", 1}, {"A pour at", 0}, {`"in_hand"`, 2}, {"option \"", 1}} {
		says, on := hovered(t, h, c.piece, c.further)
		fmt.Printf("---- %s +%d on %q\n%s\n", c.piece, c.further, on, says)
	}
}
