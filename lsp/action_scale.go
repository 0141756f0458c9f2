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
		a.cannot(title, rewriting, "the batch is not known: "+unknown(by.State, by.Lacks, by.Attr()))
		return
	}
	if off := by.Value.Sub(quantity.Int(1)).Abs(); !worst.Less(off) {
		return // it does
	}
	needs := b.Needed(b.Candles())
	for _, need := range needs {
		if said := need.Said; isWeighed(said) && scaled(said, by.Value, worst) == "" {
			a.cannot(title, rewriting, fmt.Sprintf("%q of %s does not come out even: state it as a weight first", said.Amount(), need.Block.Label))
			return
		}
	}
	a.rewrite(func(finer quantity.Rat) (string, []schema.Edit) {
		var edits []schema.Edit
		slack := worst.Mul(finer)
		for _, need := range needs {
			if isWeighed(need.Said) {
				edits = append(edits, schema.SetValue(need.Said, schema.Quote(scaled(need.Said, by.Value, slack))))
			}
		}
		return title + ": " + waxOf(b, by.Value, slack) + " of wax", edits
	})
}

// waxOf is how much wax goes into a batch that is so many times as large: as
// it is going to be written, or the sum of several.
func waxOf(b *batch.Batch, by, slack quantity.Rat) string {
	first := b.Waxes[0].Said
	if len(b.Waxes) == 1 {
		return scaled(first, by, slack)
	}
	return quantity.FromBase(b.WaxWeight.Value.Mul(by), quantity.Gram).Show(first.Amount().Unit().System)
}

// isBatch says whether a block is one that the size of the batch is read from:
// the recipe itself, what goes in, and what it is poured into.
func isBatch(block, recipe *schema.Block) bool {
	if block == recipe {
		return true
	}
	return block.Parent == recipe && slices.Contains([]string{"wax", "fragrance", "dye", "additive", "mold", "container"}, block.Name())
}

// isWeighed says whether an amount is one for the whole batch. A load goes with
// the wax by itself, and what is done by eye with the eye.
func isWeighed(v schema.Value) bool {
	if !v.IsAmount() {
		return false
	}
	dim := v.Amount().Dim()
	return dim != quantity.Proportion && dim != quantity.Share
}

// coarsest is how much rounding to whole drops or pieces may change an amount
// by, as a ratio.
var coarsest = quantity.NewRat(1, 20)

// scaled is an amount times a number, in its own unit: wax rounded up and all
// else down, so that no load grows. It is "" where nothing is left.
func scaled(v schema.Value, by, slack quantity.Rat) string {
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
		if whole := n.Floor(step); !n.Mul(coarsest).Less(n.Sub(whole)) {
			n = whole
			break
		}
		return ""
	case unit == quantity.Pound && len(quantity.Parts(q.Written())) > 1:
		return ounces(rounded(quantity.FromBase(base, quantity.Ounce).Number(), slack, isUp(v)))
	default:
		n = rounded(n, slack, isUp(v))
	}
	if n.Sign() <= 0 {
		return ""
	}
	return quantity.Of(n, unit).String()
}
