// Package explained is what there is to say of a rule and of a trial, so that
// the terminal, the handbook and whatever else explains them say the same. How
// it is laid out is theirs.
package explained

import (
	"fmt"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// Tried is what came of an example when it was checked.
type Tried struct {
	Excerpt []Line       // the block that matters
	Stock   []Line       // what the example puts on the shelves, where the excerpt is not of that; else what it finds there
	Said    []lint.Found // by the rule
	Others  []lint.Found // by other rules, of the same recipe: the first of each, save what every change brings
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
			} else if !slices.Contains(ofTrying, f.Rule.Name) && !slices.ContainsFunc(t.Others, func(o lint.Found) bool { return o.Rule == f.Rule }) {
				t.Others = append(t.Others, f)
			}
		}
	}
	changed := changedSpans(first, e)
	shown := first
	switch {
	case len(t.Said) > 0:
		shown = t.Said[0].At.File
		t.Excerpt = Excerpt(shown, t.Said[0].At.Span, changed...)
	case len(changed) > 1:
		spec, _ := placeThatFails(demo, r, today)
		t.Excerpt = Excerpt(first, alikeAmong(changed, first, spec), changed...)
	case len(changed) == 1:
		t.Excerpt = Excerpt(first, changed[0])
	default:
		span, err := unchangedSpan(first, e, demo, r, today)
		if err != nil {
			return Tried{}, err
		}
		t.Excerpt = Excerpt(first, span)
	}
	for _, file := range about {
		if file != first && file != shown {
			t.Stock = lines(file, 1, file.Text.Lines(), func(int) bool { return true })
		}
	}
	if e.Shelf != "" {
		kind, key, _ := strings.Cut(e.Shelf, " ")
		item := shop.Find(kind, key)
		if item == nil {
			return Tried{}, fmt.Errorf("the example shop has no %s", e.Shelf)
		}
		t.Stock = Whole(item)
	}
	return t, nil
}

// ofTrying are the rules that speak wherever something is tried out: the burns
// were of the recipe as it was, and no recipe asks for what was put on the
// shelves for one example.
var ofTrying = []string{"test-burn-stale", "unused-stock"}

// unchangedSpan is what to show of an example that changes nothing: what it
// says itself, else what is like the place at which the first bad example is
// flagged.
func unchangedSpan(file *schema.File, e lint.Example, demo *lint.Shop, r *lint.Rule, today string) (schema.Span, error) {
	if e.Shows != "" {
		at := strings.Index(file.Text.String(), e.Shows)
		if at < 0 {
			return schema.Span{}, fmt.Errorf("%q does not stand in %s", e.Shows, file.Name)
		}
		return schema.Span{Start: int32(at), End: int32(at + len(e.Shows))}, nil
	}
	spec, attr := placeThatFails(demo, r, today)
	like := firstOf(file.Blocks, spec)
	if like == nil {
		return schema.Span{}, nil
	}
	if attr != "" && !like.Get(attr).Absent() {
		return like.Get(attr).Span(), nil
	}
	return like.Header(), nil
}

// changedSpans are what the example changes: the first block that it adds, else
// the end of what is written anew, since a change often starts in the block
// before. What only takes away has none.
func changedSpans(file *schema.File, e lint.Example) []schema.Span {
	var all []schema.Span
	for _, c := range e.Changes {
		at := strings.Index(file.Text.String(), c.To)
		if at < 0 || c.To == "" {
			continue
		}
		kept := commonStart(c.From, c.To)
		if added := firstWithin(file.Blocks, int32(at+kept), int32(at+len(c.To)-commonEnd(c.From[kept:], c.To[kept:]))); added != nil {
			all = append(all, added.Header())
			continue
		}
		end := int32(at + len(strings.TrimRight(c.To, " \n")))
		all = append(all, schema.Span{Start: end, End: end})
	}
	return all
}

func commonStart(a, b string) (n int) {
	for n < min(len(a), len(b)) && a[n] == b[n] {
		n++
	}
	return n
}

