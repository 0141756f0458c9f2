package vessel

import (
	"cmp"
	"slices"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// swapWax offers waxes from the shelf in place of one of the recipe's: those
// that suit every vessel it goes into, that its wicks are made for, whose limit
// holds the load, and whose temperatures are the recipe's. Waxes of the same
// family come first, then those poured most like the recipe.
func swapWax(p *lint.Pass, b *batch.Batch, wax *batch.Ingredient) []schema.Fix {
	var fit []*schema.Block
	for _, other := range p.Shop().Shelf("wax") {
		if fits(p, b, wax, other) {
			fit = append(fit, other)
		}
	}
	family := wax.Stock.Get("family").Text()
	slices.SortStableFunc(fit, func(x, y *schema.Block) int {
		return cmp.Or(cmp.Compare(otherThan(x, family), otherThan(y, family)), offPour(b, x).Cmp(offPour(b, y)))
	})
	var fixes []schema.Fix
	for _, other := range fit[:min(len(fit), mostOffered)] {
		fixes = append(fixes, schema.Fix{
			Title: "swap to " + other.Label + ", which suits " + listed(plurals(texts(other.Get("suits"))), "and"),
			First: true, // loads and temperatures are judged by the new wax
			Edits: relabeled(b, wax.Block, other.Label),
		})
	}
	return fixes
}

func otherThan(wax *schema.Block, family string) int {
	if wax.Get("family").Text() == family {
		return 0
	}
	return 1
}

// offPour is how far the recipe's first pour is from the middle of what the
// wax is poured at, in K.
func offPour(b *batch.Batch, wax *schema.Block) quantity.Rat {
	at := wax.Get("pour_at")
	for i := range b.Pours {
		if heat := b.Pours[i].Step.Heat; heat.IsAmount() && at.IsAmount() {
			middle := at.Amount().Base().Add(at.Amount().High().Base()).Mul(quantity.NewRat(1, 2))
			return heat.Amount().High().Base().Sub(middle).Abs()
		}
	}
	return quantity.Int(0)
}

// relabeled are the edits that swap a wax: its block, and where no other block
// has its key, the melts that name it.
func relabeled(b *batch.Batch, wax *schema.Block, key string) []schema.Edit {
	edits := []schema.Edit{{File: wax.File, Span: wax.LabelSpan, Text: schema.Quote(key)}}
	for i := range b.Waxes {
		if other := b.Waxes[i].Block; other != wax && other.Label == wax.Label {
			return edits
		}
	}
	for i := range b.Steps {
		s := &b.Steps[i]
		if s.Kind != "melt" {
			continue
		}
		for _, item := range s.Block.Get("wax").Items() {
			if item.Text == wax.Label {
				edits = append(edits, schema.Edit{File: s.Block.File, Span: item.Span, Text: schema.Quote(key)})
			}
		}
	}
	return edits
}

func fits(p *lint.Pass, b *batch.Batch, wax *batch.Ingredient, other *schema.Block) bool {
	family := other.Get("family").Text()
	if family == "" || family == "gel" && wax.Stock.Get("family").Text() != "gel" {
		return false // gel asks for oils and wicks of its own
	}
	for i := range b.Waxes {
		if b.Waxes[i].Block.Label == other.Label {
			return false
		}
	}
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Stock == nil || !goesInto(b, i, wax) {
			continue
		}
		s := batch.SuitedFor(other, batch.Uses(b.MadeIn(v))...)
		if s.State != schema.Known || !s.Yes || s.Family != "" || s.Tested {
			return false
		}
		w := wickOf(p, b, i)
		if families := w.stock.Get("families"); w.stock != nil && families.Known() && !has(families, family) {
			return false
		}
	}
	return holdsLoad(b, other) && acceptsHeat(b, other)
}

// holdsLoad says whether the wax's own limit holds the recipe's fragrance.
func holdsLoad(b *batch.Batch, wax *schema.Block) bool {
	if len(b.Fragrances) == 0 {
		return true
	}
	limit := wax.Get("fragrance_limit")
	if !limit.IsAmount() {
		return false
	}
	load := b.FragranceOfWax
	if limit.Amount().Basis() == quantity.OfTotal {
		load = b.FragranceOfTotal
	}
	return load.Known() && !limit.Amount().Base().Less(load.Value)
}

// margin is how far every step stays below the flash point: 30 °C. Common
// practice.
var margin = quantity.Int(30)

// acceptsHeat says whether every temperature that the recipe says lies in what
// the wax's sheet states for that step, below its ceiling, and well below its
// flash point.
func acceptsHeat(b *batch.Batch, wax *schema.Block) bool {
	ceiling, flash := wax.Get("never_above"), wax.Get("flash_point")
	for i := range b.Steps {
		s := &b.Steps[i]
		if !s.Heat.IsAmount() {
			continue
		}
		heat := s.Heat.Amount()
		if !ceiling.IsAmount() || ceiling.Amount().Base().Less(high(s)) {
			return false
		}
		if flash.IsAmount() && !high(s).Less(flash.Amount().Base().Sub(margin)) {
			return false
		}
		attr := ""
		switch s.Kind {
		case "melt":
			attr = "melt_to"
		case "pour":
			attr = "pour_at"
		case "add fragrance":
			attr = "add_fragrance_at"
		}
		if attr == "" {
			continue
		}
		if own := wax.Get(attr); !own.IsAmount() || !heat.Within(own.Amount()) {
			return false
		}
	}
	return true
}
