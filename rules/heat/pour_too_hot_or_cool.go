package heat

import "wickrule/lint"

// PourTooHot is a pour above the range of the wax's sheet. A second pour is
// judged by its own rules and by the ceiling only. Of a range in the recipe
// the upper end counts; the top of the sheet's range itself is all right.
var PourTooHot = &lint.Rule{
	Name:   "pour-too-hot",
	Group:  group,
	Title:  "a pour hotter than the wax is poured",
	Levels: lint.Every(lint.Should),
	Why: "Wax poured too hot shrinks more as it sets: it sinks around the wick, pulls off the glass and frosts. It also softens seals and molds, " +
		"can crack cold glass, and burns worse where it spills.",
	Remedy: "Let it cool in the pot, stirring now and then, until it is within the range of the sheet.",
	Card: lint.Card{
		Question: "Can I pour as soon as the wax has melted?",
		Answer: "With most waxes not yet. They are poured cooler than they are melted, and the sheet says how cool; too hot, they sink in round the " +
			"wick and pull off the glass.",
		AllRight: "Anywhere within the range on the sheet, both ends included.",
		Do:       "Take the pot off the heat and stir now and then until the thermometer is within that range.",
	},
	Source: "the supplier's data sheet; where it is silent, common practice for the family",
	Bad: []lint.Example{
		{
			About:   "over the sheet's range",
			Recipe:  "saltmarsh-tealight",
			Changes: []lint.Change{{From: `at = "138 °F"`, To: `at = "160 °F"`}},
			Flags:   []string{`"160 °F"`},
		},
		{
			About:   "a Celsius recipe against a Fahrenheit sheet",
			Recipe:  "firth-uk",
			Changes: []lint.Change{{From: `at = "60 °C"`, To: `at = "66 °C"`}},
			Flags:   []string{`"66 °C"`},
		},
		{
			About:   "a range that runs over",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `at = "138 °F"`, To: `at = "138 to 150 °F"`}},
			Flags:   []string{`"138 to 150 °F"`},
		},
		{
			About:   "a loose blend: 181 °F suits one of its waxes, not both",
			Recipe:  "winter-blend",
			Changes: []lint.Change{{From: `at    = "174 °F"`, To: `at    = "181 °F"`}},
			Flags:   []string{`"181 °F"`},
		},
		{
			About:   "the second layer",
			Recipe:  "tideline-layers",
			Changes: []lint.Change{{From: `at    = "177 °F"`, To: `at    = "183 °F"`}},
			Flags:   []string{`"183 °F"`},
		},
	},
	Good: []lint.Example{
		{
			About:   "the top of the range",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `at = "138 °F"`, To: `at = "145 °F"`}},
		},
		{
			About:   "a second pour over the range: that has rules of its own",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `at    = "182 °F"`, To: `at    = "186 °F"`}},
		},
		{
			About:   "the top of what a blend's waxes have in common",
			Recipe:  "winter-blend",
			Changes: []lint.Change{{From: `at    = "174 °F"`, To: `at    = "180 °F"`}},
		},
	},
	Also:  []string{"second-pour-too-cool"},
	Check: func(p *lint.Pass) { checkOver(p, "pour", "poured") },
}

// PourTooCool is a pour below the range of the wax's sheet. It says nothing
// where that range is hotter than the wax bears: then the sheet was copied
// wrong, and nobody is told to heat up to it.
var PourTooCool = &lint.Rule{
	Name:   "pour-too-cool",
	Group:  group,
	Title:  "a pour cooler than the wax is poured",
	Levels: lint.Every(lint.Should),
	Why: "Wax poured too cool begins to set where it touches the mold or the glass: rings and steps on the side, bubbles, a rough top, and in a mold " +
		"layers that come apart.",
	Remedy: "Warm it again slowly to within the range of the sheet, watching the thermometer, and never past the top of it.",
	Card: lint.Card{
		Question: "Why are there rings on the side of my candle?",
		Answer:   "The wax was poured too cool, or into a cold mold: it set where it touched the wall before the rest came up to it.",
		AllRight: "Anywhere within the range on the wax's sheet, both ends included.",
		Do:       "Warm the mold to 40 to 60 °C (104 to 140 °F), and the wax slowly to within its range, never past the top of it.",
	},
	Source: "the supplier's data sheet; where it is silent, common practice for the family",
	Bad: []lint.Example{
		{
			About:   "under the sheet's range",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `at = "138 °F"`, To: `at = "122 °F"`}},
			Flags:   []string{`"122 °F"`},
		},
		{
			About:   "a Celsius recipe against a Fahrenheit sheet",
			Recipe:  "firth-uk",
			Changes: []lint.Change{{From: `at = "60 °C"`, To: `at = "55 °C"`}},
			Flags:   []string{`"55 °C"`},
		},
		{
			About:   "a loose blend: 166 °F suits one of its waxes, not both",
			Recipe:  "winter-blend",
			Changes: []lint.Change{{From: `at    = "174 °F"`, To: `at    = "166 °F"`}},
			Flags:   []string{`"166 °F"`},
		},
	},
	Good: []lint.Example{
		{
			About:   "the bottom of the range",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `at = "138 °F"`, To: `at = "130 °F"`}},
		},
		{
			About:   "the bottom of the range, in Celsius",
			Recipe:  "firth-uk",
			Changes: []lint.Change{{From: `at = "60 °C"`, To: `at = "55.6 °C"`}},
		},
	},
	Check: func(p *lint.Pass) { checkUnder(p, "pour", "poured") },
}
