package cli

import (
	"fmt"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/schema"
)

// leftOut counts what is left out of a report.
type leftOut struct {
	levels  [lint.Must + 1]int
	recipes map[*schema.Block]bool
	musts   []string // what must be put right is named, left out or not
}

func (l *leftOut) add(shop *lint.Shop, f *lint.Found) {
	l.levels[f.Level]++
	if l.recipes == nil {
		l.recipes = map[*schema.Block]bool{}
	}
	if f.Recipe != nil {
		l.recipes[f.Recipe] = true
	}
	if f.Level == lint.Must {
		line, _ := f.At.File.Text.Position(f.At.Span.Start)
		l.musts = append(l.musts, fmt.Sprintf("%s, line %d: %s (%s)", report.Located(shop.Root, f.At.File.Name), line, f.Message, f.Rule.Name))
	}
}

func (l *leftOut) total() (n int) {
	for _, levels := range l.levels {
		n += levels
	}
	return n
}

// String is the counts in words: "3 findings in 2 recipes (1 must, 2 should)".
func (l *leftOut) String() string {
	text := plural(l.total(), "finding", "findings")
	if n := len(l.recipes); n > 0 {
		text += " in " + plural(n, "recipe", "recipes")
	}
	var parts []string
	for _, level := range []lint.Level{lint.Must, lint.Should, lint.Consider} {
		if n := l.levels[level]; n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, level))
		}
	}
	return text + " (" + strings.Join(parts, ", ") + ")"
}

// sentences say what was left out and why, and name what must be put right.
func (l *leftOut) sentences(why string) []string {
	if l.total() == 0 {
		return nil
	}
	list := []string{"Left out: " + l.String() + ", " + why + "."}
	for _, must := range l.musts {
		list = append(list, "Still to be put right, "+must+".")
	}
	return list
}

// drop takes out of a report what out says, findings and what could not be
// checked alike. Prints are in the order of what they name.
func drop(r *lint.Report, out func(f *lint.Found, print string) bool, outUnchecked func(u *lint.Unchecked) bool) {
	prints := lint.Prints(r.Findings)
	i := -1
	r.Findings = slices.DeleteFunc(r.Findings, func(f lint.Found) bool {
		i++
		return out(&f, prints[i])
	})
	r.Unchecked = slices.DeleteFunc(r.Unchecked, func(u lint.Unchecked) bool { return outUnchecked(&u) })
}

// lacking names what could not be checked so that moved lines change nothing.
func lacking(u *lint.Unchecked) string {
	top := topOf(u.Of())
	return top.Name() + " " + top.Label + "\n" + u.Needs + "\n" + u.Message
}

// topOf is the block at the top of the file that a block lies in.
func topOf(b *schema.Block) *schema.Block {
	for b.Parent != nil {
		b = b.Parent
	}
	return b
}
