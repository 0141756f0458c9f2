package report

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/rivo/uniseg"

	"wickrule/lint"
)

// Look is how text is laid out.
type Look struct {
	Width int  // columns of the terminal; 0: 80
	Color bool // level words and titles in color
}

// The narrowest and the widest that text is laid out: beyond these, lines are
// hard to read.
const (
	narrowest = 40
	usual     = 80
	widest    = 100
)

// Page collects lines of text laid out to a width.
type Page struct {
	b     strings.Builder
	width int
	color bool
}

// NewPage is an empty page.
func NewPage(look Look) *Page {
	width := look.Width
	if width == 0 {
		width = usual
	}
	return &Page{width: min(max(width, narrowest), widest), color: look.Color}
}

// String is the page as written so far.
func (p *Page) String() string { return p.b.String() }

// Line writes one line as it is.
func (p *Page) Line(text string) { p.b.WriteString(strings.TrimRight(text, " ") + "\n") }

// Written shows a line of a file behind what stands in its margin; where it is
// wider than the page it goes on below, indented.
func (p *Page) Written(margin, text string) {
	text = Clean(strings.TrimRight(text, "\r\n"))
	if uniseg.StringWidth(margin+text) <= p.width {
		p.Line(margin + text)
		return
	}
	words := strings.TrimLeft(text, " ")
	lead := margin + text[:len(text)-len(words)]
	indent := uniseg.StringWidth(lead)
	for i, line := range wrap(words, p.width-indent-2) {
		if i > 0 {
			line = strings.Repeat(" ", indent+2) + line
		} else {
			line = lead + line
		}
		p.Line(line)
	}
}

// Blank leaves one line out.
func (p *Page) Blank() { p.b.WriteString("\n") }

// Heading writes a title.
func (p *Page) Heading(title string) {
	for _, line := range wrap(Clean(title), p.width) {
		p.Line(p.paint(styleTitle, line))
	}
}

// Title writes a title with a word or two at the right edge.
func (p *Page) Title(title, right string) { p.Apart(0, title, right, styleTitle, styleFaint) }

// Wrap writes a text from a margin on, broken at spaces to the width. First
// stands in the margin of the first line.
func (p *Page) Wrap(first string, margin int, text string) {
	lead := pad(first, margin)
	for _, line := range wrap(Clean(text), p.width-margin) {
		p.Line(lead + line)
		lead = strings.Repeat(" ", margin)
	}
}

// Apart writes one text at the left from a margin on and one at the right
// edge; on two lines where both do not fit.
func (p *Page) Apart(margin int, left, right string, leftStyle, rightStyle style) {
	left, right = Clean(left), Clean(right)
	gap := p.width - margin - uniseg.StringWidth(left) - uniseg.StringWidth(right)
	indent := strings.Repeat(" ", margin)
	if gap < 2 {
		for _, line := range wrap(left, p.width-margin) {
			p.Line(indent + p.paint(leftStyle, line))
		}
		indent, left, gap = "", "", max(0, p.width-uniseg.StringWidth(right))
	}
	p.Line(indent + p.paint(leftStyle, left) + strings.Repeat(" ", gap) + p.paint(rightStyle, right))
}

type style uint8

const (
	styleNone style = iota
	styleTitle
	styleFaint
	styleMust
	styleShould
	styleConsider
)

// Select Graphic Rendition parameters of ECMA-48.
var styleCodes = [...]string{styleNone: "", styleTitle: "1", styleFaint: "2", styleMust: "1;31", styleShould: "33", styleConsider: "36"}

func levelStyle(l lint.Level) style {
	switch l {
	case lint.Must:
		return styleMust
	case lint.Should:
		return styleShould
	}
	return styleConsider
}

func (p *Page) paint(s style, text string) string {
	if !p.color || s == styleNone || text == "" {
		return text
	}
	return "\x1b[" + styleCodes[s] + "m" + text + "\x1b[0m"
}

// level is the level's word in the margin, in color where there is any: the
// padding stands outside the color so that widths stay right.
func (p *Page) level(l lint.Level, margin int) string {
	return "  " + p.paint(levelStyle(l), l.String()) + strings.Repeat(" ", max(0, margin-2-len(l.String())))
}

// pad fills a text with spaces up to a width. A text in color counts by what
// is seen of it.
func pad(text string, width int) string {
	return text + strings.Repeat(" ", max(0, width-uniseg.StringWidth(uncolored(text))))
}

func uncolored(text string) string {
	for {
		start := strings.Index(text, "\x1b[")
		if start < 0 {
			return text
		}
		end := strings.IndexByte(text[start:], 'm')
		if end < 0 {
			return text
		}
		text = text[:start] + text[start+end+1:]
	}
}

// wrap breaks a text at spaces, but not between a number and its unit; a word
// wider than the width stands alone.
func wrap(text string, width int) []string {
	var lines []string
	line, used := "", 0
	for _, word := range measured(strings.Fields(text)) {
		w := uniseg.StringWidth(word)
		switch {
		case line == "":
			line, used = word, w
		case used+1+w <= width:
			line, used = line+" "+word, used+1+w
		default:
			lines = append(lines, line)
			line, used = word, w
		}
	}
	return append(lines, line)
}

// measured joins each number with the short word behind it: "13 g" is one.
func measured(words []string) []string {
	joined := words[:0]
	for _, word := range words {
		if n := len(joined); n > 0 && endsInDigit(joined[n-1]) && utf8.RuneCountInString(word) <= 4 {
			joined[n-1] += " " + word
			continue
		}
		joined = append(joined, word)
	}
	return joined
}

func endsInDigit(word string) bool {
	last := word[len(word)-1]
	return last >= '0' && last <= '9'
}

// shorten cuts a text to a width, whole graphemes only, and shows that it did.
func shorten(text string, width int) string {
	if uniseg.StringWidth(text) <= width {
		return text
	}
	used := 0
	var b strings.Builder
	for g := uniseg.NewGraphemes(text); g.Next(); {
		if used+g.Width() > width-1 {
			break
		}
		used += g.Width()
		b.WriteString(g.Str())
	}
	return strings.TrimRight(b.String(), " ") + "…"
}

// Clean takes out what would move the cursor, color the terminal or turn the
// reading direction: words from a file must not do that.
func Clean(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\n' || r == '\r':
			return ' '
		case unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r):
			return unicode.ReplacementChar
		}
		return r
	}, text)
}
