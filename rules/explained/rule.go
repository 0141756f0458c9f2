// Package explained is what there is to say of a rule and of a trial, so that
// the terminal, the handbook and whatever else explains them say the same. How
// it is laid out is theirs.
package explained

import (
	"unicode"
	"unicode/utf8"

	"wickrule/lint"
)

// Sentence is a text as a sentence begins.
func Sentence(text string) string {
	if text == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}

// LevelWord is how loud a rule speaks, in a word.
func LevelWord(l lint.Level) string {
	if l == lint.Silent {
		return "silent"
	}
	return l.String()
}

// Loudness says how loud a rule speaks, by what a recipe is made for, and
// whether that can be changed.
func Loudness(r *lint.Rule) string {
	text := "for sale " + LevelWord(r.Levels.Sale) + ", for a class " + LevelWord(r.Levels.Class) + ", for own use " + LevelWord(r.Levels.OwnUse)
	if r.Levels == lint.Every(r.Levels.Sale) {
		text = LevelWord(r.Levels.Sale) + ", whatever it is made for"
	}
	switch {
	case r.About == lint.AboutFormat && r.Binding:
		text += "; it is about how the text is written and can be neither conceded nor turned down"
	case r.About == lint.AboutFormat:
		text += "; it is about how the text is written and cannot be conceded"
	case r.Binding:
		text += "; in what is made for sale it can be neither conceded nor turned down"
	}
	return text
}
