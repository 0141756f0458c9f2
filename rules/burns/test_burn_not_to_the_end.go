package burns

import (
	"fmt"

	"wickrule/lint"
)

// TestBurnNotToTheEnd finds candles of which none was burned until it ended.
var TestBurnNotToTheEnd = &lint.Rule{
	Name:   "test-burn-not-to-the-end",
	Group:  Group,
	Title:  "none of the candles burned was burned to its end",
	Levels: lint.Levels{OwnUse: lint.Silent, Class: lint.Consider, Sale: lint.Should},
	Why: "Candles go wrong at their end: in the last half inch the flame stands near the bottom of the glass, the wick tab can lie in hot wax, the soot of all burns has " +
		"gathered, and what is left can light at once. A first evening shows nothing of that.",
	Remedy: "Burn at least one of the three on, four hours at a time, until it ends by itself, and write to_end = true into its last burn.",
	Card: lint.Card{
		Question: "Why stop a candle at the last half inch?",
		Answer: "Candles go wrong at their end: the flame stands near the bottom of the glass, the tab lies in hot wax, and what is left can light " +
			"at once.",
		AllRight: "Under watch, as the test of a new candle, which somebody burns to its end on purpose.",
		Do:       "Put a candle in a container out when half an inch (13 mm) of wax is left.",
	},
	Source: "common practice, after the ideas of ASTM F2417 (from memory: the end of useful life is part of the test)",
	Cautions: "The last burn is the dangerous one: on a plate that cannot burn, watched to its end. Put it out if the glass ticks, the flame grows, or anything but the wick burns; " +
		"never with water.",
	Bad: []lint.Example{{
		About:  "each burned for an evening or two",
		Recipe: "tide-pillar",
		Changes: []lint.Change{
			{From: "    candle     = \"A\"\n    cycle      = 22\n    burned_for = \"3 h 30 min\"\n    to_end     = true", To: "    candle     = \"A\"\n    cycle      = 22\n    burned_for = \"3 h 30 min\"\n    to_end     = false"},
			{From: "    candle     = \"B\"\n    cycle      = 22\n    burned_for = \"3 h 30 min\"\n    to_end     = true", To: "    candle     = \"B\"\n    cycle      = 22\n    burned_for = \"3 h 30 min\"\n    to_end     = false"},
			{From: "    candle     = \"C\"\n    cycle      = 22\n    burned_for = \"3 h 30 min\"\n    to_end     = true", To: "    candle     = \"C\"\n    cycle      = 22\n    burned_for = \"3 h 30 min\"\n    to_end     = false"},
		},
		Flags: []string{`recipe "tide-pillar"`},
	}},
	Good: []lint.Example{{About: "burned to the end", Recipe: "tide-pillar", Shows: "candle     = \"C\"\n    cycle      = 22\n"}, {About: "a melt has no flame", Recipe: "gorse-melt", Shows: `makes    = "melt"`}},
	Check: func(p *lint.Pass) {
		if !p.Loud(lint.Levels{}) || len(p.TestBurns()) == 0 {
			return
		}
		for _, t := range kinds(p) {
			if t.Enough() && !t.ToEnd() {
				passed, _ := t.Passed()
				p.Missing(lint.Finding{At: at(p, &t), Message: fmt.Sprintf("candles %s of %s passed, and none of them was burned to its end: candles go wrong in their last half inch", list(passed), t.Subject)})
			}
		}
	},
}
