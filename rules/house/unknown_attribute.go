package house

import "wickrule/lint"

// UnknownAttribute is an attribute the block does not have. The reader finds it
// and names the nearest.
var UnknownAttribute = &lint.Rule{
	Name:   "unknown-attribute",
	Group:  Group,
	Title:  "an attribute the block does not have",
	Levels: lint.Every(lint.Must), Binding: true,
	About:  lint.AboutFormat,
	Why:    "A figure under a misspelled name is a figure that no rule sees: the recipe looks checked and is not.",
	Remedy: "Use the name shown. The page of the format lists the attributes of every block.",
	Source: formatSource,
	Bad: []lint.Example{{
		About: "a misspelled attribute",
		Text:  "dye \"slate\" {\n  limmit = \"0.1 % of wax\"\n}\n",
		Flags: []string{"limmit"},
	}},
	Also: []string{"unused-stock"},
	Good: []lint.Example{{
		About: "spelled right",
		Text:  "dye \"slate\" {\n  limit = \"0.1 % of wax\"\n}\n",
	}},
}
