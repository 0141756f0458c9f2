package formulation

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// LoadLooksLikeFraction is a load typed as a fraction of one, or a figure over
// a hundred per cent.
var LoadLooksLikeFraction = &lint.Rule{
	Name:   "load-looks-like-fraction",
	Group:  group,
	Title:  "a load so small or so large that it looks like a slip",
	Levels: lint.Every(lint.Should),
	Why: "0.06 is six hundredths, and 0.06 % is a hundred times less: a candle that smells of nothing. Figures over 100 % cannot be loads at all. " +
		"Somebody who trusts the sheet will weigh just what it says.",
	Remedy: "Write the per cent that is meant: \"6 % of wax\".",
	Source: "common practice: no scented candle has less than 0.3 % of fragrance",
	Bad: []lint.Example{{
		About:   "a fraction with a per cent sign behind it",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "0.05 % of wax"`}},
		Flags:   []string{`"0.05 % of wax"`},
	}},
	Good:  []lint.Example{{About: "a light scent", Recipe: "tide-pillar", Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "1 % of wax"`}}}},
	Also:  []string{"batch-does-not-fill"},
	Check: checkFraction,
}

var leastLoad = quantity.NewRat(3, 1000)

func checkFraction(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Fragrances {
		load := b.Fragrances[i].Block.Get("load")
		if !load.IsAmount() {
			continue
		}
		ratio := load.Amount().High().Base()
		switch {
		case ratio.Less(leastLoad):
			meant := quantity.FromBase(ratio.Mul(quantity.Int(100)), load.Amount().Unit())
			p.Report(lint.Finding{At: lint.AtValue(load), Message: fmt.Sprintf("%s is next to nothing for a scented candle: if %s is meant, write that",
				load.Amount().String(), meant.String())})
		case !ratio.Less(one):
			// Where the wax can be read, louder rules say it.
			if l, verdict := judge(b); verdict == unjudged && (l.State == schema.Broken || !isExtreme(b)) {
				p.Report(lint.Finding{At: lint.AtValue(load), Message: fmt.Sprintf("%s cannot be: it leaves no room for wax. Write the per cent that is meant", load.Amount().String())})
			}
		}
	}
}
