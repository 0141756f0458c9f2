package schema

import (
	"strings"

	"wickrule/schema/quantity"
)

// Takes says in a maker's words what may be written there: "a temperature, or
// a range of them", `one of "us" or "metric"`.
func (s *AttrSpec) Takes() string {
	switch s.Type {
	case Line:
		return "a line of text"
	case Prose:
		return "text, over several lines if need be"
	case Choice:
		return oneOf("", s.Choices)
	case Choices:
		return oneOf("one or more of ", s.Choices)
	case Texts:
		return "a list of texts"
	case Key:
		return "the key of " + orList(withArticles(s.Refers))
	case Keys:
		return "the key of " + orList(withArticles(s.Refers)) + ", or a list of them"
	case YesNo:
		return "true or false"
	case Whole:
		return "a whole number"
	case Amount:
		return s.takesAmount()
	case Date:
		return "a date: year, month, day"
	case Color:
		return "a color: # and six digits or letters a to f"
	case Figure:
		return "a number in " + s.Unit
	case Expression:
		return "an expression"
	case Literal:
		return "an amount or a text in quotes, a number, true or false"
	}
	panic("schema: a type without words")
}

func (s *AttrSpec) takesAmount() string {
	var may []string
	for i, d := range s.Dims {
		switch {
		case d == quantity.Proportion:
			may = append(may, "a proportion of the wax or the total")
		case d == quantity.Share && i > 0 && s.Dims[i-1] == quantity.Proportion:
			// Read, but a rule will ask what it is a share of: not worth offering.
		case d == quantity.Share:
			may = append(may, "a percentage")
		default:
			may = append(may, article(d.String()))
		}
		if d == quantity.Length && s.BelowRim {
			may = append(may, "a length below rim")
		}
	}
	if s.Range {
		may = append(may, "a range")
	}
	return orList(append(may, quoted(s.Words)...))
}

func oneOf(lead string, choices []string) string {
	if len(choices) > 1 && lead == "" {
		lead = "one of "
	}
	return lead + orList(quoted(choices))
}

func quoted(words []string) []string {
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = `"` + w + `"`
	}
	return out
}

func withArticles(words []string) []string {
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = article(w)
	}
	return out
}

func article(word string) string {
	if strings.IndexByte("aeiou", word[0]) >= 0 {
		return "an " + word
	}
	return "a " + word
}

// orList joins words the way a sentence does: "a, b or c".
func orList(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}
