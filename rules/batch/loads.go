package batch

import "wickrule/schema/quantity"

// TotalFromWax turns a proportion of the wax, a = part / wax, into one of the
// total, t = part / (wax + part) = a / (1 + a), where nothing else is weighed
// in: 8 % of wax is 7.407 % of total. Of several ingredients it is the sum
// that is turned, never each by itself.
func TotalFromWax(ofWax quantity.Rat) quantity.Rat {
	t, ok := ofWax.Quo(one.Add(ofWax))
	if !ok { // only of -100 %
		return none
	}
	return t
}

// WaxFromTotal turns a proportion of the total into one of the wax,
// a = t / (1 - t), where nothing else is weighed in: 8 % of total is 8.696 %
// of wax. False: 100 % of total or more has no wax beside it.
func WaxFromTotal(ofTotal quantity.Rat) (quantity.Rat, bool) {
	if !ofTotal.Less(one) {
		return none, false
	}
	return ofTotal.Quo(one.Sub(ofTotal))
}
