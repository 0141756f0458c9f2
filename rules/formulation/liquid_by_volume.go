package formulation

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// LiquidByVolume is a fragrance ordered by volume.
var LiquidByVolume = &lint.Rule{
	Name:   "liquid-by-volume",
	Group:  group,
	Title:  "a fragrance measured by volume",
	Levels: lint.Every(lint.Should),
	Why: "Oils differ: 30 mL weigh anything from 26 to 33 g, so a spoon or a measuring cup gives another candle with every oil. Wax limits are by weight. " +
		"Without the oil's density a volume cannot be checked at all.",
	Remedy: "Weigh it, and write the weight or a load. Or write the oil's density in its stock item.",
	Card: lint.Card{
		Question: "Can I measure fragrance oil with a spoon or a measuring cup?",
		Answer:   "Better not: weigh it. 30 mL of oil weigh anything from 26 to 33 g, and what the wax holds is stated by weight.",
		AllRight: "Where the density of that very oil is known, its volume can be turned into a weight.",
		Do:       "Put the jug on a scale that shows grams, set it to zero, and pour until the weight is right.",
	},
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
					weighed := inWeight(in).String()
					return []schema.Fix{repair.Rewrite("write it as "+weighed, in.Said, schema.Quote(weighed))}
				},
			})
		case density.Absent():
			p.Missing(lint.Finding{
				At:      lint.AtValue(in.Said),
				Message: fmt.Sprintf("%s of %s is a volume, and its density is not written down, so its weight and its load cannot be checked: weigh it", in.Said.Amount().String(), title(in)),
				Notes:   []lint.Note{{Place: lint.AtHeader(in.Stock), Message: "its density belongs here"}},
				Lacks:   lint.Lack{Block: in.Stock, Attr: "density"},
			})
		}
	}
}

// inWeight is what a volume weighs, rounded down to what a scale reads: in
// ounces where it is in US units, as a fluid ounce is, else in grams.
func inWeight(in *batch.Ingredient) quantity.Quantity {
	unit := quantity.Gram
	if in.Said.Amount().Unit().System == quantity.US {
		unit = quantity.Ounce
	}
	return repair.Lowered(quantity.Of(quantity.Int(0), unit), in.Weight.Value)
}

func weightOf(p *lint.Pass, b *batch.Batch, in *batch.Ingredient) string {
	if !in.Weight.Known() {
		return "something else"
	}
	return weight(p, b, in.Said, in.Weight.Value)
}
