package house

import "wickrule/lint"

const expired = "  concession \"dye-by-eye\" {\n    reason = \"The color is meant to vary\"\n    until  = \"2026-03-31\"\n  }\n"
const valid = "  concession \"dye-by-eye\" {\n    reason = \"The color is meant to vary\"\n    until  = \"2027-03-31\"\n  }\n"

// byEye makes the dye of the example recipe one that needs the concession.
func byEye(concession string) []lint.Change {
	return []lint.Change{
		{From: "  dye \"madder\" {\n    weight = \"0.6 g\"\n  }\n", To: "  dye \"madder\" {\n    amount = \"to shade\"\n  }\n" + concession},
	}
}

func withConcession(concession string) []lint.Change {
	return []lint.Change{{From: "  dye \"madder\" {\n", To: concession + "  dye \"madder\" {\n"}}
}

// The concession rules: the engine finds these when it weighs a recipe's
// concessions against what was found.
var (
	ConcessionExpired = &lint.Rule{
		Name:   lint.ConcessionExpired,
		Group:  Group,
		Title:  "a concession whose date has passed",
		Levels: lint.Every(lint.Should),
		About:  lint.AboutFormat,
		Why: "A concession is a decision for a time. Once that time is over somebody has to look again; until then " +
			"the finding it covered speaks as if it were not there.",
		Remedy: "Put the matter right and remove the concession, or decide again and write a new date.",
		Source: formatSource,
		Bad: []lint.Example{{
			About:   "a concession that ended in March",
			Recipe:  "tide-pillar",
			Changes: byEye(expired),
			Flags:   []string{`"2026-03-31"`},
		}},
		Also: []string{"dye-by-eye"},
		Good: []lint.Example{{About: "a concession that still holds", Recipe: "tide-pillar", Changes: byEye(valid)}},
	}

	ConcessionUnused = &lint.Rule{
		Name:   lint.ConcessionUnused,
		Group:  Group,
		Title:  "a concession for something that is no longer found",
		Levels: lint.Every(lint.Consider),
		About:  lint.AboutFormat,
		Why:    "The recipe has been put right, or the rule was never broken. A concession left behind would hide the fault if it came back.",
		Remedy: "Remove it.",
		Source: formatSource,
		Bad: []lint.Example{{
			About:   "a concession for a dye that is weighed",
			Recipe:  "tide-pillar",
			Changes: withConcession(valid),
			Flags:   []string{`"dye-by-eye"`},
		}},
		Good: []lint.Example{{About: "a concession that is needed", Recipe: "tide-pillar", Changes: byEye(valid)}},
	}

	ConcessionWithoutReason = &lint.Rule{
		Name:   lint.ConcessionWithoutReason,
		Group:  Group,
		Title:  "a concession that gives no reason",
		Levels: lint.Every(lint.Must), Binding: true,
		About:  lint.AboutFormat,
		Why:    "Whoever reads the recipe next year must be able to judge whether the reason still holds. Without one the concession does not count.",
		Remedy: "Write the reason, in words that will still convince you in a year.",
		Source: formatSource,
		Bad: []lint.Example{{
			About:   "a concession with a date only",
			Recipe:  "tide-pillar",
			Changes: byEye("  concession \"dye-by-eye\" {\n    until = \"2027-03-31\"\n  }\n"),
			Flags:   []string{`concession "dye-by-eye"`},
		}},
		Also: []string{"dye-by-eye"},
		Good: []lint.Example{{About: "with its reason", Recipe: "tide-pillar", Changes: byEye(valid)}},
	}

	ConcessionNotAllowed = &lint.Rule{
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
)
