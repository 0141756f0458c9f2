package house

import "wickrule/lint"

// AttributeMissing, AttributeRepeated and BlockRepeated are about what stands
// not at all or twice. The reader finds them.
var (
	AttributeMissing = &lint.Rule{
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

	AttributeRepeated = &lint.Rule{
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

	BlockRepeated = &lint.Rule{
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
)