func commonEnd(a, b string) (n int) {
	for n < min(len(a), len(b)) && a[len(a)-1-n] == b[len(b)-1-n] {
		n++
	}
	return n
}

// firstWithin is the first block that lies whole between two places, or nil.
func firstWithin(blocks []*schema.Block, from, to int32) *schema.Block {
	for _, b := range blocks {
		if from <= b.Span.Start && b.Span.End <= to {
			return b
		}
		if b.Span.Start < to && from < b.Span.End {
			if inner := firstWithin(b.Blocks(), from, to); inner != nil {
				return inner
			}
		}
	}
	return nil
}

// placeThatFails is the kind of block in which the rule's first bad example is
// flagged, or nil, and the attribute of it whose value is.
func placeThatFails(demo *lint.Shop, r *lint.Rule, today string) (spec *schema.BlockSpec, attr string) {
	if len(r.Bad) == 0 {
		return nil, ""
	}
	shop, about, err := r.Bad[0].Over(demo)
	if err != nil {
		return nil, ""
	}
	for _, f := range lint.RunFile(shop, []*lint.Rule{r}, today, about[0].Name).Findings {
		if flagged := innermost(f.At.File.Blocks, f.At.Span); flagged != nil {
			for _, a := range flagged.Spec.Attrs {
				if v := flagged.Get(a.Name); !v.Absent() && v.Span().Contains(f.At.Span) {
					return flagged.Spec, a.Name
				}
			}
			return flagged.Spec, ""
		}
	}
	return nil, ""
}

// alikeAmong is the first of the spans that lies in a block of a kind, else the
// first.
func alikeAmong(spans []schema.Span, file *schema.File, spec *schema.BlockSpec) schema.Span {
	for _, s := range spans {
		if b := innermost(file.Blocks, s); b != nil && b.Spec == spec {
			return s
		}
	}
	return spans[0]
}

// innermost is the smallest block around a span, or nil.
func innermost(blocks []*schema.Block, span schema.Span) *schema.Block {
	for _, b := range blocks {
		if b.Span.Contains(span) {
			if inner := innermost(b.Blocks(), span); inner != nil {
				return inner
			}
			return b
		}
	}
	return nil
}

// firstOf is the first block of a kind, or nil.
func firstOf(blocks []*schema.Block, spec *schema.BlockSpec) *schema.Block {
	for _, b := range blocks {
		if b.Spec == spec {
			return b
		}
		if inner := firstOf(b.Blocks(), spec); inner != nil {
			return inner
		}
	}
	return nil
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
// that its lines have in common; where that is long, its first and last lines,
// those around the span, and of the blocks in it those around the further
// spans.
func Excerpt(file *schema.File, span schema.Span, further ...schema.Span) []Line {
	text := file.Text
	first, last := 1, text.Lines()
	if b := innermost(file.Blocks, span); b != nil {
		first, last = linesOf(b)
	}
	return lines(file, first, last, func(n int) bool {
		if last-first < shownLines || n == first || n == last || text.Line(span.Start)-1 <= n && n <= text.Line(max(span.Start, span.End-1))+1 {
			return true
		}
		return slices.ContainsFunc(further, func(s schema.Span) bool {
			if b := innermost(file.Blocks, s); b != nil {
				if from, to := linesOf(b); to-from < shownLines {
					return from <= n && n <= to
				}
			}
			return near(n, text.Line(s.Start))
		})
	})
}

func near(n, line int) bool { return n >= line-1 && n <= line+1 }

// linesOf are the first and the last line of a block.
func linesOf(b *schema.Block) (first, last int) {
	return b.File.Text.Line(b.Span.Start), b.File.Text.Line(max(b.Span.Start, b.Span.End-1))
}

// Whole is a block with all its lines.
func Whole(b *schema.Block) []Line {
	first, last := linesOf(b)
	return lines(b.File, first, last, func(int) bool { return true })
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
	for len(all) > 0 && all[len(all)-1].Text == "" {
		all = all[:len(all)-1]
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
