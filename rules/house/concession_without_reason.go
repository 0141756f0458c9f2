package house

import "wickrule/lint"

// ConcessionWithoutReason is a concession that does not say why. The engine
// finds it.
var ConcessionWithoutReason = &lint.Rule{
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
