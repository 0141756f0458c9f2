package schema

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"time"
)

// value reads what stands behind the equals sign.
func (r *reader) value(b *Block, at *attribute, source *expr) {
	at.span = r.valueSpan(source)
	at.state = Broken
	if len(r.hurt) > 0 && r.touched(at.span) || len(r.broken) > 0 && r.standIn(source) {
		return
	}
	v := reading{r: r, block: b, spec: b.Spec.Attrs[at.spec], expr: source, span: at.span}
	if at.held = v.read(); at.held.form != nothing {
		at.state = Known
	}
}

// valueSpan is the value as given, also where the parser saw a stand-in.
func (r *reader) valueSpan(source *expr) Span {
	for _, broken := range r.broken {
		if broken.at == int(source.span.Start) {
			return broken.span
		}
	}
	span := r.span(source.span)
	for span.End > span.Start && strings.IndexByte("\r\n", r.file.Text.content[span.End-1]) >= 0 {
		span.End-- // what could not be read at all is given as its line end
	}
	return span
}

func (r *reader) standIn(source *expr) bool {
	at := int(source.span.Start)
	return slices.ContainsFunc(r.broken, func(b brokenValue) bool { return b.at == at })
}

// touched says whether what was found wrong with the text makes the value
// unreadable: it lies in the value, or on its last line behind it.
func (r *reader) touched(value Span) bool {
	for _, hurt := range r.hurt {
		if hurt.Overlaps(value) || hurt.Start >= value.End && !strings.ContainsAny(r.file.Text.content[value.End:hurt.Start], "\r\n") {
			return true
		}
	}
	return false
}

// reading is one value being read.
type reading struct {
	r     *reader
	block *Block
	spec  *AttrSpec
	expr  *expr
	span  Span
}

// read is what the value holds; nothing where it cannot be read, which has been
// told.
func (v *reading) read() held {
	switch v.spec.Type {
	case Expression:
		return held{form: asWritten}
	case Literal:
		if source := v.source(); v.expr.kind == unquoted && source != "null" {
			return v.keep(source)
		}
	case YesNo:
		return v.yesNo()
	case Whole:
		return v.whole()
	case Choices, Texts, Keys:
		if v.expr.kind == list {
			return v.list()
		}
	}
	text, ok := v.text()
	if !ok {
		return held{}
	}
	switch v.spec.Type {
	case Amount:
		return v.amount(text)
	case Choice, Choices:
		if !v.chosen(text, v.span) {
			return held{}
		}
	case Date:
		if _, err := time.Parse(time.DateOnly, text); err != nil {
			return v.wrongKind(Quote(text)+" is not a date: write the year, month and day, such as "+v.spec.exampleOr(`"2026-10-04"`), v.offer(dateFixes(text), true)...)
		}
	case Figure:
		return v.figure(text)
	case Color:
		if !isColor(text) {
			return v.wrongKind(Quote(text)+" is not a color: write # and six digits of 0-9 and a-f, such as "+v.spec.exampleOr(`"#b5473c"`), v.offer(colorFixes(text), true)...)
		}
	}
	return v.kept(text)
}

// kept is a text as what the value holds.
func (v *reading) kept(text string) held {
	if v.asWritten(text) {
		return held{form: asWritten}
	}
	return v.keep(text)
}

// asWritten says whether the text is its own source.
func (v *reading) asWritten(text string) bool {
	source := v.source()
	return len(source) == len(text)+2 && source[1:len(source)-1] == text
}

// keep puts what the value holds among the file's others.
func (v *reading) keep(data any) held {
	f := v.r.file
	f.others = append(f.others, data)
	return held{int32(len(f.others) - 1), other}
}

// source is the value's own source text.
func (v *reading) source() string { return v.r.file.Text.Slice(v.span) }

// text is the string that the value is. Anything else is told; so is a
// heredoc where one line is asked for.
func (v *reading) text() (string, bool) {
	if v.expr.kind != plainText {
		v.notText()
		return "", false
	}
	source := v.r.slice(v.expr.span)
	if !strings.HasPrefix(source, "<<") {
		return unquote(strings.TrimSuffix(strings.TrimPrefix(source, `"`), `"`)), true
	}
	if v.spec.Type != Prose {
		v.wrongKind("`" + v.spec.Name + "` is one line of text in quotes, not a heredoc: write for instance " + v.spec.example())
		return "", false
	}
	return heredoc(source), true
}

