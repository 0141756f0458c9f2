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
	"wickrule/rules/shoprule"
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
		shoprule.Rules(),
	)
}

// Own is the rules that a shop has written for itself, those that can be read.
func Own(shop *lint.Shop) []*lint.Rule { return shoprule.For(shop) }

// For is every rule that a shop is checked by: the built-in ones and its own.
func For(shop *lint.Shop) []*lint.Rule { return append(All(), Own(shop)...) }
