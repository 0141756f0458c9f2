package lint

import (
	"slices"

	"wickrule/schema"
	"wickrule/schema/quantity"
)

// View is one recipe, or one file, and what it leans on. Every look at the
// shop from a check goes through it and is noted, so that it is known what the
// findings rest on. Recipe is nil in the check of a rule about files.
type View struct {
	Recipe  *schema.Block
	File    *schema.File // the recipe's, or the file that is looked at
	MadeFor MadeFor
	shop    *Shop
	today   string
	facts   []fact
	notes   *[]look // nil: nobody wants to know
}

type fact struct {
	of    any // the *Fact
	value any
}

// NewView looks at one recipe of a shop on a day ("2026-10-04").
func NewView(shop *Shop, recipe *schema.Block, today string) *View {
	return &View{shop: shop, Recipe: recipe, File: recipe.File, MadeFor: parseMadeFor(recipe.Get("made_for").Text()), today: today}
}

// NewFileView looks at one file of a shop on a day.
func NewFileView(shop *Shop, file *schema.File, today string) *View {
	return &View{shop: shop, File: file, today: today}
}

// Of is a look at another recipe of the shop. What is looked at through it is
// noted with what is looked at here; so is the recipe, if it was found by
// Stock.
func (v *View) Of(recipe *schema.Block) *View {
	other := NewView(v.shop, recipe, v.today)
	other.notes = v.notes
	return other
}

// Laid is a look at each recipe of a file that is laid over the shop, in order.
// What is looked at through them is noted with what is looked at here: what
// the file brings along itself never changes without it.
func (v *View) Laid(over *schema.File) []*View {
	shop := v.shop.With(over)
	var views []*View
	for _, b := range over.Blocks {
		if b.Is("recipe") {
			view := NewView(shop, b, v.today)
			view.notes = v.notes
			views = append(views, view)
		}
	}
	return views
}

// look is something of the shop that was looked at, there or not.
type look struct {
	at   lookedAt
	kind string
	key  string
}

// lookedAt is what can be looked at. The shop block, the list of rules and
// today are not noted: when they change everything is checked again.
type lookedAt uint8

const (
	aBlock    lookedAt = iota // the block of that kind and key that counts
	aKey                      // whether there is a block of that kind and key
	sameKey                   // all blocks of that kind and key
	aShelf                    // all blocks of a kind
	allKeys                   // the keys of a kind
	burnsOf                   // the test burns written elsewhere for the recipe of that key
	trialsOf                  // the trials of a stock item of that key
	usesOfKey                 // whether anything names the block of that kind and key
	anyBroken                 // whether some file did not parse whole
	anyRecipe                 // whether there are recipes
	aWhole                    // whether the file of that name parsed whole
)

func (v *View) note(l look) {
	if v.notes != nil && !slices.Contains(*v.notes, l) {
		*v.notes = append(*v.notes, l)
	}
}

// Shop is the whole shop, for making fixes. A check asks the View's own
// methods instead: what it learns from the shop itself is not noted.
func (v *View) Shop() *Shop { return v.shop }

// Stock is the block of that kind with that key. False: there is none, which
// another rule says.
func (v *View) Stock(kind, key string) (*schema.Block, bool) {
	v.note(look{aBlock, kind, key})
	b := v.shop.Find(kind, key)
	return b, b != nil
}

// Leads says whether the reference names something that is there.
func (v *View) Leads(r Reference) bool {
	for _, kind := range r.Kinds {
		v.note(look{aKey, kind, r.Key})
		if v.shop.Find(kind, r.Key) != nil {
			return true
		}
	}
	return false
}

// Same lists every block of that kind with that key, in the order of files and
// places. The first is the one that counts.
func (v *View) Same(kind, key string) []*schema.Block {
	v.note(look{sameKey, kind, key})
	return v.shop.Same(kind, key)
}

// Shelf lists the blocks of a kind that count, sorted by key.
func (v *View) Shelf(kind string) []*schema.Block {
	v.note(look{aShelf, kind, ""})
	return v.shop.Shelf(kind)
}

// Keys lists the keys of several kinds, sorted.
func (v *View) Keys(kinds ...string) []string {
	for _, kind := range kinds {
		v.note(look{allKeys, kind, ""})
	}
	return v.shop.KeysOf(kinds)
}

// Used says whether anything in the shop names a block.
func (v *View) Used(b *schema.Block) bool {
	v.note(look{usesOfKey, b.Name(), b.Label})
	recipes, others := v.shop.Uses(b)
	return recipes+others > 0
}

// AllWhole says whether every file of the shop parsed whole.
func (v *View) AllWhole() bool {
	v.note(look{at: anyBroken})
	return v.shop.broken == 0
}

// AnyRecipe says whether there are recipes in the shop.
func (v *View) AnyRecipe() bool {
	v.note(look{at: anyRecipe})
	return len(v.shop.recipes.pages) > 0
}

// Config is the shop block that counts, or nil.
func (v *View) Config() *schema.Block { return v.shop.Config }

// Tuned says whether the shop changes how loud a rule speaks.
func (v *View) Tuned(rule string) bool { return v.shop.Tune(rule) != nil }

// Units is the system the shop reads first.
func (v *View) Units() quantity.System { return v.shop.Units() }

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
	v.note(look{burnsOf, "", v.Recipe.Label})
	var burns []*schema.Block
	for b := range v.Recipe.Each("test_burn") {
		burns = append(burns, b)
	}
	return append(burns, v.shop.burns.burnsOf(v.Recipe.Label)...)
}

// Trials of a stock key.
func (v *View) Trials(key string) []*schema.Block {
	v.note(look{trialsOf, "", key})
	var trials []*schema.Block
	for _, t := range v.shop.Trials() {
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
