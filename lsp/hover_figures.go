package lsp

import (
	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// figures is a recipe with what is worked out of it: hovers, hints and lenses
// tell of it.
type figures struct {
	*here
	view  *lint.View
	batch *batch.Batch
}

// figuresOf is the figures of the recipe that a block lies in. False: it lies
// in none.
func (h *here) figuresOf(b *schema.Block) (figures, bool) {
	recipe := recipeOf(b)
	if recipe == nil {
		return figures{}, false
	}
	view := h.view(recipe)
	return figures{h, view, batch.Of.In(view)}, true
}

// both is a figure in a base unit in both systems, the shop's first.
func (f figures) both(base quantity.Rat, unit *quantity.Unit) string {
	return quantity.FromBase(base, unit).Both(f.view.Units())
}

func (f figures) grams(r quantity.Rat) string   { return f.both(r, quantity.Gram) }
func (f figures) volume(r quantity.Rat) string  { return f.both(r, quantity.Milliliter) }
func (f figures) length(r quantity.Rat) string  { return f.both(r, quantity.Millimeter) }
func (f figures) degrees(r quantity.Rat) string { return f.both(r, quantity.Celsius) }
func (f figures) apart(r quantity.Rat) string   { return f.both(r, quantity.CelsiusDegrees) }

// ingredient is the ingredient that a block of the recipe is, or nil.
func (f figures) ingredient(b *schema.Block) *batch.Ingredient {
	for _, list := range [][]batch.Ingredient{f.batch.Waxes, f.batch.Fragrances, f.batch.Dyes, f.batch.Additives} {
		for i := range list {
			if list[i].Block == b {
				return &list[i]
			}
		}
	}
	return nil
}

// vessel is the index of the vessel that a block of the recipe is, or -1.
func (f figures) vessel(b *schema.Block) int {
	for i := range f.batch.Vessels {
		if f.batch.Vessels[i].Block == b {
			return i
		}
	}
	return -1
}

// stepOf is the step that a block of the recipe is, or nil.
func (f figures) stepOf(b *schema.Block) *batch.Step {
	for i := range f.batch.Steps {
		if f.batch.Steps[i].Block == b {
			return &f.batch.Steps[i]
		}
	}
	return nil
}

// known is a text made of a figure, "" where the figure is not known.
func known(f batch.Figure, text func(quantity.Rat) string) string {
	if !f.Known() {
		return ""
	}
	return text(f.Value)
}

// candles is a number of what a vessel makes: "2 pillars", "1 jar".
func candles(n int, makes string) string {
	word := makes
	if word == "" {
		word = "candle"
	}
	if n != 1 {
		word += "s"
	}
	return quantity.Int(int64(n)).Decimal(0) + " " + word
}
