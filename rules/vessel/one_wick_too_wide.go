package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/formula"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// OneWickTooWide is a wide candle with a single wick.
var OneWickTooWide = &lint.Rule{
	Name:   "one-wick-too-wide",
	Group:  group,
	Title:  "a single wick in a candle over 4 in across",
	Levels: lint.Every(lint.Should),
	Why: "A wick strong enough to melt a very wide candle to its edge makes a tall, hot, sooty flame; a smaller one leaves a wall of wax and drowns. " +
		"Over 4 in (101.6 mm) two or three smaller wicks burn lower and cleaner.",
	Remedy: "Give it two or three wicks, each chosen for the diameter over the square root of their number, well away from the wall and from each other. " +
		"Three candles with passing test burns show that one wick does here.",
	Card: lint.Card{
		Question: "How many wicks does a wide candle need?",
		Answer: "One up to about 4 in (10 cm) across; two or three smaller ones beyond that. They burn lower and cleaner than one that is strong " +
			"enough for all of it.",
		AllRight: "A single wick in a wider candle where three candles have passed their test burns with it.",
		Do: "Set them about half way between the middle and the wall, 25 mm (1 in) or more from the wall and 40 mm (1 5/8 in) or more from each " +
			"other.",
	},
	Source: "common practice; EN 15426 tests the soot of single-wick candles up to 100 mm only",
	Bad: []lint.Example{
		{
			About:   "a bowl of 5 in with one wick",
			Recipe:  "three-bells-bowl",
			Changes: []lint.Change{{From: `wicks        = 3`, To: `wicks        = 1`}},
			Flags:   []string{`1`},
		},
		{
			About:   "a pillar of 4 1/2 in",
			Recipe:  "skep-beeswax",
			Changes: []lint.Change{{From: `mold "skep"`, To: `mold "wide-hive"`}, {From: `made_for = "sale"`, To: `made_for = "own use"`}},
			Stock:   "mold \"wide-hive\" {\n  title      = \"Wide beehive\"\n  shape      = \"other\"\n  diameter   = \"4 1/2 in\"\n  height     = \"3 1/4 in\"\n  holds      = \"235 mL\"\n  wick_hole  = false\n  material   = \"silicone\"\n  softens_at = \"400 °F\"\n}\n",
			Flags:   []string{`mold "wide-hive"`},
		},
	},
	Good: []lint.Example{
		{About: "three wicks in a bowl of 5 in", Recipe: "three-bells-bowl"},
		{
			About:   "just 4 in",
			Recipe:  "skep-beeswax",
			Changes: []lint.Change{{From: `mold "skep"`, To: `mold "wide-hive"`}},
			Stock:   "mold \"wide-hive\" {\n  title      = \"Wide beehive\"\n  shape      = \"other\"\n  diameter   = \"101.6 mm\"\n  height     = \"3 1/4 in\"\n  holds      = \"235 mL\"\n  wick_hole  = false\n  material   = \"silicone\"\n  softens_at = \"400 °F\"\n}\n",
		},
	},
	Also:  []string{"wick-outside-diameter"},
	Check: checkOneWick,
}

// widest is the most that one wick is usual for: 4 in, in mm.
var widest = quantity.NewRat(1016, 10)

func checkOneWick(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Stock == nil || v.Wicks != 1 || !burns(b, v) || wickOf(p, b, i).said.Absent() || v.Block.Get("wicks").Broken() {
			continue
		}
		if !v.Diameter.Ask(p) || !widest.Less(v.Diameter.Value) {
			continue
		}
		reportOneWick(p, b, i)
	}
}

func reportOneWick(p *lint.Pass, b *batch.Batch, vessel int) {
	v := &b.Vessels[vessel]
	said := diameterSaid(v)
	written := quantity.Of(quantity.Int(4), quantity.Inch)
	if said.IsAmount() {
		written = said.Amount()
	}
	f := lint.Finding{
		Notes: batch.NoteAt("the diameter is stated here", said),
		Message: fmt.Sprintf("one wick for %s, which is %s across: over %s, %s more, two or three wicks are usual (common practice). Two would be chosen for %s each, three for %s",
			v.Stock.Title(), lengthIn(v.Diameter.Value, written), lengthIn(widest, written), decimals(v.Diameter.Value.Sub(widest), written),
			decimals(root(v.Diameter.Value, 2), written), decimals(root(v.Diameter.Value, 3), written)),
	}
	if n := passed(p, b, vessel); n >= 3 {
		f.Levels = lint.Every(lint.Consider)
		f.Message += fmt.Sprintf("; %d candles with one wick are recorded as having passed their test burns", n)
	}
	if wicks := v.Block.Get("wicks"); wicks.Known() {
		f.At = lint.AtValue(wicks)
		p.Report(f)
		return
	}
	f.At = lint.AtHeader(v.Block)
	p.Missing(f)
}

// passed counts the candles in this vessel, by its index, whose every burn of
// the formulation as it is now passed.
func passed(p *lint.Pass, b *batch.Batch, vessel int) int {
	f := formula.Of.In(p.View)
	var burns []*schema.Block
	for _, burn := range p.TestBurns() {
		if f.Counts(burn, vessel, b) {
			burns = append(burns, burn)
		}
	}
	good, _ := batch.Burned(burns)
	return len(good)
}
