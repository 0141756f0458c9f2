// Package explained is what there is to say of a rule and of a trial, so that
// the terminal, the handbook and whatever else explains them say the same. How
// it is laid out is theirs.
package explained

import (
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// Tried is what came of an example when it was checked.
type Tried struct {
	Excerpt []Line       // the block that matters
	Said    []lint.Found // by the rule
	Others  []lint.Found // by other rules, of the same recipe
}

// Try lays an example of a rule over the demo shop and checks it there. It is
// an error where the example cannot be laid over it.
func Try(demo *lint.Shop, rules func(*lint.Shop) []*lint.Rule, r *lint.Rule, e lint.Example, today string) (Tried, error) {
	shop, about, err := e.Over(demo)
	if err != nil {
		return Tried{}, err
	}
	var t Tried
	all := rules(shop)
	first := about[0]
	slices.SortFunc(about, func(a, b *schema.File) int { return strings.Compare(a.Name, b.Name) }) // as a report is sorted
	for _, file := range about {
		for _, f := range lint.RunFile(shop, all, today, file.Name).Findings {
			if f.Rule.Name == r.Name {
				t.Said = append(t.Said, f)
			} else {
				t.Others = append(t.Others, f)
			}
		}
	}
	file, span := first, changedSpan(first, e)
	if len(t.Said) > 0 {
		file, span = t.Said[0].At.File, t.Said[0].At.Span
	}
	t.Excerpt = Excerpt(file, span)
	return t, nil
}

// changedSpan is where the example's first change stands.
func changedSpan(file *schema.File, e lint.Example) schema.Span {
	for _, c := range e.Changes {
		if at := strings.Index(file.Text.String(), c.To); at >= 0 && c.To != "" {
			// From its last character, since a change often starts in the block before.
			end := int32(at + len(strings.TrimRight(c.To, " \n")))
			return schema.Span{Start: end, End: end}
		}
	}
	return schema.Span{}
}

// Line is one line of an excerpt. Text starts at Start in the file; a line
// that stands for lines left out has the number 0.
type Line struct {
	Number int
	Text   string
	Start  int32
}

// shownLines is how long a block may be to be shown whole.
const shownLines = 16

// Excerpt is the innermost block around the span, without the indentation
// that its lines have in common; where that is long, its first and last lines
// and those around the span.
func Excerpt(file *schema.File, span schema.Span) []Line {
	first, last := 1, file.Text.Lines()
	blocks := file.Blocks
	for inside := true; inside; {
		inside = false
		for _, b := range blocks {
			if b.Span.Contains(span) {
				first, last = file.Text.Line(b.Span.Start), file.Text.Line(max(b.Span.Start, b.Span.End-1))
				blocks, inside = b.Blocks(), true
				break
			}
		}
	}
	at := file.Text.Line(span.Start)
	return lines(file, first, last, func(n int) bool {
		return last-first < shownLines || n == first || n == last || n >= at-1 && n <= at+1
	})
}

// Whole is a block with all its lines.
func Whole(b *schema.Block) []Line {
	text := b.File.Text
	return lines(b.File, text.Line(b.Span.Start), text.Line(max(b.Span.Start, b.Span.End-1)), func(int) bool { return true })
}

func lines(file *schema.File, first, last int, wanted func(n int) bool) []Line {
	var all []Line
	for n := first; n <= last; n++ {
		if !wanted(n) {
			if len(all) > 0 && all[len(all)-1].Number > 0 {
				all = append(all, Line{Text: "…"})
			}
			continue
		}
		span := file.Text.LineSpan(n)
		all = append(all, Line{n, strings.TrimRight(file.Text.Slice(span), " "), span.Start})
	}
	outdent(all)
	return all
}

// outdent takes the common indentation away.
func outdent(all []Line) {
	written := func(l Line) bool { return l.Number > 0 && l.Text != "" }
	common := -1
	for _, l := range all {
		if n := len(l.Text) - len(strings.TrimLeft(l.Text, " ")); written(l) && (common < 0 || n < common) {
			common = n
		}
	}
	for i, l := range all {
		if written(l) {
			all[i].Text, all[i].Start = l.Text[common:], l.Start+int32(common)
		}
	}
}
