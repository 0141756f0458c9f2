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
