package lsp

import (
	"slices"

	"wickrule/lint"
	"wickrule/rules/formula"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// How a worked-out amount is written into a text, so that it reads well and
// still says what it stands for. Rounding goes down unless it is said
// otherwise: nothing may creep over a limit by it.

// worst is the most that rounding may change an amount by, as a ratio.
var worst = quantity.NewRat(1, 500)

// slackOf is how much rounding may change what is worked out from a quantity, as
// a ratio: half of the last digit written, and never more than worst. What is
// written as a fraction, or computed, has no last digit.
func slackOf(q quantity.Quantity) quantity.Rat {
	half, ok := q.HalfDigit().Quo(q.Base().Abs())
	if !ok || half.IsZero() {
		return worst
	}
	return quantity.Min(half, worst)
}

// mostPlaces is how many decimal places are tried.
const mostPlaces = 9

// rounded is the number with the fewest decimal places that is off by no more
// than the slack, as a ratio: never above it, or with up never below it.
func rounded(n, slack quantity.Rat, up bool) quantity.Rat {
	near := n
	step := quantity.Int(1)
	for range mostPlaces {
		near = n.Floor(step)
		if up {
			near = n.Ceil(step)
		}
		if off := near.Sub(n).Abs(); !n.Abs().Mul(slack).Less(off) {
			return near
		}
		step = step.Mul(quantity.NewRat(1, 10))
	}
	return near
}

// isUp says whether an amount of a block is to be rounded up, if at all: the
// weight of a wax, since loads are measured against it; what one drop or piece
// of a dye weighs; the room that is left below the rim; and what was measured
// of a burning candle that may be too much.
func isUp(v schema.Value) bool {
	switch v.Spec.Name {
	case "drop", "piece", "leave", "flame", "pool_depth", "wall":
		return true
	case "weight":
		return v.Block.Is("wax")
	}
	return v.BelowRim()
}

// weightIn is a weight in g in the units of a system, rounded: "64.9 g",
// "1.24 kg", "2.29 oz", "2 lb 11.8 oz".
func weightIn(grams, slack quantity.Rat, s quantity.System, up bool) string {
	if s == quantity.US {
		return ounces(rounded(quantity.FromBase(grams, quantity.Ounce).Number(), slack, up))
	}
	unit := quantity.Gram
	if !grams.Less(quantity.Int(1000)) {
		unit = quantity.Kilogram
	}
	return quantity.Of(rounded(quantity.FromBase(grams, unit).Number(), slack, up), unit).String()
}

// ounces is so many ounces as they are read off a scale: from a pound on in
// pounds and ounces.
func ounces(n quantity.Rat) string {
	pound := quantity.Int(16)
	if n.Less(pound) {
		return quantity.Of(n, quantity.Ounce).String()
	}
	whole := n.Floor(pound)
	rest := n.Sub(whole)
	text := quantity.Of(whole.Mul(quantity.NewRat(1, 16)), quantity.Pound).String()
	if rest.IsZero() {
		return text
	}
	return text + " " + quantity.Of(rest, quantity.Ounce).String()
}

// rewrite offers to write amounts in another way. What is rounded may come to
// lie on the other side of an edge, so that the recipe would count as another
// formulation than the one that was burned: it is then rounded less, and where
// that does not help it is not offered. write is given by how much less, as a
// ratio, and returns no edits where there is nothing to offer.
func (a *actions) rewrite(write func(finer quantity.Rat) (title string, edits []schema.Edit)) {
	finer := quantity.Int(1)
	first := ""
	for range 4 {
		title, edits := write(finer)
		if len(edits) == 0 {
			return
		}
		if a.keepsFormula(edits) {
			a.offer(codeAction{Title: title, Kind: rewriting}, edits)
			return
		}
		if first == "" {
			first = title
		}
		finer = finer.Mul(quantity.NewRat(1, 10))
	}
	a.cannot(first, rewriting, "rounded so, it would count as another formulation than the one that was burned")
}

// keepsFormula says whether the recipe at the place is of the same formulation
// after edits of its file. One that was never burned has nothing to keep.
func (a *actions) keepsFormula(edits []schema.Edit) bool {
	if a.recipe == nil {
		return true
	}
	view := a.view(a.recipe)
	if len(view.TestBurns()) == 0 {
		return true
	}
	was := formula.Of.In(view)
	text, err := schema.Apply(a.file.Text.String(), edits)
	if err != nil || !was.Known() {
		return true
	}
	now := schema.Read(a.file.Name, []byte(text))
	top := slices.Index(a.file.Blocks, a.recipe)
	if top >= len(now.Blocks) || !now.Blocks[top].Is("recipe") {
		return true
	}
	return formula.Of.In(lint.NewView(a.shop.With(now), now.Blocks[top], a.today)).Code == was.Code
}
