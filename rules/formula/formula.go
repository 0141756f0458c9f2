// Package formula works out the fingerprint of a recipe's formulation: a short
// code of what decides how its candles burn. Two recipes of the same code make
// the same candle, so that a test burn that was written down with the code
// speaks for the recipe until one of these changes:
//
//   - which waxes, fragrances, additives and dyes go in, and what proportion of
//     the wax each is, rounded to 0.1 % (dyes to 0.01 %); what is ordered by
//     volume enters in mL to 100 g of wax, so that a corrected density changes
//     nothing; the parts of a house blend;
//   - the toppings, and whether the flame can reach them;
//   - the vessel, its shape, size and fill, in whole mm and mL;
//   - the wick, its size, how many a candle has, and where they stand.
//
// Titles and prose, the size of the batch, step times and temperatures,
// densities and flash points are not in it. Stock is known by its key: an item
// that gets another key is another item, unless it is renamed together with
// what was burned of it (Renaming).
package formula

import (
	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// Of is the formulation of a view's recipe. The recipe must not be nil.
var Of = lint.NewFact("formula", compute)

// Formulation is what a recipe makes, as a code and as the list of what the
// code rests on.
type Formulation struct {
	State schema.State  // Known; Broken: a value cannot be read or names no stock, which another rule says; Absent: Lacks does not state Attr
	Lacks *schema.Block // may be nil: there is nothing to point at
	Attr  string
	Print         // of the recipe as a whole
	Each  []Print // of each vessel of batch.Batch.Vessels by itself; of a recipe of one vessel it is the whole
}

// Print is the fingerprint of what comes out of a recipe, or of one of its
// vessels.
type Print struct {
	Code       string // "2h00k8m-3f9a2c"; "" where it is not known
	Attributes []Attribute
}

// Attribute is one thing a code rests on.
type Attribute struct {
	Part  Part
	Name  string // "fragrance tide-and-thyme"
	Value string // as it entered the code: "5 % of wax"
}

// Known says whether there is a code.
func (f *Formulation) Known() bool { return f.State == schema.Known }

// Ask says whether there is a code, and where it is not because something is
// not written, has the pass say what could not be checked.
func (f *Formulation) Ask(p *lint.Pass) bool {
	if f.State == schema.Absent && f.Lacks != nil {
		p.CannotCheck(f.Lacks, f.Attr)
	}
	return f.Known()
}

// Counts says whether a test burn speaks for one vessel of the recipe, by its
// index: it was burned from this formulation, of the whole recipe or of this
// vessel, and does not name another vessel.
func (f *Formulation) Counts(burn *schema.Block, vessel int, b *batch.Batch) bool {
	return Speaks(burn, vessel, b) && f.Current(burn, vessel)
}

// Current says whether a test burn is of the formulation as it stands now, for
// one vessel by its index.
func (f *Formulation) Current(burn *schema.Block, vessel int) bool {
	code := burn.Get("formula").Text()
	return f.Known() && code != "" && (code == f.Code || vessel < len(f.Each) && code == f.Each[vessel].Code)
}

// Speaks says whether a test burn is about one vessel of the recipe, whatever
// its formulation: it names that vessel or none.
func Speaks(burn *schema.Block, vessel int, b *batch.Batch) bool {
	said := burn.Get("vessel")
	return !said.Known() || vessel >= len(b.Vessels) || said.Text() == b.Vessels[vessel].Block.Label
}

func compute(view *lint.View) *Formulation {
	b := batch.Of.In(view)
	c := collector{view: view}
	c.mixture(b)
	c.toppings(b, everyVessel)
	for i := range b.Vessels {
		c.vessel(&b.Vessels[i])
	}
	f := &Formulation{State: c.state, Lacks: c.lacks, Attr: c.attr, Print: Print{Attributes: c.list}}
	if f.Known() {
		f.Code = codeOf(f.Attributes)
	}
	f.Each = make([]Print, len(b.Vessels))
	if len(b.Vessels) == 1 {
		f.Each[0] = f.Print
		return f
	}
	for i := range b.Vessels {
		one := collector{view: view}
		one.mixture(b)
		one.toppings(b, b.Vessels[i].Block.Label)
		one.vessel(&b.Vessels[i])
		f.Each[i] = Print{Attributes: one.list}
		if f.Known() {
			f.Each[i].Code = codeOf(one.list)
		}
	}
	return f
}
