package house

import "wickrule/lint"

// Syntax is text that does not parse. The reader finds it.
var Syntax = &lint.Rule{
	Name:   "syntax",
	Group:  Group,
	Title:  "text that cannot be read as written",
	Levels: lint.Every(lint.Must), Binding: true,
	About: lint.AboutFormat,
	Why: "A quote or a brace that is missing makes everything after it unclear. The rest of the file is still judged as far as it can be, " +
		"but nothing that is missing is reported until the text reads whole, so a fault may still hide behind this one.",
	Remedy: "Close the quote, the brace or the bracket at the place shown, and check again.",
	Source: formatSource + "; HCL native syntax",
	Bad: []lint.Example{{
		About: "a quote that is not closed",
		Text:  "dye \"slate\" {\n  title = \"Slate gray\n  limit = \"0.1 % of wax\"\n}\n",
		Flags: []string{`"Slate gray`},
	}},
	Good: []lint.Example{{
		About: "the quote closed",
		Text:  "dye \"slate\" {\n  title = \"Slate gray\"\n  limit = \"0.1 % of wax\"\n}\n",
	}},
}
