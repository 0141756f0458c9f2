package house

import "wickrule/lint"

// UnitWrongKind is an amount that measures something else. The reader finds it.
var UnitWrongKind = &lint.Rule{
	Name:   "unit-wrong-kind",
	Group:  Group,
	Title:  "an amount of the wrong kind: a weight where a temperature belongs",
	Levels: lint.Every(lint.Must), Binding: true,
	About: lint.AboutFormat,
	Why: "Two lines may have been swapped, or a unit mistaken: oz is always a weight and fl oz always a volume, " +
		"and ten of one are not ten of the other.",
	Remedy: "Write an amount of the kind that is named.",
	Source: formatSource,
	Bad: []lint.Example{{
		About: "a weight as a flash point",
		Text:  "wax \"trial-sack\" {\n  flash_point = \"450 g\"\n}\n",
		Flags: []string{"450 g"},
	}},
	Also: []string{"unused-stock"},
	Good: []lint.Example{{
		About: "a temperature",
		Text:  "wax \"trial-sack\" {\n  flash_point = \"450 °F\"\n}\n",
	}},
}
