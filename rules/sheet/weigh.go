package sheet

import (
	"strconv"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// pot is what is weighed for one pot, in the order in which it goes in.
func (s *Sheet) pot(view *lint.View, share share, step quantity.Rat) Pot {
	b := batch.Of.In(view)
	pot := Pot{Times: share.times, Candles: b.Candles(), Weigh: []Weigh{}}
	total, whole := quantity.Int(0), true
	for _, in := range inOrder(b) {
		w := weighed(view, in, step)
		pot.Weigh = append(pot.Weigh, w.Weigh)
		total = total.Add(w.grams)
		whole = whole && (w.Weight != nil || in.ByEye)
	}
	if whole {
		pot.Total = weight(view, total, down)
		if b.Takes.Known() {
			if spare := total.Sub(b.Takes.Value); spare.Sign() > 0 {
				pot.Spare = weight(view, spare.Floor(quantity.Int(1)), down)
			}
		}
	}
	if block := potOf(view); block != nil {
		pot.Pot = block.Title()
		if molten := b.Molten(); molten.Known() {
			volume := molten.Value.Mul(b.AtOnce())
			pot.Full = batch.Milliliters(view, volume) + " once molten"
			if !volume.Equal(molten.Value) {
				pot.Full = "one layer after the other, at most " + pot.Full
			}
			if holds := block.Get("holds"); holds.IsAmount() {
				if full, ok := volume.Quo(holds.Amount().Base()); ok {
					pot.Full += ", " + full.Mul(quantity.Int(100)).Decimal(0) + " % of the pot"
				}
			}
		}
	}
	return pot
}

// inOrder lists the ingredients as they go in: the wax, then what each adding
// step stirs in, then what no step adds.
func inOrder(b *batch.Batch) []*batch.Ingredient {
	var list []*batch.Ingredient
	seen := map[*batch.Ingredient]bool{}
	add := func(in *batch.Ingredient) {
		if !seen[in] {
			seen[in] = true
			list = append(list, in)
		}
	}
	for i := range b.Waxes {
		add(&b.Waxes[i])
	}
	for i := range b.Steps {
		for _, in := range stirredIn(b, &b.Steps[i]) {
			add(in)
		}
	}
	for _, rest := range [][]batch.Ingredient{b.Additives, b.Dyes, b.Fragrances} {
		for i := range rest {
			add(&rest[i])
		}
	}
	return list
}

// stirredIn are the ingredients that an adding step names, or all of its kind.
func stirredIn(b *batch.Batch, step *batch.Step) []*batch.Ingredient {
	var of []batch.Ingredient
	kind := ""
	switch step.Kind {
	case "add fragrance":
		of, kind = b.Fragrances, "fragrance"
	case "add dye":
		of, kind = b.Dyes, "dye"
	case "add additive":
		of, kind = b.Additives, "additive"
	default:
		return nil
	}
	named := step.Block.Get(kind).Items()
	var list []*batch.Ingredient
	for i := range of {
		if len(named) == 0 || has(named, of[i].Block.Label) {
			list = append(list, &of[i])
		}
	}
	return list
}

func has(items []schema.Item, text string) bool {
	for _, item := range items {
		if item.Text == text {
			return true
		}
	}
	return false
}

type line struct {
	Weigh
	grams quantity.Rat
}

// weighed is one ingredient on the scale. Wax is as written or rounded up, all
// else rounded down: no load is over what the recipe says.
func weighed(view *lint.View, in *batch.Ingredient, step quantity.Rat) line {
	l := line{Weigh: Weigh{Kind: in.Block.Name(), Title: title(in)}}
	if in.OfWax.Known() && l.Kind != "wax" {
		l.Share = batch.Loads(in.OfWax, in.OfTotal)
	} else if in.OfWax.Known() && !in.OfWax.Value.Equal(quantity.Int(1)) {
		l.Share = batch.Percent(in.OfWax.Value, quantity.OfWax)
	}
	switch {
	case in.ByEye:
		l.Said, l.Note = "to shade", "by eye: write down what went in"
		return l
	case !in.Weight.Known():
		if in.Said.IsAmount() {
			l.Said = in.Said.Amount().String()
		}
		l.Note = "its weight is not known"
		return l
	}
	if in.Said.IsAmount() {
		if d := in.Said.Amount().Dim(); d == quantity.Count || d == quantity.Volume {
			l.Said = in.Said.Amount().String()
		}
	}
	g, way := in.Weight.Value, down
	written := g
	if l.Kind == "wax" {
		g, way = g.Ceil(step), up
	} else {
		by := fine(g, step)
		g = g.Floor(by)
		if by.Less(step) && l.Said == "" {
			l.Note = "needs a scale of " + quantity.FromBase(by, quantity.Gram).Show(quantity.Metric)
		}
	}
	l.grams = g
	l.Note = join(", ", l.Note, blended(view, in, g, step))
	l.Weight = weight(view, g, way)
	if l.Kind == "wax" { // ounces from what is written, and not from the rounded grams
		l.Weight = inBoth(view, g, metricText(g), usText(written, up))
	}
	return l
}

// blended is what a house blend is mixed from, of so many grams; "" for what is
// bought as it is. The parts are put on the scale's step and may differ from
// the whole by one such step each.
func blended(view *lint.View, in *batch.Ingredient, g, step quantity.Rat) string {
	if in.Stock == nil || in.Stock.Spec.Name != "wax" {
		return ""
	}
	var parts []string
	for part := range in.Stock.Each("part") {
		share := part.Get("share")
		if !share.IsAmount() || share.Amount().IsRange() {
			return "a house blend"
		}
		half := step.Mul(quantity.NewRat(1, 2))
		parts = append(parts, metricText(g.Mul(share.Amount().Base()).Add(half).Floor(step))+" "+titleOfPart(view, part))
	}
	if parts == nil {
		return ""
	}
	return "a house blend of " + join(" and ", parts...)
}

func titleOfPart(view *lint.View, part *schema.Block) string {
	for _, kind := range part.Spec.LabelRefers {
		if stock, ok := view.Stock(kind, part.Label); ok {
			return stock.Title()
		}
	}
	return part.Label
}

func title(in *batch.Ingredient) string {
	if in.Stock != nil {
		return in.Stock.Title()
	}
	return in.Block.Label
}

// way is to which side the other system's figure is rounded.
type way uint8

const (
	down way = iota
	up
)

// weight is a weight in both systems: grams to the milligram, ounces to a
// tenth from a pound on, to a hundredth below, and below a tenth of an ounce to
// a thousandth.
func weight(view *lint.View, g quantity.Rat, w way) *Weight {
	return inBoth(view, g, metricText(g), usText(g, w))
}

func inBoth(view *lint.View, g quantity.Rat, metric, us string) *Weight {
	out := &Weight{Grams: g.Float64(), Text: us, Other: metric}
	if view.Units() == quantity.Metric {
		out.Text, out.Other = metric, us
	}
	return out
}

func metricText(g quantity.Rat) string { return g.Decimal(3) + " g" }

func usText(g quantity.Rat, w way) string {
	ounces, _ := g.Quo(quantity.Ounce.Factor)
	step := quantity.NewRat(1, 10)
	switch {
	case ounces.Less(quantity.NewRat(1, 10)):
		step = quantity.NewRat(1, 1000)
	case ounces.Less(quantity.Int(16)):
		step = quantity.NewRat(1, 100)
	}
	if w == up {
		ounces = ounces.Ceil(step)
	} else {
		ounces = ounces.Floor(step)
	}
	pounds := ounces.Floor(quantity.Int(16))
	rest := ounces.Sub(pounds)
	if pounds.IsZero() {
		return rest.Decimal(3) + " oz"
	}
	lb, _ := pounds.Quo(quantity.Int(16))
	if rest.IsZero() {
		return lb.Decimal(0) + " lb"
	}
	return lb.Decimal(0) + " lb " + rest.Decimal(1) + " oz"
}

// vessels lists what is filled, of the whole order.
func (s *Sheet) vessels(view *lint.View, b *batch.Batch, p *plan) {
	for i := range b.Vessels {
		v := &b.Vessels[i]
		out := Vessel{Title: v.Block.Label, Count: v.Count}
		if !p.written && p.set != nil {
			out.Count = p.set[i] * p.sets
		}
		if v.Stock != nil {
			out.Title = v.Stock.Title()
		}
		if v.Wick != nil {
			out.Wick = v.Wick.Title()
			if v.Wicks > 1 {
				out.Wick = strconv.Itoa(v.Wicks) + " × " + out.Wick
			}
		}
		out.Each = known(view, v.Mass)
		out.FirstPour = known(view, v.FirstFill)
		if topped(b, i) {
			out.TopUp = known(view, v.TopUp)
		}
		s.Vessels = append(s.Vessels, out)
	}
}

func topped(b *batch.Batch, vessel int) bool {
	for i := range b.Pours {
		if b.Pours[i].Second && b.Pours[i].Step.Is(vessel) {
			return true
		}
	}
	return false
}

func known(view *lint.View, f batch.Figure) *Weight {
	if !f.Known() || f.Value.Sign() <= 0 {
		return nil
	}
	return weight(view, f.Value.Floor(quantity.Int(1)), down)
}
