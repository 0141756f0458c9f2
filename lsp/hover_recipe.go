package lsp

import (
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// recipeCard is a recipe in a few sentences: what it makes and for whom, what
// goes in, how far it goes, how it burned.
func (h *here) recipeCard(b *schema.Block) []string {
	f := figures{here: h, view: h.view(b)}
	f.batch = batch.Of.In(f.view)
	what := f.batch.Makes
	if what == "" {
		what = "candle"
	}
	head := "**" + h.title(b) + "**, " + article(what) + " for " + f.view.MadeFor.String()
	var markets []string
	for _, m := range f.view.Markets() {
		markets = append(markets, "the "+m.Text)
	}
	if f.view.MadeFor.String() == "sale" && len(markets) > 0 {
		head += " in " + joined(markets)
	}
	says := []string{
		head + ".",
		spaced(inOne(f.yieldText(), known(f.batch.Total, f.weighedIn)), inOne(f.loadText())),
		inOne(f.burnText()),
		h.usedIn(b),
	}
	return append(says, f.hazards(nil)...)
}

func (f figures) weighedIn(total quantity.Rat) string { return f.grams(total) + " weighed in" }
