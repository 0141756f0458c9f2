package formulation

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// DyeByEye is a color nobody can repeat.
var DyeByEye = &lint.Rule{
	Name:   "dye-by-eye",
	Group:  group,
	Title:  "a dye added by eye",
	Levels: lint.Levels{OwnUse: lint.Consider, Class: lint.Consider, Sale: lint.Should},
	Why: "Hot wax looks darker than the candle it becomes, and no two people stop at the same shade. The next batch will not match, and nobody can tell whether " +
		"the dye stayed under its limit.",
	Remedy: "Weigh or count the dye the next time, and write that down.",
	Source: "common practice",
	Bad: []lint.Example{{
		About:   "to shade",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: "    weight = \"0.6 g\"\n", To: "    amount = \"to shade\"\n"}},
		Flags:   []string{`"to shade"`},
	}},
	Good: []lint.Example{{About: "weighed", Recipe: "tide-pillar"}},
	Check: func(p *lint.Pass) {
		b := batch.Of.In(p.View)
		for i := range b.Dyes {
			if in := &b.Dyes[i]; in.ByEye {
				p.Report(lint.Finding{At: lint.AtValue(in.Said), Message: fmt.Sprintf("%s goes in by eye: nobody can repeat this color, or tell whether it is within the dye's limit", title(in))})
			}
		}
	},
}

// DyeOverLimit compares each dye with what its supplier allows.
var DyeOverLimit = &lint.Rule{
	Name:   "dye-over-limit",
	Group:  group,
	Title:  "more dye than its supplier allows",
	Levels: lint.Every(lint.Should),
	Why:    "Dye does not burn away with the wax. Too much of it collects in the wick and clogs it: the flame shrinks, then soots and drowns.",
	Remedy: "Lower it to the limit. For a deeper color use a stronger dye, or overdip.",
	Source: "the limit is the supplier's; arithmetic",
	Bad: []lint.Example{{
		About:   "three times the limit",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `weight = "0.6 g"`, To: `weight = "4 g"`}},
		Flags:   []string{`"4 g"`},
	}},
	Good: []lint.Example{{About: "just under it", Recipe: "tide-pillar", Changes: []lint.Change{{From: `weight = "0.6 g"`, To: `weight = "1.2 g"`}}}},
	Check: func(p *lint.Pass) {
		b := batch.Of.In(p.View)
		for i := range b.Dyes {
			in := &b.Dyes[i]
			if in.Stock == nil || in.ByEye {
				continue
			}
			compare(p, b, in, "limit", "what its supplier allows")
		}
	},
}

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

// compare reports an ingredient over the upper end of a proportion its stock
// item states, and says whether it did.
func compare(p *lint.Pass, b *batch.Batch, in *batch.Ingredient, attr, whose string) bool {
	stated := in.Stock.Get(attr)
	if !stated.Known() {
		p.CannotCheck(in.Stock, attr)
		return false
	}
	limit := stated.Amount().High().Base()
	share, basis := onBasis(in, stated.Amount())
	if !share.Ask(p) || !limit.Less(share.Value) {
		return false
	}
	message := fmt.Sprintf("%s over %s (%s)", measured(in, share.Value, limit, basis), whose, stated.Amount().String())
	if in.Weight.Known() {
		tooMuch, _ := share.Value.Sub(limit).Quo(share.Value)
		message += " by " + weight(p, b, in.Said, in.Weight.Value.Mul(tooMuch))
	}
	p.Report(lint.Finding{
		At:      lint.AtValue(in.Said),
		Message: message,
		Notes:   []lint.Note{{Place: lint.AtValue(stated), Message: "it is stated here"}},
		Fixes:   func() []schema.Fix { return lowerOne(b, in, limit, basis) },
	})
	return true
}

func onBasis(in *batch.Ingredient, stated quantity.Quantity) (batch.Figure, quantity.Basis) {
	if stated.Basis() == quantity.OfTotal {
		return in.OfTotal, quantity.OfTotal
	}
	return in.OfWax, quantity.OfWax
}
