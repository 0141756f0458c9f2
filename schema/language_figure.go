package schema

import (
	"strconv"
	"strings"

	"wickrule/schema/quantity"
)

// Figure is the number of a known value of type Figure, in its spec's Unit; 0
// otherwise.
func (v Value) Figure() quantity.Rat {
	if v.has(other) {
		r, _ := v.Block.File.others[v.attr.held.at].(quantity.Rat)
		return r
	}
	return quantity.Rat{}
}

// readFigure reads a number with the attribute's one unit behind it. How the
// unit is set out does not matter: W/mK, W/(m K) and W/(m·K) are the same. It
// is false where the number or the unit is another.
func (s *AttrSpec) readFigure(text string) (quantity.Rat, bool) {
	text = strings.TrimSpace(text)
	end := 0
	for end < len(text) && (text[end] == '.' || '0' <= text[end] && text[end] <= '9') {
		end++
	}
	if plainUnit(text[end:]) != s.Unit {
		return quantity.Rat{}, false
	}
	whole, decimals, _ := strings.Cut(text[:end], ".")
	digits := whole + decimals
	if len(digits) > 15 { // keeps the digits and the power of ten inside an int64
		return quantity.Rat{}, false
	}
	n, err := strconv.ParseInt(digits, 10, 64)
	if err != nil {
		return quantity.Rat{}, false
	}
	d := int64(1)
	for range decimals {
		d *= 10
	}
	return quantity.NewRat(n, d), true
}

// plainUnit leaves out what only sets a unit apart.
func plainUnit(text string) string {
	return strings.Map(func(r rune) rune {
		switch r {
		case ' ', '\u00a0', '\u202f', '(', ')', '·', '*':
			return -1
		}
		return r
	}, text)
}
