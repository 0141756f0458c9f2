package vessel

import (
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

const limitHere = "limit stated here"

// mostOffered is how many stock items are offered at most in place of one.
const mostOffered = 4

// listed joins words the way a sentence does: "pillars, votives and tapers".
func listed(words []string, last string) string {
	n := len(words)
	if n < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:n-1], ", ") + " " + last + " " + words[n-1]
}

// texts are the texts of a list.
func texts(v schema.Value) []string {
	var words []string
	for _, item := range v.Items() {
		words = append(words, item.Text)
	}
	return words
}

// plurals are the uses of a wax as a maker says them.
func plurals(uses []string) []string {
	words := make([]string, len(uses))
	for i, use := range uses {
		words[i] = use + "s"
	}
	return words
}

// apart is a difference in K, in degrees of the scale that the temperature is
// written in: "15 °F".
func apart(kelvin quantity.Rat, written quantity.Quantity) string {
	return quantity.FromBase(kelvin, written.Unit().AsDifference()).Show(written.Unit().System)
}

// inScale is a temperature in °C in the scale of the one it is spoken of with,
// the other in brackets: "140 °F (60 °C)".
func inScale(celsius quantity.Rat, written quantity.Quantity) string {
	return quantity.FromBase(celsius, written.Unit()).Both(written.Unit().System)
}

// reaching is a temperature as it is written, the other scale in brackets; of
// a range the upper end, with a word that it is one.
func reaching(view *lint.View, written quantity.Quantity) string {
	if !written.IsRange() {
		return batch.Both(view, written)
	}
	return batch.Both(view, written.High()) + ", the end of " + written.String() + ","
}

// lengthIn is a length in mm in the units of one it is spoken of with, the
// other system in brackets.
func lengthIn(mm quantity.Rat, written quantity.Quantity) string {
	return quantity.FromBase(mm, written.Unit()).Both(written.Unit().System)
}

// diameterSaid is the stock's value that a vessel's diameter comes from.
func diameterSaid(v *batch.Vessel) schema.Value {
	if v.Kind == "mold" {
		if width := v.Stock.Get("width"); v.Stock.Get("shape").Text() == "block" && width.Known() {
			if length := v.Stock.Get("length"); length.IsAmount() && length.Amount().Cmp(width.Amount()) < 0 {
				return length
			}
			return width
		}
	}
	return v.Stock.Get("diameter")
}
