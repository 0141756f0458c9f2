package labels

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// NetWeightMissing and NetWeightOverstated are about the net quantity on
// labels. In the EU and the UK one is due where the candle is classified.
var (
	NetWeightMissing = &lint.Rule{
		Name:   "net-weight-missing",
		Group:  Group,
		Title:  "a label without the net quantity: in ounces and grams in the US, in grams on a classified candle in the EU and the UK",
		Levels: lint.Levels{Sale: lint.Must},
		Why: "In the US a buyer must be able to read how much candle they get, in ounces and in grams both. Jar, lid and box do not count. " +
			"Tapers may be sold by count and length instead. In the EU and the UK it belongs to what a candle carries that is classified as hazardous.",
		Remedy: "Weigh a finished candle without its vessel, and print what the lightest of a batch holds: \"7 oz (198 g)\".",
		Card: lint.Card{
			Question: "Does the weight on the label count the jar?",
			Answer:   "No. It is the candle alone, without jar, lid and box; in the US in ounces and in grams.",
			AllRight: "Tapers may be sold by how many there are and how long they are.",
			Do:       "If you sell candles, weigh a finished one without its vessel, and print what the lightest of a batch weighs.",
		},
		Source: "16 CFR 500.8 and 500.19, and for tapers and irregular candles 16 CFR 501.7 (Fair Packaging and Labeling Act); " +
			"EU and UK: Regulation (EC) No 1272/2008, Article 17(1)(b), the nominal quantity in packs for the public",
		Cautions: deferral,
		Bad: []lint.Example{
			{
				About:   "no net weight",
				Recipe:  "tide-pillar",
				Changes: []lint.Change{{From: "label = \"us-base\"", To: "label = \"quiet-base\""}},
				Stock:   without(exampleLabel, "  net_weight = \"1 lb 5 oz (595 g)\"\n", ""),
				Flags:   []string{`"quiet-base"`},
			},
			{
				About:   "in ounces only",
				Recipe:  "tide-pillar",
				Changes: []lint.Change{{From: "label = \"us-base\"", To: "label = \"quiet-base\""}},
				Stock:   without(exampleLabel, "1 lb 5 oz (595 g)", "1 lb 5 oz"),
				Flags:   []string{`"1 lb 5 oz"`},
			},
			{
				About:   "no weight on a candle that is classified, in the EU",
				Recipe:  "skerry-eu",
				Changes: []lint.Change{{From: "label = \"eu-kelp-jar\"", To: "label = \"eu-light\""}},
				Stock:   without(euLabel("eu-light", wholeHazards+precautionsAndUFI), "  net_weight = \"190 g (6.7 oz)\"\n", ""),
				Flags:   []string{`"eu-light"`},
			},
		},
		Good: []lint.Example{
			{About: "in both", Recipe: "tide-pillar", Shelf: `label us-base`},
			{About: "tapers by count and length", Recipe: "quayside-taper", Shelf: `label us-taper`},
			{About: "classified, with its weight", Recipe: "skerry-eu", Shelf: `label eu-kelp-jar`},
			{
				About:   "not classified: no law of the UK asks for it on every candle",
				Recipe:  "firth-uk",
				Changes: []lint.Change{{From: "label = \"uk-amber-jar\"", To: "label = \"uk-light\""}},
				Stock:   without(ukLabel("uk-light", "  hazards    = [\"EUH208\"]\n  names      = [\"benzyl salicylate\", \"coumarin\", \"cinnamal\"]\n"), "  net_weight = \"190 g (6.7 oz)\"\n", ""),
			},
		},
		Check: checkNetWeight,
	}

	NetWeightOverstated = &lint.Rule{
		Name:   "net-weight-overstated",
		Group:  Group,
		Title:  "a label that promises more than the candle weighs, or two weights that disagree",
		Levels: lint.Levels{Sale: lint.Must},
		Why: "The label may never say more than is in the candle. What the vessel takes at the density of the solid wax is what a candle weighs; " +
			"a figure made from fluid ounces, or from the hot wax, comes out too high.",
		Remedy:   "Print no more than the computed weight, rounded down, and check it on the scale.",
		Source:   "16 CFR 500.19 (metric figures, three digits); NIST Handbook 133 on checking the net contents of packaged goods; figures: arithmetic",
		Cautions: deferral,
		Bad: []lint.Example{
			{
				About:   "more than the mold holds",
				Recipe:  "tide-pillar",
				Changes: []lint.Change{{From: "label = \"us-base\"", To: "label = \"quiet-base\""}},
				Stock:   without(exampleLabel, "1 lb 5 oz (595 g)", "1 lb 8 oz (680 g)"),
				Flags:   []string{`"1 lb 8 oz (680 g)"`},
			},
			{
				About:   "ounces and grams that are not the same weight",
				Recipe:  "tide-pillar",
				Changes: []lint.Change{{From: "label = \"us-base\"", To: "label = \"quiet-base\""}},
				Stock:   without(exampleLabel, "1 lb 5 oz (595 g)", "1 lb 5 oz (495 g)"),
				Flags:   []string{`"1 lb 5 oz (495 g)"`},
			},
		},
		Good:  []lint.Example{{About: "a little less than computed", Recipe: "tide-pillar", Shows: `step "attach label"`, Shelf: `label us-base`}},
		Check: checkOverstated,
	}
)

