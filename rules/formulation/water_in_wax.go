package formulation

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// WaterInWax is an ingredient that carries water into hot wax.
var WaterInWax = &lint.Rule{
	Name:   "water-in-wax",
	Group:  group,
	Title:  "something water-based in the wax",
	Levels: lint.Every(lint.Must),
	Why: "Water sinks below hot wax, boils at once and throws it out of the pot. What stays in spits and sputters in the flame later, and the wick goes out in it. " +
		"Food colors, juice, glycerin and most water-based perfumes are of this kind.",
	Remedy:   "Use an ingredient made for candles that dissolves in oil.",
	Cautions: "If there is water in hot wax already: heat off, step back, let it cool. Never put water on burning wax.",
	Card: lint.Card{
		Question: "Can I use food coloring, juice or perfume?",
		Answer:   "No. Most of them hold water or alcohol. Water boils at once under hot wax and throws it out of the pot; alcohol burns.",
		AllRight: "Anything made for candles that dissolves in oil.",
		Do:       "Use dyes and fragrance oils that are sold for candles, and keep pots, molds and spoons dry.",
	},
	Source: "physics: water boils at 100 °C (212 °F) and grows some 1,700 times in volume; common practice",
	Bad: []lint.Example{{
		About:   "a food color",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: "dye \"madder\" {", To: "dye \"kitchen-red\" {"}, {From: `dye = "madder"`, To: `dye = "kitchen-red"`}},
		Stock:   "dye \"kitchen-red\" {\n  title       = \"Kitchen red\"\n  color       = \"#b5473c\"\n  limit       = \"0.1 % of wax\"\n  water_based = true\n  components  = \"none classified\"\n  gel_safe    = false\n}\n",
		Flags:   []string{`"kitchen-red"`},
	}},
	Also: []string{"test-burn-missing"},
	Good: []lint.Example{{About: "a dye that dissolves in oil", Recipe: "tide-pillar"}},
	Check: func(p *lint.Pass) {
		b := batch.Of.In(p.View)
		for _, list := range [][]batch.Ingredient{b.Fragrances, b.Dyes, b.Additives} {
			for i := range list {
				in := &list[i]
				if in.Stock == nil {
					continue
				}
				water := in.Stock.Get("water_based")
				p.CannotCheck(in.Stock, "water_based")
				if water.Yes() {
					p.Report(lint.Finding{
						At:      lint.AtLabel(in.Block),
						Message: fmt.Sprintf("%s is water-based: in hot wax the water boils at once and throws wax out of the pot", title(in)),
						Notes:   []lint.Note{{Place: lint.AtValue(water), Message: "that it is water-based is stated here"}},
					})
				}
			}
		}
	},
}
