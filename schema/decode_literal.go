package schema

import (
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"wickrule/schema/quantity"
)

// wrongKind tells that the value is of another kind than belongs here.
func (v *reading) wrongKind(message string, fixes ...Fix) held {
	v.r.report(Problem{Rule: ruleWrongKind, Span: v.span, Message: message, Fixes: fixes})
	return held{}
}

// becomes is the fix that replaces the value by a literal.
func (v *reading) becomes(literal string, safe bool) Fix {
	return Fix{Title: "write " + literal, Safe: safe, Edits: []Edit{{v.r.file, v.span, literal}}}
}

func (v *reading) offer(literals []string, safe bool) []Fix {
	fixes := make([]Fix, len(literals))
	for i, literal := range literals {
		fixes[i] = v.becomes(literal, safe)
	}
	return fixes
}

// brief is the value's source on one line, cut where it is long.
func (v *reading) brief() string { return brief(v.source()) }

const longestBrief = 40

func brief(source string) string {
	source = strings.Join(strings.Fields(source), " ")
	if utf8.RuneCountInString(source) > longestBrief {
		source = string([]rune(source)[:longestBrief-1]) + "…"
	}
	return source
}

// isLiteral says whether the value is plain: text, a number, true or false, or
// a list.
func (v *reading) isLiteral() bool {
	switch v.expr.kind {
	case unquoted:
		return v.source() != "null"
	case plainText, list:
		return true
	}
	return false
}

// quiet is the text of a quoted value, without telling where it is none.
func (v *reading) quiet() (string, bool) {
	source := v.source()
	if v.expr.kind != plainText || len(source) < 2 || source[0] != '"' {
		return "", false
	}
	return unquote(source[1 : len(source)-1]), true
}

// notText tells what stands where text in quotes belongs.
func (v *reading) notText() {
	if v.spec.Type == Amount && (v.isNumber() || v.expr.kind == signedNumber) {
		v.bareNumber()
		return
	}
	if v.spec.Type == Figure && v.isNumber() {
		v.figure(v.source())
		return
	}
	if v.expr.kind == list {
		v.listForOne()
		return
	}
	if !v.isLiteral() {
		v.notALiteral()
		return
	}
	message := "`" + v.spec.Name + "` is written in quotes, and " + v.brief() + " is not"
	if v.fits(v.source()) {
		v.wrongKind(message, v.becomes(Quote(v.source()), true))
		return
	}
	v.wrongKind(message + ": write for instance " + v.spec.example())
}

func (v *reading) isNumber() bool {
	source := v.source()
	return v.expr.kind == unquoted && source != "" && source[0] >= '0' && source[0] <= '9'
}

// listForOne tells of a list where one value belongs.
func (v *reading) listForOne() {
	message := "`" + v.spec.Name + "` takes one value, not a list: write for instance " + v.spec.example()
	if elements := of(v.r.tree.elements, v.expr.of); len(elements) == 1 {
		only := v.r.file.Text.Slice(v.r.span(elements[0].span))
		v.wrongKind(message, v.becomes(only, true))
		return
	}
	v.wrongKind(message)
}

// fits says whether the text, in quotes, could stand here.
func (v *reading) fits(text string) bool {
	switch v.spec.Type {
	case Amount:
		return v.measures(text) || slices.Contains(v.spec.Words, text)
	case Choice, Choices:
		return slices.Contains(v.spec.Choices, text)
	case Date:
		_, err := time.Parse(time.DateOnly, text)
		return err == nil
	case Color:
		return isColor(text)
	case Figure:
		_, ok := v.spec.readFigure(text)
		return ok
	case YesNo:
		return text == "true" || text == "false"
	case Whole:
		_, ok := wholeNumber(text)
		return ok
	case Literal:
		return IsKey(text)
	}
	return text != ""
}

// literal is how the text is written as a value here: some values stand in
// quotes and some do not.
func (v *reading) literal(text string) string {
	if v.spec.Type == YesNo || v.spec.Type == Whole {
		return text
	}
	return Quote(text)
}

