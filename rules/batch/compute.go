package batch

import (
	"wickrule/lint"
	"wickrule/schema/quantity"
)

// compute works out the figures, each from those before it.
func compute(view *lint.View) *Batch {
	b := &Batch{Recipe: view.Recipe}
	b.listVessels(view)
	b.Makes = makes(b.Recipe, b.Vessels)
	b.listSteps()
	b.weighIn(view)
	b.density = b.average("density", quantity.GramPerMilliliter, true)
	b.shrinkage = b.average("shrinkage", quantity.Percent, false)
	b.fillVessels()
	for _, inner := range b.Recipe.Blocks() {
		if inner.Name() == "topping" {
			b.Toppings = append(b.Toppings, inner)
		}
	}
	return b
}
