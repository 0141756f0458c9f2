package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// ContainerOverfilled is a candle filled past what its container holds, or so
// near to the rim that the pool has no wall above it.
var ContainerOverfilled = &lint.Rule{
	Name:   "container-overfilled",
	Group:  group,
	Title:  "a container filled too high",
	Levels: lint.Every(lint.Should),
	Why: "The wall above the wax keeps the flame from a draft, the pool from spilling when the candle is moved, and a lid from the wick. Wax also swells as it melts. " +
		"Filled past the line it is made for, a container spills hot wax at the first touch.",
	Remedy: "Fill to the container's line at most, and leave 10 mm (0.39 in) to the rim of a jar, 6 mm (0.24 in) of a tin, 1 mm of a tealight cup.",
	Card: lint.Card{
		Question: "How full may I fill the jar?",
		Answer:   "To its maker's line at most, with at least 10 mm (0.4 in) from the wax to the rim.",
		AllRight: "A tin does with 6 mm (1/4 in), a tealight cup with 1 mm.",
		Do:       "Mark the height on the outside before you pour, and count the second pour in.",
	},
	Source: "what the container holds: its maker, or water; the headspace: common practice",
	Bad: []lint.Example{
		{
			About:   "more than it holds",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `fill  = "230 mL"`, To: `fill  = "241 mL"`}},
			Flags:   []string{`"241 mL"`},
			Level:   lint.Must,
		},
		{
			About:   "3 mm below the rim, far above the line",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `fill  = "230 mL"`, To: `fill  = "3 mm below rim"`}},
			Flags:   []string{`"3 mm below rim"`},
			Level:   lint.Must,
		},
		{
			About:   "by weight",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `fill  = "230 mL"`, To: `fill  = "9 oz"`}},
			Flags:   []string{`"9 oz"`},
			Level:   lint.Must,
		},
		{
			About:   "within what it holds, and too near the rim",
			Recipe:  "skerry-eu",
			Changes: []lint.Change{{From: `container "jar-200"`, To: `container "brim-jar"`}, {From: `fill  = "220 mL"`, To: `fill  = "72 mm"`}},
			Stock: "container \"brim-jar\" {\n  title            = \"Jar measured to the brim\"\n  kind             = \"jar\"\n  diameter         = \"70 mm\"\n  height           = \"80 mm\"\n" +
				"  holds            = \"300 mL\"\n  material         = \"glass\"\n  made_for_candles = true\n  thermal_shock    = \"50 °C\"\n}\n",
			Flags: []string{`"72 mm"`},
		},
	},
	Good: []lint.Example{
		{About: "just what it holds", Recipe: "fogbank-soy", Changes: []lint.Change{{From: `fill  = "230 mL"`, To: `fill  = "240 mL"`}}},
		{
			About:   "just 10 mm below the rim",
			Recipe:  "skerry-eu",
			Changes: []lint.Change{{From: `container "jar-200"`, To: `container "brim-jar"`}, {From: `fill  = "220 mL"`, To: `fill  = "10 mm below rim"`}},
			Stock: "container \"brim-jar\" {\n  title            = \"Jar measured to the brim\"\n  kind             = \"jar\"\n  diameter         = \"70 mm\"\n  height           = \"80 mm\"\n" +
				"  holds            = \"300 mL\"\n  material         = \"glass\"\n  made_for_candles = true\n  thermal_shock    = \"50 °C\"\n}\n",
		},
		{About: "a tin", Recipe: "bosun-tin", Shelf: `container tin-8`},
		{About: "a tealight cup", Recipe: "saltmarsh-tealight", Shelf: `container tealight-cup`},
	},
	Also:  []string{"test-burn-missing", "batch-does-not-fill", "batch-left-over", "net-weight-overstated"},
	Check: checkOverfilled,
}

// leastSpace is the headspace in mm below which a kind of container is too
// full. Common practice. False: none is usual.
func leastSpace(kind string) (quantity.Rat, bool) {
	switch kind {
	case "jar":
		return quantity.Int(10), true
	case "tin":
		return quantity.Int(6), true
	case "tealight cup":
		return quantity.Int(1), true
	}
	return quantity.Rat{}, false
}

// reckoned is how far a volume reckoned from a height or a weight may pass the
// measured one before it counts: real walls are thick and rounded at the
// bottom, and wax with fragrance in it is a little heavier than wax. 3 %.
var reckoned = quantity.NewRat(103, 100)

// overfill is by how much a vessel is too full.
type overfill struct {
	vessel *batch.Vessel
	said   schema.Value // the recipe's fill
	holds  bool         // it passes what the container holds, by over in mL
	over   quantity.Rat
	space  bool // less than least is left to the rim, in mm
	least  quantity.Rat
}

// aboveRim says whether the wax would stand above the rim: of a height that is
// written that is sure, of one reckoned from a volume or a weight where it is
// over by more than such a reckoning may err.
func (o *overfill) aboveRim() bool {
	above := o.vessel.Headspace.Value.Neg()
	if o.said.Amount().Dim() == quantity.Length {
		return above.Sign() > 0
	}
	return o.vessel.Height.Value.Mul(reckoned.Sub(quantity.Int(1))).Less(above)
}

