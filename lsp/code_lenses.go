package lsp

import (
	"context"
	"slices"
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/formula"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// codeLenses tells above a recipe what it makes and how it stands, above an
// item of the stock in how many recipes it is used, and above a rule how it is
// proved and in how many recipes it speaks.
func (h *here) codeLenses(ctx context.Context, _ *protocol.CodeLensParams) ([]protocol.CodeLens, error) {
	lenses := []protocol.CodeLens{}
	if !h.wants.lenses() {
		return lenses, nil
	}
	var report *lint.Report
	var speaking map[string]spoken
	for _, b := range h.file.Blocks {
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		switch {
		case b.Is("recipe"):
			if report == nil {
				report = h.check()
			}
			lenses = append(lenses, h.recipeLenses(b, report)...)
		case b.Is("rule"):
			if speaking == nil {
				speaking = h.speaking(ctx)
			}
			lenses = append(lenses, h.ruleLenses(b, speaking)...)
		case b.Is("trial"):
			lenses = append(lenses, h.lens(b, h.trialText(b), nil))
		case b.Spec.Stock && h.shop.Find(b.Name(), b.Label) == b:
			lenses = append(lenses, h.lens(b, usedText(h.shop.Uses(b)), nil))
		}
	}
	return lenses, nil
}

// lens is one text above a block. A text alone is a command of no name, which
// editors show and do not run.
func (h *here) lens(b *schema.Block, text string, run *protocol.Command) protocol.CodeLens {
	if run == nil {
		run = &protocol.Command{}
	}
	run.Title = text
	return protocol.CodeLens{Range: h.rangeOf(b.Header()), Command: run}
}

func usedText(recipes, others int) string {
	switch {
	case recipes == 0 && others == 0:
		return "not used"
	case recipes == 0:
		return "used in no recipe"
	}
	return "used in " + quantity.Int(int64(recipes)).Decimal(0) + map[bool]string{true: " recipe", false: " recipes"}[recipes == 1]
}

// recipeLenses are what a recipe makes, its load, what is found in it, and how
// it burned; each where it is known.
func (h *here) recipeLenses(b *schema.Block, report *lint.Report) []protocol.CodeLens {
	f := figures{here: h, view: h.view(b)}
	f.batch = batch.Of.In(f.view)
	var lenses []protocol.CodeLens
	if text := f.yieldText(); text != "" {
		lenses = append(lenses, h.lens(b, text, h.sheetOf(b)))
	}
	for _, text := range []string{f.loadText(), h.foundText(b, report), f.burnText()} {
		if text != "" {
			lenses = append(lenses, h.lens(b, text, nil))
		}
	}
	return lenses
}

// sheetOf is the command that shows a recipe's batch sheet, or nil where there
// is none that the client can run.
func (h *here) sheetOf(b *schema.Block) *protocol.Command {
	if h.can.Workspace.ExecuteCommand == nil || b.Label == "" || !slices.Contains(commandNames(), commandSheet) {
		return nil
	}
	return &protocol.Command{Command: commandSheet, Arguments: []any{h.uri, b.Label}}
}

// yieldText is how many candles the batch fills of what is wanted: "2 pillars";
// "fills 1 of 2 pillars".
func (f figures) yieldText() string {
	y, ok := f.batch.Yield()
	if !ok {
		return ""
	}
	var parts []string
	for i := range f.batch.Vessels {
		v := &f.batch.Vessels[i]
		text := candles(v.Count, f.batch.MadeIn(v))
		switch filled := y.Filled[i]; {
		case filled < v.Count:
			text = "fills " + quantity.Int(int64(filled)).Decimal(0) + " of " + text
		case filled > v.Count:
			text += ", enough for " + quantity.Int(int64(filled)).Decimal(0)
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, ", ")
}

// loadText is all fragrances together.
func (f figures) loadText() string {
	if len(f.batch.Fragrances) == 0 {
		return ""
	}
	if loads := batch.Loads(f.batch.FragranceOfWax, f.batch.FragranceOfTotal); loads != "" {
		return "fragrance " + loads
	}
	return ""
}

// foundText counts what is found in a recipe by level. While its text is half
// typed nothing is said of what is not found.
func (h *here) foundText(b *schema.Block, report *lint.Report) string {
	counts := map[lint.Level]int{}
	for i := range report.Findings {
		if f := &report.Findings[i]; f.Recipe == b && f.Level >= h.wants.softest() {
			counts[f.Level]++
		}
	}
	var parts []string
	for _, level := range []lint.Level{lint.Must, lint.Should, lint.Consider} {
		if n := counts[level]; n > 0 {
			parts = append(parts, inWords(n)+" "+level.String())
		}
	}
	if len(parts) == 0 && h.file.Whole {
		parts = append(parts, "nothing found")
	}
	conceded := 0
	for i := range report.Conceded {
		if report.Conceded[i].Recipe == b {
			conceded++
		}
	}
	if conceded > 0 {
		parts = append(parts, inWords(conceded)+" conceded")
	}
	if n := h.unchecked(report); n > 0 && len(parts) > 0 {
		parts = append(parts, things(n, "figure")+" missing to check all")
	}
	return strings.Join(parts, ", ")
}

// unchecked counts what is not written and rules wait for, in this file or in
// the stock its recipes use.
func (h *here) unchecked(report *lint.Report) (n int) {
	for _, u := range report.Unchecked {
		if u.Level >= h.wants.softest() {
			n++
		}
	}
	return n
}

// burnText is how many candles burned and passed of each kind the recipe
// makes, of the formulation as it stands where that is known.
func (f figures) burnText() string {
	tests := formula.Tests(f.view)
	var parts []string
	for i := range tests {
		text := burned(&tests[i], formula.Of.In(f.view).Known())
		if v := tests[i].Vessel; len(tests) > 1 && v < len(f.batch.Vessels) {
			text = f.batch.Vessels[v].Stock.Title() + ": " + text
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, "; ")
}

// burned is what came of the burns of one kind of candle. Where the
// formulation cannot be worked out, nothing is said of which they were.
func burned(t *formula.Tested, known bool) string {
	passed, failed := t.Passed()
	old := t.Outdated()
	switch {
	case !known && len(old) > 0:
		return things(len(old), "candle") + " burned and passed, whether of this formulation is not known"
	case len(t.Current) == 0 && len(old) > 0:
		return things(len(old), "candle") + " burned and passed, but of another formulation or without saying which"
	}
	text := things(len(passed), "candle") + " burned and passed"
	if len(failed) > 0 {
		text += ", " + inWords(len(failed)) + " did not"
	}
	return text
}
