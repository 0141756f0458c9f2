package house

import "wickrule/lint"

// AttributeRepeated is an attribute written twice. The reader finds it.
var AttributeRepeated = &lint.Rule{
	Name:   "attribute-repeated",
	Group:  Group,
	Title:  "an attribute written twice in one block",
	Levels: lint.Every(lint.Should),
	About:  lint.AboutFormat,
	Why:    "Two figures for one thing: the first is used, and whoever reads the second at the bench does something else.",
	Remedy: "Remove the one that is wrong.",
	Source: formatSource + "; HCL native syntax",
	Bad: []lint.Example{{
		About: "a limit stated twice",
		Text:  "dye \"slate\" {\n  limit = \"0.1 % of wax\"\n  limit = \"0.2 % of wax\"\n}\n",
		Flags: []string{"limit"},
	}},
	Also: []string{"unused-stock"},
	Good: []lint.Example{{
		About: "stated once",
		Text:  "dye \"slate\" {\n  limit = \"0.1 % of wax\"\n}\n",
	}},
}
