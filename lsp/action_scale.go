package lsp

import (
	"fmt"
	"slices"

	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// scale offers the weights that fill the recipe's vessels, as many as it
// counts: the same candle, in a batch of another size.
func (a *actions) scale() {
	if a.recipe == nil || !isBatch(a.block, a.recipe) {
		return
	}
	b := batch.Of.In(a.view(a.recipe))
	if b.Makes == "taper" || len(b.Vessels) == 0 {
		return // a vat that is dipped into is never emptied
	}
	title := "weigh in what fills " + numbered(b.Candles(), "candle")
	by := b.Scale(b.Candles())
	if !by.Known() {
		a.cannot(title, rewriting, "the batch is not known: "+unknown(by.State, by.Lacks, by.Attr))
		return
	}
	if off := by.Value.Sub(quantity.Int(1)).Abs(); !worst.Less(off) {
		return // it does
	}
	var edits []schema.Edit
	for _, need := range b.Needed(b.Candles()) {
		said := need.Said
		if !said.IsAmount() || isLoad(said.Amount()) {
			continue // a load goes with the wax
		}
		text := scaled(said, by.Value)
		if text == "" {
			a.cannot(title, rewriting, fmt.Sprintf("%s of %s are too few to be divided", said.Amount(), need.Block.Label))
			return
		}
		edits = append(edits, schema.SetValue(said, schema.Quote(text)))
	}
	if len(edits) == 0 {
		return
	}
	wax := b.WaxWeight.Value.Mul(by.Value)
	title += ": " + batch.Grams(a.view(a.recipe), wax) + " of wax"
	a.offer(codeAction{Title: title, Kind: rewriting}, edits)
}

// isBatch says whether a block is one that the size of the batch is read from:
// the recipe itself, what goes in, and what it is poured into.
func isBatch(block, recipe *schema.Block) bool {
	if block == recipe {
		return true
	}
	return block.Parent == recipe && slices.Contains([]string{"wax", "fragrance", "dye", "additive", "mold", "container"}, block.Name())
}

func isLoad(q quantity.Quantity) bool {
	return q.Dim() == quantity.Proportion || q.Dim() == quantity.Share
}

// scaled is an amount times a number, in its own unit: wax rounded up and all
// else down, so that no load grows. It is "" where nothing is left.
func scaled(v schema.Value, by quantity.Rat) string {
	q := v.Amount()
	base := q.Base().Mul(by)
	unit := q.Unit()
	n := quantity.FromBase(base, unit).Number()
	switch {
	case unit.Dim == quantity.Count:
		step := quantity.Int(1)
		if unit == quantity.Block {
			step = quantity.NewRat(1, 4)
		}
		n = n.Floor(step)
	case unit == quantity.Pound && len(quantity.Parts(q.Written())) > 1:
		return ounces(rounded(quantity.FromBase(base, quantity.Ounce).Number(), worst, isUp(v)))
	default:
		n = rounded(n, worst, isUp(v))
	}
	if n.Sign() <= 0 {
		return ""
	}
	return quantity.Of(n, unit).String()
}
