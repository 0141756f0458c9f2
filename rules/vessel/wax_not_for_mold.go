package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// WaxNotForMold is a wax that cannot stand by itself in a candle that must: one
// sold for containers only, in a mold or dipped as a taper.
var WaxNotForMold = &lint.Rule{
	Name:   "wax-not-for-mold",
	Group:  group,
	Title:  "a wax in a free-standing candle that it is not made for",
	Levels: lint.Every(lint.Must),
	Why: "Container wax is soft and clings: that is its virtue in a jar. Out of a mold it tears, sticks or leans, and a candle of it slumps in a warm room. " +
		"Lit, its wall gives way, and hot wax runs over the table with the flame above it.",
	Remedy: "Use a wax whose sheet names what you make: pillar, votive or taper. Where your own burns have shown that this one stands, write the use into its tested_for.",
	Card: lint.Card{
		Question: "Can I make a pillar of the wax I use for jars?",
		Answer:   "No. Container wax is soft: it clings to the mold, leans in a warm room, and when it burns its wall gives way.",
		AllRight: "In the glass or the tin it is made for, and in a mold where its maker sells it for pillars too.",
		Do:       "Take a wax whose sheet names what you make: pillar, votive or taper.",
	},
	Source: "the supplier's sheet (suits); what happens otherwise: common practice",
	Bad: []lint.Example{
		{
			About:   "container soy in a pillar mold",
			Recipe:  "breakwater-block",
			Changes: []lint.Change{{From: `wax "millrace-pillar"`, To: `wax "millrace-soy"`}},
			Flags:   []string{`"millrace-soy"`},
		},
		{
			About:   "container wax dipped as tapers",
			Recipe:  "quayside-taper",
			Changes: []lint.Change{{From: `wax "ropewalk-dipping"`, To: `wax "pierhead-container"`}},
			Flags:   []string{`"pierhead-container"`},
		},
		{
			About:   "dipping wax in a pillar mold: it stands, but is not sold for it",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `wax "northlight-pillar"`, To: `wax "ropewalk-dipping"`}},
			Flags:   []string{`"ropewalk-dipping"`},
			Level:   lint.Should,
		},
		{
			About:   "no suits stated: coconut is too soft as a rule",
			Recipe:  "breakwater-block",
			Changes: []lint.Change{{From: `wax "millrace-pillar"`, To: `wax "reef-coconut"`}},
			Stock:   "wax \"reef-coconut\" {\n  title  = \"Reef coconut\"\n  family = \"coconut\"\n}\n",
			Flags:   []string{`"reef-coconut"`},
			Level:   lint.Should,
		},
	},
	Good: []lint.Example{
		{About: "pillar wax in a pillar mold", Recipe: "tide-pillar", Shelf: `wax northlight-pillar`},
		{About: "a wax that suits both, in a mold", Recipe: "skep-beeswax", Shelf: `wax clover-beeswax`},
		{About: "a house blend whose own item says what it suits", Recipe: "lantern-votive", Shelf: `wax quay-votive`},
	},
	Also:  []string{"test-burn-missing", "pour-too-hot", "pour-too-cool", "melt-too-hot", "melt-too-cool", "fragrance-added-too-hot", "fragrance-added-too-cool", "heat-above-ceiling", "cure-too-short", "wick-not-for-wax", "fragrance-over-limit", "fragrance-near-limit", "batch-left-over", "batch-does-not-fill", "second-pour-out-of-step", "second-pour-missing", "fragrance-limit-unknown"},
	Check: checkWaxForMold,
}

func checkWaxForMold(p *lint.Pass) { checkWaxes(p, "mold", judgeFreeStanding) }

func judgeFreeStanding(_ *lint.Pass, b *batch.Batch, vessel int, in *batch.Ingredient, f *verdict) {
	f.levels = lint.Every(lint.Must)
	wax := in.Stock.Title()
	sold := soldFor(f.suited, listed(plurals(batch.Uses(f.made)), "or"))
	switch {
	case f.made == "melt" || f.made == "tealight":
		f.levels = lint.Levels{OwnUse: lint.Consider, Class: lint.Consider, Sale: lint.Should}
		f.message = fmt.Sprintf("%s %s: it need not stand by itself once lit or warmed, but nobody says how it does there", wax, sold)
		return
	case suits(in.Stock, "pillar") || suits(in.Stock, "votive") || suits(in.Stock, "taper"):
		f.levels = lint.Levels{OwnUse: lint.Consider, Class: lint.Consider, Sale: lint.Should}
		f.message = fmt.Sprintf("%s %s: it stands by itself, but nobody says how it burns as a %s, or leaves the mold", wax, sold, f.made)
		if f.vessel.Kind == "taper" {
			f.message = fmt.Sprintf("%s %s: it stands by itself, but nobody says whether it dips smoothly and burns without dripping", wax, sold)
		}
	case f.vessel.Kind == "taper":
		f.message = fmt.Sprintf("%s %s: it is too soft to stand in a holder; the taper bends in a warm room, and lit it runs down over what it stands on", wax, sold)
	case !suits(in.Stock, "container"): // a cup or a clamshell says little of how soft it is
		f.message = fmt.Sprintf("%s %s: nobody says that it leaves %s whole or stands by itself; where it is too soft it slumps, and lit its wall gives way and hot wax runs out", wax, sold, f.vessel.Stock.Title())
	default:
		f.message = fmt.Sprintf("%s %s: it is too soft to leave %s whole and to stand by itself; it slumps, and lit its wall gives way and hot wax runs out", wax, sold, f.vessel.Stock.Title())
	}
	if minority(b, vessel, unsuited(batch.Uses(f.made))) {
		f.levels = capped(f.levels)
		f.message += fmt.Sprintf(". It is %s of the wax here: how much the rest bears, only a test shows", batch.Percent(in.OfWax.Value, 0))
	}
	if f.suited.Family != "" {
		f.levels = capped(f.levels)
	}
}
