package burns

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// Where a burn that is noted as passed is doubtful.
var (
	deepest    = quantity.Int(13)          // mm of melted pool: half an inch
	hottest    = quantity.Int(79)          // °C of the wall: 175 °F, a figure handed on without a source
	widthAfter = quantity.Int(4 * 60 * 60) // s after which a pool has its width
	widthLeast = quantity.NewRat(3, 4)     // of the diameter
)

// TestBurnDoubtful finds burns noted as passed whose record says otherwise.
var TestBurnDoubtful = &lint.Rule{
	Name:   "test-burn-doubtful",
	Group:  Group,
	Title:  "a test burn is noted as passed though its record is doubtful",
	Levels: lint.Every(lint.Should),
	Why: "Heavy soot, a mushroom on the wick, a pool over half an inch deep or a hot wall say that the wick is too large or the oil too much; a drowned wick, or a pool that after four hours is " +
		"narrower than three quarters of its container, that the wick is too small. Such a candle may pass one evening and fail the next.",
	Remedy: "Look again at what was seen. Try a wick one size down (soot, mushroom, deep pool, hot wall) or up (drowned, narrow pool) and burn three of those.",
	Card: lint.Card{
		Question: "The wick has a black mushroom on it and soots. Is that normal?",
		Answer:   "It says that the wick is too large for this candle, or the oil too much. It may pass one evening and fail the next.",
		AllRight: "A clean burn with a pool up to half an inch (13 mm) deep. A pillar keeps a wall of its own, so its pool need not reach the edge.",
		Do:       "Trim the wick to 6 mm (1/4 in). If it comes back, try a wick one size down; where the wick drowns or digs a tunnel, one size up.",
	},
	Source: "common practice; the wall of 79 °C (175 °F) is handed on among makers and found in no standard, so it is only a hint",
	Bad: []lint.Example{
		{
			About:   "a pool of over half an inch",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: "    melt_pool  = \"2.5 in\"\n    pool_depth = \"3/8 in\"", To: "    melt_pool  = \"2.5 in\"\n    pool_depth = \"5/8 in\""}},
			Flags:   []string{`"5/8 in"`},
		},
		{
			About:  "heavy soot and a mushroom on the wick",
			Recipe: "tide-pillar",
			Changes: []lint.Change{{
				From: "    flame      = \"1.35 in\"\n    soot       = \"none\"\n    seen       = []",
				To:   "    flame      = \"1.35 in\"\n    soot       = \"heavy\"\n    seen       = [\"mushroom\"]",
			}},
			Flags: []string{`"heavy"`, `"mushroom"`},
		},
		{
			About:   "a jar whose pool stays narrow",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `melt_pool  = "2.4 in"`, To: `melt_pool  = "2.1 in"`}},
			Flags:   []string{`"2.1 in"`},
		},
		{
			About:   "a hot wall is a hint",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `wall       = "137 °F"`, To: `wall       = "182 °F"`}},
			Flags:   []string{`"182 °F"`},
			Level:   lint.Consider,
		},
	},
	Good:  []lint.Example{{About: "clean burns", Recipe: "tide-pillar"}, {About: "a pillar keeps a wall of its own: its pool need not be wide", Recipe: "tide-pillar", Changes: []lint.Change{{From: `melt_pool  = "2.5 in"`, To: `melt_pool  = "2 in"`}}}},
	Check: checkDoubtful,
}

func checkDoubtful(p *lint.Pass) {
	if len(p.TestBurns()) == 0 {
		return
	}
	b := batch.Of.In(p.View)
	for _, burn := range mayBeCurrent(p) {
		if burn.Get("result").Text() == "pass" {
			doubt(p, b, burn)
		}
	}
}

func doubt(p *lint.Pass, b *batch.Batch, burn *schema.Block) {
	which := whichBurn(burn)
	if soot := burn.Get("soot"); soot.Text() == "heavy" {
		p.Report(lint.Finding{At: lint.AtValue(soot), Message: which + " is noted as passed and left heavy soot: the wick is mostly too large, or the oil too much"})
	}
	for _, item := range burn.Get("seen").Items() {
		switch item.Text {
		case "mushroom":
			p.Report(lint.Finding{At: lint.AtItem(burn.Get("seen"), item), Message: which + " is noted as passed and grew a mushroom on its wick: the wick is mostly too large, or was not trimmed"})
		case "drowned":
			p.Report(lint.Finding{At: lint.AtItem(burn.Get("seen"), item), Message: which + " is noted as passed and its wick drowned: the wick is mostly too small"})
		}
	}
	if depth := burn.Get("pool_depth"); depth.IsAmount() && deepest.Less(depth.Amount().High().Base()) {
		p.Report(lint.Finding{At: lint.AtValue(depth), Message: fmt.Sprintf("%s is noted as passed with a pool %s deep, %s over the %s that is usual: the wick is mostly too large", which, batch.Both(p.View, depth.Amount().High()),
			batch.Millimeters(p.View, depth.Amount().High().Base().Sub(deepest)), quantity.FromBase(deepest, quantity.Millimeter).Both(quantity.Metric))})
	}
	if wall := burn.Get("wall"); wall.IsAmount() && hottest.Less(wall.Amount().High().Base()) {
		p.Report(lint.Finding{At: lint.AtValue(wall), Levels: lint.Every(lint.Consider), Message: fmt.Sprintf("the wall of %s was %s hot; over %s is often taken as too hot, though no standard says so", which, batch.Both(p.View, wall.Amount().High()),
			quantity.FromBase(hottest, quantity.Celsius).Both(quantity.Metric))})
	}
	narrowPool(p, b, burn, which)
}

// narrowPool is about containers with one wick: a pillar keeps a wall, and
// several pools are not measured as one.
func narrowPool(p *lint.Pass, b *batch.Batch, burn *schema.Block, which string) {
	pool, burned, v := burn.Get("melt_pool"), burn.Get("burned_for"), vesselOf(b, burn)
	if v == nil || v.Kind != "container" || v.Wicks != 1 || !v.Diameter.Known() || !pool.IsAmount() || !burned.IsAmount() || burned.Amount().Base().Less(widthAfter) {
		return
	}
	least := v.Diameter.Value.Mul(widthLeast)
	if width := pool.Amount().High(); width.Base().Less(least) {
		p.Report(lint.Finding{At: lint.AtValue(pool), Message: fmt.Sprintf("after %s the pool of %s is %s wide, %s under three quarters of the %s that %s measures across: the wick is mostly too small", burned.Amount().String(), which, batch.Both(p.View, width),
			batch.Millimeters(p.View, least.Sub(width.Base())), batch.Millimeters(p.View, v.Diameter.Value), v.Stock.Title())})
	}
}
