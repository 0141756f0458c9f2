package lsp

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"wickrule/lint"
)

// explanation is what there is to know of a rule, in Markdown.
func explanation(r *lint.Rule) string {
	var b strings.Builder
	b.WriteString("# " + r.Name + "\n\n" + sentence(r.Title) + "\n")
	part := func(heading, text string) {
		if text = strings.TrimSpace(text); text != "" {
			b.WriteString("\n**" + heading + ".** " + text + "\n")
		}
	}
	part("How loud", sentence(r.Loudness()))
	part("Why", r.Why)
	part("To put it right", r.Remedy)
	part("Mind", r.Cautions)
	part("Source", r.Source)
	return b.String()
}

// sentence is a text with a capital and a full stop.
func sentence(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return ""
	}
	return string(unicode.ToUpper(first)) + strings.TrimSuffix(text[size:], ".") + "."
}
