package formulation

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

// GelNeedsGelSafe is about oils in gel wax.
var GelNeedsGelSafe = &lint.Rule{
	Name:   "gel-needs-gel-safe",
	Group:  group,
	Title:  "gel wax with something in it that is not declared fit for it",
	Levels: lint.Every(lint.Must),
	Why: "Gel is mineral oil held by a polymer. A fragrance that does not dissolve in it gathers in drops, and when the flame reaches them " +
		"the whole surface can flash over. Suppliers declare which oils are fit, and those with a flash point under 170 °F (77 °C) are not used.",
	Remedy:   "Use a fragrance whose supplier declares it gel-safe, with a flash point of 170 °F (77 °C) or more.",
	Cautions: "Do not light a gel candle that looks cloudy or beaded.",
	Card: lint.Card{
		Question: "Why may only some oils go into gel?",
		Answer:   "Because an oil that does not dissolve in gel gathers in drops, and when the flame reaches them the whole top can flash over.",
		AllRight: "With an oil that its supplier declares fit for gel, with a flash point of 170 °F (77 °C) or more, and no more of it than the gel holds.",
		Do:       "Ask for that declaration before you buy the oil. Look at the candle when it is cold: one that is cloudy or beaded is not lit.",
	},
	Source: "common practice; the supplier's declaration",
	Bad: []lint.Example{
		{
			About:   "an oil that is not declared gel-safe",
			Recipe:  "tidepool-gel",
			Changes: []lint.Change{{From: "fragrance \"" + gelOil + "\"", To: "fragrance \"cloudy\""}},
			Stock:   "fragrance \"cloudy\" {\n  title           = \"Cloudy oil\"\n  flash_point     = \"200 °F\"\n  density         = \"0.96 g/mL\"\n  most_in_candles = \"25 % of total\"\n  gel_safe        = false\n  water_based     = false\n  components      = \"none classified\"\n}\n",
			Flags:   []string{`"cloudy"`},
		},
		{
			About:   "declared, but easily lit",
			Recipe:  "tidepool-gel",
			Changes: []lint.Change{{From: "fragrance \"" + gelOil + "\"", To: "fragrance \"light\""}},
			Stock:   "fragrance \"light\" {\n  title           = \"Light oil\"\n  flash_point     = \"160 °F\"\n  density         = \"0.96 g/mL\"\n  most_in_candles = \"25 % of total\"\n  gel_safe        = true\n  water_based     = false\n  components      = \"none classified\"\n}\n",
			Flags:   []string{`"light"`},
		},
	},
	Also:  []string{"test-burn-missing", "ingredient-never-added", "fragrance-above-its-flash"},
	Good:  []lint.Example{{About: "a gel-safe oil", Recipe: "tidepool-gel"}, {About: "no gel in it", Recipe: "tide-pillar"}},
	Check: checkGel,
}

// gelOil is the fragrance of the example shop's gel recipe.
const gelOil = "amber-lantern"

// leastGelFlash is 170 °F in °C, 76.7: common practice, often said as 77 °C.
var leastGelFlash = quantity.NewRat(230, 3)

func checkGel(p *lint.Pass) {
	b := batch.Of.In(p.View)
	if !hasGel(p, b) {
		return
	}
	for _, list := range [][]batch.Ingredient{b.Dyes, b.Additives} {
		for i := range list {
			reportUnfitForGel(p, &list[i])
		}
	}
	for i := range b.Fragrances {
		in := &b.Fragrances[i]
		if in.Stock == nil {
			continue
		}
		safe, flash := in.Stock.Get("gel_safe"), in.Stock.Get("flash_point")
		f := lint.Finding{At: lint.AtLabel(in.Block)}
		switch {
		case safe.Broken():
			continue
		case !safe.Yes():
			f.Message = fmt.Sprintf("%s is not declared gel-safe: what does not mix gathers in the gel, and can flash over", title(in))
			f.Notes = []lint.Note{{Place: lint.AtHeader(in.Stock), Message: "its gel_safe belongs here"}}
			if safe.Known() {
				f.Notes = []lint.Note{{Place: lint.AtValue(safe), Message: "that it is not is stated here"}}
				p.Report(f)
			} else {
				p.Missing(f)
			}
			continue
		case flash.Absent():
			p.CannotCheck(in.Stock, "flash_point")
			continue
		case flash.Broken() || !flash.Amount().Base().Less(leastGelFlash):
			continue
		}
		f.Message = fmt.Sprintf("%s has a flash point of %s, under the 170 °F (76.7 °C) that is usual for gel (common practice)", title(in), batch.Both(p.View, flash.Amount()))
		f.Notes = []lint.Note{{Place: lint.AtValue(flash), Message: "its flash point is stated here"}}
		p.Report(f)
	}
}

// reportUnfitForGel is about a dye or an additive: it need not be declared fit,
// but must not be declared unfit.
func reportUnfitForGel(p *lint.Pass, in *batch.Ingredient) {
	safe := in.Stock.Get("gel_safe")
	p.CannotCheck(in.Stock, "gel_safe")
	if !safe.No() {
		return
	}
	p.Report(lint.Finding{
		At:      lint.AtLabel(in.Block),
		Message: fmt.Sprintf("%s is declared not to be gel-safe: what does not mix gathers in the gel, clouds it and can clog the wick", title(in)),
		Notes:   []lint.Note{{Place: lint.AtValue(safe), Message: "that it is not is stated here"}},
	})
}

// hasGel says whether a wax of the recipe is gel, or a house blend with gel in
// it.
func hasGel(p *lint.Pass, b *batch.Batch) bool {
	for i := range b.Waxes {
		stock := b.Waxes[i].Stock
		if stock.Get("family").Text() == "gel" {
			return true
		}
		for part := range stock.Each("part") {
			if wax, ok := p.Stock("wax", part.Label); ok && wax.Get("family").Text() == "gel" {
				return true
			}
		}
	}
	return false
}
