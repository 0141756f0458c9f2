package batch

import (
	"wickrule/lint"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// How figures read in messages, hovers and on the sheet, in the shop's units.
// All of them round: nothing may be judged by what they say.

// Grams is a weight in g: "65 g", "2.29 oz".
func Grams(view *lint.View, g quantity.Rat) string {
	return quantity.FromBase(g, quantity.Gram).Show(view.Units())
}

// Milliliters is a volume in mL: "300 mL", "10.1 fl oz".
func Milliliters(view *lint.View, ml quantity.Rat) string {
	return quantity.FromBase(ml, quantity.Milliliter).Show(view.Units())
}

// Millimeters is a length in mm: "12 mm", "1/2 in".
func Millimeters(view *lint.View, mm quantity.Rat) string {
	return quantity.FromBase(mm, quantity.Millimeter).Show(view.Units())
}

// Degrees is a temperature in °C on both scales, the shop's first:
// "176 °F (80 °C)".
func Degrees(view *lint.View, celsius quantity.Rat) string {
	return quantity.FromBase(celsius, quantity.Celsius).Both(view.Units())
}

// Time is a time in seconds: "1 h 45 min".
func Time(seconds quantity.Rat) string {
	return quantity.FromBase(seconds, quantity.Second).Show(quantity.Metric)
}

// Percent is a proportion, 2/25 as "8 % of wax".
func Percent(ratio quantity.Rat, basis quantity.Basis) string {
	return quantity.FromBase(ratio, percentOf(basis)).Show(quantity.Metric)
}

func percentOf(basis quantity.Basis) *quantity.Unit {
	switch basis {
	case quantity.OfWax:
		return quantity.PercentOfWax
	case quantity.OfTotal:
		return quantity.PercentOfTotal
	}
	return quantity.Percent
}

// PercentBeside is a proportion with as many digits as it takes to read as
// another number than the limit beside it, six places at most:
// "6.004 % of wax" beside "6 % of wax".
func PercentBeside(ratio, limit quantity.Rat, basis quantity.Basis) string {
	hundred := quantity.Int(100)
	n, l := ratio.Mul(hundred), limit.Mul(hundred)
	places := 2
	for places < 6 && !n.Equal(l) && n.Decimal(places) == l.Decimal(places) {
		places++
	}
	text := n.Decimal(places) + " %"
	if basis != quantity.NoBasis {
		text += " " + basis.String()
	}
	return text
}

// Loads is a load on both bases: "8 % of wax (7.41 % of total)"; the second is
// left out where it is not known.
func Loads(ofWax, ofTotal Figure) string {
	switch {
	case !ofWax.Known() && !ofTotal.Known():
		return ""
	case !ofWax.Known():
		return Percent(ofTotal.Value, quantity.OfTotal)
	case !ofTotal.Known():
		return Percent(ofWax.Value, quantity.OfWax)
	}
	return Percent(ofWax.Value, quantity.OfWax) + " (" + Percent(ofTotal.Value, quantity.OfTotal) + ")"
}

// Both is a quantity as it is written, the other system in brackets:
// "186 °F (85.6 °C)".
func Both(view *lint.View, q quantity.Quantity) string { return q.Both(view.Units()) }

// Range is a figure of the stock with both its ends: "168 to 182 °F (75.6 to
// 83.3 °C)", as it is written where one sheet states it.
func (s Stated) Range(view *lint.View) string {
	if s.low == nil {
		return s.Amount.Both(view.Units())
	}
	low, high := s.low.Amount.Low(), s.Amount.High()
	if low.Cmp(high) == 0 {
		return high.Both(view.Units())
	}
	return low.Both(view.Units()) + " to " + high.Both(view.Units())
}

// Whose says whose figure it is, to stand after "is over what … holds" or in
// brackets: the wax by its title, "the blend", or "soy as a rule" for a
// family's.
func (s Stated) Whose() string {
	switch {
	case s.Family != "":
		return s.Family + " as a rule"
	case s.Wax != nil:
		return s.Wax.Title()
	}
	return "the wax"
}

// ApartLike is a difference in K, in degrees of the scale that a temperature is
// written in: "15 °F".
func ApartLike(kelvin quantity.Rat, written quantity.Quantity) string {
	return quantity.FromBase(kelvin, written.Unit().AsDifference()).Show(written.Unit().System)
}

// DegreesLike is a temperature in °C in the scale of the one it is spoken of
// with, the other in brackets: "182 °F (83.3 °C)".
func DegreesLike(celsius quantity.Rat, written quantity.Quantity) string {
	return quantity.FromBase(celsius, written.Unit()).Both(written.Unit().System)
}

// NoteAt is a related place at each figure of the stock that is written; none
// for a family's.
func NoteAt(message string, values ...schema.Value) []lint.Note {
	var notes []lint.Note
	for _, v := range values {
		if v.Known() {
			notes = append(notes, lint.Note{Place: lint.AtValue(v), Message: message})
		}
	}
	return notes
}
