// Package rules lists what the trade knows: every built-in rule, in the order
// of the handbook.
package rules

import (
	"slices"

	"wickrule/lint"
	"wickrule/rules/burns"
	"wickrule/rules/formulation"
	"wickrule/rules/heat"
	"wickrule/rules/house"
	"wickrule/rules/labels"
	"wickrule/rules/setting"
	"wickrule/rules/vessel"
)

//go:generate go run ./rulebook

// All is every built-in rule, in handbook order.
func All() []*lint.Rule {
	return slices.Concat(
		formulation.Rules(),
		vessel.Rules(),
		heat.Rules(),
		setting.Rules(),
		labels.Rules(),
		burns.Rules(),
		house.Rules(),
	)
}
