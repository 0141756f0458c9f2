package labels

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// LabelNotForMarket is a market of the recipe that none of its labels is made
// for.
var LabelNotForMarket = &lint.Rule{
	Name:   "label-not-for-market",
	Group:  Group,
	Title:  "labels that are not made for a market the candle is sold in",
	Levels: lint.Levels{Sale: lint.Must},
	Why: "What belongs on a label differs from market to market: other cautions, other signs, the net weight in ounces, the hazards in the words " +
		"of the law, the language. A label made for one market leaves out what another requires.",
	Remedy:   "Attach a label made for that market as well, or take the market off the recipe.",
	Source:   "ASTM F2058 and 16 CFR 500 for the US; EN 15494 and Regulation (EC) No 1272/2008 for the EU, and the latter as retained for the UK",
	Cautions: deferral,
	Bad: []lint.Example{{
		About:   "a US label on a candle that is sold in the EU too",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: "markets  = [\"US\"]", To: "markets  = [\"US\", \"EU\"]"}},
		Flags:   []string{`"us-base"`},
	}},
	Also:  []string{"maker-missing"},
	Good:  []lint.Example{{About: "sold where its label is made for", Recipe: "tide-pillar", Shelf: `label us-base`}},
	Check: checkMarkets,
}

func checkMarkets(p *lint.Pass) {
	if !p.Loud(lint.Levels{}) {
		return
	}
	b := batch.Of.In(p.View)
	for _, on := range labelsOf(p, b) {
		if on.broken || len(on.labels) == 0 {
			continue
		}
		for _, market := range p.Markets() {
			switch on.madeFor(market.Text) {
			case notSaid:
				for _, l := range on.labels {
					p.CannotCheck(l.stock, "markets")
				}
			case madeForOthers:
				p.Report(marketFinding(p, b, on, market))
			}
		}
	}
}

func marketFinding(p *lint.Pass, b *batch.Batch, on attached, market schema.Item) lint.Finding {
	last := on.labels[len(on.labels)-1]
	f := lint.Finding{
		At: last.at(),
		Message: fmt.Sprintf("the candle is sold in the %s, and %s %s not made for it: what that market wants on a candle may not be there",
			market.Text, on.titles(), verb(len(on.labels), "is", "are")),
		Notes: []lint.Note{{Place: lint.AtValue(last.stock.Get("markets")), Message: "what it is made for is stated here"}},
		Fixes: func() []schema.Fix { return swaps(p, on, candleType(b, on.vessel)) },
	}
	if market.Span != (schema.Span{}) {
		if v := p.Recipe.Get("markets"); v.Known() {
			f.Notes = append(f.Notes, lint.Note{Place: lint.AtItem(v, market), Message: "the market is named here"})
		}
	}
	return f
}
