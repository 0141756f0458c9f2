package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// MoldSoftens is a mold, or a container, that gives way at the heat of a pour.
var MoldSoftens = &lint.Rule{
	Name:   "mold-softens",
	Group:  group,
	Title:  "a mold or container that softens at the heat of the pour",
	Levels: lint.Every(lint.Must),
	Why: "A plastic mold loses its strength some degrees below the temperature at which it is said to soften. It bulges, the seam opens, and hot wax runs over the bench and your hands. " +
		"Printed molds are the worst: the common printing plastic is soft at the heat of a cup of tea.",
	Remedy: "Use a mold of metal, silicone or a plastic whose maker states at least 5 °C (9 °F) more than your hottest pour. A cooler pour helps only if the wax's sheet allows it.",
	Card: lint.Card{
		Question: "Can I pour into a mold that I printed, or into a plastic cup?",
		Answer:   "No. Most plastics are soft long before the wax is cool enough to pour; the usual printing plastic is at 55 to 60 °C (131 to 140 °F).",
		AllRight: "Molds of metal, of silicone, or of a plastic whose maker states at least 5 °C (9 °F) more than your hottest pour.",
		Do:       "Ask what the mold bears, and compare it with the pour on the wax's sheet.",
	},
	Source: "the maker's softening temperature; a margin of 5 °C: common practice; figures of materials: from memory, of polymer handbooks",
	Bad: []lint.Example{
		{
			About:   "a stated figure 3 °C above the second pour",
			Recipe:  "winter-blend",
			Changes: []lint.Change{{From: `mold "beacon-cone"`, To: `mold "soft-cone"`}},
			Stock:   "mold \"soft-cone\" {\n  title      = \"Soft cone 3 × 7 in\"\n  shape      = \"cone\"\n  diameter   = \"3 in\"\n  height     = \"7 in\"\n  wick_hole  = true\n  material   = \"acrylic\"\n  softens_at = \"85 °C\"\n}\n",
			Flags:   []string{`"soft-cone"`},
		},
		{
			About:   "a printed mold that states nothing",
			Recipe:  "winter-blend",
			Changes: []lint.Change{{From: `mold "beacon-cone"`, To: `mold "printed-cone"`}},
			Stock:   "mold \"printed-cone\" {\n  title      = \"Printed cone 3 × 7 in\"\n  shape      = \"cone\"\n  diameter   = \"3 in\"\n  height     = \"7 in\"\n  wick_hole  = true\n  material   = \"printed PLA\"\n}\n",
			Flags:   []string{`"printed-cone"`},
			Level:   lint.Should,
		},
		{
			About:   "a clamshell under a pour that is too hot for it",
			Recipe:  "gorse-melt",
			Changes: []lint.Change{{From: `container "clamshell-6"`, To: `container "thin-clamshell"`}},
			Stock: "container \"thin-clamshell\" {\n  title            = \"Thin clamshell\"\n  kind             = \"clamshell\"\n  diameter         = \"3.1 in\"\n  height           = \"1 in\"\n  holds            = \"90 mL\"\n" +
				"  material         = \"other plastic\"\n  made_for_candles = true\n  thermal_shock    = \"110 °F\"\n  softens_at       = \"165 °F\"\n}\n",
			Flags: []string{`"thin-clamshell"`},
		},
	},
	Good: []lint.Example{
		{About: "a metal mold", Recipe: "tide-pillar", Shelf: `mold pillar-3x6`},
		{About: "polycarbonate that states enough", Recipe: "slipway-pillar", Shelf: `mold pillar-2x5`},
		{
			About:   "just 9 °F above the hottest pour",
			Recipe:  "winter-blend",
			Changes: []lint.Change{{From: `mold "beacon-cone"`, To: `mold "even-cone"`}},
			Stock:   "mold \"even-cone\" {\n  title      = \"Even cone 3 × 7 in\"\n  shape      = \"cone\"\n  diameter   = \"3 in\"\n  height     = \"7 in\"\n  wick_hole  = true\n  material   = \"acrylic\"\n  softens_at = \"189 °F\"\n}\n",
		},
	},
	Also:  []string{"test-burn-missing"},
	Check: checkSoftens,
}

