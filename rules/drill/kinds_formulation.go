package drill

import (
	"wickrule/schema"
	"wickrule/schema/quantity"
)

func formulationKinds() []Kind {
	return []Kind{
		{"the load is a quarter over what the wax holds", "fragrance-over-limit", func(b *Bench) []Fault {
			wax := b.oneWax()
			if wax == nil || len(b.Fragrances) != 1 || !b.Fragrances[0].Block.Get("load").IsAmount() || !wax.Stock.Get("fragrance_limit").IsAmount() {
				return nil
			}
			limit := wax.Stock.Get("fragrance_limit").Amount().High()
			over := limit.Number().Mul(quantity.NewRat(5, 4))
			return []Fault{rewrite(b.Fragrances[0].Block.Get("load"), schema.Quote(over.Decimal(1)+" "+limit.Unit().Symbol))}
		}},
		{"the load is one that another wax holds", "fragrance-over-limit", func(b *Bench) []Fault {
			wax := b.oneWax()
			if wax == nil || len(b.Fragrances) != 1 || !b.Fragrances[0].Block.Get("load").IsAmount() || !wax.Stock.Get("fragrance_limit").IsAmount() {
				return nil
			}
			limit := wax.Stock.Get("fragrance_limit").Amount().High()
			var all []Fault
			for _, other := range b.shelf("wax", func(w *schema.Block) bool { return w.Get("fragrance_limit").IsAmount() }) {
				holds := other.Get("fragrance_limit").Amount().High()
				if holds.Basis() == limit.Basis() && limit.Base().Less(holds.Base()) {
					f := rewrite(b.Fragrances[0].Block.Get("load"), schema.Quote(holds.String()))
					f.Slip = "the load is what " + other.Title() + " holds, and not this wax"
					all = append(all, f)
				}
			}
			return all
		}},
		{"the load does not say of what", "load-basis-unstated", func(b *Bench) []Fault {
			return b.everyLoad(func(load schema.Value) string {
				if load.Amount().Basis() != quantity.OfWax {
					return ""
				}
				return load.Amount().Number().Decimal(3) + " %"
			})
		}},
		{"the load is written as a fraction and called per cent", "load-looks-like-fraction", func(b *Bench) []Fault {
			return b.everyLoad(func(load schema.Value) string { return load.Amount().Base().Decimal(3) + " % of wax" })
		}},
		{"the decimal point of the load slipped", "fragrance-over-limit", func(b *Bench) []Fault {
			return b.everyLoad(func(load schema.Value) string {
				return load.Amount().Number().Mul(quantity.Int(10)).Decimal(1) + " " + load.Amount().Unit().Symbol
			})
		}},
		{"the dye is added by eye", "dye-by-eye", func(b *Bench) []Fault {
			var all []Fault
			for _, d := range b.Dyes {
				if w := d.Block.Get("weight"); w.Known() {
					span := schema.Span{Start: w.NameSpan().Start, End: w.Span().End}
					all = append(all, Fault{Edits: []schema.Edit{{File: w.Block.File, Span: span, Text: `amount = "to shade"`}}, Flag: `"to shade"`})
				}
			}
			return all
		}},
		{"ten times the dye: the scale was read in the wrong place", "dye-over-limit", func(b *Bench) []Fault {
			var all []Fault
			for i := range b.Dyes {
				said := b.Dyes[i].Said
				if said.IsAmount() && !said.Amount().IsRange() {
					ten := said.Amount().Number().Mul(quantity.Int(10))
					all = append(all, rewrite(said, schema.Quote(quantity.Of(ten, said.Amount().Unit()).String())))
				}
			}
			return all
		}},
		{"three times the additive", "additive-outside-usual", func(b *Bench) []Fault { return b.additiveTimes(quantity.Int(3)) }},
		{"half as much wax again as the vessels take", "batch-left-over", func(b *Bench) []Fault { return b.weighed(quantity.NewRat(3, 2)) }},
		{"a third less wax than the vessels take", "batch-does-not-fill", func(b *Bench) []Fault { return b.weighed(quantity.NewRat(2, 3)) }},
		{"an oil that nobody says is fit for gel", "gel-needs-gel-safe", func(b *Bench) []Fault {
			wax := b.oneWax()
			if wax == nil || wax.Stock.Get("family").Text() != "gel" {
				return nil
			}
			return b.otherFragrance(func(f *schema.Block) bool { return f.Get("gel_safe").No() })
		}},
	}
}