// notALiteral tells of something computed, or not in the form of a value,
// where a recipe needs the plain value.
func (v *reading) notALiteral() {
	source := v.source()
	p := Problem{Rule: ruleNotALiteral, Span: v.span}
	switch v.expr.kind {
	case unquoted: // null
		if v.spec.Required {
			p.Message = "null says nothing: write for instance " + v.spec.Name + " = " + v.spec.example()
			break
		}
		p.Message = "null says nothing: leave the `" + v.spec.Name + "` line out"
		p.Fixes = []Fix{{Title: "take the line out", Safe: true, Edits: []Edit{removeLine(v.r.file, v.span)}}}
	case bareName:
		p.Message = brief(source) + " is not in quotes: write for instance " + v.spec.example()
		if v.fits(source) {
			p.Message = brief(source) + " is not in quotes: write " + v.literal(source)
			p.Fixes = []Fix{v.becomes(v.literal(source), true)}
		} else if name, _ := Nearest(source, v.spec.Choices); name != "" {
			p.Message = brief(source) + " is not in quotes: write " + Quote(name)
			p.Fixes = []Fix{v.becomes(Quote(name), false)}
		}
	case filledText:
		p.Message = "${ and %{ fill in computed text, which only a shop rule may do: write out what " + brief(source) + " stands for"
		if strings.HasPrefix(source, `"`) {
			p.Message += ", or double the $ or % where those very characters are meant"
			p.Fixes = []Fix{v.becomes(doubled.Replace(source), false)}
		}
	case inBrackets, textInBrackets:
		p.Message = "brackets around a value are not used: write for instance " + v.spec.example()
		inner := strings.TrimSpace(strings.TrimSuffix(strings.TrimPrefix(source, "("), ")"))
		if v.expr.kind == textInBrackets {
			p.Message = "brackets around a value are not used: write " + brief(inner)
			p.Fixes = []Fix{v.becomes(inner, true)}
		}
	case braces:
		p.Message = "`" + v.spec.Name + "` takes one plain value, nothing between { and }: write for instance " + v.spec.example()
	case signed, signedNumber:
		p.Message = "a sign before a value is not used: write for instance " + v.spec.example()
	default:
		if inner, ok := v.calledFor(); ok {
			p.Message = "a tune holds the value itself, nothing to compute: write " + inner
			p.Fixes = []Fix{v.becomes(inner, true)}
			break
		}
		holder := "recipe"
		if v.spec.Type == Literal {
			holder = "tune"
		}
		p.Message = "a " + holder + " holds plain values, nothing to compute: write out what " + brief(source) + " comes to, such as " + v.spec.example()
		if v.fits(source) {
			p.Message = brief(source) + " is not in quotes: write " + v.literal(source)
			p.Fixes = []Fix{v.becomes(v.literal(source), true)}
		}
	}
	v.r.report(p)
}

// calledFor is the text of an amount("…") or degrees("…"), which a rule needs
// around its amounts and a tune does not.
func (v *reading) calledFor() (string, bool) {
	if v.spec.Type != Literal {
		return "", false
	}
	for _, function := range []string{"amount", "degrees"} {
		inner, ok := strings.CutPrefix(v.source(), function)
		inner = strings.TrimSpace(inner)
		if !ok || !strings.HasPrefix(inner, "(") || !strings.HasSuffix(inner, ")") {
			continue
		}
		inner = strings.TrimSpace(inner[1 : len(inner)-1])
		if len(inner) > 2 && inner[0] == '"' && strings.IndexAny(inner[1:], "\"\\$") == len(inner)-2 {
			return inner, true
		}
	}
	return "", false
}

var doubled = strings.NewReplacer("${", "$${", "%{", "%%{")

// example is a value as it would be typed here.
func (s *AttrSpec) example() string { return s.exampleOr(`"…"`) }

func (s *AttrSpec) exampleOr(other string) string {
	if s.Example != "" {
		return s.Example
	}
	return other
}

// measures says whether the text is an amount of this attribute.
func (v *reading) measures(text string) bool {
	accept := v.spec.Dims
	if v.spec.BelowRim {
		if length, ok := cutBelowRim(text); ok {
			text, accept = length, dimLength
		}
	}
	q, err := quantity.Parse(text, accept...)
	return err == nil && (!q.IsRange() || v.spec.Range)
}
