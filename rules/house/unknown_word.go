package house

import "wickrule/lint"

// UnknownWord is a word outside a closed list. The reader finds it.
var UnknownWord = &lint.Rule{
	Name:   "unknown-word",
	Group:  Group,
	Title:  "a word that is not on the list for this attribute",
	Levels: lint.Every(lint.Must), Binding: true,
	About:  lint.AboutFormat,
	Why:    "Rules go by these words. One that is not on the list is as good as none, and the rules that read it stay silent.",
	Remedy: "Use one of the words shown.",
	Source: formatSource,
	Bad: []lint.Example{{
		About: "a family that is not on the list",
		Text:  "wax \"trial-sack\" {\n  family = \"parafin\"\n}\n",
		Flags: []string{`"parafin"`},
	}},
	Also: []string{"unused-stock"},
	Good: []lint.Example{{
		About: "spelled right",
		Text:  "wax \"trial-sack\" {\n  family = \"paraffin\"\n}\n",
	}},
}
