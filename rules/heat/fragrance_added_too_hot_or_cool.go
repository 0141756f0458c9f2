package heat

import "wickrule/lint"

// FragranceTooHot is fragrance added above the wax's range for it.
var FragranceTooHot = &lint.Rule{
	Name:   "fragrance-added-too-hot",
	Group:  group,
	Title:  "fragrance added to wax that is too hot for it",
	Levels: lint.Every(lint.Should),
	Why: "In wax that is too hot the lightest parts of a fragrance leave the pot as vapor before it is stirred in, " +
		"and the people at the bench breathe them. The candle smells of less than was paid for.",
	Remedy: "Let the wax cool to the range its sheet gives for fragrance, then stir it in.",
	Card: lint.Card{
		Question: "When does the fragrance go in?",
		Answer: "After the melt and before the pour, when the wax has cooled to what its sheet gives for fragrance; for many waxes that is 74 to 88 " +
			"°C (165 to 190 °F).",
		AllRight: "Anywhere within that range. A little cooler than the top of it loses less of the scent.",
		Do:       "Watch the thermometer, add it all at once, and stir gently for two minutes.",
	},
	Source: "the supplier's data sheet; where it is silent, common practice for the family",
	Bad: []lint.Example{{
		About:   "over the sheet's range",
		Recipe:  "three-bells-bowl",
		Changes: []lint.Change{{From: `at   = "165 °F"`, To: `at   = "176 °F"`}},
		Flags:   []string{`"176 °F"`},
	}},
	Good: []lint.Example{{
		About:   "the top of the range",
		Recipe:  "three-bells-bowl",
		Changes: []lint.Change{{From: `at   = "165 °F"`, To: `at   = "172 °F"`}},
	}},
	Check: func(p *lint.Pass) {
		checkOver(p, "add fragrance", "given its fragrance")
		askAddedAt(p)
	},
}

// FragranceTooCool is fragrance added below the wax's range for it.
var FragranceTooCool = &lint.Rule{
	Name:   "fragrance-added-too-cool",
	Group:  group,
	Title:  "fragrance added to wax that is too cool for it",
	Levels: lint.Every(lint.Should),
	Why: "In wax that is too cool fragrance does not dissolve right through. It gathers in drops that sweat out of the candle, clog the wick or flare, " +
		"and one candle of the batch gets more than another.",
	Remedy: "Warm the wax slowly to the range its sheet gives for fragrance, watching the thermometer, and stir it in there.",
	Source: "the supplier's data sheet; where it is silent, common practice for the family",
	Bad: []lint.Example{{
		About:   "under the sheet's range",
		Recipe:  "fogbank-soy",
		Changes: []lint.Change{{From: `at   = "174 °F"`, To: `at   = "150 °F"`}},
		Flags:   []string{`"150 °F"`},
	}},
	Good: []lint.Example{{
		About:   "the bottom of the range",
		Recipe:  "fogbank-soy",
		Changes: []lint.Change{{From: `at   = "174 °F"`, To: `at   = "165 °F"`}},
	}},
	Check: func(p *lint.Pass) {
		checkUnder(p, "add fragrance", "given its fragrance")
		askAddedAt(p)
	},
}

// askAddedAt has the pass say which steps do not say how hot the wax is when
// the fragrance goes in.
func askAddedAt(p *lint.Pass) {
	for step := range p.Recipe.Each("step") {
		if step.Spec.Kind == "add fragrance" {
			p.CannotCheck(step, "at")
		}
	}
}
