package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// BurnableTopping is something on or in the wax that the flame can reach.
var BurnableTopping = &lint.Rule{
	Name:   "burnable-topping",
	Group:  group,
	Title:  "something that burns, or clogs the wick, within the flame's reach",
	Levels: lint.Levels{OwnUse: lint.Should, Class: lint.Must, Sale: lint.Must}, Binding: true,
	Why: "Dried flowers, paper or ribbon that reach the pool soak up wax and become a second wick: the candle burns on two flames, or over its whole top, and the glass cracks. " +
		"Loose glitter and crystals drift to the wick and clog it, and stones heat up and burst. Candles with dried plants have been recalled for fires.",
	Remedy: "Leave it off, or put it where neither the flame nor the pool ever comes (on the outside, on a lid, well inside the wall of a pillar whose pool stays narrow) and say in_reach = false. " +
		"Melts have no flame and may carry what they like.",
	Card: lint.Card{
		Question: "Can I put dried flowers or glitter on top?",
		Answer: "Not where the flame or the melted wax ever comes. Plants soak up wax and become a second wick; glitter and crystals clog the wick, " +
			"and stones can burst.",
		AllRight: "On the outside or on the lid, on a pillar whose pool stays narrow well inside the wall, and on melts, which have no flame.",
		Do:       "Leave the top bare and decorate the outside. If a candle you bought has something on it, take it off before you light it.",
	},
	Source:   "common practice; published recalls of candles with botanicals",
	Cautions: "\"In reach\" means at any time in the candle's life: the pool is widest, and the flame lowest, near the end.",
	Bad: []lint.Example{
		{
			About:   "dried flowers on a jar",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: "  step \"set wick\" {\n", To: "  topping \"sea-lavender\" {\n    weight = \"2 g\"\n  }\n  step \"set wick\" {\n"}},
			Stock:   "topping \"sea-lavender\" {\n  title = \"Dried sea lavender\"\n  kind  = \"botanical\"\n}\n",
			Flags:   []string{`"sea-lavender"`},
		},
		{
			About:   "loose glitter on one's own shelf",
			Recipe:  "kitchen-shelf",
			Changes: []lint.Change{{From: "  step \"set wick\" {\n", To: "  topping \"spray-glitter\" {}\n  step \"set wick\" {\n"}},
			Stock:   "topping \"spray-glitter\" {\n  title = \"Loose glitter\"\n  kind  = \"glitter\"\n}\n",
			Flags:   []string{`"spray-glitter"`},
		},
	},
	Good: []lint.Example{
		{
			About:   "on the outside, out of reach",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: "  step \"set wick\" {\n", To: "  topping \"sea-lavender\" {\n    in_reach = false\n  }\n  step \"set wick\" {\n"}},
			Stock:   "topping \"sea-lavender\" {\n  title = \"Dried sea lavender\"\n  kind  = \"botanical\"\n}\n",
		},
		{
			About:   "flowers on melts",
			Recipe:  "gorse-melt",
			Changes: []lint.Change{{From: "  step \"melt\" {\n", To: "  topping \"sea-lavender\" {}\n  step \"melt\" {\n"}},
			Stock:   "topping \"sea-lavender\" {\n  title = \"Dried sea lavender\"\n  kind  = \"botanical\"\n}\n",
		},
		{
			About:   "an embed of wax",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: "  step \"set wick\" {\n", To: "  topping \"wax-shell\" {}\n  step \"set wick\" {\n"}},
			Stock:   "topping \"wax-shell\" {\n  title = \"Shell of wax\"\n  kind  = \"wax embed\"\n}\n",
		},
	},
	Also:  []string{"test-burn-missing", "concession-unused"},
	Check: checkTopping,
}

func checkTopping(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for _, topping := range b.Toppings {
		reach := topping.Get("in_reach")
		stock, ok := p.Stock("topping", topping.Label)
		if !ok || reach.No() || reach.Broken() || !litWith(b, topping.Get("vessel").Text()) {
			continue
		}
		kind := stock.Get("kind")
		if kind.Absent() {
			p.CannotCheck(stock, "kind")
			continue
		}
		f := lint.Finding{At: lint.AtLabel(topping), Notes: batch.NoteAt("its kind is stated here", kind)}
		harm := ""
		switch kind.Text() {
		case "botanical", "paper", "ribbon":
			harm = "it soaks up wax, catches, and burns as a second wick"
		case "glitter":
			harm = "loose in the pool it drifts to the wick and clogs it, and the flame smokes and flares"
		case "crystal":
			harm = "it draws the pool's heat to itself, can burst in it, and small pieces clog the wick"
		case "mica":
			f.Levels = lint.Levels{OwnUse: lint.Consider, Class: lint.Should, Sale: lint.Should}
			harm = "it does not burn, but loose in the pool it clogs the wick"
		default:
			continue
		}
		f.Message = fmt.Sprintf("%s (%s) lies within the flame's reach: %s", stock.Title(), kind.Text(), harm)
		if reach.Absent() {
			f.Message += ". Where neither flame nor pool ever comes to it, say in_reach = false"
		}
		p.Report(f)
	}
}

// litWith says whether a candle with the topping has a flame: the one in the
// vessel it names, else any of the recipe's.
func litWith(b *batch.Batch, vessel string) bool {
	if len(b.Vessels) == 0 {
		return b.Makes != "melt"
	}
	named := false
	for i := range b.Vessels {
		if b.Vessels[i].Block.Label == vessel {
			named = true
		}
	}
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if (!named || v.Block.Label == vessel) && b.MadeIn(v) != "melt" {
			return true
		}
	}
	return false
}
