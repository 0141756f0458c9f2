package house

import "wickrule/lint"

// UnknownBlock is a block the format does not have there. The reader finds it
// and names the nearest.
var UnknownBlock = &lint.Rule{
	Name:   "unknown-block",
	Group:  Group,
	Title:  "a block the format does not have, or not in this place",
	Levels: lint.Every(lint.Must), Binding: true,
	About:  lint.AboutFormat,
	Why:    "A block with a name that is not known is not judged at all, and nobody would notice that its rules are silent.",
	Remedy: "Use the name shown, or move the block to where it belongs. The page of the format lists all blocks.",
	Source: formatSource,
	Bad: []lint.Example{{
		About: "a misspelled block",
		Text:  "fragrence \"sea-mist\" {\n  title = \"Sea mist\"\n}\n",
		Flags: []string{"fragrence"},
	}},
	Also: []string{"unused-stock"},
	Good: []lint.Example{{
		About: "spelled right",
		Text:  "fragrance \"sea-mist\" {\n  title = \"Sea mist\"\n}\n",
	}},
}
