package setting

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

// StirTooShort is fragrance that is hardly stirred in.
var StirTooShort = &lint.Rule{
	Name:   "stir-too-short",
	Group:  group,
	Title:  "fragrance stirred in for under two minutes",
	Levels: lint.Every(lint.Consider),
	Why: "Oil and wax mix slowly. What is not taken up gathers at the bottom of the pot or round the wick, so that one candle of the batch has too much of it and " +
		"another too little.",
	Remedy: "Stir gently for two minutes by the clock, down to the bottom and without whipping air in.",
	Card: lint.Card{
		Question: "How long is the fragrance stirred?",
		Answer:   "Two minutes by the clock, gently. What wax has not taken up gathers at the bottom of the pot or round the wick.",
		AllRight: "Longer does no harm, as long as no air is whipped in and the wax stays warm enough.",
		Do:       "Stir slowly, down to the bottom and along the wall.",
	},
	Source: "common practice",
	Bad: []lint.Example{
		{
			About:   "a minute",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `stir = "2 min"`, To: `stir = "1 min"`}},
			Flags:   []string{`"1 min"`},
		},
		{
			About:   "a range that may be too short",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `stir = "2 min"`, To: `stir = "90 s to 3 min"`}},
			Flags:   []string{`"90 s to 3 min"`},
		},
	},
	Good: []lint.Example{
		{About: "just two minutes", Recipe: "tide-pillar", Changes: []lint.Change{{From: `stir = "2 min"`, To: `stir = "120 s"`}}},
	},
	Check: checkStirTooShort,
}

// leastStir is two minutes, in s. Common practice.
var leastStir = quantity.Int(120)

func checkStirTooShort(p *lint.Pass) {
	for step := range p.Recipe.Each("step") {
		if step.Spec.Kind != "add fragrance" {
			continue
		}
		stir := step.Get("stir")
		if stir.Absent() {
			p.CannotCheck(step, "stir")
		}
		if !stir.IsAmount() {
			continue
		}
		low := stir.Amount().Low()
		if !low.Base().Less(leastStir) {
			continue
		}
		reach := stir.Amount().String()
		if stir.Amount().IsRange() {
			reach += " may be no more than " + low.String() + ", which"
		}
		p.Report(lint.Finding{
			At: lint.AtValue(stir),
			Message: fmt.Sprintf("%s is %s short of the 2 min that fragrance is stirred in for (common practice)",
				reach, batch.Time(leastStir.Sub(low.Base()))),
		})
	}
}
