package batch

import "wickrule/schema/quantity"

// Need is what a batch of another size takes of one ingredient.
type Need struct {
	*Ingredient
	Scaled Figure // g
}

// Candles is how many the recipe makes, of all its vessels.
func (b *Batch) Candles() int {
	n := 0
	for i := range b.Vessels {
		n += b.Vessels[i].Count
	}
	return n
}

// Scale is what to multiply every weight by so that the batch exactly fills
// so many candles; where the recipe has several kinds of vessel, in the
// proportion in which it has them. Nothing is added for what stays in the pot.
func (b *Batch) Scale(candles int) Figure {
	each := b.Takes.over(known(quantity.Int(int64(b.Candles()))))
	return each.scaled(quantity.Int(int64(candles))).over(b.Total)
}

// Needed is the weight of each wax, fragrance, dye and additive that fills so
// many candles to their fill, in that order. What goes in by eye has none.
func (b *Batch) Needed(candles int) []Need {
	scale := b.Scale(candles)
	needs := make([]Need, 0, len(b.Waxes)+len(b.Fragrances)+len(b.Dyes)+len(b.Additives))
	for _, list := range [][]Ingredient{b.Waxes, b.Fragrances, b.Dyes, b.Additives} {
		for i := range list {
			needs = append(needs, Need{&list[i], list[i].Weight.times(scale)})
		}
	}
	return needs
}

// Yield is what a batch fills.
type Yield struct {
	Filled  []int        // whole candles, for each vessel of the recipe
	Left    quantity.Rat // g left over
	LeftFor quantity.Rat // of how many more candles of the last vessel that is
}

// Yield says how many candles the batch fills. One kind of vessel is filled
// as long as the wax lasts; several are filled in the order of the recipe,
// each to its count and the last as long as the wax lasts. False: not known.
func (b *Batch) Yield() (Yield, bool) {
	if !b.Total.Known() || !b.Takes.Known() {
		return Yield{}, false
	}
	y := Yield{Filled: make([]int, len(b.Vessels)), Left: b.Total.Value}
	for i := range b.Vessels {
		v := &b.Vessels[i]
		fits, ok := y.Left.Quo(v.Mass.Value)
		if !ok || fits.Sign() < 0 {
			return Yield{}, false
		}
		whole := fits.Floor(one)
		last := i == len(b.Vessels)-1
		if count := quantity.Int(int64(v.Count)); !last && count.Less(whole) {
			whole = count
		}
		y.Filled[i] = int(whole.Float64())
		y.Left = y.Left.Sub(whole.Mul(v.Mass.Value))
		if last {
			y.LeftFor = fits.Sub(whole)
		}
	}
	return y, true
}
