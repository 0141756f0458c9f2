package house

import "wickrule/lint"

// UnknownBlock, UnknownAttribute and UnknownStep are words the format does not
// have. The reader finds them and names the nearest.
var (
	UnknownBlock = &lint.Rule{
		Name:   "unknown-block",
		Group:  Group,
		Title:  "a block the format does not have, or not in this place",
		Levels: lint.Every(lint.Must), Binding: true,
		About:  lint.AboutFormat,
		Why:    "A block with a name that is not known is not judged at all, and nobody would notice that its rules are silent.",
		Remedy: "Use the name shown, or move the block to where it belongs. The page of the format lists all blocks.",
		Source: formatSource,
		Bad: []lint.Example{{
			About: "a misspelt block",
			Text:  "fragrence \"sea-mist\" {\n  title = \"Sea mist\"\n}\n",
			Flags: []string{"fragrence"},
		}},
		Also: []string{"unused-stock"},
		Good: []lint.Example{{
			About: "spelt right",
			Text:  "fragrance \"sea-mist\" {\n  title = \"Sea mist\"\n}\n",
		}},
	}

	UnknownAttribute = &lint.Rule{
		Name:   "unknown-attribute",
		Group:  Group,
		Title:  "an attribute the block does not have",
		Levels: lint.Every(lint.Must), Binding: true,
		About:  lint.AboutFormat,
		Why:    "A figure under a misspelt name is a figure that no rule sees: the recipe looks checked and is not.",
		Remedy: "Use the name shown. The page of the format lists the attributes of every block.",
		Source: formatSource,
		Bad: []lint.Example{{
			About: "a misspelt attribute",
			Text:  "dye \"slate\" {\n  limmit = \"0.1 % of wax\"\n}\n",
			Flags: []string{"limmit"},
		}},
		Also: []string{"unused-stock"},
		Good: []lint.Example{{
			About: "spelt right",
			Text:  "dye \"slate\" {\n  limit = \"0.1 % of wax\"\n}\n",
		}},
	}

	UnknownStep = &lint.Rule{
		Name:   "unknown-step",
		Group:  Group,
		Title:  "a step of a kind the format does not have",
		Levels: lint.Every(lint.Must), Binding: true,
		About:  lint.AboutFormat,
		Why:    "Steps are judged by their kind. One that is not known is done on the bench but judged by nobody.",
		Remedy: "Use one of the known kinds, or a step \"note\" with the words for the sheet.",
		Source: formatSource,
		Bad: []lint.Example{{
			About:   "a misspelt step",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: "step \"unmold\" {", To: "step \"unmould\" {"}},
			Flags:   []string{`"unmould"`},
		}},
		Good: []lint.Example{{About: "spelt right", Recipe: "tide-pillar"}},
	}
)
