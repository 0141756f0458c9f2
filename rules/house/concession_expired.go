package house

import "wickrule/lint"

// ConcessionExpired is a concession past its date. The engine finds it.
var ConcessionExpired = &lint.Rule{
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
