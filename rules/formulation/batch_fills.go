package formulation

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

// BatchDoesNotFill and BatchLeftOver compare everything weighed in with what
// the vessels take at solid density. A vat that tapers are dipped in is never
// emptied, and exempt.
var (
	BatchDoesNotFill = &lint.Rule{
		Name:   "batch-does-not-fill",
		Group:  group,
		Title:  "a batch too small for its vessels",
		Levels: lint.Every(lint.Should),
		Why: "The last candle comes out short, or the second pour is missing for all of them. Melting a little more in a hurry is how wax gets overheated. " +
			"Hot wax takes up more room than the candle it becomes, so a mold that looks full is not.",
		Remedy: "Weigh out what fills the candles; the finding names it. A few per cent more covers what stays in the pot.",
		Card: lint.Card{
			Question: "How much wax do I need?",
			Answer:   "Fill the mold with water and weigh that: each 100 g of water stands for some 90 g of wax, fragrance and all.",
			AllRight: "A few per cent more, for what stays in the pot.",
			Do:       "Weigh what the second pour takes as well. Hot wax takes up more room than the candle it becomes, so a mold that looks full is not.",
		},
		Source: "arithmetic, at the density of the solid wax; common practice: 3 to 5 % spare",
		Bad: []lint.Example{{
			About:   "half of what two pillars take",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `weight = "1.24 kg"`, To: `weight = "650 g"`}},
			Flags:   []string{`"650 g"`},
		}},
		Good: []lint.Example{{About: "enough and a little over", Recipe: "tide-pillar"}, {About: "a dipping vat", Recipe: "quayside-taper"}},
		Check: func(p *lint.Pass) {
			b := batch.Of.In(p.View)
			if spare, ok := spareOf(p, b); ok && spare.Less(shortBy) {
				reportFill(p, b, lint.Levels{}, "short by")
			}
		},
	}

	BatchLeftOver = &lint.Rule{
		Name:   "batch-left-over",
		Group:  group,
		Title:  "a batch much larger than its vessels",
		Levels: lint.Every(lint.Should),
		Why: "Wax that is left over is melted again, darker and with its scent half gone, or poured into whatever stands about. It is also often the sign that a figure is wrong: " +
			"fluid ounces taken for ounces, or the count forgotten.",
		Remedy: "Weigh out what fills the candles; the finding names it. If the rest has a use, say so in a concession.",
		Source: "arithmetic, at the density of the solid wax; common practice: over 10 % is worth knowing, over 20 % is a fault",
		Bad: []lint.Example{
			{
				About:   "a quarter too much",
				Recipe:  "tide-pillar",
				Changes: []lint.Change{{From: `weight = "1.24 kg"`, To: `weight = "1.5 kg"`}},
				Flags:   []string{`"1.5 kg"`},
			},
			{
				About:   "a seventh too much",
				Recipe:  "tide-pillar",
				Changes: []lint.Change{{From: `weight = "1.24 kg"`, To: `weight = "1.37 kg"`}},
				Flags:   []string{`"1.37 kg"`},
				Level:   lint.Consider,
			},
		},
		Good: []lint.Example{{About: "a few per cent over", Recipe: "tide-pillar"}},
		Check: func(p *lint.Pass) {
			b := batch.Of.In(p.View)
			spare, ok := spareOf(p, b)
			switch {
			case !ok:
			case muchOver.Less(spare):
				reportFill(p, b, lint.Levels{}, "over by")
			case someOver.Less(spare):
				reportFill(p, b, lint.Every(lint.Consider), "over by")
			}
		},
	}
)

var (
	shortBy  = quantity.NewRat(-5, 100)
	someOver = quantity.NewRat(10, 100)
	muchOver = quantity.NewRat(20, 100)
)

func spareOf(p *lint.Pass, b *batch.Batch) (quantity.Rat, bool) {
	if len(b.Vessels) == 0 || len(b.Waxes) == 0 || b.Makes == "taper" {
		return quantity.Rat{}, false
	}
	for i := range b.Vessels {
		if b.Vessels[i].Kind == "taper" {
			return quantity.Rat{}, false
		}
	}
	return b.Spare.Value, b.Spare.Ask(p)
}

func reportFill(p *lint.Pass, b *batch.Batch, levels lint.Levels, relation string) {
	heaviest := &b.Waxes[0]
	for i := range b.Waxes {
		if heaviest.Weight.Value.Less(b.Waxes[i].Weight.Value) {
			heaviest = &b.Waxes[i]
		}
	}
	off := b.Total.Value.Sub(b.Takes.Value).Abs()
	p.Missing(lint.Finding{
		At:     lint.AtValue(heaviest.Said),
		Levels: levels,
		Message: fmt.Sprintf("%s goes in altogether and %s %s %s at the density of the solid wax: %s %s (%s). To fill them exactly: %s",
			weight(p, b, heaviest.Said, b.Total.Value), vessels(b), takes(b), weight(p, b, heaviest.Said, b.Takes.Value), relation, weight(p, b, heaviest.Said, off),
			batch.Percent(b.Spare.Value.Abs(), quantity.NoBasis), needed(p, b)),
	})
}

// vessels names what is filled: "2 of Round pillar 3 × 6 in".
func vessels(b *batch.Batch) string {
	var names []string
	for i := range b.Vessels {
		v := &b.Vessels[i]
		switch v.Count {
		case 0:
		case 1:
			names = append(names, v.Stock.Title())
		default:
			names = append(names, fmt.Sprintf("%d of %s", v.Count, v.Stock.Title()))
		}
	}
	return strings.Join(names, " and ")
}

func takes(b *batch.Batch) string {
	if b.Candles() == 1 {
		return "takes"
	}
	return "take"
}

// needed lists what fills the vessels exactly.
func needed(p *lint.Pass, b *batch.Batch) string {
	var parts []string
	for _, n := range b.Needed(b.Candles()) {
		if n.Scaled.Known() {
			parts = append(parts, weight(p, b, n.Said, n.Scaled.Value)+" of "+title(n.Ingredient))
		}
	}
	return strings.Join(parts, ", ")
}
