package setting

import (
	"strconv"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

const limitHere = "limit stated here"

// apart is a difference in K, in degrees of the scale that the temperature is
// written in: "15 °F".
func apart(kelvin quantity.Rat, written quantity.Quantity) string {
	return quantity.FromBase(kelvin, written.Unit().AsDifference()).Show(written.Unit().System)
}

// both is a temperature in °C in the scale of the one it is spoken of with,
// the other in brackets: "140 °F (60 °C)".
func both(celsius quantity.Rat, written quantity.Quantity) string {
	return quantity.FromBase(celsius, written.Unit()).Both(written.Unit().System)
}

// at is a temperature as it is written, the other scale in brackets; of a
// range the end that is spoken of, with a word that it is one.
func at(view *lint.View, end, whole quantity.Quantity) string {
	if !whole.IsRange() {
		return batch.Both(view, end)
	}
	return batch.Both(view, end) + ", the end of " + whole.String() + ","
}

// millimeters is a length of common practice, in brackets in inches: "40 mm (1.57 in)".
func millimeters(mm quantity.Rat) string {
	return quantity.FromBase(mm, quantity.Millimeter).Both(quantity.Metric)
}

// place is where a step stands among the recipe's steps: "step 4".
func place(s *batch.Step) string { return "step " + strconv.Itoa(s.Index+1) }

// noteAt is a related place at a figure of the stock; none where it is usual
// for a family.
func noteAt(message string, v schema.Value) []lint.Note {
	if !v.Known() {
		return nil
	}
	return []lint.Note{{Place: lint.AtValue(v), Message: message}}
}

// forVessel names the vessel in a step to be written, where the recipe has
// several.
func forVessel(b *batch.Batch, v *batch.Vessel, attrs ...repair.Attr) []repair.Attr {
	if len(b.Vessels) < 2 {
		return attrs
	}
	return append([]repair.Attr{repair.Text("vessel", v.Block.Label)}, attrs...)
}

// move puts a step in front of another.
func move(title string, s, before *batch.Step) []schema.Fix {
	return []schema.Fix{{Title: title, Edits: schema.MoveBlock(s.Block, before.Block)}}
}
