package house

import "wickrule/lint"

// BlockRepeated is a second block where one may stand. The reader finds it.
var BlockRepeated = &lint.Rule{
	Name:   "block-repeated",
	Group:  Group,
	Title:  "a second block of a kind that may stand only once",
	Levels: lint.Every(lint.Must), Binding: true,
	About:  lint.AboutFormat,
	Why:    "The first counts, and whatever the second says is not heard.",
	Remedy: "Make one block of the two.",
	Source: formatSource,
	Bad: []lint.Example{{
		About: "a shop described twice in one file",
		Text:  "shop \"harbor-stall\" {\n  units = \"us\"\n}\n\nshop \"harbor-stall-again\" {\n  units = \"metric\"\n}\n",
		Flags: []string{`shop "harbor-stall-again"`},
	}},
	Also: []string{"key-repeated"},
	Good: []lint.Example{{
		About: "several dyes in one file",
		Text:  "dye \"slate\" {\n  limit = \"0.1 % of wax\"\n}\n\ndye \"chalk\" {\n  limit = \"0.1 % of wax\"\n}\n",
	}},
}
