package house

import "wickrule/lint"

// KeyForm is a key that is not written as keys are. The reader finds it.
var KeyForm = &lint.Rule{
	Name:   "key-form",
	Group:  Group,
	Title:  "a key that is not written in small letters, digits and hyphens",
	Levels: lint.Every(lint.Must), Binding: true,
	About:  lint.AboutFormat,
	Why:    "Keys are how recipes find what is on the shelves. Written one way everywhere, they are never missed for a capital or a space.",
	Remedy: "Write it in small letters and digits, words joined by hyphens: \"sea-mist\". The title may be written any way you like.",
	Source: formatSource,
	Bad: []lint.Example{{
		About: "a key with a space and capitals",
		Text:  "dye \"Slate Gray\" {\n  title = \"Slate gray\"\n}\n",
		Flags: []string{`"Slate Gray"`},
	}},
	Also: []string{"unused-stock"},
	Good: []lint.Example{{
		About: "in small letters, joined by a hyphen",
		Text:  "dye \"slate-gray\" {\n  title = \"Slate gray\"\n}\n",
	}},
}
