package house

import "wickrule/lint"

// ConcessionUnused is a concession that covers nothing. The engine finds it.
var ConcessionUnused = &lint.Rule{
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
