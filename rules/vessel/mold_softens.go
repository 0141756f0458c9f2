package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// MoldSoftens is a pour into something that softens under it.
var MoldSoftens = &lint.Rule{
	Name:   "mold-softens",
	Group:  group,
	Title:  "a pour too hot for what it is poured into",
	Levels: lint.Every(lint.Must),
	Why: "Plastic gives way some degrees before it melts. A mold or a cup that softens under hot wax lets go of its seam and drains over the bench and over whoever holds it. " +
		"Printed molds are the worst: they soften at the temperature of hot tea.",
	Remedy:   "Pour cooler if the wax allows it, or use a mold of metal, silicone or a plastic whose maker states enough.",
	Source:   "the maker's figure, with 5 °C (9 °F) in hand; where none is stated, what is usual for the material: polymer handbooks, from memory",
	Cautions: "Stand molds in a tray with a rim. Hot wax on skin: cool under running water for 20 minutes, and leave the wax on.",
	Bad: []lint.Example{
		{
			About:   "a mold that softens at 178 °F, and a pour at 176 °F",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `mold "pillar-3x6"`, To: `mold "soft-3x6"`}},
			Stock:   otherMold("polypropylene", "  softens_at = \"178 °F\"\n"),
			Flags:   []string{`"182 °F"`},
		},
		{
			About:   "a printed mold of which nothing is stated",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `mold "pillar-3x6"`, To: `mold "soft-3x6"`}},
			Stock:   otherMold("printed PLA", ""),
			Flags:   []string{`"182 °F"`},
			Level:   lint.Should,
		},
	},
	Also: []string{"test-burn-missing"},
	Good: []lint.Example{{
		About:   "enough in hand",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `mold "pillar-3x6"`, To: `mold "soft-3x6"`}},
		Stock:   otherMold("polycarbonate", "  softens_at = \"191 °F\"\n"),
	}, {About: "a metal mold", Recipe: "tide-pillar"}},
	Check: checkSoftens,
}

func otherMold(material, softens string) string {
	return "mold \"soft-3x6\" {\n  shape     = \"cylinder\"\n  diameter  = \"3 in\"\n  height    = \"6 in\"\n  wick_hole = true\n  material  = \"" + material + "\"\n" + softens + "}\n"
}

// inHand is how far below the softening point a pour stays, in K.
var inHand = quantity.Int(5)

// usuallySoftens is where a material usually gives way, in °C: the order of
// heat deflection temperatures in polymer handbooks, from memory; the lower
// end where they differ. Metal, glass and silicone are not among them.
func usuallySoftens(material string) (quantity.Rat, bool) {
	switch material {
	case "printed PLA":
		return quantity.Int(55), true
	case "printed PETG":
		return quantity.Int(70), true
	case "polyethylene", "other plastic":
		return quantity.Int(75), true
	case "polystyrene", "rubber":
		return quantity.Int(80), true
	case "printed ABS", "acrylic":
		return quantity.Int(85), true
	case "polypropylene":
		return quantity.Int(100), true
	case "polycarbonate":
		return quantity.Int(120), true
	}
	return quantity.Rat{}, false
}

func checkSoftens(p *lint.Pass) {
	eachVessel(p, func(b *batch.Batch, index int, v *batch.Vessel) {
		if v.Kind == "taper" {
			return
		}
		softens, material := v.Stock.Get("softens_at"), v.Stock.Get("material")
		if softens.Broken() {
			return
		}
		usual, soft := usuallySoftens(material.Text())
		if softens.Absent() {
			p.CannotCheck(v.Stock, "material")
			if material.Text() == "other" {
				p.CannotCheck(v.Stock, "softens_at")
			}
			if !soft {
				return
			}
		} else {
			usual = softens.Amount().Low().Base()
		}
		pour := hottestPour(b, index)
		if pour == nil || !usual.Sub(inHand).Less(pour.Heat.Amount().High().Base()) {
			return
		}
		p.Report(softensFinding(p, v, pour, softens, material, usual))
	})
}

func softensFinding(p *lint.Pass, v *batch.Vessel, pour *batch.Step, softens, material schema.Value, at quantity.Rat) lint.Finding {
	heat := pour.Heat.Amount().High()
	f := lint.Finding{At: lint.AtValue(pour.Heat)}
	limit := at.Sub(inHand)
	figure := fmt.Sprintf("softens at %s", batch.Degrees(p.View, at))
	if softens.Known() {
		f.Notes = []lint.Note{{Place: lint.AtValue(softens), Message: "where it softens is stated here"}}
	} else {
		f.Levels = lint.Every(lint.Should)
		figure = fmt.Sprintf("is of %s, which usually softens at about %s (from memory; its own figure is not stated)", material.Text(), batch.Degrees(p.View, at))
		f.Notes = []lint.Note{{Place: lint.AtValue(material), Message: "what it is made of is stated here"}}
	}
	f.Message = fmt.Sprintf("%s is too hot for %s, which %s: with 5 °C (9 °F) in hand that is %s over what it bears", batch.Both(p.View, heat), v.Stock.Title(), figure,
		batch.Apart(p.View, heat.Base().Sub(limit)))
	return f
}
