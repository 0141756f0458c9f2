package formulation

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// AdditiveOutsideUsual compares each additive with what its supplier
// recommends; less than that is only worth knowing.
var AdditiveOutsideUsual = &lint.Rule{
	Name:   "additive-outside-usual",
	Group:  group,
	Title:  "more or less of an additive than its supplier recommends",
	Levels: lint.Every(lint.Should),
	Why: "Additives change how wax sets and how it feeds the flame. Past the usual share a hardener makes the candle brittle and starves the wick; " +
		"below it, it does little.",
	Remedy: "Keep within what the supplier recommends.",
	Source: "the range is the supplier's; arithmetic",
	Bad: []lint.Example{
		{
			About:   "over the usual",
			Recipe:  "quayside-taper",
			Changes: []lint.Change{{From: `load = "6 % of wax"`, To: `load = "14 % of wax"`}},
			Flags:   []string{`"14 % of wax"`},
		},
		{
			About:   "under the usual",
			Recipe:  "quayside-taper",
			Changes: []lint.Change{{From: `load = "6 % of wax"`, To: `load = "2 % of wax"`}},
			Flags:   []string{`"2 % of wax"`},
			Level:   lint.Consider,
		},
	},
	Good: []lint.Example{{About: "within it", Recipe: "quayside-taper"}},
	Check: func(p *lint.Pass) {
		b := batch.Of.In(p.View)
		for i := range b.Additives {
			in := &b.Additives[i]
			if in.Stock == nil || compare(p, b, in, "usual", "what its supplier recommends") {
				continue
			}
			usual := in.Stock.Get("usual")
			if !usual.Known() {
				continue
			}
			share, basis := onBasis(in, usual.Amount())
			if low := usual.Amount().Low().Base(); share.Known() && usual.Amount().IsRange() && share.Value.Less(low) {
				p.Report(lint.Finding{
					At:      lint.AtValue(in.Said),
					Levels:  lint.Every(lint.Consider),
					Message: fmt.Sprintf("%s less than its supplier recommends (%s) by %s: it may do little", measured(in, share.Value, low, basis), usual.Amount().String(), batch.Percent(low.Sub(share.Value), basis)),
					Notes:   []lint.Note{{Place: lint.AtValue(usual), Message: "the usual amount is stated here"}},
				})
			}
		}
	},
}
