package house

import "wickrule/lint"

// ValueWrongKind is a value of another kind than belongs there. The reader
// finds it.
var ValueWrongKind = &lint.Rule{
	Name:   "value-wrong-kind",
	Group:  Group,
	Title:  "a value of the wrong kind: a number where text belongs, a date that is none",
	Levels: lint.Every(lint.Must), Binding: true,
	About:  lint.AboutFormat,
	Why:    "A value that does not fit its attribute cannot be used, and what rests on it is not checked.",
	Remedy: "Write the kind of value that is named.",
	Source: formatSource,
	Bad: []lint.Example{{
		About: "a yes in words",
		Text:  "dye \"slate\" {\n  gel_safe = \"yes\"\n}\n",
		Flags: []string{`"yes"`},
	}},
	Also: []string{"unused-stock"},
	Good: []lint.Example{{
		About: "true or false",
		Text:  "dye \"slate\" {\n  gel_safe = true\n}\n",
	}},
}
