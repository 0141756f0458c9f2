package house

import "wickrule/lint"

// NotALiteral is an expression where a plain value belongs. The reader finds it.
var NotALiteral = &lint.Rule{
	Name:   "not-a-literal",
	Group:  Group,
	Title:  "a calculation, a name or a template where a plain value belongs",
	Levels: lint.Every(lint.Must), Binding: true,
	About: lint.AboutFormat,
	Why: "A recipe is read by people at a melting pot. They need the figure itself, not a sum or a name to look up. " +
		"Only the shop's own rules compute.",
	Remedy: "Write the value itself, in quotes with its unit where it is an amount.",
	Source: formatSource,
	Bad: []lint.Example{{
		About: "a sum in place of a weight",
		Text:  "dye \"slate\" {\n  drop = 0.01 + 0.02\n}\n",
		Flags: []string{"0.01 + 0.02"},
	}},
	Also: []string{"unused-stock"},
	Good: []lint.Example{{
		About: "the weight itself",
		Text:  "dye \"slate\" {\n  drop = \"0.03 g\"\n}\n",
	}},
}
