package batch

import (
	"wickrule/lint"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// weighIn fills in the ingredients, what they weigh and what share each is.
func (b *Batch) weighIn(view *lint.View) {
	// One list of all, sorted by kind; each kind of the batch is a piece of it.
	var ends [kinds]int
	for _, inner := range b.Recipe.Blocks() {
		if kind := kindOf(inner); kind < kinds {
			ends[kind]++
		}
	}
	for kind := 1; kind < kinds; kind++ {
		ends[kind] += ends[kind-1]
	}
	all := make([]Ingredient, ends[kinds-1])
	next := [kinds]int{0, ends[0], ends[1], ends[2]}
	for _, inner := range b.Recipe.Blocks() {
		if kind := kindOf(inner); kind < kinds {
			all[next[kind]].read(view, inner)
			next[kind]++
		}
	}
	others := ends[0]
	b.Waxes = all[:ends[0]:ends[0]]
	b.Fragrances = all[ends[0]:ends[1]:ends[1]]
	b.Dyes = all[ends[1]:ends[2]:ends[2]]
	b.Additives = all[ends[2]:]

	b.sumWax()
	b.sumTotal(all[others:])
	for i := range all {
		b.share(&all[i], i < others)
	}
	b.FragranceOfWax, b.FragranceOfTotal = known(none), known(none)
	for i := range b.Fragrances {
		b.FragranceOfWax = b.FragranceOfWax.plus(b.Fragrances[i].OfWax)
		b.FragranceOfTotal = b.FragranceOfTotal.plus(b.Fragrances[i].OfTotal)
	}
}

// kinds is how many kinds of ingredients there are.
const kinds = 4

// kindOf is the place of a block among the kinds of ingredients; kinds: it is
// none.
func kindOf(block *schema.Block) int {
	switch block.Name() {
	case "wax":
		return 0
	case "fragrance":
		return 1
	case "dye":
		return 2
	case "additive":
		return 3
	}
	return kinds
}

// read fills in how much is said of a block, without the wax.
func (in *Ingredient) read(view *lint.View, block *schema.Block) {
	kind := block.Name()
	in.Block, in.Said = block, block.Get("weight")
	in.Stock, _ = view.Stock(kind, block.Label)
	if kind == "wax" {
		in.Weight = statedAs(in.Said)
		return
	}
	load := block.Get("load")
	if kind == "dye" && in.Said.Absent() {
		if amount := block.Get("amount"); !amount.Absent() {
			in.Said = amount
			in.ByEye = amount.Known() && !amount.IsAmount()
		}
	}
	if in.Said.Absent() {
		in.Said = load
		if load.Absent() {
			in.Weight = lacking(block, missing(kind))
		}
		return
	}
	in.Load = load
	in.Weight = weighed(in.Said, in.Stock)
}

// missing is the attribute to ask for where nothing says how much.
func missing(kind string) string {
	if kind == "dye" {
		return "weight"
	}
	return "load"
}

// weighed is a written weight, volume or count in g: a volume through the
// stock item's density, drops through the weight of one drop, chips, blocks
// and pieces through that of one piece.
func weighed(said schema.Value, stock *schema.Block) Figure {
	if !said.IsAmount() {
		return broken() // or by eye, which the caller tells apart
	}
	amount := said.Amount().High()
	each := ""
	switch amount.Dim() {
	case quantity.Weight:
		return known(amount.Base())
	case quantity.Volume:
		each = "density"
	case quantity.Count:
		each = "piece"
		if amount.Unit() == quantity.Drop {
			each = "drop"
		}
	}
	if each == "" || stock == nil || stock.Spec.Attr(each) == nil {
		return broken()
	}
	return stated(stock, each).scaled(amount.Base())
}

// load is the proportion that an ingredient is ordered by, and its basis. A
// bare % is read as of wax; another rule asks for the basis.
func (in *Ingredient) load() (quantity.Rat, quantity.Basis, bool) {
	if !in.Said.IsAmount() {
		return none, quantity.NoBasis, false
	}
	amount := in.Said.Amount().High()
	switch amount.Dim() {
	case quantity.Share:
		return amount.Base(), quantity.OfWax, true
	case quantity.Proportion:
		return amount.Base(), amount.Basis(), true
	}
	return none, quantity.NoBasis, false
}

func (b *Batch) sumWax() {
	if len(b.Waxes) == 0 {
		b.WaxWeight = lacking(nil, "")
		return
	}
	b.WaxWeight = b.Waxes[0].Weight
	for i := range b.Waxes[1:] {
		b.WaxWeight = b.WaxWeight.plus(b.Waxes[i+1].Weight)
	}
}

// sumTotal solves for the total where some loads are ordered of it: with a
// the loads of wax together, k what is weighed, t the loads of total,
//
//	total = wax + a wax + k + t total, so total = (wax (1 + a) + k) / (1 - t).
//
// The proportions need no weights where all others are ordered by load.
func (b *Batch) sumTotal(others []Ingredient) {
	ofWax, ofTotal, weighed := none, none, known(none)
	byLoadOnly := true
	for i := range others {
		in := &others[i]
		if ratio, basis, ok := in.load(); ok {
			if basis == quantity.OfTotal {
				ofTotal = ofTotal.Add(ratio)
			} else {
				ofWax = ofWax.Add(ratio)
			}
			continue
		}
		if in.ByEye {
			in.Weight = lacking(nil, "")
			continue // counts as nothing: a pinch beside the wax
		}
		if in.Said.Broken() {
			in.Weight = broken()
		}
		byLoadOnly = false
		weighed = weighed.plus(in.Weight)
	}
	if !ofTotal.Less(one) {
		b.Total, b.totalOverWax = broken(), broken() // 100 % of total leaves no wax; another rule says so
		return
	}
	rest := known(one.Sub(ofTotal))
	timesWax := known(one.Add(ofWax))
	b.Total = b.WaxWeight.times(timesWax).plus(weighed).over(rest)
	if byLoadOnly {
		b.totalOverWax = timesWax.over(rest)
	} else {
		b.totalOverWax = b.Total.over(b.WaxWeight)
	}
}

// share fills in the weight of an ingredient ordered by load, and the
// proportions of all.
func (b *Batch) share(in *Ingredient, wax bool) {
	if ratio, basis, ok := in.load(); ok && !wax {
		if basis == quantity.OfTotal {
			in.OfTotal = known(ratio)
			in.OfWax = in.OfTotal.times(b.totalOverWax)
			in.Weight = in.OfTotal.times(b.Total)
			return
		}
		in.OfWax = known(ratio)
		in.OfTotal = in.OfWax.over(b.totalOverWax)
		in.Weight = in.OfWax.times(b.WaxWeight)
		return
	}
	if wax && len(b.Waxes) == 1 {
		in.OfWax = known(one)
		in.OfTotal = in.OfWax.over(b.totalOverWax)
		return
	}
	in.OfWax = in.Weight.over(b.WaxWeight)
	in.OfTotal = in.Weight.over(b.Total)
}

// LoadWeight is g that the load of an ingredient asks for, where it is given
// beside a weight; the weight is what counts.
func (b *Batch) LoadWeight(in *Ingredient) Figure {
	load := in.Load
	switch {
	case load.Broken():
		return broken()
	case !load.IsAmount():
		return lacking(nil, "")
	}
	base := known(load.Amount().High().Base())
	if load.Amount().Basis() == quantity.OfTotal {
		return base.times(b.Total)
	}
	return base.times(b.WaxWeight)
}