func checkNetWeight(p *lint.Pass) {
	if !p.SoldIn("US") {
		checkNominalQuantity(p)
		return
	}
	b := batch.Of.In(p.View)
	eachLabelled(p, b, func(on attached) {
		if weight, whole := on.first("net_weight"); !whole {
			return
		} else if weight.Known() {
			judgePair(p, weight, parseNet(weight.Text(), quantity.Weight, quantity.Volume), "ounces and grams")
			return
		}
		if length, whole := on.first("count_and_length"); !whole {
			return
		} else if length.Known() && b.Makes == "taper" {
			judgePair(p, length, parseNet(lengthOnly(length.Text()), quantity.Length), "inches and millimeters")
			return
		}
		message := fmt.Sprintf("%s %s not say the net weight, which the US wants in ounces and grams", on.titles(), verb(len(on.labels), "does", "do"))
		if on.vessel != nil && on.vessel.Mass.Known() {
			message += "; one candle holds " + inBoth(on.vessel.Mass.Value)
		}
		p.Report(lint.Finding{At: on.at(p.Recipe), Message: message})
	})
}

// checkNominalQuantity asks for the weight on candles that are classified, in
// the EU and the UK.
func checkNominalQuantity(p *lint.Pass) {
	c, markets, ok := hazards(p)
	if !ok || banned(c) {
		return
	}
	eachLabelled(p, batch.Of.In(p.View), func(on attached) {
		weight, whole := on.first("net_weight")
		if !whole || weight.Known() {
			return
		}
		for _, market := range markets {
			if e := on.elements(c, market); !e.Net || on.madeFor(market) == madeForOthers {
				continue
			}
			message := fmt.Sprintf("%s %s not say how much candle it is, which the %s asks for where a candle is classified (%s); %s",
				on.titles(), verb(len(on.labels), "does", "do"), market, c.Results[0].String(), decides)
			if on.vessel != nil && on.vessel.Mass.Known() {
				message += "; one candle holds " + inBoth(on.vessel.Mass.Value)
			}
			p.Missing(lint.Finding{At: on.at(p.Recipe), Message: message})
			return
		}
	})
}

// judgePair says what a printed quantity lacks of its two units. It points at
// the stock label, where the print is written down.
func judgePair(p *lint.Pass, printed schema.Value, net netQuantity, units string) {
	f := lint.Finding{At: lint.AtValue(printed)}
	switch {
	case net.hasUS() && net.hasMetric():
		return
	case net.hasUS():
		f.Message = fmt.Sprintf("the label says %s, and the US wants it in %s both: add %s in brackets", printed.Text(), units, net.us.Other())
	case net.hasMetric():
		f.Message = fmt.Sprintf("the label says %s, and the US wants it in %s both: add %s", printed.Text(), units, net.metric.Other())
	default:
		f.Message = fmt.Sprintf("%q cannot be read as an amount in %s: write it as printed, such as \"7 oz (198 g)\"", printed.Text(), units)
	}
	p.Report(f)
}

func checkOverstated(p *lint.Pass) {
	if !p.SoldIn("US") {
		return
	}
	b := batch.Of.In(p.View)
	eachLabelled(p, b, func(on attached) {
		printed, whole := on.first("net_weight")
		if !whole || !printed.Known() {
			return
		}
		net := parseNet(printed.Text(), quantity.Weight)
		if !net.hasUS() && !net.hasMetric() {
			return
		}
		if !net.agree() {
			p.Report(lint.Finding{
				At: lint.AtValue(printed),
				Message: fmt.Sprintf("the two weights on the label disagree: %s is %s, not %s", net.us.String(),
					net.us.Other(), net.metric.String()),
			})
			return
		}
		if on.vessel == nil || b.Makes == "taper" || !on.vessel.Mass.Ask(p) {
			return
		}
		mass, most := on.vessel.Mass.Value, net.most()
		if !mass.Less(most.Base()) {
			return
		}
		p.Report(lint.Finding{
			At: lint.AtValue(printed),
			Message: fmt.Sprintf("the label promises %s and one %s holds %s at the density of the solid wax: %s too much. Print %s at the most",
				most.String(), on.vessel.Stock.Title(), quantity.FromBase(mass, quantity.Gram).Show(most.Unit().System), quantity.FromBase(most.Base().Sub(mass), quantity.Gram).Show(most.Unit().System), inBoth(mass)),
			Notes: []lint.Note{{Place: lint.AtHeader(on.vessel.Block), Message: fmt.Sprintf("for %s, in this vessel", p.Recipe.Title())}},
		})
	})
}

// lengthOnly drops the count of the candles before the length: "2 tapers,
// 10 in (254 mm)" is "10 in (254 mm)".
func lengthOnly(printed string) string {
	for i, r := range printed {
		if r == ',' || r == ';' {
			return printed[i+1:]
		}
	}
	return printed
}

// inBoth is a weight in g as a label prints it: "1 lb 6 oz (625 g)", both
// rounded down so that neither promises too much.
func inBoth(g quantity.Rat) string {
	ounces, _ := g.Quo(quantity.Ounce.Factor)
	ounces = ounces.Floor(quantity.NewRat(1, 10))
	return quantity.Of(ounces, quantity.Ounce).Show(quantity.US) + " (" + quantity.Of(g.Floor(quantity.Int(1)), quantity.Gram).Show(quantity.Metric) + ")"
}
