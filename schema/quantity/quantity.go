package quantity

// exact marks a number that was written as a fraction, or computed: it has no last digit.
const exact = 255

// Quantity is one amount, or a range of them, with its unit and the text it was read from. It is small, compared by
// value of its ends, and never changed. The zero value is 0 of nothing.
type Quantity struct {
	low  Rat    // in base units
	high *Rat   // in base units; nil where it is no range
	text string // as written, "" where computed

	lowUnit, highUnit     uint8
	lowLast, highLast     uint8 // the unit of the last number of a compound, for HalfDigit
	lowPlaces, highPlaces uint8 // decimal places of the last number, or exact
	lowEnd, highStart     uint8 // where the ends of a range stand in text
	unitStart             uint8 // where the unit both ends share begins in text, 0 where each has its own
}

// Of is value in that unit.
func Of(value Rat, unit *Unit) Quantity {
	return FromBase(value.Mul(unit.Factor).Add(unit.Offset), unit)
}

// FromBase is a magnitude in base units (g, mL, mm, °C, K, s, ratio, g/mL, number), shown in unit.
func FromBase(base Rat, unit *Unit) Quantity {
	return Quantity{low: base, lowUnit: unit.id, highUnit: unit.id, lowLast: unit.id, highLast: unit.id, lowPlaces: exact, highPlaces: exact}
}

// Unit is the unit of the low end; of a compound ("2 lb 8 oz") the largest. Never nil: the zero Quantity has a
// unit without symbol or dimension.
func (q Quantity) Unit() *Unit { return &table[q.lowUnit] }

// Dim is what kind of thing is measured.
func (q Quantity) Dim() Dimension { return table[q.lowUnit].Dim }

// Basis is what a proportion counts: of wax, of total; NoBasis for everything else.
func (q Quantity) Basis() Basis { return table[q.lowUnit].Basis }

// Base is the low end in base units: g, mL, mm, °C, K (differences), s, ratio (8 % is 2/25), g/mL, number.
func (q Quantity) Base() Rat { return q.low }

// Number is the low end in its own unit: 5/2 for "2 lb 8 oz", whose unit is the pound.
func (q Quantity) Number() Rat { return table[q.lowUnit].number(q.low) }

// number is base units in u. No factor is 0.
func (u *Unit) number(base Rat) Rat {
	n, _ := base.Sub(u.Offset).Quo(u.Factor)
	return n
}

// IsRange says whether there are two ends.
func (q Quantity) IsRange() bool { return q.high != nil }

// Low is the low end alone, with its own written text; a quantity that is no range is its own low end.
func (q Quantity) Low() Quantity {
	if q.high == nil {
		return q
	}
	q.high = nil
	q.highUnit, q.highLast, q.highPlaces = q.lowUnit, q.lowLast, q.lowPlaces
	if q.unitStart == 0 {
		q.text = trim(q.text[:q.lowEnd])
		q.lowEnd, q.highStart = 0, 0
	}
	return q // with a shared unit, lowEnd and unitStart say which two pieces of text are its own
}

// High is the high end alone, with its own written text; a quantity that is no range is its own high end.
func (q Quantity) High() Quantity {
	if q.high == nil {
		return q
	}
	return Quantity{
		low: *q.high, text: trimEnd(q.text[q.highStart:]),
		lowUnit: q.highUnit, lowLast: q.highLast, lowPlaces: q.highPlaces,
		highUnit: q.highUnit, highLast: q.highLast, highPlaces: q.highPlaces,
	}
}

// Written is the text as written, "" where the quantity was computed.
func (q Quantity) Written() string {
	if q.high == nil && q.unitStart > 0 {
		return trim(q.text[:q.lowEnd]) + trimEnd(q.text[q.unitStart:])
	}
	return q.text
}

// Comparable says whether q and o have an order: the same dimension, for proportions the same basis, for counts the
// same things counted.
func (q Quantity) Comparable(o Quantity) bool { return q.Unit().measures(o.Unit()) }

// measures says whether u and v measure the same.
func (u *Unit) measures(v *Unit) bool {
	return u.Dim == v.Dim && u.Basis == v.Basis && (u.Dim != Count || u == v)
}

// Cmp compares the low ends exactly: -1, 0 or 1. Where q and o are not Comparable it panics: that is a mistake in
// the program, and a silent answer could pass what must not pass.
func (q Quantity) Cmp(o Quantity) int {
	if !q.Comparable(o) {
		panic("quantity: a " + q.name() + " compared with a " + o.name())
	}
	return q.low.Cmp(o.low)
}

// name is the dimension with its basis, "proportion of wax".
func (q Quantity) name() string {
	if b := q.Basis(); b != NoBasis {
		return q.Dim().String() + " " + b.String()
	}
	return q.Dim().String()
}

// Within says whether the whole of q lies inside limits, end points included. It compares as Cmp does.
func (q Quantity) Within(limits Quantity) bool {
	return q.Low().Cmp(limits.Low()) >= 0 && q.High().Cmp(limits.High()) <= 0
}

// HalfDigit is half of the last digit written of the low end, in base units: for "36.5 oz" half of 0.1 oz in g. A
// whole number counts by its unit; a fraction, and anything computed, is exact: 0.
func (q Quantity) HalfDigit() Rat {
	if q.lowPlaces == exact {
		return Rat{}
	}
	half, _ := table[q.lowLast].Factor.Quo(powerOfTen(int(q.lowPlaces)).Mul(Int(2)))
	return half
}

// In is q in another unit that measures the same, both ends, exactly; the written text is not kept. Any other unit
// is a mistake in the program and panics.
func (q Quantity) In(u *Unit) Quantity {
	if !q.Unit().measures(u) {
		panic("quantity: a " + q.name() + " in " + u.Symbol)
	}
	c := FromBase(q.low, u)
	c.high = q.high
	return c
}
