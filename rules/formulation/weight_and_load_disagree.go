package formulation

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// WeightAndLoadDisagree is an ingredient given both by weight and by load,
// when the two are not the same amount. The weight counts.
var WeightAndLoadDisagree = &lint.Rule{
	Name:   "weight-and-load-disagree",
	Group:  group,
	Title:  "a weight and a load that are not the same amount",
	Levels: lint.Every(lint.Should),
	Why: "One of the two is out of date, most likely since the batch was made larger or smaller. Whoever weighs by the one and whoever checks by the other " +
		"make different candles.",
	Remedy: "Keep the one that was used and remove the other. A load stays right when the batch changes.",
	Source: "arithmetic: they agree where they are equal within half of the last digit written",
	Bad: []lint.Example{{
		About:   "5 % of 1.24 kg is 62 g",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: "    load = \"5 % of wax\"\n", To: "    load   = \"5 % of wax\"\n    weight = \"70 g\"\n"}},
		Flags:   []string{`"5 % of wax"`},
	}},
	Good: []lint.Example{{
		About:   "the same amount, rounded to the gram",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: "    load = \"5 % of wax\"\n", To: "    load   = \"5 % of wax\"\n    weight = \"62 g\"\n"}},
	}},
	Check: func(p *lint.Pass) {
		b := batch.Of.In(p.View)
		for _, list := range [][]batch.Ingredient{b.Fragrances, b.Dyes, b.Additives} {
			for i := range list {
				if list[i].Load.IsAmount() {
					compareBoth(p, b, &list[i])
				}
			}
		}
	},
}

func compareBoth(p *lint.Pass, b *batch.Batch, in *batch.Ingredient) {
	asked := b.LoadWeight(in)
	if !in.Weight.Known() || !asked.Known() || in.Load.Amount().IsRange() {
		return
	}
	off := in.Weight.Value.Sub(asked.Value)
	if !slack(b, in, asked.Value).Less(off.Abs()) {
		return
	}
	relation := "less"
	if off.Sign() > 0 {
		relation = "more"
	}
	p.Report(lint.Finding{
		At: lint.AtValue(in.Load),
		Message: fmt.Sprintf("%s of %s is %s, and the weight beside it is %s: %s %s. The weight is what is reckoned with", in.Load.Amount().String(), title(in),
			weight(p, b, in.Said, asked.Value), in.Said.Amount().String(), weight(p, b, in.Said, off.Abs()), relation),
		Notes: []lint.Note{{Place: lint.AtValue(in.Said), Message: "the weight stands here"}},
		Fixes: func() []schema.Fix {
			return []schema.Fix{
				{Title: "remove the load and keep " + in.Said.Amount().String(), Edits: []schema.Edit{schema.RemoveAttr(in.Load)}},
				{Title: "remove the weight and keep " + in.Load.Amount().String(), Edits: []schema.Edit{schema.RemoveAttr(in.Said)}},
			}
		},
	})
}

// slack is what rounding explains, in g: half of the last digit of the weight
// and of the load.
func slack(b *batch.Batch, in *batch.Ingredient, asked quantity.Rat) quantity.Rat {
	weight := in.Said.Amount().HalfDigit()
	if in.Said.Amount().Dim() != quantity.Weight {
		weight = quantity.Rat{}
	}
	base := in.Load.Amount().High().Base()
	per, ok := asked.Quo(base) // what the load is a ratio of, in g
	if !ok {
		return weight
	}
	return weight.Add(in.Load.Amount().HalfDigit().Mul(per))
}

func title(in *batch.Ingredient) string {
	if in.Stock != nil {
		return in.Stock.Title()
	}
	return in.Block.Label
}
