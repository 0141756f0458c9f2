package lsp

import (
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// loads offers to state how much of an ingredient goes in the other way: a
// load as a weight, a weight as a load, a load on the other basis. None of
// them comes out above what is written.
func (a *actions) loads() {
	if a.recipe == nil || a.block.Parent != a.recipe {
		return
	}
	view := a.view(a.recipe)
	b := batch.Of.In(view)
	in := ingredientOf(b, a.block)
	if in == nil || !in.Said.IsAmount() || !in.Load.Absent() {
		return
	}
	said := in.Said.Amount().High()
	slack := slackOf(said)
	if said.Dim() != quantity.Proportion && said.Dim() != quantity.Share {
		a.asLoad(in, in.OfWax, quantity.PercentOfWax, slack)
		a.asLoad(in, in.OfTotal, quantity.PercentOfTotal, slack)
		if said.Dim() != quantity.Weight {
			a.asWeight(b, in, slack)
		}
		return
	}
	switch said.Basis() { // a bare % has none: a rule asks for it
	case quantity.OfWax:
		a.asWeight(b, in, slack)
		a.asLoad(in, in.OfTotal, quantity.PercentOfTotal, slack)
	case quantity.OfTotal:
		a.asWeight(b, in, slack)
		a.asLoad(in, in.OfWax, quantity.PercentOfWax, slack)
	}
}

// ingredientOf is what a block adds to the wax, or nil.
func ingredientOf(b *batch.Batch, block *schema.Block) *batch.Ingredient {
	for _, list := range [][]batch.Ingredient{b.Fragrances, b.Dyes, b.Additives} {
		for i := range list {
			if list[i].Block == block {
				return &list[i]
			}
		}
	}
	return nil
}

func (a *actions) asLoad(in *batch.Ingredient, load batch.Figure, unit *quantity.Unit, slack quantity.Rat) {
	title := "state it as a load, in " + unit.Symbol
	if !load.Known() {
		a.cannot(title, rewriting, unknown(load.State, load.Lacks, load.Attr()))
		return
	}
	a.rewrite(func(finer quantity.Rat) (string, []schema.Edit) {
		n := rounded(quantity.FromBase(load.Value, unit).Number(), slack.Mul(finer), false)
		if n.Sign() <= 0 {
			return "", nil
		}
		text := n.Decimal(mostPlaces) + " " + unit.Symbol
		return "state it as a load: " + text, restate(in.Said, "load", text)
	})
}

func (a *actions) asWeight(b *batch.Batch, in *batch.Ingredient, slack quantity.Rat) {
	if !in.Weight.Known() {
		a.cannot("state it as a weight", rewriting, unknown(in.Weight.State, in.Weight.Lacks, in.Weight.Attr()))
		return
	}
	if in.Weight.Value.Sign() <= 0 {
		return
	}
	system := a.view(a.recipe).Units()
	if len(b.Waxes) > 0 && b.Waxes[0].Said.IsAmount() {
		system = b.Waxes[0].Said.Amount().Unit().System // as the maker weighs
	}
	a.rewrite(func(finer quantity.Rat) (string, []schema.Edit) {
		text := weightIn(in.Weight.Value, slack.Mul(finer), system, false)
		return "state it as a weight: " + text, restate(in.Said, "weight", text)
	})
}

// restate writes another attribute in the place of one.
func restate(v schema.Value, name, text string) []schema.Edit {
	f := v.Block.File
	return []schema.Edit{{File: f, Span: v.NameSpan(), Text: name}, {File: f, Span: v.Span(), Text: schema.Quote(text)}}
}
