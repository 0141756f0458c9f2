package vessel

import (
	"cmp"
	"slices"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// width is a vessel's diameter and the wicks that share it, compared by
// squares: n wicks are each chosen for the diameter over the square root of n,
// which is exact only squared.
type width struct {
	square quantity.Rat // mm2, of the vessel's diameter
	wicks  quantity.Rat // n
}

func widthOf(v *batch.Vessel) width {
	return width{v.Diameter.Value.Mul(v.Diameter.Value), quantity.Int(int64(v.Wicks))}
}

// against compares a diameter in mm that a wick burns with its share of this
// one: 1 where the wick's is more.
func (w width) against(burns quantity.Rat) int {
	return burns.Mul(burns).Mul(w.wicks).Cmp(w.square)
}

func (w width) within(burns quantity.Quantity) bool {
	return w.against(burns.Base()) <= 0 && w.against(burns.High().Base()) >= 0
}

// swapWick offers wicks from the shelf in place of a vessel's: those that burn
// its diameter, are made for its waxes, and have a tab where it needs one. The
// nearest to the middle of their range come first.
func swapWick(p *lint.Pass, b *batch.Batch, vessel int, w wicked) []schema.Fix {
	v := &b.Vessels[vessel]
	if !v.Diameter.Known() || v.Wicks == 0 {
		return nil
	}
	size := widthOf(v)
	var fit []*schema.Block
	for _, other := range p.Shop().Shelf("wick") {
		burns := other.Get("burns")
		if other == w.stock || !burns.IsAmount() || !size.within(burns.Amount()) || leaded(other) || !tabFits(v, w.stock, other) || !madeForWaxes(b, vessel, other) {
			continue
		}
		fit = append(fit, other)
	}
	slices.SortStableFunc(fit, func(x, y *schema.Block) int { return cmp.Compare(0, size.off(y).Cmp(size.off(x))) })
	var fixes []schema.Fix
	for _, other := range fit[:min(len(fit), mostOffered)] {
		fixes = append(fixes, repair.Rewrite("wick it with "+other.Label+", which burns "+other.Get("burns").Amount().String(), w.said, schema.Quote(other.Label)))
	}
	return fixes
}

// off is how far the square of the middle of a wick's range is from what each
// wick is chosen for.
func (w width) off(wick *schema.Block) quantity.Rat {
	burns := wick.Get("burns").Amount()
	middle := burns.Base().Add(burns.High().Base()).Mul(quantity.NewRat(1, 2))
	return middle.Mul(middle).Mul(w.wicks).Sub(w.square).Abs()
}

// tabFits says whether a wick has a tab where the candle needs one; in a mold
// it is threaded, and is like the one it takes the place of.
func tabFits(v *batch.Vessel, old, other *schema.Block) bool {
	tab := other.Get("tab")
	if v.Kind == "container" {
		return tab.Yes()
	}
	return tab.Yes() == old.Get("tab").Yes()
}

func madeForWaxes(b *batch.Batch, vessel int, wick *schema.Block) bool {
	families := wick.Get("families")
	for i := range b.Waxes {
		in := &b.Waxes[i]
		if in.Stock != nil && goesInto(b, vessel, in) && !has(families, in.Stock.Get("family").Text()) {
			return false
		}
	}
	return families.Known()
}
