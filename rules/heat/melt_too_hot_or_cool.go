package heat

import "wickrule/lint"

// MeltTooHot is a melt above the range of the wax's sheet, and not above its
// ceiling, which is louder.
var MeltTooHot = &lint.Rule{
	Name:   "melt-too-hot",
	Group:  group,
	Title:  "a melt hotter than the wax is melted",
	Levels: lint.Every(lint.Should),
	Why: "Wax that is made hotter than it needs yellows and ages, takes longer to cool down to the pour, and leaves less in hand before it smokes. " +
		"Soy and beeswax show it first.",
	Remedy: "Melt it to the sheet's range and no further; turn the heat down before the last lumps are gone.",
	Source: "the supplier's data sheet",
	Bad: []lint.Example{
		{
			About:   "over the sheet's range, under the ceiling",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `to   = "186 °F"`, To: `to   = "205 °F"`}},
			Flags:   []string{`"205 °F"`},
		},
		{
			About:   "in Celsius against a Fahrenheit sheet",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `to   = "186 °F"`, To: `to   = "88 °C"`}},
			Flags:   []string{`"88 °C"`},
		},
	},
	Good: []lint.Example{{
		About:   "the top of the range",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `to   = "186 °F"`, To: `to   = "190 °F"`}},
	}},
	Check: func(p *lint.Pass) { checkOver(p, "melt", "melted") },
}

// MeltTooCool is a melt below the range of the wax's sheet.
var MeltTooCool = &lint.Rule{
	Name:   "melt-too-cool",
	Group:  group,
	Title:  "a melt cooler than the wax is melted",
	Levels: lint.Every(lint.Should),
	Why: "Wax that has not been warm enough right through keeps crystals in it that no eye sees. They come back as a mottled or grainy candle, " +
		"and dye, additives and fragrance do not go in evenly.",
	Remedy: "Bring it up slowly to the low end of the sheet's range, watching the thermometer, and never past the top of it.",
	Source: "the supplier's data sheet",
	Bad: []lint.Example{{
		About:   "under the sheet's range",
		Recipe:  "saltmarsh-tealight",
		Changes: []lint.Change{{From: `to   = "176 °F"`, To: `to   = "169 °F"`}},
		Flags:   []string{`"169 °F"`},
	}},
	Good: []lint.Example{{
		About:   "the bottom of the range",
		Recipe:  "saltmarsh-tealight",
		Changes: []lint.Change{{From: `to   = "176 °F"`, To: `to   = "170 °F"`}},
	}},
	Check: func(p *lint.Pass) { checkUnder(p, "melt", "melted") },
}
