package lsp

import (
	"strings"
	"testing"
	stdutf16 "unicode/utf16"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

// Line ends are "\n", "\r\n" and "\r", and a character counts as many units as
// it takes in the encoding (Language Server Protocol, 3.17, "Position"). The
// oracle encodes with the standard library and looks at every offset.

// oracle lists, for each byte offset at which a character starts and for the
// end, its line and how many units stand before it on the line.
func oracle(text string, enc encoding) (offsets []int32, positions []protocol.Position) {
	line, column := uint32(0), uint32(0)
	for at := 0; ; {
		offsets = append(offsets, int32(at))
		positions = append(positions, protocol.Position{Line: line, Character: column})
		if at == len(text) {
			return offsets, positions
		}
		r, size := utf8.DecodeRuneInString(text[at:])
		column += uint32(len(encoded(r, enc)))
		crlf := r == '\r' && strings.HasPrefix(text[at+size:], "\n")
		if r == '\n' || r == '\r' && !crlf {
			line, column = line+1, 0
		}
		at += size
	}
}

func encoded(r rune, enc encoding) []uint16 {
	switch enc {
	case utf8s:
		return make([]uint16, len(string(r)))
	case utf16:
		return stdutf16.Encode([]rune{r})
	}
	return make([]uint16, 1)
}

var encodings = []encoding{utf16, utf8s, utf32}

const hardText = "at = \"200 °F\" # e\u0301 🕯🕯\r\n\ufeff°\r\u2028x\n\n𝄞"

func checkPositions(t *testing.T, text string) {
	for _, enc := range encodings {
		m := mapper{schema.NewText(text), enc}
		offsets, positions := oracle(text, enc)
		for i, at := range offsets {
			// The line feed of a pair, and the carriage return before it, are behind the
			// end of the line.
			if at > 0 && text[at-1] == '\r' && strings.HasPrefix(text[at:], "\n") {
				continue
			}
			assert.Equal(t, positions[i], m.position(at), "%s: position of %d in %q", enc, at, text)
			assert.Equal(t, at, m.offset(positions[i]), "%s: offset of %v in %q", enc, positions[i], text)
		}
		end := int32(len(text))
		last := positions[len(positions)-1].Line
		assert.Equal(t, end, m.offset(protocol.Position{Line: last, Character: 1 << 30}), "behind the end of the last line")
		assert.Equal(t, end, m.offset(protocol.Position{Line: last + 1}), "a line behind the last")
		assert.Equal(t, end, m.offset(protocol.Position{Line: 1<<31 - 1, Character: 1<<31 - 1}))
	}
}

func TestPositions(t *testing.T) {
	for _, text := range []string{"", "a", "\n", "\r\n", "\r", "a\r\nb\rc\nd", hardText, "° \xff °", "x\x00y"} {
		checkPositions(t, text)
	}
}

func TestInsideACharacter(t *testing.T) {
	m := mapper{schema.NewText("a🕯b"), utf16}
	assert.EqualValues(t, 1, m.offset(protocol.Position{Character: 2}), "the second half of a pair of surrogates")
	assert.EqualValues(t, 5, m.offset(protocol.Position{Character: 3}))
	m = mapper{schema.NewText("a°b"), utf8s}
	assert.EqualValues(t, 1, m.offset(protocol.Position{Character: 2}), "the second byte of a character")
	assert.EqualValues(t, 4, m.offset(protocol.Position{Character: 99}), "behind the end of the line")
}

func FuzzPositions(f *testing.F) {
	f.Add(hardText)
	f.Add("\xf0\x9f\xff\r\n\xc2")
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) < 1<<12 {
			checkPositions(t, text)
		}
	})
}

// An editor applies a change to its lines; the server gets a range. Both must
// come to the same text.
func FuzzIncrementalSync(f *testing.F) {
	f.Add("a = \"1 °F\"\r\nb\n", uint16(3), uint16(9), "🕯\r")
	f.Add("", uint16(0), uint16(0), "x\n")
	f.Add(hardText, uint16(20), uint16(3), "")
	f.Fuzz(func(t *testing.T, text string, from, to uint16, insert string) {
		if !utf8.ValidString(text) || !utf8.ValidString(insert) || len(text) > 1<<12 {
			t.Skip("a client sends JSON, which is UTF-8")
		}
		for _, enc := range encodings {
			offsets, positions := oracle(text, enc)
			var usable []int
			for i, at := range offsets { // a position cannot stand between CR and LF
				if !(at > 0 && text[at-1] == '\r' && strings.HasPrefix(text[at:], "\n")) {
					usable = append(usable, i)
				}
			}
			a, b := usable[int(from)%len(usable)], usable[int(to)%len(usable)]
			a, b = min(a, b), max(a, b)
			change := protocol.TextDocumentContentChangeEvent{Range: &protocol.Range{Start: positions[a], End: positions[b]}, Text: insert}
			want := text[:offsets[a]] + insert + text[offsets[b]:]
			assert.Equal(t, want, changed(text, enc, change), "%s", enc)
		}
	})
}
