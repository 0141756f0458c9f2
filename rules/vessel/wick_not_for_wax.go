package vessel

import (
	"fmt"
	"slices"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// WickNotForWax is a wick in a family of waxes it is not made for.
var WickNotForWax = &lint.Rule{
	Name:   "wick-not-for-wax",
	Group:  group,
	Title:  "a wick that is not made for this family of waxes",
	Levels: lint.Every(lint.Should),
	Why: "Thick vegetable waxes and beeswax climb a wick less readily than paraffin. A wick made for one of them burns too hot in another, " +
		"or starves in it, whatever its width.",
	Remedy: "Take a wick whose maker names this family.",
	Source: "the families are the maker's; common practice",
	Bad: []lint.Example{{
		About:   "a paraffin wick in soy",
		Recipe:  "fogbank-soy",
		Changes: []lint.Change{{From: "wick  = \"" + soyWick + "\"", To: "wick  = \"paraffin-core\""}},
		Stock:   "wick \"paraffin-core\" {\n  construction = \"cored\"\n  core         = \"cotton\"\n  burns        = \"2 to 3.5 in\"\n  families     = [\"paraffin\"]\n  trim         = \"1/4 in\"\n  tab          = true\n}\n",
		Flags:   []string{`"paraffin-core"`},
	}},
	Also: []string{"test-burn-missing"},
	Good: []lint.Example{{About: "a wick made for soy", Recipe: "fogbank-soy"}},
	Check: func(p *lint.Pass) {
		eachVessel(p, func(b *batch.Batch, _ int, v *batch.Vessel) {
			if b.Makes == "melt" || v.Wick == nil {
				return
			}
			families := v.Wick.Get("families")
			p.CannotCheck(v.Wick, "families")
			for i := range b.Waxes {
				if in := &b.Waxes[i]; in.Stock != nil && counts(in) {
					p.CannotCheck(in.Stock, "family")
				}
			}
			if !families.Known() || suitsWaxes(b, v.Wick) {
				return
			}
			p.Report(lint.Finding{
				At:      lint.AtValue(v.WickSaid),
				Message: fmt.Sprintf("%s is made for %s, and this candle is of %s", v.Wick.Title(), listed(families), familiesOf(b, families)),
				Notes:   []lint.Note{{Place: lint.AtValue(families), Message: "what it is made for is stated here"}},
				Fixes: func() []schema.Fix {
					if !v.Diameter.Known() || v.Wicks < 1 {
						return nil
					}
					return wicksFor(p, b, v)
				},
			})
		})
	},
}

// soyWick is the wick of the example shop's soy jar.
const soyWick = "cored-cotton-44"

// counts says whether a wax is enough of a blend to decide how it feeds the
// wick: a quarter or more. Common practice: stearin as a hardener does not.
func counts(in *batch.Ingredient) bool {
	return !in.OfWax.Known() || !in.OfWax.Value.Less(quantity.NewRat(1, 4))
}

// suitsWaxes says whether a wick's families cover every wax that counts. A
// family that is not stated is not held against it.
func suitsWaxes(b *batch.Batch, wick *schema.Block) bool {
	families := wick.Get("families")
	for i := range b.Waxes {
		in := &b.Waxes[i]
		if in.Stock == nil || !counts(in) {
			continue
		}
		if family := in.Stock.Get("family"); family.Known() && !covers(families, family.Text()) {
			return false
		}
	}
	return true
}

// covers says whether a wick's families include a wax's; a house blend is of the
// family "blend", which the wick must name.
func covers(families schema.Value, family string) bool {
	return slices.ContainsFunc(families.Items(), func(i schema.Item) bool { return i.Text == family })
}

func familiesOf(b *batch.Batch, families schema.Value) string {
	var names []string
	for i := range b.Waxes {
		if in := &b.Waxes[i]; in.Stock != nil && counts(in) {
			if f := in.Stock.Get("family").Text(); f != "" && !covers(families, f) && !slices.Contains(names, f) {
				names = append(names, f)
			}
		}
	}
	return joined(names)
}

func joined(words []string) string {
	text := ""
	for i, w := range words {
		if i > 0 {
			text += " and "
		}
		text += w
	}
	return text
}
