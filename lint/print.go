package lint

import (
	"crypto/sha256"
	"encoding/hex"
	"strconv"
	"strings"

	"wickrule/schema"
)

// Prints are names for findings that outlast edits elsewhere: moved lines and
// another layout change none. A print rests on the rule, on the recipe (or the
// file, where it is about no recipe), on the blocks and the attribute it points
// at by their names, on the message with its figures, and where all of that is
// the same, on which of them it is. So a finding that becomes worse is another
// one. They are in the order of the findings.
func Prints(found []Found) []string {
	seen := map[string]int{}
	prints := make([]string, len(found))
	for i := range found {
		said := found[i].identity()
		seen[said]++
		sum := sha256.Sum256([]byte(said + "\n" + strconv.Itoa(seen[said])))
		prints[i] = hex.EncodeToString(sum[:12])
	}
	return prints
}

func (f *Found) identity() string {
	about := "file " + f.At.File.Name
	if f.Recipe != nil {
		about = "recipe " + f.Recipe.Label
	}
	parts := append([]string{f.Rule.Name, about}, pathTo(f.At.File.Blocks, f.At.Span)...)
	return strings.Join(append(parts, strings.Join(strings.Fields(f.Message), " ")), "\n")
}

// pathTo is the names of the blocks around a place, and of the attribute.
func pathTo(blocks []*schema.Block, span schema.Span) (names []string) {
	for _, b := range blocks {
		if !b.Span.Contains(span) {
			continue
		}
		names = append(names, b.Name()+" "+b.Label)
		for v := range b.Attrs() {
			if v.Span().Contains(span) || v.NameSpan().Contains(span) {
				return append(names, v.Spec.Name)
			}
		}
		return append(names, pathTo(b.Blocks(), span)...)
	}
	return nil
}
