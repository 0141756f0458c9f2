package formula

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// collector gathers the attributes of a formulation.
type collector struct {
	view  *lint.View
	list  []Attribute
	state schema.State
	lacks *schema.Block
	attr  string
}

// everyVessel asks for the toppings of all vessels; no key is empty.
const everyVessel = ""

func (c *collector) add(part Part, name, value string) {
	c.list = append(c.list, Attribute{part, name, value})
}

// unknown notes that the code cannot be worked out; what is broken weighs more
// than what is not written.
func (c *collector) unknown(f batch.Figure) {
	switch {
	case f.State == schema.Broken:
		c.state, c.lacks, c.attr = schema.Broken, nil, ""
	case c.state == schema.Known:
		c.state, c.lacks, c.attr = schema.Absent, f.Lacks, f.Attr()
	}
}

// inOrder sorts what was added since by name: the order in which ingredients
// are written makes no other candle.
func (c *collector) inOrder(since int) {
	slices.SortFunc(c.list[since:], byName)
}

func byName(a, b Attribute) int {
	return cmp.Or(strings.Compare(a.Name, b.Name), strings.Compare(a.Value, b.Value))
}

// mixture adds what is weighed in.
func (c *collector) mixture(b *batch.Batch) {
	c.state = schema.Known
	c.list = make([]Attribute, 0, 12)
	if len(b.Waxes) == 0 {
		c.unknown(batch.Figure{})
	}
	c.ingredients(Wax, b.Waxes, b, 1)
	for i := range b.Waxes {
		c.blend(b.Waxes[i].Stock)
	}
	c.ingredients(Fragrance, b.Fragrances, b, 1)
	c.ingredients(Additive, b.Additives, b, 1)
	c.ingredients(Dye, b.Dyes, b, 2)
}

func (c *collector) ingredients(part Part, list []batch.Ingredient, b *batch.Batch, places int) {
	since := len(c.list)
	for i := range list {
		in := &list[i]
		name := in.Block.Name() + " " + in.Block.Label
		switch {
		case in.Stock == nil:
			c.unknown(batch.Figure{State: schema.Broken})
		case in.ByEye:
			c.add(part, name, "to shade")
		case counted(in):
			// By volume as it is, and by pieces whose weight is not known.
			c.perWax(part, name, in, b)
		case in.OfWax.Known():
			c.add(part, name, percent(in.OfWax.Value, places)+" % of wax")
		default:
			c.unknown(in.OfWax)
		}
	}
	c.inOrder(since)
}

// counted says whether an ingredient enters by its written volume or number
// and not by its weight.
func counted(in *batch.Ingredient) bool {
	if !in.Said.IsAmount() {
		return false
	}
	switch in.Said.Amount().Dim() {
	case quantity.Volume:
		return true
	case quantity.Count:
		return in.Weight.State == schema.Absent
	}
	return false
}

// perWax adds what is measured by volume or number, to 100 g of wax.
func (c *collector) perWax(part Part, name string, in *batch.Ingredient, b *batch.Batch) {
	if !b.WaxWeight.Known() {
		c.unknown(b.WaxWeight)
		return
	}
	amount := in.Said.Amount().High()
	each, ok := amount.Base().Mul(quantity.Int(100)).Quo(b.WaxWeight.Value)
	if !ok {
		c.unknown(batch.Figure{State: schema.Broken})
		return
	}
	unit := "mL"
	if amount.Dim() == quantity.Count {
		unit = amount.Unit().Plural
	}
	c.add(part, name, each.Decimal(2)+" "+unit+" to 100 g of wax")
}

// blend adds the parts of a house blend: made of something else it is another
// wax, though it keeps its key.
func (c *collector) blend(wax *schema.Block) {
	since := len(c.list)
	for part := range wax.Each("part") {
		share := part.Get("share")
		switch {
		case share.IsAmount():
			c.add(Wax, "wax "+wax.Label+beforePart+part.Label, percent(share.Amount().High().Base(), 1)+" %")
		case share.Broken():
			c.unknown(batch.Figure{State: schema.Broken})
		}
	}
	c.inOrder(since)
}

func percent(ratio quantity.Rat, places int) string {
	return ratio.Mul(quantity.Int(100)).Decimal(places)
}

