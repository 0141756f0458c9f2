package handbook

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/rules/explained"
	"wickrule/rules/shoprule"
	"wickrule/schema"
)

// ownPage adds what only a rule of the shop's own has: its text, the trials
// behind it, and its examples as they stand in it.
func (b *book) ownPage(p *rulePage, r *lint.Rule) {
	rule := b.Shop.Find("rule", r.Name)
	p.Written = placeOf(rule)
	p.Text = ownText(rule)
	p.Options = shoprule.OptionsOf(b.Shop, rule)
	for _, t := range explained.Behind(b.Shop, rule) {
		p.Trials = append(p.Trials, b.trialView(t))
	}
	proof := shoprule.Prove(lint.NewFileView(b.Shop, rule.File, b.Today), rule)
	p.Proved = schema.Capital(proof.Verdict()) + "."
	switch {
	case proof.Untested():
		p.Proved = "Not proved: it has not an example of each kind."
	case !proof.Holds():
		p.Proved = "Not proved: see below."
	}
	for _, e := range proof.Examples {
		shown := b.laid(e)
		if e.Block.Is("sound") {
			p.Right = append(p.Right, shown)
		} else {
			p.Wrong = append(p.Wrong, shown)
		}
	}
}

// ownText is a rule as it is written, up to its examples.
func ownText(rule *schema.Block) []codeLine {
	end := rule.Span.End
	for _, inner := range rule.Blocks() {
		if inner.Is("sound") || inner.Is("faulty") {
			end = inner.Span.Start
			break
		}
	}
	lines := explained.Whole(rule)
	last := rule.File.Text.Line(end)
	for i, l := range lines {
		if l.Number >= last && end < rule.Span.End {
			lines = lines[:i]
			break
		}
	}
	for len(lines) > 0 && lines[len(lines)-1].Text == "" {
		lines = lines[:len(lines)-1]
	}
	if end < rule.Span.End {
		lines = append(lines, explained.Line{Text: "  …"}, explained.Line{Text: "}"})
	}
	return code(lines, nil)
}

// laid is a sound or faulty block of a rule, and what the rule says of it when
// it is laid over the shop, with the figures of the rule itself.
func (b *book) laid(e shoprule.Example) example {
	shop, file := shoprule.Over(b.Shop, e.Block)
	found := lint.RunFile(shop, []*lint.Rule{shoprule.AsWritten(b.Shop, e.Block.Parent)}, b.Today, file.Name).Findings
	var marks []schema.Span
	for i := range found {
		if at := &found[i].At; at.File == file {
			at.File = e.Block.File
			at.Span = schema.Span{Start: at.Span.Start + e.Block.Body.Start, End: at.Span.End + e.Block.Body.Start}
			marks = append(marks, at.Span)
		}
	}
	x := example{Code: code(explained.Whole(e.Block), marks), Trouble: e.Says}
	for recipe := range e.Block.Each("recipe") {
		if x.About != "" {
			x.About += ", "
		}
		if title := recipe.Title(); title != recipe.Label {
			x.About += title
		} else {
			x.About += strings.ReplaceAll(recipe.Label, "-", " ")
		}
	}
	x.About = schema.Capital(x.About)
	for i := range found {
		x.Said = append(x.Said, b.said(&found[i], e.Block.File.Name))
	}
	return x
}

func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
