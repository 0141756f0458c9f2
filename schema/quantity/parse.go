package quantity

import "unicode/utf8"

// Parse reads text as a person writes it. accept are the dimensions allowed at this place; none given allows all.
// Temperature units serve a Difference where only that is accepted.
func Parse(text string, accept ...Dimension) (Quantity, *Error) {
	q, err := read(text, accept)
	if err != nil {
		// A copy, so that accept stays off the heap where nothing is wrong.
		advise(err, text, append([]Dimension(nil), accept...))
	}
	return q, err
}

// end is one end of a range, or the whole of a quantity that is none.
type end struct {
	first       number
	value       Rat   // the first number, or the sum of a compound in base units
	unit, last  uint8 // of the first and the last number; noUnit where the number is bare
	places      uint8 // of the last number
	parts       int
	unitStart   int // of the first unit
	start, stop int
}

// read is Parse without words: an error has its kind and its place.
func read(text string, accept []Dimension) (Quantity, *Error) {
	if len(text) > longestText {
		return Quantity{}, &Error{Kind: TooLong, End: len(text)}
	}
	at := skipSpaces(text, 0)
	if at == len(text) {
		return Quantity{}, &Error{Kind: Empty, End: len(text)}
	}
	if !startsNumber(text, at) {
		return Quantity{}, &Error{Kind: NoNumber, Start: at, End: len(text)}
	}
	low, err := readEnd(text, at)
	if err != nil {
		return Quantity{}, err
	}
	at = skipSpaces(text, low.stop)
	if at == len(text) {
		return single(text, low, accept)
	}
	after := separatorEnd(text, at)
	if after == at { // ".5" right behind a bare number
		return Quantity{}, &Error{Kind: NumberUnreadable, Start: low.start, End: len(text)}
	}
	at = skipSpaces(text, after)
	if !startsNumber(text, at) {
		return Quantity{}, &Error{Kind: NoNumber, Start: low.stop, End: len(text)}
	}
	high, err := readEnd(text, at)
	if err != nil {
		return Quantity{}, err
	}
	if skipSpaces(text, high.stop) != len(text) {
		return Quantity{}, &Error{Kind: NumberUnreadable, Start: low.start, End: len(text)}
	}
	return ranged(text, low, high, accept)
}

// readEnd reads a number and its unit, and further ones as long as they follow: "2 lb 8 oz".
func readEnd(text string, at int) (end, *Error) {
	n, err := readNumber(text, at)
	e := end{first: n, value: n.value, places: n.places, parts: 1, start: n.start, stop: n.end}
	if err != nil {
		return e, err
	}
	e.unitStart = skipSpaces(text, n.end)
	stop := unitEnd(text, e.unitStart)
	if stop == e.unitStart {
		return e, nil
	}
	e.unit = unitSpelled(text[e.unitStart:stop])
	if e.unit == noUnit {
		return e, &Error{Kind: UnitUnknown, Start: e.unitStart, End: stop}
	}
	e.last, e.stop = e.unit, stop
	for {
		at := skipSpaces(text, e.stop)
		if !startsUnsigned(text, at) {
			return e, nil
		}
		if err := readMore(text, at, &e); err != nil {
			return e, err
		}
	}
}

// readMore reads one more number and unit of a compound.
func readMore(text string, at int, e *end) *Error {
	n, err := readNumber(text, at)
	if err != nil {
		return err
	}
	from := skipSpaces(text, n.end)
	stop := unitEnd(text, from)
	if stop == from {
		return &Error{Kind: UnitMissing, Start: n.start, End: n.end}
	}
	id := unitSpelled(text[from:stop])
	if id == noUnit {
		return &Error{Kind: UnitUnknown, Start: from, End: stop}
	}
	above, u := &table[e.last], &table[id]
	if !compounds(u.Dim) || u.Dim != above.Dim || u.System != above.System || !u.Factor.Less(above.Factor) {
		return &Error{Kind: MixedUnits, Start: e.start, End: stop}
	}
	if e.parts == 1 {
		e.value = e.value.Mul(above.Factor)
	}
	e.value = e.value.Add(n.value.Mul(u.Factor))
	e.parts++
	e.last, e.places, e.stop = id, n.places, stop
	return nil
}

// compounds says whether people write amounts of a dimension in two units, large and small.
func compounds(d Dimension) bool { return d == Weight || d == Volume || d == Length || d == Time }

// single is the quantity of one end.
func single(text string, e end, accept []Dimension) (Quantity, *Error) {
	if e.unit == noUnit {
		return Quantity{}, &Error{Kind: UnitMissing, Start: e.start, End: e.stop}
	}
	base, err := e.settle(accept)
	if err != nil {
		return Quantity{}, err
	}
	return Quantity{low: base, text: text,
		lowUnit: e.unit, lowLast: e.last, lowPlaces: e.places,
		highUnit: e.unit, highLast: e.last, highPlaces: e.places}, nil
}

