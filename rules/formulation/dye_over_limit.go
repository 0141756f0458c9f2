package formulation

import (
	"wickrule/lint"
	"wickrule/rules/batch"
)

// DyeOverLimit compares each dye with what its supplier allows.
var DyeOverLimit = &lint.Rule{
	Name:   "dye-over-limit",
	Group:  group,
	Title:  "more dye than its supplier allows",
	Levels: lint.Every(lint.Should),
	Why:    "Dye does not burn away with the wax. Too much of it collects in the wick and clogs it: the flame shrinks, then soots and drowns.",
	Remedy: "Lower it to the limit. For a deeper color use a stronger dye, or overdip.",
	Card: lint.Card{
		Question: "Can I take more dye, or a wax crayon, for a deeper color?",
		Answer:   "No more than the dye's maker allows, and no crayons or paint. Color that does not burn stays in the wick and clogs it.",
		AllRight: "Up to the dye's stated limit. A deep color on the outside alone can be dipped on at the end.",
		Do:       "Weigh a dye made for candles, and for a deep shade take a stronger one rather than more of it.",
	},
	Source: "the limit is the supplier's; arithmetic",
	Bad: []lint.Example{{
		About:   "three times the limit",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `weight = "0.6 g"`, To: `weight = "4 g"`}},
		Flags:   []string{`"4 g"`},
	}},
	Good: []lint.Example{{About: "just under it", Recipe: "tide-pillar", Changes: []lint.Change{{From: `weight = "0.6 g"`, To: `weight = "1.2 g"`}}}},
	Check: func(p *lint.Pass) {
		b := batch.Of.In(p.View)
		for i := range b.Dyes {
			in := &b.Dyes[i]
			if in.Stock == nil || in.ByEye {
				continue
			}
			compare(p, b, in, "limit", "what its supplier allows")
		}
	},
}
