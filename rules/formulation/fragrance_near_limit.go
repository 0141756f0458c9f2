package formulation

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// FragranceNearLimit is a load within the limit, by little.
var FragranceNearLimit = &lint.Rule{
	Name:   "fragrance-near-limit",
	Group:  group,
	Title:  "a load within a twentieth of what the wax holds",
	Levels: lint.Every(lint.Consider),
	Why: "It is allowed, and leaves nothing for a scale that is a gram off or wax that stays in the pot. " +
		"Loads this high also take the most testing.",
	Remedy: "Weigh exactly, or stay a little lower.",
	Source: "common practice",
	Bad: []lint.Example{{
		About:   "exactly at the limit",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "6 % of wax"`}},
		Flags:   []string{`"6 % of wax"`},
	}},
	Good: []lint.Example{{About: "95 % of the limit", Recipe: "tide-pillar", Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "5.7 % of wax"`}}}},
	Check: func(p *lint.Pass) {
		b := batch.Of.In(p.View)
		l, verdict := judge(b)
		if verdict != near || isExtreme(b) {
			return
		}
		at, notes := atMain(b)
		load := loadText(b, l.Load.Value, l.Strictest.Value, l.Basis)
		message := fmt.Sprintf("%s is all that %s: weigh exactly", load, heldBy(l))
		if under := b.Over(l, l.Strictest.Value); l.Load.Value.Less(l.Strictest.Value) {
			room := batch.Percent(l.Strictest.Value.Sub(l.Load.Value), l.Basis)
			if under.Known() {
				room = weight(p, b, main(b).Said, under.Value.Neg())
			}
			message = fmt.Sprintf("%s is only %s under what %s: weigh exactly", load, room, heldBy(l))
		}
		p.Report(lint.Finding{At: at, Notes: append(limitNote(l.At), notes...), Message: message})
	},
}
