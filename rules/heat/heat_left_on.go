package heat

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

// longestHold is how long melted wax is kept hot at most: 2 h.
var longestHold = quantity.Int(2 * 3600)

// HeatLeftOn is wax kept hot for long, or with nobody there. The two are put
// right apart, so each value gets its own finding.
var HeatLeftOn = &lint.Rule{
	Name:   "heat-left-on",
	Group:  group,
	Title:  "wax held hot for over two hours, or with nobody watching",
	Levels: lint.Levels{OwnUse: lint.Consider, Class: lint.Should, Sale: lint.Should},
	Why: "Thermostats stick and water baths boil dry; both are harmless while somebody is there and a fire when nobody is. " +
		"Wax that is kept hot for hours also yellows and loses what was stirred into it.",
	Remedy:   "Melt what will be poured soon, stay with it, and turn the heat off before leaving.",
	Cautions: "A water bath that has boiled dry is direct heat. Never leave wax on the heat with nobody in the room.",
	Card: lint.Card{
		Question: "Can I leave the wax on the heat for a moment?",
		Answer:   "No: turn the heat off first. Thermostats stick and water baths boil dry, and that is a fire only when nobody is there.",
		AllRight: "Up to two hours on a thermostat, with somebody in the room all the time.",
		Do:       "Melt only what you pour soon, and make turning the heat off the last thing before you leave.",
	},
	Source: "common practice",
	Bad: []lint.Example{
		{
			About:   "held for too long",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `    over = "thermostatic melter"`, To: `    over = "thermostatic melter"` + "\n" + `    hold = "2 h 30 min"`}},
			Flags:   []string{`"2 h 30 min"`},
		},
		{
			About:   "nobody there",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `    over = "thermostatic melter"`, To: `    over = "thermostatic melter"` + "\n" + `    unattended = true`}},
			Flags:   []string{`true`},
		},
	},
	Good: []lint.Example{{
		About:   "two hours, watched",
		Recipe:  "fogbank-soy",
		Changes: []lint.Change{{From: `    over = "thermostatic melter"`, To: `    over = "thermostatic melter"` + "\n" + `    hold = "120 min"` + "\n" + `    unattended = false`}},
	}},
	Check: checkHeatLeftOn,
}

func checkHeatLeftOn(p *lint.Pass) {
	for step := range p.Recipe.Each("step") {
		if step.Spec.Kind != "melt" {
			continue
		}
		if hold := step.Get("hold"); hold.IsAmount() {
			if long := hold.Amount().High(); longestHold.Less(long.Base()) {
				p.Report(lint.Finding{
					At: lint.AtValue(hold),
					Message: fmt.Sprintf("the wax is kept hot for %s, %s longer than the 2 h that is common practice: melt what will be poured soon",
						long, batch.Time(long.Base().Sub(longestHold))),
				})
			}
		}
		if alone := step.Get("unattended"); alone.Yes() {
			p.Report(lint.Finding{
				At:      lint.AtValue(alone),
				Message: "nobody watches the wax while it is on the heat: a thermostat that sticks or a bath that boils dry then ends in a fire. Stay with it, or turn the heat off",
			})
		}
	}
}