// toppings adds the toppings of one vessel, or of all.
func (c *collector) toppings(b *batch.Batch, vessel string) {
	since := len(c.list)
	for _, topping := range b.Toppings {
		on := topping.Get("vessel").Text()
		if vessel != everyVessel && on != "" && on != vessel {
			continue
		}
		value := "within reach of the flame"
		if topping.Get("in_reach").No() {
			value = "out of reach of the flame"
		}
		if vessel == everyVessel && on != "" {
			value += beforeVessel + on
		}
		c.add(Topping, "topping "+topping.Label, value)
	}
	c.inOrder(since)
}

// vessel adds a vessel with its size, and its wick.
func (c *collector) vessel(v *batch.Vessel) {
	if v.Stock == nil {
		c.unknown(batch.Figure{State: schema.Broken})
		return
	}
	c.add(Vessel, v.Kind+" "+v.Block.Label, c.size(v))
	switch {
	case v.Wick != nil:
		c.add(Wick, "wick "+v.Wick.Label, wickSize(v))
	case !v.WickSaid.Absent():
		c.unknown(batch.Figure{State: schema.Broken})
	}
}

// sizes are the measures of a vessel in its stock item, as they are told.
var sizes = [...]struct{ attr, words string }{
	{"diameter", " mm across"}, {"opening", " mm at the rim"}, {"width", " mm wide"}, {"length", " mm long"}, {"height", " mm high"},
}

func (c *collector) size(v *batch.Vessel) string {
	text := make([]byte, 0, 64)
	part := func(what string) {
		if len(text) > 0 {
			text = append(text, ", "...)
		}
		text = append(text, what...)
	}
	if v.Stock.Spec.Attr("shape") != nil {
		if shape := v.Stock.Get("shape").Text(); shape != "" {
			part(shape)
		}
	}
	for _, s := range sizes {
		if v.Stock.Spec.Attr(s.attr) == nil {
			continue
		}
		if value := v.Stock.Get(s.attr); value.IsAmount() {
			part(value.Amount().High().Base().Decimal(0))
			text = append(text, s.words...)
		} else if value.Broken() {
			c.unknown(batch.Figure{State: schema.Broken})
		}
	}
	if v.Stock.Spec.Attr("holds") != nil {
		if holds := v.Stock.Get("holds"); holds.IsAmount() {
			part("holds ")
			text = append(text, holds.Amount().High().Base().Decimal(0)...)
			text = append(text, " mL"...)
		}
	}
	if fill := v.Block.Get("fill"); fill.Broken() {
		c.unknown(batch.Figure{State: schema.Broken})
	} else if fill.IsAmount() {
		part("filled ")
		text = append(text, filled(fill)...)
	}
	return string(text)
}

// filled is a written fill without a density in it.
func filled(fill schema.Value) string {
	amount := fill.Amount().High()
	switch amount.Dim() {
	case quantity.Length:
		if fill.BelowRim() {
			return "to " + amount.Base().Decimal(0) + " mm below the rim"
		}
		return amount.Base().Decimal(0) + " mm high"
	case quantity.Weight:
		return "with " + amount.Base().Decimal(0) + " g"
	case quantity.Share:
		return "to " + percent(amount.Base(), 0) + " %"
	}
	return "with " + amount.Base().Decimal(0) + " mL"
}

func wickSize(v *batch.Vessel) string {
	text := append(make([]byte, 0, 64), strconv.Itoa(v.Wicks)...)
	text = append(text, " to a candle"...)
	if burns := v.Wick.Get("burns"); burns.IsAmount() {
		text = append(text, ", for "...)
		text = append(text, burns.Amount().Base().Decimal(0)...)
		text = append(text, " to "...)
		text = append(text, burns.Amount().High().Base().Decimal(0)...)
		text = append(text, " mm"...)
	}
	for _, place := range [...]struct{ attr, words string }{{"from_wall", " mm from the wall"}, {"wick_spacing", " mm apart"}} {
		if value := v.Block.Get(place.attr); value.IsAmount() {
			text = append(text, ", "...)
			text = append(text, value.Amount().High().Base().Decimal(0)...)
			text = append(text, place.words...)
		}
	}
	return string(text)
}
