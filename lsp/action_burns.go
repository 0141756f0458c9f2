package lsp

import (
	"fmt"
	"strings"

	"wickrule/rules/batch"
	"wickrule/rules/formula"
	"wickrule/schema"
)

// burns offers to record a test burn of today's for the formulation as it
// stands. What was seen is left empty, to be filled in beside the candle.
func (a *actions) burns() {
	if a.recipe == nil || !a.block.Is("recipe") && !a.block.Is("test_burn") {
		return
	}
	view := a.view(a.recipe)
	b, f := batch.Of.In(view), formula.Of.In(view)
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if made := b.MadeIn(v); made == "melt" {
			continue // it has no flame
		}
		title, vessel, code := "record a test burn of today", "", f.Code
		if len(b.Vessels) > 1 {
			title += ", of " + nameOf(v)
			vessel, code = v.Block.Label, f.Each[i].Code
		}
		if code == "" {
			a.cannot(title, rewriting, "what was burned is not known: "+unknown(f.State, f.Lacks, f.Attr))
			continue
		}
		a.offer(codeAction{Title: title, Kind: rewriting}, []schema.Edit{burnAfter(a.recipe, burnText(a.today, code, vessel, formula.ToKeep(view, i)))})
	}
}

// burnText is a test burn with its date and formulation, and a blank for
// everything that is seen and measured.
func burnText(today, code, vessel string, keep []string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "test_burn %s {\n  formula    = %s\n", schema.Quote(today), schema.Quote(code))
	if vessel != "" {
		fmt.Fprintf(&b, "  vessel     = %s\n", schema.Quote(vessel))
	}
	for _, name := range []string{"candle", "cycle", "burned_for", "to_end", "melt_pool", "pool_depth", "flame", "soot", "seen", "result"} {
		fmt.Fprintf(&b, "  %-10s = \"\"\n", name)
	}
	b.WriteString(formula.KeptAttribute(keep) + "}")
	return b.String()
}

// burnAfter puts a test burn behind those that the recipe has, or at its end.
func burnAfter(recipe *schema.Block, text string) schema.Edit {
	var last *schema.Block
	for burn := range recipe.Each("test_burn") {
		last = burn
	}
	if last == nil {
		return appendApart(recipe, text)
	}
	return apart(schema.InsertBlockAfter(last, text))
}

func nameOf(v *batch.Vessel) string {
	if v.Stock != nil {
		return v.Stock.Title()
	}
	return v.Block.Label
}

// unknown says why a figure is not known.
func unknown(state schema.State, lacks *schema.Block, attr string) string {
	if state == schema.Absent && lacks != nil {
		return lacks.Title() + " does not state " + attr
	}
	return "something it rests on is missing or cannot be read"
}
