package house

import "wickrule/lint"

// UnitMissing is a number without its unit. The reader finds it.
var UnitMissing = &lint.Rule{
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
