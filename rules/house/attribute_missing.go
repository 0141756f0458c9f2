package house

import "wickrule/lint"

// AttributeMissing is a block without what nothing works without. The reader
// finds it.
var AttributeMissing = &lint.Rule{
	Name:   "attribute-missing",
	Group:  Group,
	Title:  "a block without something it cannot do without, or without its key",
	Levels: lint.Every(lint.Must), Binding: true,
	About:  lint.AboutFormat,
	Why:    "Everything else about the block rests on this value, so without it nothing more can be said.",
	Remedy: "Write the attribute that is named.",
	Source: formatSource,
	Bad: []lint.Example{{
		About: "a component of a fragrance without its share",
		Text:  "fragrance \"sea-mist\" {\n  component \"linalool\" {\n    hazards = [\"Skin Sens. 1B H317\"]\n  }\n}\n",
		Flags: []string{`component "linalool"`},
	}},
	Also: []string{"unused-stock"},
	Good: []lint.Example{{
		About: "the share stated",
		Text:  "fragrance \"sea-mist\" {\n  component \"linalool\" {\n    share   = \"4 %\"\n    hazards = [\"Skin Sens. 1B H317\"]\n  }\n}\n",
	}},
}