func (v *reading) yesNo() held {
	switch v.source() {
	case "true":
		return held{form: yes}
	case "false":
		return held{form: no}
	}
	if text, ok := v.quiet(); ok {
		word := ""
		switch strings.ToLower(text) {
		case "true", "yes":
			word = "true"
		case "false", "no":
			word = "false"
		}
		if word != "" {
			return v.wrongKind("`"+v.spec.Name+"` is true or false, without quotes", v.becomes(word, true))
		}
	}
	if v.isLiteral() {
		return v.wrongKind("`" + v.spec.Name + "` is true or false, and " + v.brief() + " is neither")
	}
	v.notALiteral()
	return held{}
}

func (v *reading) whole() held {
	source := v.source()
	if text, ok := v.quiet(); ok {
		if _, fine := wholeNumber(strings.TrimSpace(text)); fine {
			return v.wrongKind("`"+v.spec.Name+"` is a whole number, without quotes", v.becomes(strings.TrimSpace(text), true))
		}
	}
	if n, ok := wholeNumber(source); ok {
		return held{n, whole}
	}
	if v.isLiteral() || v.expr.kind == signedNumber {
		return v.wrongKind("`" + v.spec.Name + "` is a whole number, 0 or more, and " + v.brief() + " is not one: write for instance " + v.spec.example())
	}
	v.notALiteral()
	return held{}
}

func wholeNumber(digits string) (int32, bool) {
	n, err := strconv.ParseUint(digits, 10, 31)
	return int32(n), err == nil && n <= math.MaxInt32
}

// list reads a list of text. One element that cannot be read breaks it.
func (v *reading) list() held {
	elements := of(v.r.tree.elements, v.expr.of)
	items := make([]Item, 0, len(elements))
	for i := range elements {
		one := reading{r: v.r, block: v.block, spec: v.spec, expr: &elements[i], span: v.r.span(elements[i].span)}
		text, ok := one.text()
		if ok && (v.spec.Type != Choices || v.chosen(text, one.span)) {
			items = append(items, Item{Text: text, Span: one.span})
		}
	}
	if len(items) < len(elements) {
		return held{}
	}
	return v.keep(items)
}

// chosen says whether the text is one of the closed list; else it tells.
func (v *reading) chosen(text string, span Span) bool {
	if slices.Contains(v.spec.Choices, text) {
		return true
	}
	p := Problem{Rule: ruleUnknownWord, Span: span,
		Message: Quote(text) + " is not among what `" + v.spec.Name + "` can be; " + NearestOrKnown(text, v.spec.Choices, `"`)}
	if name, sure := Nearest(text, v.spec.Choices); name != "" {
		p.Fixes = []Fix{{Title: "write " + Quote(name), Safe: sure, Edits: []Edit{{v.r.file, span, Quote(name)}}}}
	}
	v.r.report(p)
	return false
}

func isColor(text string) bool {
	if len(text) != 7 || text[0] != '#' {
		return false
	}
	return strings.Trim(text[1:], "0123456789abcdefABCDEF") == ""
}

// colorFixes are edits for a color in the three-digit form or without its #.
func colorFixes(text string) []string {
	digits := strings.TrimPrefix(text, "#")
	if len(digits) == 3 {
		digits = string([]byte{digits[0], digits[0], digits[1], digits[1], digits[2], digits[2]})
	}
	if isColor("#" + digits) {
		return []string{Quote("#" + digits)}
	}
	return nil
}

// dateFixes is the date with its parts filled up to two digits, where only
// that is wrong. Any other order of day and month would be a guess.
func dateFixes(text string) []string {
	if t, err := time.Parse("2006-1-2", strings.NewReplacer("/", "-", ".", "-").Replace(text)); err == nil {
		return []string{Quote(t.Format(time.DateOnly))}
	}
	return nil
}
