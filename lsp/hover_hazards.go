package lsp

import (
	"slices"

	"wickrule/rules/batch"
	"wickrule/rules/hazard"
	"wickrule/schema"
)

// asking are the recipe's markets that classify a candle as a mixture.
func (f figures) asking() []string {
	var markets []string
	for _, m := range f.view.Markets() {
		if m.Text == "EU" || m.Text == "UK" {
			markets = append(markets, m.Text)
		}
	}
	return markets
}

// hazards tells what the finished candle is classified as in each market that
// asks for it, with the arithmetic that decides: a paragraph a market, one for
// the steps, and who has the last word. Of one ingredient the steps are those
// it has a part in.
func (f figures) hazards(of *batch.Ingredient) []string {
	markets := f.asking()
	if len(markets) == 0 {
		return nil
	}
	c := hazard.Of.In(f.view)
	var says []string
	for _, market := range markets {
		e := c.Label(market, f.holds())
		says = append(says, "**Hazards, for the "+market+"** "+f.plain(classed(c, &e)))
	}
	says = append(says, f.steps(c, of)...)
	return append(says, schema.Capital(hazard.Decides)+".")
}

// classed is a label text and what is due beside it, as sentences.
func classed(c *hazard.Classification, e *hazard.Elements) string {
	text := "Not classified, and no substance must be named."
	if !e.None() {
		text = fullStop(e.String())
	}
	if least := c.Least(); least != "" {
		text = "At least, since " + least + ": " + text
	}
	return spaced(text, e.Due())
}

// steps are the steps of the arithmetic that decide, a paragraph each.
func (f figures) steps(c *hazard.Classification, of *batch.Ingredient) []string {
	var says []string
	for _, step := range c.Deciding() {
		if of == nil || slices.ContainsFunc(step.Counted(), func(s *hazard.Substance) bool { return brings(of, s) }) {
			says = append(says, f.plain(fullStop(step.String())))
		}
	}
	return says
}

// brings says whether an ingredient brings a substance.
func brings(in *batch.Ingredient, s *hazard.Substance) bool {
	return slices.ContainsFunc(s.Parts, func(p hazard.Part) bool { return p.Ingredient.Block == in.Block })
}

// holds is what one candle is filled with, where the recipe makes one kind:
// small packs may leave something off.
func (f figures) holds() batch.Figure {
	if len(f.batch.Vessels) == 1 {
		return f.batch.Vessels[0].Fill
	}
	return batch.Figure{State: schema.Absent}
}

// labelBears tells what a label that the recipe puts on must carry, and what it
// lacks by itself.
func (f figures) labelBears(label *schema.Block) []string {
	c := hazard.Of.In(f.view)
	words := func(attr string) []string {
		var list []string
		for _, item := range label.Get(attr).Items() {
			list = append(list, item.Text)
		}
		return list
	}
	var says []string
	for _, market := range f.asking() {
		if made := words("markets"); len(made) > 0 && !slices.Contains(made, market) {
			continue
		}
		e := c.Label(market, f.holds())
		says = append(says, "**Here, for the "+market+"** "+f.plain(classed(c, &e)))
		if lacks := e.Lacks(words("signal"), words("pictograms"), words("hazards"), words("names")); !lacks.None() {
			says = append(says, "By itself it lacks: "+f.plain(fullStop(lacks.String())))
		}
	}
	if says == nil {
		return nil
	}
	return append(append(says, f.steps(c, nil)...), schema.Capital(hazard.Decides)+".")
}
