package lsp

import (
	"math"

	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// fills tells what the candles of a vessel take and how far the batch goes.
func (f figures) fills(vessel int) []string {
	v := &f.batch.Vessels[vessel]
	makes := f.batch.MadeIn(v)
	var says []string
	if v.Mass.Known() {
		text := candles(v.Count, makes)
		if v.Count > 1 {
			text += " of " + f.grams(v.Mass.Value) + " each, " + f.grams(v.Mass.Value.Mul(quantity.Int(int64(v.Count)))) + " together"
		} else {
			text += " of " + f.grams(v.Mass.Value)
		}
		if v.Fill.Known() {
			text += "; " + f.volume(v.Fill.Value) + " of wax in one"
		}
		says = append(says, text+".")
	}
	if v.Headspace.Known() && v.Headspace.Value.Sign() > 0 {
		says = append(says, "The wax ends "+f.length(v.Headspace.Value)+" below the rim.")
	}
	if y, ok := f.batch.Yield(); ok {
		text := "The batch fills " + f.of(y, vessel)
		if y.Left.Sign() > 0 {
			text += ", with " + f.grams(y.Left) + " left over"
		}
		says = append(says, text+".")
	}
	return says
}

// of is how many of the wanted candles of a vessel the batch fills: "2 of 2".
func (f figures) of(y batch.Yield, vessel int) string {
	count, filled := f.batch.Vessels[vessel].Count, y.Filled[vessel]
	digits := func(n int) string { return quantity.Int(int64(n)).Decimal(0) }
	text := digits(min(filled, count)) + " of " + digits(count)
	if filled > count {
		text += " (enough for " + digits(filled) + ")"
	}
	return text
}

// wicked tells how the wick of a vessel is judged.
func (f figures) wicked(vessel int) []string {
	v := &f.batch.Vessels[vessel]
	if v.Wick == nil || !v.Diameter.Known() {
		return nil
	}
	text := "Here one candle is " + f.length(v.Diameter.Value) + " across with one wick"
	if v.Wicks > 1 {
		// Only shown: n wicks are judged at the diameter over the square root of n.
		alone := v.Diameter.Value.Float64() / math.Sqrt(float64(v.Wicks))
		text = "Here one candle is " + f.length(v.Diameter.Value) + " across with " + inWords(v.Wicks) + " wicks, each judged as if alone in " +
			f.length(quantity.NewRat(int64(math.Round(alone*100)), 100))
	}
	return []string{text + ". Only a burn test tells whether it is right."}
}

// inRecipe tells of an item of the stock what it is in the recipe that names
// it in a label.
func (h *here) inRecipe(b *schema.Block) []string {
	f, ok := h.figuresOf(b)
	if !ok {
		return nil
	}
	if in := f.ingredient(b); in != nil {
		says := lead("Here: ", f.share(in))
		if in.Block.Name() != "wax" {
			says = append(says, f.hazards(in)...)
		}
		return says
	}
	if i := f.vessel(b); i >= 0 {
		return lead("Here: ", f.fills(i))
	}
	return nil
}

// lead puts words before the first paragraph, and all of them into one.
func lead(word string, says []string) []string {
	text := spaced(says...)
	if text == "" {
		return nil
	}
	return []string{word + text}
}

// named tells of an item of the stock what it is in the recipe where a value
// names it.
func (h *here) named(v schema.Value, item *schema.Block) []string {
	f, ok := h.figuresOf(v.Block)
	if !ok {
		return nil
	}
	switch {
	case item.Is("wick"):
		if i := f.vessel(v.Block); i >= 0 {
			return f.wicked(i)
		}
	case item.Is("seal"):
		if s := f.stepOf(v.Block); s != nil {
			return []string{f.sealBears(s, item)}
		}
	case item.Is("label"):
		return f.labelBears(item)
	case item.Is("pot"):
		return []string{f.potHolds(item)}
	case item.Is("label"):
		return []string{f.labelWeight()}
	}
	for _, list := range [][]batch.Ingredient{f.batch.Waxes, f.batch.Fragrances, f.batch.Dyes, f.batch.Additives} {
		for i := range list {
			if list[i].Stock == item {
				return lead("Here: ", f.share(&list[i]))
			}
		}
	}
	for i := range f.batch.Vessels {
		if f.batch.Vessels[i].Stock == item {
			return lead("Here: ", f.fills(i))
		}
	}
	return nil
}

// labelWeight is what one candle weighs, to hold the label against.
func (f figures) labelWeight() string {
	if len(f.batch.Vessels) == 1 && f.batch.Vessels[0].Mass.Known() {
		return "Here one candle weighs " + f.grams(f.batch.Vessels[0].Mass.Value) + ", worked out from its fill."
	}
	return ""
}

// potHolds is how full a pot is of this batch, melted.
func (f figures) potHolds(pot *schema.Block) string {
	molten, holds := f.batch.Molten(), pot.Get("holds")
	if !molten.Known() || !holds.IsAmount() {
		return ""
	}
	full, ok := molten.Value.Quo(holds.Amount().Base())
	if !ok {
		return ""
	}
	return "Here: the batch melts to " + f.volume(molten.Value) + ", which fills " + batch.Percent(full, quantity.NoBasis) + " of it."
}
