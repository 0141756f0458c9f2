package lint

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strconv"
	"strings"

	"wickrule/schema"
)

// A print tells a finding from the others of its shop, and stays with it: lines
// may come and go above it, the file may be laid out anew or be called
// otherwise. It is made of the rule, of the blocks and the attribute that the
// finding points at, and of what it says with its figures, so a load that was
// raised further is another finding. Of several that are alike in all that,
// each has its number, in the order of the report.

// Prints are the prints of findings, in the order of a report and of all of it:
// the numbers of those alike would be others in a part.
func Prints(found []Found) []string {
	seen := map[string]int{}
	prints := make([]string, len(found))
	for i := range found {
		f := &found[i]
		prints[i] = printOf(seen, f.Rule.Name, address(f.At), strings.Join(strings.Fields(f.Message), " "))
	}
	return prints
}

// UncheckedPrints are the prints of what could not be checked, in the order of
// a report. Which rules wait for it makes no difference.
func UncheckedPrints(list []Unchecked) []string {
	seen := map[string]int{}
	prints := make([]string, len(list))
	for i := range list {
		prints[i] = printOf(seen, "could not be checked", address(list[i].At), list[i].Needs)
	}
	return prints
}

// printOf is the first half of a SHA-256 of the parts in hexadecimal, with a
// number where it was seen before.
func printOf(seen map[string]int, parts ...string) string {
	sum := sha256.Sum256([]byte(strings.Join(parts, "\x00")))
	print := hex.EncodeToString(sum[:len(sum)/2])
	seen[print]++
	if n := seen[print]; n > 1 {
		return fmt.Sprintf("%s-%d", print, n)
	}
	return print
}

// address names the blocks that a place lies in, and the attribute; the file
// where it lies in none.
func address(at Place) string {
	var names strings.Builder
	var block *schema.Block
	for inner := around(at.File.Blocks, at.Span); inner != nil; inner = around(inner.Blocks(), at.Span) {
		block = inner
		names.WriteString(block.Name() + " " + strconv.Quote(block.Label) + "\n")
	}
	if block == nil {
		return "file " + at.File.Name
	}
	for v := range block.Attrs() {
		if v.Span().Contains(at.Span) || v.NameSpan().Contains(at.Span) {
			names.WriteString(v.Spec.Name)
		}
	}
	return names.String()
}

// Around is the block at the top of its file that a place lies in, or nil.
func (p Place) Around() *schema.Block { return around(p.File.Blocks, p.Span) }

func around(blocks []*schema.Block, span schema.Span) *schema.Block {
	for _, b := range blocks {
		if b.Span.Contains(span) {
			return b
		}
	}
	return nil
}
