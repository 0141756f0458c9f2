package lsp

import (
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
// of a dye weighs; and the room that is left below the rim.
func isUp(v schema.Value) bool {
	switch v.Spec.Name {
	case "drop", "piece", "leave":
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
