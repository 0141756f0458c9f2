package quantity

// Single is an amount that is no range, without the text it was read from: small and without a pointer, to keep very
// many of them.
type Single struct {
	n, d               int64
	unit, last, places uint8
}

// Single is q without its text. It is false for a range, and for the rare number that does not fit.
func (q Quantity) Single() (Single, bool) {
	if q.high != nil || q.low.big != nil || q.unitStart > 0 {
		return Single{}, false
	}
	return Single{n: q.low.n, d: q.low.d, unit: q.lowUnit, last: q.lowLast, places: q.lowPlaces}, true
}

// Base is the amount in the base unit of its dimension, and Basis what a
// proportion is of: what Quantity says, without its text.
func (s Single) Base() Rat    { return Rat{n: s.n, d: s.d} }
func (s Single) Basis() Basis { return s.Quantity("").Basis() }

// Quantity is the amount with the text that it was read from, or "".
func (s Single) Quantity(text string) Quantity {
	return Quantity{low: Rat{n: s.n, d: s.d}, text: text,
		lowUnit: s.unit, lowLast: s.last, lowPlaces: s.places,
		highUnit: s.unit, highLast: s.last, highPlaces: s.places}
}
