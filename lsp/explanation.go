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
	part("How loud", howLoud(r))
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

// howLoud says how loud the rule speaks, by what a recipe is made for.
func howLoud(r *lint.Rule) string {
	word := func(l lint.Level) string {
		if l == lint.Silent {
			return "silent"
		}
		return l.String()
	}
	text := "For sale " + word(r.Levels.Sale) + ", for a class " + word(r.Levels.Class) + ", for own use " + word(r.Levels.OwnUse)
	if r.Levels == lint.Every(r.Levels.Sale) {
		text = sentence(word(r.Levels.Sale) + ", whatever it is made for")
		text = strings.TrimSuffix(text, ".")
	}
	switch {
	case r.About == lint.AboutFormat && r.Binding:
		text += "; it can be neither conceded nor turned down"
	case r.About == lint.AboutFormat:
		text += "; it cannot be conceded"
	case r.Binding:
		text += "; in what is made for sale it can be neither conceded nor turned down"
	}
	return text + "."
}
