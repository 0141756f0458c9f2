package house

import "wickrule/lint"

// ConcessionNotAllowed is a concession where none may be. The engine finds it.
var ConcessionNotAllowed = &lint.Rule{
	Name:   lint.ConcessionNotAllowed,
	Group:  Group,
	Title:  "a concession for something that cannot be conceded",
	Levels: lint.Every(lint.Must), Binding: true,
	About: lint.AboutFormat,
	Why: "Some rules guard against fire, or against wax running over the bench. Somebody else lights a candle that is sold, and did not agree " +
		"to the departure. Faults of the text itself cannot be conceded either: what cannot be read cannot be judged.",
	Remedy:   "Put the matter right and remove the concession.",
	Cautions: "Do not change made_for to make the finding go away: it is about who will light the candle.",
	Source:   formatSource,
	Bad: []lint.Example{{
		About:   "a concession for an unsealed wick hole, in a recipe for sale",
		Recipe:  "tide-pillar",
		Changes: withConcession("  concession \"wick-hole-unsealed\" {\n    reason = \"It never leaked so far\"\n  }\n"),
		Flags:   []string{`"wick-hole-unsealed"`},
	}},
	Good: []lint.Example{{About: "a concession for a matter of looks", Recipe: "tide-pillar", Changes: byEye(valid)}},
}