// ranged is the quantity of two ends, of which the low one may share the unit of the high one.
func ranged(text string, low, high end, accept []Dimension) (Quantity, *Error) {
	if high.unit == noUnit {
		from := high.start
		if low.unit == noUnit {
			from = low.start
		}
		return Quantity{}, &Error{Kind: UnitMissing, Start: from, End: high.stop}
	}
	// "5 to 8 % of wax", and "5 % to 8 % of wax" too, which says the basis once.
	shared := low.unit == noUnit || low.unit == percent && (high.unit == percentOfWax || high.unit == percentOfTotal)
	if shared && high.parts > 1 { // "30 to 1 h 45 min": thirty what?
		return Quantity{}, &Error{Kind: UnitMissing, Start: low.start, End: low.stop}
	}
	if shared {
		low.unit, low.last, low.stop = high.unit, high.unit, low.first.end
	}
	a, b := &table[low.unit], &table[high.unit]
	if !a.measures(b) {
		return Quantity{}, &Error{Kind: MixedUnits, Start: low.start, End: high.stop}
	}
	from, err := low.settle(accept)
	if err != nil {
		if err.Kind != Negative {
			err.End = high.stop // both ends are of the wrong kind
		}
		return Quantity{}, err
	}
	to, err := high.settle(accept)
	if err != nil {
		return Quantity{}, err
	}
	if !from.Less(to) {
		return Quantity{}, &Error{Kind: RangeDescends, Start: low.start, End: high.stop}
	}
	q := Quantity{low: from, high: &to, text: text,
		lowUnit: low.unit, lowLast: low.last, lowPlaces: low.places,
		highUnit: high.unit, highLast: high.last, highPlaces: high.places,
		lowEnd: uint8(low.stop), highStart: uint8(high.start)}
	if shared {
		q.unitStart = uint8(high.first.end)
	}
	return q, nil
}

// settle decides which unit an end is in at a place that accepts these dimensions, and gives its base units.
func (e *end) settle(accept []Dimension) (Rat, *Error) {
	u := &table[e.unit]
	if u.Dim == Temperature && !accepts(accept, Temperature) && accepts(accept, Difference) {
		u = u.AsDifference()
		e.unit, e.last = u.id, u.id
	}
	if !accepts(accept, u.Dim) {
		kind := WrongKind
		if u.Dim == Share && accepts(accept, Proportion) {
			kind = BasisMissing
		}
		return Rat{}, &Error{Kind: kind, Start: e.start, End: e.stop, Got: u.Dim}
	}
	if e.first.negative && u.Dim != Temperature {
		return Rat{}, &Error{Kind: Negative, Start: e.first.start, End: e.first.end, Got: u.Dim}
	}
	if e.parts > 1 {
		return e.value, nil
	}
	base := e.value.Mul(u.Factor)
	if u.Offset.IsZero() {
		return base, nil
	}
	return base.Add(u.Offset), nil
}

func accepts(accept []Dimension, d Dimension) bool {
	for _, a := range accept {
		if a == d {
			return true
		}
	}
	return len(accept) == 0
}

// unitEnd is where the unit that starts at i ends: at the next number, at the word or dash of a range, or with the text.
func unitEnd(text string, i int) int {
	stop := i
	for i < len(text) {
		if separatorEnd(text, i) > i || startsUnsigned(text, i) && !isPower(text, i) {
			break
		}
		c, w := rune(text[i]), 1
		if c >= utf8.RuneSelf {
			c, w = utf8.DecodeRuneInString(text[i:])
		}
		i += w
		if !isSpace(c) {
			stop = i
		}
	}
	return stop
}

// isPower says whether the digit at i belongs to the unit before it: the 3 of cm3, in^3, kg/m3.
func isPower(text string, i int) bool {
	if text[i] != '3' || i == 0 || isDigit(text, i+1) || i+1 < len(text) && (text[i+1] == '.' || text[i+1] == '/') {
		return false
	}
	if text[i-1] == '^' {
		return true
	}
	start := i
	for start > 0 && isLetter(rune(text[start-1])) {
		start--
	}
	switch text[start:i] {
	case "cm", "in", "m", "CM", "IN", "Cm", "In", "M":
		return true
	}
	return false
}

// separatorEnd is the end of the word or dash that makes a range, where one stands at i, and else i.
func separatorEnd(text string, i int) int {
	switch text[i] {
	case 't', 'T':
		if i+1 >= len(text) || text[i+1] != 'o' && text[i+1] != 'O' || i > 0 && isLetter(rune(text[i-1])) ||
			i+2 < len(text) && isLetter(rune(text[i+2])) {
			return i
		}
		return i + 2
	case '-':
		return dashEnd(text, i, 1)
	case "–"[0]:
		if hasAt(text, i, "–") || hasAt(text, i, "—") {
			return dashEnd(text, i, len("–"))
		}
	}
	return i
}

// dashEnd is the end of a dash that a number, or nothing at all, follows; the one of "fl-oz" is part of its unit.
func dashEnd(text string, i, width int) int {
	next := skipSpaces(text, i+width)
	if next == len(text) || startsNumber(text, next) {
		return i + width
	}
	return i
}

func hasAt(text string, i int, what string) bool {
	return len(text)-i >= len(what) && text[i:i+len(what)] == what
}
