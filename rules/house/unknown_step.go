package house

import "wickrule/lint"

// UnknownStep is a step of a kind the format does not have. The reader finds it
// and names the nearest.
var UnknownStep = &lint.Rule{
	Name:   "unknown-step",
	Group:  Group,
	Title:  "a step of a kind the format does not have",
	Levels: lint.Every(lint.Must), Binding: true,
	About:  lint.AboutFormat,
	Why:    "Steps are judged by their kind. One that is not known is done on the bench but judged by nobody.",
	Remedy: "Use one of the known kinds, or a step \"note\" with the words for the sheet.",
	Source: formatSource,
	Bad: []lint.Example{{
		About:   "a misspelled step",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: "step \"unmold\" {", To: "step \"unmould\" {"}},
		Flags:   []string{`"unmould"`},
	}},
	Good: []lint.Example{{About: "spelled right", Recipe: "tide-pillar"}},
}
