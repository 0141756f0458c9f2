package formulation

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// LoadBasisUnstated is a load in a bare per cent. It is read as of wax until
// it says.
var LoadBasisUnstated = &lint.Rule{
	Name:   "load-basis-unstated",
	Group:  group,
	Title:  "a load in per cent that does not say of what",
	Levels: lint.Levels{OwnUse: lint.Should, Class: lint.Should, Sale: lint.Must},
	Why: "Suppliers count fragrance against the wax, the law counts it against the whole candle. 8 % of wax is 7.41 % of total, and 8 % of total is 8.7 % of wax: " +
		"a recipe that does not say is weighed in two ways by two people.",
	Remedy: "Write \"% of wax\" if the scale was set by the wax alone, \"% of total\" if by everything together.",
	Card: lint.Card{
		Question: "The recipe says 8 % of fragrance. Of what?",
		Answer:   "Of the wax, with most suppliers of wax; of the whole candle, in the law and on certificates. Find out which is meant before you weigh.",
		AllRight: "Either is right where it is said: 80 g of oil to 1 kg of wax is 8 % of wax, and some 87 g to 1 kg of wax is 8 % of the whole.",
		Do:       "Ask whoever wrote it, write \"of wax\" or \"of total\" beside the figure, and weigh by that.",
	},
	Source: "arithmetic; common practice",
	Bad: []lint.Example{{
		About:   "of what?",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "5 %"`}},
		Flags:   []string{`"5 %"`},
	}},
	Good: []lint.Example{{About: "of wax", Recipe: "tide-pillar"}, {About: "of total", Recipe: "tide-pillar", Changes: []lint.Change{{From: `"5 % of wax"`, To: `"5 % of total"`}}}},
	Check: func(p *lint.Pass) {
		b := batch.Of.In(p.View)
		for _, list := range [][]batch.Ingredient{b.Fragrances, b.Dyes, b.Additives} {
			for i := range list {
				load := list[i].Block.Get("load")
				if load.IsAmount() && load.Amount().Dim() == quantity.Share {
					reportNoBasis(p, load)
				}
			}
		}
	},
}

func reportNoBasis(p *lint.Pass, load schema.Value) {
	written := load.Amount().String()
	ratio := load.Amount().High().Base()
	message := fmt.Sprintf("%s does not say of what; it is read as %s", written, both(ratio, batch.TotalFromWax(ratio)))
	if ofWax, ok := batch.WaxFromTotal(ratio); ok {
		message += fmt.Sprintf(". If %s of total is meant, that is %s", written, batch.Percent(ofWax, quantity.OfWax))
	}
	p.Report(lint.Finding{
		At:      lint.AtValue(load),
		Message: message,
		Fixes: func() []schema.Fix {
			fix := repair.Rewrite("write "+written+" of wax, as it was read", load, schema.Quote(written+" of wax"))
			fix.Safe = true
			return []schema.Fix{fix}
		},
	})
}

func both(ofWax, ofTotal quantity.Rat) string {
	return batch.Percent(ofWax, quantity.OfWax) + ", which is " + batch.Percent(ofTotal, quantity.OfTotal)
}
