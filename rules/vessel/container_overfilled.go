package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// ContainerOverfilled is a fill above what the vessel holds, or too near its
// rim.
var ContainerOverfilled = &lint.Rule{
	Name:   "container-overfilled",
	Group:  group,
	Title:  "a container filled above its line or too near its rim",
	Levels: lint.Every(lint.Should),
	Why: "The first burn melts the whole top. With no rim above it the pool runs over when the candle is moved, the flame stands in the draft, " +
		"and a lid presses on the wick.",
	Remedy: "Leave 10 mm in a jar, 6 mm in a tin, 1 mm in a tealight cup.",
	Source: "common practice; above the stated fill line: arithmetic",
	Bad: []lint.Example{
		{
			About:   "more than it holds",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `fill  = "250 mL"`, To: `fill  = "310 mL"`}},
			Flags:   []string{`"310 mL"`},
			Level:   lint.Must,
		},
		{
			About:   "nearly to the rim",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `fill  = "250 mL"`, To: `fill  = "4 mm below rim"`}},
			Flags:   []string{`"4 mm below rim"`},
			Level:   lint.Must,
		},
	},
	Also:  []string{"batch-does-not-fill", "no-room-for-second-pour", "net-weight-overstated"},
	Good:  []lint.Example{{About: "well below the rim", Recipe: "harbor-jar"}},
	Check: checkOverfilled,
}

// leastHeadspace is common practice, by the container's kind.
func leastHeadspace(kind string) (least quantity.Rat, thing string) {
	switch kind {
	case "jar":
		return quantity.Int(10), "a jar"
	case "tin":
		return quantity.Int(6), "a tin"
	case "tealight cup":
		return quantity.Int(1), "a tealight cup"
	}
	return quantity.Rat{}, ""
}

func checkOverfilled(p *lint.Pass) {
	eachVessel(p, func(b *batch.Batch, _ int, v *batch.Vessel) {
		if v.Kind != "container" || b.Makes == "melt" {
			return
		}
		fill := v.Block.Get("fill")
		f := lint.Finding{At: lint.AtValue(fill)}
		if v.Fill.Known() && v.Holds.Known() && v.Holds.Value.Less(v.Fill.Value) {
			holds := v.Stock.Get("holds")
			f.Levels = lint.Every(lint.Must)
			f.Message = fmt.Sprintf("%s fills %s with %s, over the %s that it holds to the line, by %s", written(fill), v.Stock.Title(),
				batch.Milliliters(p.View, v.Fill.Value), batch.Milliliters(p.View, v.Holds.Value), batch.Milliliters(p.View, v.Fill.Value.Sub(v.Holds.Value)))
			if holds.Known() {
				f.Notes = []lint.Note{{Place: lint.AtValue(holds), Message: "what it holds is stated here"}}
				f.Fixes = func() []schema.Fix {
					return []schema.Fix{repair.Rewrite("lower the fill to "+holds.Amount().String(), fill, holds.Written())}
				}
			}
			p.Report(f)
			return
		}
		least, thing := leastHeadspace(v.Stock.Get("kind").Text())
		if thing == "" || !v.Headspace.Ask(p) || !v.Headspace.Value.Less(least) {
			return
		}
		f.Message = fmt.Sprintf("%s leaves %s to the rim of %s, %s less than %s needs (%s, common practice)", written(fill), batch.Millimeters(p.View, v.Headspace.Value), v.Stock.Title(),
			batch.Millimeters(p.View, least.Sub(v.Headspace.Value)), thing, batch.Millimeters(p.View, least))
		f.Fixes = func() []schema.Fix {
			below := least.Decimal(0) + " mm below rim"
			return []schema.Fix{repair.Rewrite("fill it to "+below, fill, schema.Quote(below))}
		}
		p.Report(f)
	})
}

func written(fill schema.Value) string {
	if fill.Absent() {
		return "filling it to the line"
	}
	return "a fill of " + fill.Text() + fill.Amount().String()
}
