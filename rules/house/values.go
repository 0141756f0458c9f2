package house

import "wickrule/lint"

// UnknownWord, ValueWrongKind and KeyForm are about values that are not
// amounts. The reader finds them.
var (
	UnknownWord = &lint.Rule{
		Name:   "unknown-word",
		Group:  Group,
		Title:  "a word that is not on the list for this attribute",
		Levels: lint.Every(lint.Must), Binding: true,
		About:  lint.AboutFormat,
		Why:    "Rules go by these words. One that is not on the list is as good as none, and the rules that read it stay silent.",
		Remedy: "Use one of the words shown.",
		Source: formatSource,
		Bad: []lint.Example{{
			About: "a family that is not on the list",
			Text:  "wax \"trial-sack\" {\n  family = \"parafin\"\n}\n",
			Flags: []string{`"parafin"`},
		}},
		Also: []string{"unused-stock"},
		Good: []lint.Example{{
			About: "spelt right",
			Text:  "wax \"trial-sack\" {\n  family = \"paraffin\"\n}\n",
		}},
	}

	ValueWrongKind = &lint.Rule{
		Name:   "value-wrong-kind",
		Group:  Group,
		Title:  "a value of the wrong kind: a number where text belongs, a date that is none",
		Levels: lint.Every(lint.Must), Binding: true,
		About:  lint.AboutFormat,
		Why:    "A value that does not fit its attribute cannot be used, and what rests on it is not checked.",
		Remedy: "Write the kind of value that is named.",
		Source: formatSource,
		Bad: []lint.Example{{
			About: "a yes in words",
			Text:  "dye \"slate\" {\n  gel_safe = \"yes\"\n}\n",
			Flags: []string{`"yes"`},
		}},
		Also: []string{"unused-stock"},
		Good: []lint.Example{{
			About: "true or false",
			Text:  "dye \"slate\" {\n  gel_safe = true\n}\n",
		}},
	}

	KeyForm = &lint.Rule{
		Name:   "key-form",
		Group:  Group,
		Title:  "a key that is not written in small letters, digits and hyphens",
		Levels: lint.Every(lint.Must), Binding: true,
		About:  lint.AboutFormat,
		Why:    "Keys are how recipes find what is on the shelves. Written one way everywhere, they are never missed for a capital or a space.",
		Remedy: "Write it in small letters and digits, words joined by hyphens: \"sea-mist\". The title may be written any way you like.",
		Source: formatSource,
		Bad: []lint.Example{{
			About: "a key with a space and capitals",
			Text:  "dye \"Slate Grey\" {\n  title = \"Slate grey\"\n}\n",
			Flags: []string{`"Slate Grey"`},
		}},
		Also: []string{"unused-stock"},
		Good: []lint.Example{{
			About: "in small letters, joined by a hyphen",
			Text:  "dye \"slate-grey\" {\n  title = \"Slate grey\"\n}\n",
		}},
	}
)