func formulationHunches() []Kind {
	return []Kind{
		{"the weight of an earlier, larger batch stands beside the load", "weight-and-load-disagree", func(b *Bench) []Fault {
			var all []Fault
			for i := range b.Fragrances {
				in := &b.Fragrances[i]
				if in.Said.Spec == nil || in.Said.Spec.Name != "load" || !in.Weight.Known() {
					continue
				}
				grams := in.Weight.Value.Mul(quantity.NewRat(13, 10)).Decimal(0) + " g"
				all = append(all, Fault{Edits: []schema.Edit{schema.SetValue(in.Block.Get("weight"), schema.Quote(grams))}})
			}
			return all
		}},
		{"twice the additive", "additive-outside-usual", func(b *Bench) []Fault { return b.additiveTimes(quantity.Int(2)) }},
		{"one vessel more than the batch fills", "batch-does-not-fill", func(b *Bench) []Fault { return b.counted(1) }},
		{"one vessel is left out of the count", "batch-left-over", func(b *Bench) []Fault { return b.counted(-1) }},
		{"an ingredient with water in it", "water-in-wax", func(b *Bench) []Fault {
			return b.otherFragrance(func(f *schema.Block) bool { return f.Get("water_based").Yes() })
		}},
	}
}

// everyLoad plants another literal in every load of a fragrance; "": none.
func (b *Bench) everyLoad(write func(load schema.Value) string) []Fault {
	var all []Fault
	for i := range b.Fragrances {
		load := b.Fragrances[i].Block.Get("load")
		if !load.IsAmount() || load.Amount().IsRange() {
			continue
		}
		if text := write(load); text != "" {
			all = append(all, rewrite(load, schema.Quote(text)))
		}
	}
	return all
}

// otherFragrance swaps each fragrance for others from the shelf.
func (b *Bench) otherFragrance(fits func(*schema.Block) bool) []Fault {
	var all []Fault
	for i := range b.Fragrances {
		in := b.Fragrances[i].Block
		for _, other := range b.shelf("fragrance", func(f *schema.Block) bool { return f.Label != in.Label && fits(f) }) {
			f := relabel(in, other.Label)
			f.Edits = append(f.Edits, b.renamed("fragrance", in.Label, other.Label)...)
			all = append(all, f)
		}
	}
	return all
}

// renamed are the edits of the steps that name an ingredient.
func (b *Bench) renamed(attr, from, to string) []schema.Edit {
	var edits []schema.Edit
	for i := range b.Steps {
		step := b.Steps[i].Block
		if step.Spec.Attr(attr) == nil {
			continue
		}
		for _, item := range step.Get(attr).Items() {
			if item.Text == from {
				edits = append(edits, schema.Edit{File: step.File, Span: item.Span, Text: schema.Quote(to)})
			}
		}
	}
	return edits
}

func (b *Bench) additiveTimes(times quantity.Rat) []Fault {
	var all []Fault
	for i := range b.Additives {
		said := b.Additives[i].Said
		if said.IsAmount() && !said.Amount().IsRange() {
			more := quantity.Of(said.Amount().Number().Mul(times), said.Amount().Unit())
			all = append(all, rewrite(said, schema.Quote(more.String())))
		}
	}
	return all
}

// weighed multiplies the wax's weight. The vat that tapers are dipped in is
// never emptied.
func (b *Bench) weighed(by quantity.Rat) []Fault {
	if b.Makes == "taper" || b.oneWax() == nil {
		return nil
	}
	w := b.Waxes[0].Block.Get("weight")
	if !w.IsAmount() || w.Amount().IsRange() {
		return nil
	}
	grams := schema.Quote(w.Amount().Base().Mul(by).Decimal(0) + " g")
	return []Fault{rewrite(w, grams)}
}

// counted changes how many of the only kind of vessel there are, where that is
// written.
func (b *Bench) counted(by int) []Fault {
	if b.Makes == "taper" || len(b.Vessels) != 1 {
		return nil
	}
	count := b.Vessels[0].Block.Get("count")
	n := count.Whole(0) + by
	if !count.Known() || n < 1 {
		return nil
	}
	return []Fault{{Edits: []schema.Edit{schema.SetValue(count, quantity.Int(int64(n)).Decimal(0))}}}
}
