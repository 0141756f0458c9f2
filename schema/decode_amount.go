package schema

import (
	"slices"
	"strings"

	"wickrule/schema/quantity"
)

// amount reads a quantity, or one of the words that may stand in its place.
func (v *reading) amount(text string) held {
	if slices.Contains(v.spec.Words, text) {
		return v.kept(text)
	}
	accept, measured := v.spec.Dims, text
	if v.spec.BelowRim {
		if length, ok := cutBelowRim(text); ok {
			measured, accept = length, dimLength
		}
	}
	q, err := quantity.Parse(measured, accept...)
	if err != nil {
		v.badAmount(text, text[len(measured):], err)
		return held{}
	}
	if q.IsRange() && !v.spec.Range {
		v.r.report(Problem{Rule: ruleUnreadable, Span: v.span,
			Message: "`" + v.spec.Name + "` is one amount, and " + Quote(text) + " is a range: write the amount that is meant, such as " + v.spec.example()})
		return held{}
	}
	if single, ok := q.Single(); ok && v.asWritten(text) {
		v.r.amounts = append(v.r.amounts, single)
		return held{int32(len(v.r.amounts) - 1), amount}
	}
	kept := q // so that only what is kept here costs memory of its own
	return v.keep(&kept)
}

// badAmount tells why a text is no amount, at the characters at fault. after
// is what was cut off its end before reading.
func (v *reading) badAmount(text, after string, err *quantity.Error) {
	if word, sure := Nearest(text, v.spec.Words); sure {
		v.r.report(Problem{Rule: ruleUnknownWord, Span: v.span, Message: Quote(text) + " is not read here; the nearest is " + Quote(word),
			Fixes: []Fix{v.becomes(Quote(word), true)}})
		return
	}
	p := Problem{Rule: amountRule(err.Kind), Span: v.within(err.Start, err.End), Message: err.Message}
	for _, suggestion := range err.Suggest {
		p.Fixes = append(p.Fixes, v.guess(Quote(suggestion+after)))
	}
	v.r.report(p)
}

// guess is a fix that writes one of several amounts that may be meant.
func (v *reading) guess(literal string) Fix {
	fix := v.becomes(literal, false)
	fix.Guess = true
	return fix
}

func amountRule(kind quantity.ErrorKind) string {
	switch kind {
	case quantity.UnitMissing, quantity.BasisMissing:
		return ruleUnitMissing
	case quantity.WrongKind:
		return ruleWrongUnit
	}
	return ruleUnreadable
}

// within is the place of bytes of the text inside the value; the whole value
// where they are none.
func (v *reading) within(start, end int) Span {
	source := v.source()
	if len(source) < 2 || source[0] != '"' || start >= end {
		return v.span
	}
	inner := source[1 : len(source)-1]
	first := v.span.Start + 1
	return Span{first + int32(sourceOffset(inner, start)), first + int32(sourceOffset(inner, end))}
}

// bareNumber tells of a number where an amount in quotes belongs.
func (v *reading) bareNumber() {
	number := v.source()
	p := Problem{Rule: ruleUnitMissing, Span: v.span,
		Message: number + " says no unit: write the amount with its unit in quotes, such as " + v.spec.example()}
	_, err := quantity.Parse(number, v.spec.Dims...)
	if err != nil && err.Kind == quantity.UnitMissing && len(err.Suggest) > 0 {
		for _, suggestion := range err.Suggest {
			p.Fixes = append(p.Fixes, v.guess(Quote(suggestion)))
		}
		p.Message = number + " says no unit: write " + orList(quoted(err.Suggest))
	}
	v.r.report(p)
}

// cutBelowRim is the length in "12 mm below rim".
func cutBelowRim(text string) (length string, ok bool) {
	text = strings.TrimRight(text, " ")
	for _, ending := range [...]string{" below rim", " below the rim"} {
		if length, ok = strings.CutSuffix(text, ending); ok {
			return strings.TrimRight(length, " "), true
		}
	}
	return "", false
}

// belowRim says whether the source of a fill is a distance below the rim.
func belowRim(written string) bool {
	_, ok := cutBelowRim(strings.TrimSuffix(written, `"`))
	return ok
}

func isDigits(text string) bool {
	return text != "" && strings.Trim(text, "0123456789") == ""
}

// figure tells of a text that is no number in the attribute's unit.
func (v *reading) figure(text string) held {
	if number, ok := v.spec.readFigure(text); ok {
		return v.keep(number)
	}
	p := Problem{Rule: ruleUnreadable, Span: v.span, Message: Quote(text) + " is not a number in " + v.spec.Unit + ": write for instance " + v.spec.example()}
	if number := strings.TrimSpace(text); isDigits(strings.Replace(number, ".", "", 1)) {
		with := number + " " + v.spec.Unit
		p.Rule, p.Message = ruleUnitMissing, number+" says no unit: write "+Quote(with)
		p.Fixes = []Fix{v.becomes(Quote(with), false)}
	}
	v.r.report(p)
	return held{}
}
