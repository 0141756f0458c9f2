package vessel

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// WickOutsideDiameter compares the width of a candle with what its wick burns.
// n wicks share the width: each is judged at the diameter over the square root
// of n, compared exactly by the squares.
var WickOutsideDiameter = &lint.Rule{
	Name:   "wick-outside-diameter",
	Group:  group,
	Title:  "a wick that is too large or too small for the candle's width",
	Levels: lint.Every(lint.Should),
	Why: "A wick that is too large melts more than it can burn: a tall flame, soot, a pool that is too hot, glass that cracks. One that is too small digs a tunnel and drowns. " +
		"The maker's chart gives the widths a wick is made for; only a burn tells whether it is right.",
	Remedy:   "Take the wick whose range the width lies in, and burn three candles with it.",
	Source:   "the range is the maker's; common practice: several wicks share the area between them",
	Cautions: "A wick one size too large is the likelier danger: try the smaller one first.",
	Bad: []lint.Example{
		{
			About:   "far too small",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `"flat-braid-24"`, To: `"flat-braid-15"`}},
			Flags:   []string{`"flat-braid-15"`},
		},
	},
	Also:  []string{"test-burn-missing"},
	Good:  []lint.Example{{About: "within its range", Recipe: "tide-pillar"}, {About: "three wicks in a bowl", Recipe: "three-bells-bowl"}},
	Check: checkDiameter,
}

// muchTooLarge is 1.2 squared: over 20 % too large is one level louder.
var muchTooLarge = quantity.NewRat(144, 100)

type fit uint8

const (
	fits fit = iota
	tooSmall
	tooLarge
	farTooLarge
)

// judgeFit compares the square of the width with the squares of the wick's
// range, times the number of wicks.
func judgeFit(burns quantity.Quantity, diameter quantity.Rat, wicks int) fit {
	n := quantity.Int(int64(wicks))
	width := diameter.Mul(diameter)
	low, high := burns.Low().Base(), burns.High().Base()
	least := low.Mul(low).Mul(n)
	switch {
	case high.Mul(high).Mul(n).Less(width):
		return tooSmall
	case width.Mul(muchTooLarge).Less(least):
		return farTooLarge
	case width.Less(least):
		return tooLarge
	}
	return fits
}

func checkDiameter(p *lint.Pass) {
	eachVessel(p, func(b *batch.Batch, index int, v *batch.Vessel) {
		if b.Makes == "melt" || v.Wick == nil || v.Wicks < 1 {
			return
		}
		burns := v.Wick.Get("burns")
		p.CannotCheck(v.Wick, "burns")
		if !burns.Known() || !v.Diameter.Ask(p) {
			return
		}
		verdict := judgeFit(burns.Amount(), v.Diameter.Value, v.Wicks)
		if verdict == fits {
			return
		}
		p.Report(diameterFinding(p, b, v, burns, verdict))
	})
}

func diameterFinding(p *lint.Pass, b *batch.Batch, v *batch.Vessel, burns schema.Value, verdict fit) lint.Finding {
	f := lint.Finding{
		At:    lint.AtValue(v.WickSaid),
		Notes: []lint.Note{{Place: lint.AtValue(burns), Message: "what it burns is stated here"}},
		Fixes: func() []schema.Fix { return wicksFor(p, b, v) },
	}
	width := share(p, v.Diameter.Value, v.Wicks)
	range_ := burns.Amount().String()
	if v.Wicks > 1 {
		width = fmt.Sprintf("%s, which is %s wide over %s,", width, batch.Millimeters(p.View, v.Diameter.Value), counted(v.Wicks))
	}
	switch verdict {
	case tooSmall:
		f.Message = fmt.Sprintf("%s is made for %s, and %s of %s is wider by %s: it will dig a tunnel and drown", v.Wick.Title(), range_, width, v.Stock.Title(),
			apart(p, effective(v), burns.Amount().High().Base()))
	default:
		f.Message = fmt.Sprintf("%s is made for %s, and %s of %s is narrower by %s: it will burn with a tall, sooty flame and heat the wall", v.Wick.Title(), range_, width, v.Stock.Title(),
			apart(p, burns.Amount().Low().Base().Float64(), effectiveRat(v)))
		if verdict == farTooLarge {
			f.Message += ". That is over a fifth too large"
			f.Levels = lint.Every(lint.Must)
		}
	}
	return f
}

func counted(n int) string { return fmt.Sprintf("the square root of %d wicks", n) }

// effective is the width each wick is judged at, in mm, for messages and the
// order of offers only.
func effective(v *batch.Vessel) float64 {
	return v.Diameter.Value.Float64() / math.Sqrt(float64(v.Wicks))
}

// effectiveRat is the same to a thousandth of a millimeter.
func effectiveRat(v *batch.Vessel) quantity.Rat {
	return quantity.NewRat(int64(math.Round(effective(v)*1000)), 1000)
}

func share(p *lint.Pass, diameter quantity.Rat, wicks int) string {
	if wicks == 1 {
		return batch.Millimeters(p.View, diameter)
	}
	return batch.Millimeters(p.View, quantity.NewRat(int64(math.Round(diameter.Float64()/math.Sqrt(float64(wicks))*100)), 100))
}

func apart(p *lint.Pass, a float64, b quantity.Rat) string {
	return batch.Millimeters(p.View, quantity.NewRat(int64(math.Round(math.Abs(a-b.Float64())*100)), 100))
}

// wicksFor offers the stock wicks that fit the width, the wax and the vessel:
// those of the same construction first, then those in whose range the width
// lies most in the middle.
func wicksFor(p *lint.Pass, b *batch.Batch, v *batch.Vessel) []schema.Fix {
	var fit []*schema.Block
	for _, wick := range p.Shop().Shelf("wick") {
		burns := wick.Get("burns")
		if burns.Known() && judgeFit(burns.Amount(), v.Diameter.Value, v.Wicks) == fits && suitsWaxes(b, wick) && (!needsTab(b, v) || wick.Get("tab").Yes()) && leadFree(wick) {
			fit = append(fit, wick)
		}
	}
	construction := ""
	if v.Wick != nil {
		construction = v.Wick.Get("construction").Text()
	}
	slices.SortStableFunc(fit, func(x, y *schema.Block) int {
		if a, b := x.Get("construction").Text() == construction, y.Get("construction").Text() == construction; a != b {
			if a {
				return -1
			}
			return 1
		}
		if off(x, v) < off(y, v) {
			return -1
		}
		return strings.Compare(x.Label, y.Label)
	})
	var fixes []schema.Fix
	for _, wick := range fit[:min(4, len(fit))] {
		fixes = append(fixes, repair.Rewrite("use the wick "+wick.Label, v.WickSaid, schema.Quote(wick.Label)))
	}
	return fixes
}

// off is how far the width lies from the middle of a wick's range.
func off(wick *schema.Block, v *batch.Vessel) float64 {
	burns := wick.Get("burns").Amount()
	return math.Abs((burns.Low().Base().Float64()+burns.High().Base().Float64())/2 - effective(v))
}
