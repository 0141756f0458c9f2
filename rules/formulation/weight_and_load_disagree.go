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

// LiquidByVolume is a fragrance ordered by volume.
var LiquidByVolume = &lint.Rule{
	Name:   "liquid-by-volume",
	Group:  group,
	Title:  "a fragrance measured by volume",
	Levels: lint.Every(lint.Should),
	Why: "Oils differ: 30 mL weigh anything from 25 to 33 g, so a spoon or a measuring cup gives another candle with every oil. Wax limits are by weight. " +
		"Without the oil's density a volume cannot be checked at all.",
	Remedy: "Weigh it, and write the weight or a load. Or write the oil's density in its stock item.",
	Source: "arithmetic; common practice (oils weigh 0.85 to 1.10 g/mL)",
	Bad: []lint.Example{
		{
			About:   "fluid ounces of an oil whose density nobody has written down",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `weight = "2 fl oz"`}, {From: `fragrance "tide-and-thyme"`, To: `fragrance "no-density"`}},
			Stock:   "fragrance \"no-density\" {\n  title           = \"Oil from the market\"\n  flash_point     = \"210 °F\"\n  most_in_candles = \"25 % of total\"\n  gel_safe        = false\n  water_based     = false\n  components      = \"none classified\"\n}\n",
			Flags:   []string{`"2 fl oz"`},
		},
		{
			About:   "the density is known: it can be turned into a weight",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `weight = "2 fl oz"`}},
			Flags:   []string{`"2 fl oz"`},
			Level:   lint.Consider,
		},
	},
	Good:  []lint.Example{{About: "weighed", Recipe: "tide-pillar", Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `weight = "62 g"`}}}},
	Check: checkVolume,
}

func checkVolume(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Fragrances {
		in := &b.Fragrances[i]
		if !in.Said.IsAmount() || in.Said.Amount().Dim() != quantity.Volume || in.Stock == nil {
			continue
		}
		density := in.Stock.Get("density")
		switch {
		case density.Known():
			p.Report(lint.Finding{
				At:      lint.AtValue(in.Said),
				Levels:  lint.Every(lint.Consider),
				Message: fmt.Sprintf("%s of %s is measured by volume; at %s it weighs %s: weighing is exact", in.Said.Amount().String(), title(in), density.Amount().String(), weightOf(p, b, in)),
				Fixes: func() []schema.Fix {
					if !in.Weight.Known() {
						return nil
					}
					grams := quantity.Of(in.Weight.Value.Floor(quantity.NewRat(1, 10)), quantity.Gram)
					return []schema.Fix{{Title: "write it as " + grams.String(), Edits: []schema.Edit{schema.SetValue(in.Said, schema.Quote(grams.String()))}}}
				},
			})
		case density.Absent():
			p.Missing(lint.Finding{
				At:      lint.AtValue(in.Said),
				Message: fmt.Sprintf("%s of %s is a volume, and its density is not written down, so its weight and its load cannot be checked: weigh it", in.Said.Amount().String(), title(in)),
				Notes:   []lint.Note{{Place: lint.AtHeader(in.Stock), Message: "its density belongs here"}},
			})
		}
	}
}

func weightOf(p *lint.Pass, b *batch.Batch, in *batch.Ingredient) string {
	if !in.Weight.Known() {
		return "something else"
	}
	return weight(p, b, in.Said, in.Weight.Value)
}
