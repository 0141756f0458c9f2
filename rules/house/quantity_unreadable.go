package house

import "wickrule/lint"

// QuantityUnreadable is an amount that cannot be read. The reader finds it.
var QuantityUnreadable = &lint.Rule{
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
