package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

// OneWickTooWide is a single wick in a wide candle.
var OneWickTooWide = &lint.Rule{
	Name:   "one-wick-too-wide",
	Group:  group,
	Title:  "a single wick in a candle over 4 in wide",
	Levels: lint.Every(lint.Should),
	Why: "One flame large enough to melt such a width is a tall one: it soots and heats what stands round it. A smaller one leaves a wall of wax. " +
		"Two or three small flames share the work.",
	Remedy: "Plan two or three wicks, each sized for its part of the width; or prove the single one by burning three candles.",
	Source: "common practice; EN 15426 measures soot of single wicks up to 100 mm only",
	Bad: []lint.Example{{
		About:   "one wick in the bowl of three",
		Recipe:  "three-bells-bowl",
		Changes: []lint.Change{{From: "    wicks        = 3\n", To: ""}},
		Flags:   []string{bowlWick},
		Level:   lint.Consider,
	}},
	Also: []string{"wick-outside-diameter"},
	Good: []lint.Example{{About: "three wicks", Recipe: "three-bells-bowl"}, {About: "3 in wide", Recipe: "tide-pillar"}},
	Check: func(p *lint.Pass) {
		eachVessel(p, func(b *batch.Batch, _ int, v *batch.Vessel) {
			if b.Makes == "melt" || v.Wicks != 1 || v.WickSaid.Absent() || !v.Diameter.Ask(p) || !widestForOne.Less(v.Diameter.Value) {
				return
			}
			f := lint.Finding{
				At: lint.AtValue(v.WickSaid),
				Message: fmt.Sprintf("one wick for %s of %s, %s over the 4 in (102 mm) up to which one is usual (common practice)", batch.Millimeters(p.View, v.Diameter.Value), v.Stock.Title(),
					batch.Millimeters(p.View, v.Diameter.Value.Sub(widestForOne))),
			}
			if passed, _ := batch.Burned(p.TestBurns()); len(passed) >= 3 {
				f.Levels = lint.Every(lint.Consider)
				f.Message += "; three candles have burned well with it"
			}
			p.Report(f)
		})
	},
}

// bowlWick is the wick of the example shop's bowl, as it is written there.
const bowlWick = `"cored-paper-36"`

// widestForOne is 4 in, in mm.
var widestForOne = quantity.NewRat(1016, 10)
