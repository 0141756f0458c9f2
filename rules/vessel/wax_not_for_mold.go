package vessel

import (
	"fmt"
	"slices"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// WaxNotForMold is a wax made for containers only, in a mold.
var WaxNotForMold = &lint.Rule{
	Name:   "wax-not-for-mold",
	Group:  group,
	Title:  "a container wax in a mold that the candle leaves",
	Levels: lint.Every(lint.Must),
	Why: "Container wax is soft and clings to what it is poured into, which is what a jar needs. Out of a mold it tears or does not come at all; standing free it slumps on a warm day " +
		"and spills its pool when it burns, with a burning wick in it.",
	Remedy: "Use a wax sold for pillars or votives, or pour this one into a container.",
	Source: "common practice; what a wax is sold for is its supplier's word",
	Bad: []lint.Example{{
		About:   "container soy in a pillar mold",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `wax "northlight-pillar"`, To: `wax "millrace-soy"`}},
		Flags:   []string{`"millrace-soy"`},
	}},
	Also: []string{"pour-too-hot", "melt-too-hot", "fragrance-added-too-hot", "heat-above-ceiling", "wick-not-for-wax", "cure-too-short", "test-burn-missing", "second-pour-out-of-step", "relief-holes-missing"},
	Good: []lint.Example{{About: "a pillar wax", Recipe: "tide-pillar"}, {About: "melts may be of container wax", Recipe: "gorse-melt"}},
	Check: func(p *lint.Pass) {
		eachVessel(p, func(b *batch.Batch, _ int, v *batch.Vessel) {
			if v.Kind != "mold" {
				return
			}
			uses := batch.Uses(b.Makes)
			suits := b.Suits(uses...)
			if !suits.Ask(p) || suits.Yes {
				return
			}
			for i := range b.Waxes {
				in := &b.Waxes[i]
				s := batch.SuitedFor(in.Stock, uses...)
				if s.State == schema.Known && !s.Yes && !standsFree(s) {
					reportTooSoft(p, b, in, s, suits)
				}
			}
		})
	},
}

// standsFree says whether the wax is sold for any candle that stands by
// itself: a pillar wax in a votive mold is no danger.
func standsFree(s batch.Suited) bool {
	return slices.ContainsFunc(s.Value.Items(), func(i schema.Item) bool { return i.Text == "pillar" || i.Text == "votive" || i.Text == "taper" })
}

func reportTooSoft(p *lint.Pass, b *batch.Batch, in *batch.Ingredient, s, all batch.Suited) {
	f := lint.Finding{At: lint.AtLabel(in.Block), Fixes: func() []schema.Fix { return waxesFor(p, b, in, batch.Uses(b.Makes)) }}
	f.Message = fmt.Sprintf("%s is sold for %s, not for a candle that stands by itself: it will not leave the mold whole, and slumps and spills when it burns", in.Stock.Title(), listed(s.Value))
	if s.Value.Known() {
		f.Notes = []lint.Note{{Place: lint.AtValue(s.Value), Message: "what it is sold for is stated here"}}
	}
	switch {
	case s.Family != "":
		f.Levels = lint.Every(lint.Should)
		f.Message = fmt.Sprintf("%s does not say what it is sold for, and %s is usually too soft for a candle that stands by itself (common practice)", in.Stock.Title(), s.Family)
	case all.Blend && !all.MostlyUnfit():
		f.Levels = lint.Every(lint.Should)
		f.Message += ". It is the smaller part of this blend: test that the blend is hard enough"
	}
	p.Report(f)
}
