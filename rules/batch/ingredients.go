package batch

import (
	"wickrule/lint"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// weighIn fills in the ingredients, what they weigh and what share each is.
func (b *Batch) weighIn(view *lint.View) {
	var waxes, fragrances, dyes, additives int
	for _, inner := range b.Recipe.Blocks() {
		switch inner.Name() {
		case "wax":
			waxes++
		case "fragrance":
			fragrances++
		case "dye":
			dyes++
		case "additive":
			additives++
		}
	}
	all := make([]Ingredient, 0, waxes+fragrances+dyes+additives)
	gather := func(kind string, n int) []Ingredient {
		start := len(all)
		if n == 0 {
			return all[start:start:start]
		}
		for _, inner := range b.Recipe.Blocks() {
			if inner.Name() == kind {
				all = append(all, ingredient(view, kind, inner))
			}
		}
		return all[start:len(all):len(all)]
	}
	b.Waxes = gather("wax", waxes)
	others := len(all)
	b.Fragrances = gather("fragrance", fragrances)
	b.Dyes = gather("dye", dyes)
	b.Additives = gather("additive", additives)

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

// ingredient reads how much is said of a block, without the wax.
func ingredient(view *lint.View, kind string, block *schema.Block) Ingredient {
	stock, _ := view.Stock(kind, block.Label)
	in := Ingredient{Block: block, Stock: stock, Said: block.Get("weight")}
	if kind == "wax" {
		in.Weight = stated(block, "weight")
		return in
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
		return in
	}
	in.Load = load
	in.Weight = weighed(in.Said, stock)
	return in
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
