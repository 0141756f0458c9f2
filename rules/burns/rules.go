// Package burns holds the rules about test burns: whether this candle has been
// burned, by whom records say, before it is sold.
package burns

import "wickrule/lint"

// Group is the handbook's heading for these rules.
const Group = "Burn tests"

// Rules are the rules about test burns, in handbook order.
func Rules() []*lint.Rule {
	return []*lint.Rule{
		TestBurnMissing, TestBurnNotToTheEnd, TestBurnStale, TestBurnUnsafe, TestBurnDoubtful,
	}
}
