package house

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/repair"
	"wickrule/schema"
)

// MadeForMissing is a recipe that does not say whom its candles are for.
var MadeForMissing = &lint.Rule{
	Name:   "made-for-missing",
	Group:  Group,
	Title:  "a recipe that does not say whom its candles are for",
	Levels: lint.Every(lint.Consider),
	Why: "A candle for one's own table, one made in a class and one that is sold are judged differently: a stranger who lights it knows nothing of how " +
		"it was made. Where nothing is said the strictest is taken, as made for sale.",
	Remedy: "Write made_for = \"sale\", \"class\" or \"own use\".",
	Source: formatSource,
	Bad: []lint.Example{{
		About:   "nothing said",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: "  made_for = \"sale\"\n", To: ""}},
		Flags:   []string{`recipe "tide-pillar"`},
	}},
	Good: []lint.Example{{About: "made for sale, and said so", Recipe: "tide-pillar", Shows: `made_for = "sale"`}},
	Check: func(p *lint.Pass) {
		made := p.Recipe.Get("made_for")
		if !made.Absent() {
			return
		}
		p.Missing(lint.Finding{
			At:      lint.AtHeader(p.Recipe),
			Message: fmt.Sprintf("%s does not say whom it is made for, so it is judged as made for sale", p.Recipe.Title()),
			Fixes: func() []schema.Fix {
				return []schema.Fix{
					repair.Rewrite("write that it is made for sale", made, `"sale"`),
					repair.Rewrite("write that it is made in a class", made, `"class"`),
					repair.Rewrite("write that it is made for own use", made, `"own use"`),
				}
			},
		})
	},
}
