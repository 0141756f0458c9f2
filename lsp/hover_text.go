package lsp

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"wickrule/schema"
	"wickrule/schema/quantity"
)

// units is the system the shop reads first.
func (h *here) units() quantity.System {
	if h.shop.Config != nil && h.shop.Config.Get("units").Text() == "metric" {
		return quantity.Metric
	}
	return quantity.US
}

// plain is a text of the shop's or of a rule, as it stands in Markdown: on one
// line, and what would be taken for a mark is a character.
func (h *here) plain(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	if !h.can.markdown() {
		return text
	}
	var b strings.Builder
	last := ' '
	for i, r := range text {
		next, _ := utf8.DecodeRuneInString(text[i+utf8.RuneLen(r):])
		if isMark(last, r, next) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
		last = r
	}
	return b.String()
}

// isMark says whether Markdown would take a character for more than itself. A
// line inside a word (holds_to) and a < before a number are left as they are:
// they mean nothing, and some editors show the backslash.
func isMark(last, r, next rune) bool {
	switch r {
	case '\\', '`', '*', '[', ']', '~', '&':
		return true
	case '_':
		return !isWord(last) || !isWord(next)
	case '<':
		return unicode.IsLetter(next) || next == '/' || next == '!' || next == '?'
	}
	return false
}

func isWord(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }

// title is how a maker calls a block.
func (h *here) title(b *schema.Block) string { return h.plain(b.Title()) }

// code is a text as it is typed.
func code(text string) string { return "`" + text + "`" }

// inOne is parts joined with commas, as a sentence; "" for none.
func inOne(parts ...string) string {
	var said []string
	for _, p := range parts {
		if p != "" {
			said = append(said, p)
		}
	}
	if len(said) == 0 {
		return ""
	}
	return fullStop(schema.Capital(strings.Join(said, ", ")))
}

// spaced is sentences one after the other; those that are empty are left out.
func spaced(sentences ...string) string {
	var said []string
	for _, s := range sentences {
		if s != "" {
			said = append(said, s)
		}
	}
	return strings.Join(said, " ")
}

// joined joins words the way a sentence does: "a, b and c".
func joined(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}

// fullStop is a text with the full stop it lacks.
func fullStop(text string) string {
	if text == "" || strings.ContainsRune(".?!", rune(text[len(text)-1])) {
		return text
	}
	return text + "."
}

var numberWords = [...]string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}

// inWords is a small number as a word, a larger one in digits.
func inWords(n int) string {
	if n >= 0 && n < len(numberWords) {
		return numberWords[n]
	}
	return quantity.Int(int64(n)).Decimal(0)
}

// things is a number of things: "one recipe", "14 recipes".
func things(n int, one string) string {
	if n == 1 {
		return "one " + one
	}
	return inWords(n) + " " + one + "s"
}
