// Package rules lists what the trade knows: every built-in rule, in the order
// of the handbook.
package rules

import "wickrule/lint"

// All is every built-in rule, in handbook order.
func All() []*lint.Rule {
	return nil
}
