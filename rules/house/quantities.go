package house

import "wickrule/lint"

// QuantityUnreadable, UnitMissing and UnitWrongKind are about amounts. The
// reader finds them.
var (
	QuantityUnreadable = &lint.Rule{
		Name:   "quantity-unreadable",
		Group:  Group,
		Title:  "an amount that cannot be read",
		Levels: lint.Every(lint.Must), Binding: true,
		About: lint.AboutFormat,
		Why: "An amount that cannot be read is not checked against anything, however wrong it is. " +
			"And what this tool cannot read, a tired person at the bench may read wrongly.",
		Remedy: "Write a number and its unit: \"36 oz\", \"2 lb 8 oz\", \"168 to 182 °F\", \"6 % of wax\".",
		Source: formatSource + "; unit names as in NIST SP 811 and NIST Handbook 44, Appendix C",
		Bad: []lint.Example{{
			About: "a range written backwards",
			Text:  "wax \"trial-sack\" {\n  pour_at = \"182 to 168 °F\"\n}\n",
			Flags: []string{"182 to 168 °F"},
		}},
		Also: []string{"unused-stock"},
		Good: []lint.Example{{
			About: "the lower end first",
			Text:  "wax \"trial-sack\" {\n  pour_at = \"168 to 182 °F\"\n}\n",
		}},
	}

	UnitMissing = &lint.Rule{
		Name:   "unit-missing",
		Group:  Group,
		Title:  "a number without its unit",
		Levels: lint.Every(lint.Must), Binding: true,
		About: lint.AboutFormat,
		Why: "180 is a pour in Fahrenheit and a fire in Celsius; 20 is a pinch in grams and a pound and a quarter in ounces. " +
			"The tool does not guess.",
		Remedy:   "Write the amount with its unit in quotes: \"180 °F\", \"20 g\".",
		Cautions: "Look the unit up in your notes or on the thermometer; do not pick the one that makes the finding go away.",
		Source:   formatSource,
		Bad: []lint.Example{{
			About: "a bare number",
			Text:  "wax \"trial-sack\" {\n  flash_point = 450\n}\n",
			Flags: []string{"450"},
		}},
		Also: []string{"unused-stock"},
		Good: []lint.Example{{
			About: "with its unit",
			Text:  "wax \"trial-sack\" {\n  flash_point = \"450 °F\"\n}\n",
		}},
	}

	UnitWrongKind = &lint.Rule{
		Name:   "unit-wrong-kind",
		Group:  Group,
		Title:  "an amount of the wrong kind: a weight where a temperature belongs",
		Levels: lint.Every(lint.Must), Binding: true,
		About: lint.AboutFormat,
		Why: "Two lines may have been swapped, or a unit mistaken: `oz` is always a weight and `fl oz` always a volume, " +
			"and ten of one are not ten of the other.",
		Remedy: "Write an amount of the kind that is named.",
		Source: formatSource,
		Bad: []lint.Example{{
			About: "a weight as a flash point",
			Text:  "wax \"trial-sack\" {\n  flash_point = \"450 g\"\n}\n",
			Flags: []string{"450 g"},
		}},
		Also: []string{"unused-stock"},
		Good: []lint.Example{{
			About: "a temperature",
			Text:  "wax \"trial-sack\" {\n  flash_point = \"450 °F\"\n}\n",
		}},
	}
)