func checkOverfilled(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Kind != "container" || v.Stock == nil {
			continue
		}
		o := overfill{vessel: v, said: v.Block.Get("fill")}
		if o.said.Broken() || !v.Fill.Ask(p) {
			continue
		}
		if v.Holds.Ask(p) {
			limit := v.Holds.Value
			if dim := o.said.Amount().Dim(); dim == quantity.Length || dim == quantity.Weight {
				limit = limit.Mul(reckoned)
			}
			o.holds, o.over = limit.Less(v.Fill.Value), v.Fill.Value.Sub(v.Holds.Value)
		}
		p.CannotCheck(v.Stock, "kind")
		if least, usual := leastSpace(v.Stock.Get("kind").Text()); usual && v.Headspace.Ask(p) {
			o.space, o.least = v.Headspace.Value.Less(least), least
		}
		if o.holds || o.space {
			reportOverfilled(p, b, &o)
		}
	}
}

func reportOverfilled(p *lint.Pass, b *batch.Batch, o *overfill) {
	v := o.vessel
	name := v.Stock.Title()
	filled := batch.Milliliters(p.View, v.Fill.Value)
	if o.said.Known() {
		filled = o.said.Amount().String()
		if o.said.BelowRim() {
			filled += " below rim"
		}
	}
	f := lint.Finding{Fixes: func() []schema.Fix { return lowerFill(p, o) }}
	if o.holds {
		f.Message = fmt.Sprintf("a fill of %s puts %s into %s, which holds %s: %s too much. It spills at the first touch",
			filled, batch.Milliliters(p.View, v.Fill.Value), name, batch.Both(p.View, v.Stock.Get("holds").Amount()), batch.Milliliters(p.View, o.over))
		f.Notes = batch.NoteAt("what it holds is stated here", v.Stock.Get("holds"))
		f.Levels = lint.Every(lint.Must)
		if !burns(b, v) || o.said.Amount().Dim() == quantity.Weight && b.Density().Family != "" {
			f.Levels = lint.Every(lint.Should) // no flame to spill at; or no more than what is usual says so
		}
	} else {
		f.Message = fmt.Sprintf("a fill of %s leaves %s to the rim of %s, %s less than the %s usual in a %s (common practice)",
			filled, showSpace(p, v.Headspace.Value), name, showSpace(p, o.least.Sub(v.Headspace.Value)), showSpace(p, o.least), v.Stock.Get("kind").Text())
		switch {
		case o.aboveRim():
			f.Message = fmt.Sprintf("a fill of %s stands %s above the rim of %s; %s below it is usual in a %s (common practice)",
				filled, showSpace(p, v.Headspace.Value.Neg()), name, showSpace(p, o.least), v.Stock.Get("kind").Text())
			f.Levels = lint.Every(lint.Must)
		case v.Headspace.Value.Sign() <= 0:
			f.Message = fmt.Sprintf("a fill of %s comes up to the rim of %s; %s below it is usual in a %s (common practice)",
				filled, name, showSpace(p, o.least), v.Stock.Get("kind").Text())
		}
		f.Notes = batch.NoteAt("its height is stated here", v.Stock.Get("height"))
	}
	if o.said.Known() {
		f.At = lint.AtValue(o.said)
		p.Report(f)
		return
	}
	f.At = lint.AtHeader(v.Block)
	p.Missing(f)
}

// showSpace is a distance in mm on both scales: sixteenths of an inch are too
// coarse for a headspace.
func showSpace(p *lint.Pass, mm quantity.Rat) string {
	text := mm.Decimal(1) + " mm"
	if p.Units() == quantity.US {
		inches, _ := mm.Quo(quantity.Inch.Factor)
		text += " (" + inches.Decimal(2) + " in)"
	}
	return text
}

// lowerFill offers the most that keeps to both limits, in the maker's unit.
func lowerFill(p *lint.Pass, o *overfill) []schema.Fix {
	v := o.vessel
	part := quantity.Int(1)
	if o.holds {
		if q, ok := v.Holds.Value.Quo(v.Fill.Value); ok {
			part = q
		}
	}
	if o.space {
		height := v.Height.Value.Sub(v.Headspace.Value)
		if q, ok := v.Height.Value.Sub(o.least).Quo(height); ok {
			part = quantity.Min(part, q)
		}
	}
	if part.Sign() <= 0 || !v.Fill.Known() {
		return nil
	}
	text := ""
	switch written := o.said.Amount().High(); {
	case o.said.Absent():
		to := quantity.FromBase(v.Fill.Value.Mul(part), quantity.Milliliter)
		if p.Units() == quantity.US {
			to = quantity.FromBase(v.Fill.Value.Mul(part), quantity.FluidOunce)
		}
		text = repair.Lowered(to, to.Base()).String()
	case o.said.BelowRim():
		height := v.Height.Value.Sub(written.Base()).Mul(part)
		unit := written.Unit()
		down := quantity.FromBase(v.Height.Value.Sub(height), unit).Number()
		step := quantity.Int(1)
		if unit == quantity.Inch {
			step = quantity.NewRat(1, 16)
		}
		text = quantity.Of(down.Ceil(step), unit).String() + " below rim"
	default:
		to := repair.Lowered(written, written.Base().Mul(part))
		if to.Base().Sign() <= 0 || !to.Base().Less(written.Base()) {
			return nil
		}
		text = to.String()
	}
	return []schema.Fix{repair.Rewrite("fill "+v.Stock.Title()+" to "+text, o.said, schema.Quote(text))}
}