// spare is how far a pour stays below where a vessel softens: 5 °C, which is
// 9 °F. Common practice.
var spare = quantity.Int(5)

// softening is where a material gives way in °C, the low end of what is found,
// where its maker states nothing. From memory, of polymer handbooks. Never: it
// bears any pour. Neither: nothing is usual.
func softening(material string) (at quantity.Rat, usual, never bool) {
	switch material {
	case "metal", "glass", "tin", "aluminum", "steel", "ceramic", "concrete", "wood", "shell":
		return at, false, true
	case "silicone":
		return quantity.Int(200), true, false
	case "polycarbonate":
		return quantity.Int(120), true, false
	case "polypropylene":
		return quantity.Int(100), true, false
	case "acrylic":
		return quantity.Int(90), true, false
	case "printed ABS":
		return quantity.Int(85), true, false
	case "polystyrene":
		return quantity.Int(80), true, false
	case "polyethylene":
		return quantity.Int(75), true, false
	case "printed PETG":
		return quantity.Int(70), true, false
	case "printed PLA":
		return quantity.Int(55), true, false
	}
	return at, false, false
}

func checkSoftens(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Stock == nil || v.Kind == "taper" {
			continue
		}
		pour := hottestPour(p, b, i)
		if pour == nil {
			continue
		}
		said, material := v.Stock.Get("softens_at"), v.Stock.Get("material")
		if said.IsAmount() {
			if said.Amount().Base().Less(high(pour).Add(spare)) {
				reportSoftens(p, v, pour, said.Amount().Base(), said)
			}
			continue
		}
		if said.Broken() || material.Broken() {
			continue
		}
		at, usual, never := softening(material.Text())
		switch {
		case never:
		case !usual && material.Absent():
			p.CannotCheck(v.Stock, "material")
		case !usual:
			p.CannotCheck(v.Stock, "softens_at")
		case at.Less(high(pour).Add(spare)):
			reportSoftens(p, v, pour, at, schema.Value{})
		}
	}
}

func reportSoftens(p *lint.Pass, v *batch.Vessel, pour *batch.Step, at quantity.Rat, said schema.Value) {
	heat := pour.Heat.Amount()
	hot := heat.High()
	whose := fmt.Sprintf("%s softens at %s", v.Stock.Title(), inScale(at, hot))
	f := lint.Finding{At: lint.AtLabel(v.Block), Notes: append(batch.NoteAt(limitHere, said), lint.Note{Place: lint.AtValue(pour.Heat), Message: "the " + pour.Kind})}
	if said.Known() {
		whose = fmt.Sprintf("%s softens at %s", v.Stock.Title(), batch.Both(p.View, said.Amount()))
	} else {
		f.Levels = lint.Every(lint.Should)
		whose = fmt.Sprintf("%s states no softens_at, and %s softens at about %s (from memory, of polymer handbooks)", v.Stock.Title(), v.Stock.Get("material").Text(), inScale(at, hot))
	}
	over := high(pour).Sub(at)
	relation := fmt.Sprintf("%s over that", apart(over, hot))
	if over.Sign() < 0 {
		relation = fmt.Sprintf("only %s below that, where %s is wanted", apart(over.Neg(), hot), apart(spare, hot))
	} else if over.Sign() == 0 {
		relation = fmt.Sprintf("just that, where %s less is wanted", apart(spare, hot))
	}
	f.Message = fmt.Sprintf("%s: the %s at %s is %s. It gives way and lets the hot wax run out", whose, pour.Kind, reaching(p.View, heat), relation)
	p.Report(f)
}
