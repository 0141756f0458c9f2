package house

import "wickrule/lint"

// TwoOnOneLine is a one-line block with several attributes. The reader finds it.
var TwoOnOneLine = &lint.Rule{
	Name:   "two-on-one-line",
	Group:  Group,
	Title:  "a one-line block that holds more than one attribute",
	Levels: lint.Every(lint.Must), Binding: true,
	About: lint.AboutFormat,
	Why: "The format takes one attribute a line, so other programs that read these files lose everything after the first. " +
		"Here both are still judged.",
	Remedy: "Put each attribute on a line of its own.",
	Source: formatSource + "; HCL native syntax",
	Bad: []lint.Example{{
		About:   "a trim with its length and its wait on one line",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: "step \"trim wick\" {\n    to = \"1/4 in\"\n  }", To: "step \"trim wick\" { to = \"1/4 in\", after = \"1 h\" }"}},
		Flags:   []string{`after = "1 h"`},
	}},
	Good: []lint.Example{{
		About:  "one attribute on the line",
		Recipe: "tide-pillar",
	}},
}
