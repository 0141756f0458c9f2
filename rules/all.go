// Package rules lists what the trade knows: every built-in rule, in the order
// of the handbook.
package rules

import (
	"slices"
	"sync"

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
func Own(shop *lint.Shop) []*lint.Rule {
	var own []*lint.Rule
	for _, r := range shoprule.For(shop) {
		if !builtIn()[r.Name] { // else its name is told where it is written
			own = append(own, r)
		}
	}
	return own
}

// builtIn is the names of All.
var builtIn = sync.OnceValue(func() map[string]bool {
	names := map[string]bool{}
	for _, r := range All() {
		names[r.Name] = true
	}
	return names
})

// For is every rule that a shop is checked by: the built-in ones and its own.
func For(shop *lint.Shop) []*lint.Rule { return append(All(), Own(shop)...) }
