package formulation

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// DyeByEye is a color nobody can repeat.
var DyeByEye = &lint.Rule{
	Name:   "dye-by-eye",
	Group:  group,
	Title:  "a dye added by eye",
	Levels: lint.Levels{OwnUse: lint.Consider, Class: lint.Consider, Sale: lint.Should},
	Why: "Hot wax looks darker than the candle it becomes, and no two people stop at the same shade. The next batch will not match, and nobody can tell whether " +
		"the dye stayed under its limit.",
	Remedy: "Weigh or count the dye the next time, and write that down.",
	Card: lint.Card{
		Question: "Can I color the wax by eye?",
		Answer:   "Once. Hot wax looks darker than the candle it becomes, no two people stop at the same shade, and the next batch will not match.",
		AllRight: "For a single candle of your own, as long as the dye stays under its limit.",
		Do:       "Let a spoonful set to see the shade, weigh or count what went in, and write it down.",
	},
	Source: "common practice",
	Bad: []lint.Example{{
		About:   "to shade",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: "    weight = \"0.6 g\"\n", To: "    amount = \"to shade\"\n"}},
		Flags:   []string{`"to shade"`},
	}},
	Good: []lint.Example{{About: "weighed", Recipe: "tide-pillar"}},
	Check: func(p *lint.Pass) {
		b := batch.Of.In(p.View)
		for i := range b.Dyes {
			if in := &b.Dyes[i]; in.ByEye {
				p.Report(lint.Finding{At: lint.AtValue(in.Said), Message: fmt.Sprintf("%s goes in by eye: nobody can repeat this color, or tell whether it is within the dye's limit", title(in))})
			}
		}
	},
}
