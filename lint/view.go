package lint

import (
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// View is one recipe and what it leans on. Every look at the shop from a
// recipe's check goes through it, so that it is known what a recipe's
// findings rest on. Recipe is nil in the check of a rule about the shop.
type View struct {
	Recipe  *schema.Block
	MadeFor MadeFor
	shop    *Shop
	today   string
	facts   []fact
}

type fact struct {
	of    any // the *Fact
	value any
}

// NewView looks at one recipe of a shop on a day ("2026-10-04").
func NewView(shop *Shop, recipe *schema.Block, today string) *View {
	v := &View{shop: shop, Recipe: recipe, today: today}
	if recipe != nil {
		v.MadeFor = parseMadeFor(recipe.Get("made_for").Text())
	}
	return v
}

// Shop is the whole shop, for rules about it and for making fixes. A check
// about a recipe asks the View's own methods instead.
func (v *View) Shop() *Shop { return v.shop }

// Stock is the block of that kind with that key. False: there is none, which
// another rule says.
func (v *View) Stock(kind, key string) (*schema.Block, bool) {
	b := v.shop.Find(kind, key)
	return b, b != nil
}

// Tuned says whether the shop changes how loud a rule speaks.
func (v *View) Tuned(rule string) bool { return v.shop.Tune(rule) != nil }

// Units is the system the shop reads first.
func (v *View) Units() quantity.System { return v.shop.units() }

// Room is the usual workshop temperature.
func (v *View) Room() quantity.Quantity { return v.shop.room() }

// Today is the local date, "2026-10-04".
func (v *View) Today() string { return v.today }

// Markets are where the recipe is sold: as the recipe says, else the shop,
// else the US. An item from the default has an empty span.
func (v *View) Markets() []schema.Item {
	if m := v.Recipe.Get("markets"); m.State() != schema.Absent {
		return m.Items()
	}
	return v.shop.markets()
}

// SoldIn says whether one of the recipe's markets is the one named.
func (v *View) SoldIn(market string) bool {
	for _, item := range v.Markets() {
		if item.Text == market {
			return true
		}
	}
	return false
}

// TestBurns are the recipe's test burns: those written in it, then those
// written elsewhere for it.
func (v *View) TestBurns() []*schema.Block {
	var burns []*schema.Block
	for b := range v.Recipe.Each("test_burn") {
		burns = append(burns, b)
	}
	return append(burns, v.shop.burns[v.Recipe.Label]...)
}

// Trials of a stock key.
func (v *View) Trials(key string) []*schema.Block {
	var trials []*schema.Block
	for _, t := range v.shop.Trials {
		if t.Get("tried").Text() == key {
			trials = append(trials, t)
		}
	}
	return trials
}

// Fact is a named pure function of a View, computed once for each View.
type Fact[T any] struct {
	Name    string
	compute func(*View) T
}

// NewFact names a function.
func NewFact[T any](name string, compute func(*View) T) *Fact[T] {
	return &Fact[T]{Name: name, compute: compute}
}

// In is the fact for this view, computed at first use.
func (f *Fact[T]) In(v *View) T {
	for i := range v.facts {
		if v.facts[i].of == any(f) {
			return v.facts[i].value.(T)
		}
	}
	value := f.compute(v)
	v.facts = append(v.facts, fact{f, value})
	return value
}
