package vessel

import (
	"fmt"
	"math"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// WickOutsideDiameter is a wick made for candles of another width. Several
// wicks share the width: n of them melt the area of one, so each is chosen for
// the diameter over the square root of n.
var WickOutsideDiameter = &lint.Rule{
	Name:   "wick-outside-diameter",
	Group:  group,
	Title:  "a wick that is too small or too large for the candle",
	Levels: lint.Every(lint.Should),
	Why: "A wick too large for the candle melts more wax than it burns: a tall, sooty flame, an overheated wall, a deep pool. Too small, it digs a tunnel, drowns in the pool " +
		"and goes out. The wick's maker states the widths it is made for. Where several wicks share a candle, each has its part of the area: the diameter over the square root of their number.",
	Remedy: "Take the wick whose range the diameter lies in, and burn three candles before you rely on it: charts are where testing starts, not where it ends.",
	Card: lint.Card{
		Question: "Which wick do I need?",
		Answer: "One whose chart names the inside width of your candle and your kind of wax. Then burn three candles, for a chart is only where " +
			"testing starts.",
		AllRight: "Several smaller wicks in a wide candle: each is then chosen for the width divided by the square root of their number.",
		Do: "Measure the inside at the top of the wax. If it digs a tunnel or drowns, go up a size; if it flickers, soots or makes the glass " +
			"hot, go down.",
	},
	Source:   "the wick maker's chart; equal shares of the area for several wicks: geometry; over 20 % too large: common practice",
	Cautions: "Burn a first candle of a new wick on a plate, in sight, and snuff it if the flame stands over 75 mm (3 in).",
	Bad: []lint.Example{
		{
			About:   "too small for the jar",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `"cored-cotton-44"`, To: `"cored-cotton-28"`}},
			Flags:   []string{`"cored-cotton-28"`},
		},
		{
			About:   "a little too large",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `"cored-cotton-44"`, To: `"wide-cotton"`}},
			Stock:   "wick \"wide-cotton\" {\n  title        = \"Cored, wide\"\n  construction = \"cored\"\n  core         = \"cotton\"\n  burns        = \"2.8 to 3.4 in\"\n  families     = [\"soy\"]\n  trim         = \"1/4 in\"\n  tab          = true\n}\n",
			Flags:   []string{`"wide-cotton"`},
		},
		{
			About:   "over 20 % too large",
			Recipe:  "first-lesson",
			Changes: []lint.Change{{From: `"cored-cotton-28"`, To: `"cored-cotton-44"`}},
			Flags:   []string{`"cored-cotton-44"`},
			Level:   lint.Must,
		},
		{
			About:   "two wicks in a bowl for three: each has 5 in / √2 = 3.54 in",
			Recipe:  "three-bells-bowl",
			Changes: []lint.Change{{From: `wicks        = 3`, To: `wicks        = 2`}},
			Flags:   []string{`"cored-paper-36"`},
		},
	},
	Good: []lint.Example{
		{About: "within the range", Recipe: "harbor-jar", Shelf: `wick cored-cotton-44`},
		{About: "three wicks in a bowl of 5 in: each has 2.89 in", Recipe: "three-bells-bowl"},
		{
			About:   "just the end of the range",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `"cored-cotton-44"`, To: `"exact-cotton"`}},
			Stock:   "wick \"exact-cotton\" {\n  title        = \"Cored, exact\"\n  construction = \"cored\"\n  core         = \"cotton\"\n  burns        = \"2.75 to 3 in\"\n  families     = [\"soy\"]\n  trim         = \"1/4 in\"\n  tab          = true\n}\n",
		},
	},
	Also:  []string{"test-burn-missing", "wick-not-for-wax"},
	Check: checkWickDiameter,
}

// muchLarger is what a wick's smallest width may be of the candle's before it
// is far too large: 120 %.
var muchLarger = quantity.NewRat(6, 5)

func checkWickDiameter(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Stock == nil || v.Wicks == 0 || !burns(b, v) {
			continue
		}
		w := wickOf(p, b, i)
		if w.stock == nil || !v.Diameter.Ask(p) {
			continue
		}
		said := w.stock.Get("burns")
		if said.Absent() {
			p.CannotCheck(w.stock, "burns")
		}
		if !said.IsAmount() {
			continue
		}
		size, range_ := widthOf(v), said.Amount()
		switch {
		case size.against(range_.Base()) > 0:
			levels := lint.Levels{}
			if far, _ := range_.Base().Quo(muchLarger); size.against(far) > 0 {
				levels = lint.Every(lint.Must)
			}
			reportWick(p, b, i, w, levels, true)
		case size.against(range_.High().Base()) < 0:
			reportWick(p, b, i, w, lint.Levels{}, false)
		}
	}
}

func reportWick(p *lint.Pass, b *batch.Batch, vessel int, w wicked, levels lint.Levels, large bool) {
	v := &b.Vessels[vessel]
	burns := w.stock.Get("burns").Amount()
	written := burns
	if said := diameterSaid(v); said.IsAmount() {
		written = said.Amount()
	}
	share := v.Diameter.Value
	across := lengthIn(share, written) + " across"
	if v.Wicks > 1 {
		share = root(share, v.Wicks)
		across = fmt.Sprintf("%s, which is %s for each of its %d wicks (divided by √%d)", across, decimals(share, written), v.Wicks, v.Wicks)
	}
	f := lint.Finding{At: lint.AtValue(w.said), Levels: levels, Notes: append(batch.NoteAt(limitHere, w.stock.Get("burns")), batch.NoteAt("the diameter is stated here", diameterSaid(v))...)}
	if large {
		over := burns.Base().Sub(share)
		ratio, _ := over.Quo(share)
		f.Message = fmt.Sprintf("%s burns candles of %s: %s is %s, %s too narrow, so the wick is %s %% too large. It soots and overheats the wall",
			w.stock.Title(), batch.Both(p.View, burns), v.Stock.Title(), across, decimals(over, written), percent(ratio))
	} else {
		f.Message = fmt.Sprintf("%s burns candles of %s: %s is %s, %s too wide, so the wick is too small. It tunnels and drowns",
			w.stock.Title(), batch.Both(p.View, burns), v.Stock.Title(), across, decimals(share.Sub(burns.High().Base()), written))
	}
	f.Fixes = func() []schema.Fix { return swapWick(p, b, vessel, w) }
	p.Report(f)
}

// root is mm over the square root of n, for print only: what is judged is
// judged by squares.
func root(mm quantity.Rat, n int) quantity.Rat {
	thousandths := math.Round(mm.Float64() / math.Sqrt(float64(n)) * 1000)
	return quantity.NewRat(int64(thousandths), 1000)
}

// decimals is a length in mm in the unit of another, with two places of an
// inch and one of a millimeter; never 0 for what is more.
func decimals(mm quantity.Rat, written quantity.Quantity) string {
	unit := written.Unit()
	number, places := quantity.FromBase(mm, unit).Number(), 1
	if unit != quantity.Millimeter {
		places = 2
	}
	for places < 6 && number.Decimal(places) == quantity.Int(0).Decimal(places) && !number.IsZero() {
		places++
	}
	return number.Decimal(places) + " " + unit.Symbol
}

// percent is a ratio in whole per cent, in tenths below ten.
func percent(ratio quantity.Rat) string {
	n := ratio.Mul(quantity.Int(100))
	if n.Less(quantity.Int(10)) {
		return n.Decimal(1)
	}
	return n.Decimal(0)
}
