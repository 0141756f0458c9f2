package vessel

import (
	"fmt"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// WaxNotForContainer is a wax in a container that its supplier does not sell
// for containers: pillar grade, as a rule.
var WaxNotForContainer = &lint.Rule{
	Name:   "wax-not-for-container",
	Group:  group,
	Title:  "a wax in a container that it is not made for",
	Levels: lint.Levels{OwnUse: lint.Consider, Class: lint.Should, Sale: lint.Must},
	Why: "Pillar wax is made to let go of its mold: it is hard, and it shrinks a good deal as it sets. In a jar the same virtue is a fault. It pulls away from the glass, " +
		"leaves gaps, comes loose and rattles. Hot wax runs down the gap while it burns, the flame comes near the wall, and the strain of hard wax on one side and heat on the other can crack the glass. " +
		"On your own shelf, in a vessel made for candles and under your eyes, it is an experiment worth knowing about. In a class you teach it to people who will do it again. " +
		"Sold, it is lit by somebody who knows none of this.",
	Remedy:   "Use a wax sold for containers. If you have tested this one in this kind of vessel to your own satisfaction, write tested_for = [\"container\"] in its stock item and keep the trial that shows it.",
	Source:   "common practice; what a wax is sold for is its supplier's word",
	Cautions: "Do not burn a container candle whose glass has a crack, or whose wax has come loose from the wall.",
	Bad: []lint.Example{
		{
			About:   "pillar wax in a tumbler, for sale",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `wax "pierhead-container"`, To: `wax "northlight-pillar"`}},
			Flags:   []string{`"northlight-pillar"`},
		},
		{
			About:   "the same in a class",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `wax "pierhead-container"`, To: `wax "northlight-pillar"`}, {From: `made_for = "sale"`, To: `made_for = "class"`}},
			Flags:   []string{`"northlight-pillar"`},
			Level:   lint.Should,
		},
		{
			About:   "the same for one's own shelf",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `wax "pierhead-container"`, To: `wax "northlight-pillar"`}, {From: `made_for = "sale"`, To: `made_for = "own use"`}},
			Flags:   []string{`"northlight-pillar"`},
			Level:   lint.Consider,
		},
	},
	Also:  []string{"pour-too-cool", "fragrance-over-limit", "fragrance-load-extreme", "test-burn-missing", "glass-too-cold-for-pour", "second-pour-too-cool", "melt-too-hot", "heat-above-ceiling"},
	Good:  []lint.Example{{About: "a container wax", Recipe: "harbor-jar"}, {About: "a pillar wax in a mold", Recipe: "tide-pillar"}},
	Check: checkContainerWax,
}

// usesIn are the uses of which a wax must suit one for this vessel. A votive
// poured into its own glass stays there, so container wax is right for it too;
// where the recipe says that it makes a jar, only that is.
func usesIn(b *batch.Batch, v *batch.Vessel) []string {
	makes := b.Makes
	if v.Kind == "container" {
		switch v.Stock.Get("kind").Text() {
		case "tealight cup":
			makes = "tealight"
		case "votive glass":
			if makes != "jar" {
				return []string{"votive", "container"}
			}
		case "clamshell":
			makes = "melt"
		default:
			if makes != "melt" && makes != "tealight" {
				makes = "jar"
			}
		}
	}
	return batch.Uses(makes)
}

func checkContainerWax(p *lint.Pass) {
	eachVessel(p, func(b *batch.Batch, _ int, v *batch.Vessel) {
		if v.Kind != "container" {
			return
		}
		uses := usesIn(b, v)
		suits := b.Suits(uses...)
		if !suits.Ask(p) || suits.Yes {
			return
		}
		for i := range b.Waxes {
			in := &b.Waxes[i]
			if s := batch.SuitedFor(in.Stock, uses...); s.State == schema.Known && !s.Yes {
				reportUnfit(p, b, v, in, s, suits)
			}
		}
	})
}

func reportUnfit(p *lint.Pass, b *batch.Batch, v *batch.Vessel, in *batch.Ingredient, s, all batch.Suited) {
	f := lint.Finding{At: lint.AtLabel(in.Block), Fixes: func() []schema.Fix { return waxesFor(p, b, in, usesIn(b, v)) }}
	if s.Value.Known() {
		f.Notes = []lint.Note{{Place: lint.AtValue(s.Value), Message: "what it is sold for is stated here"}}
	}
	said := fmt.Sprintf("%s is sold for %s, not for what goes into %s", in.Stock.Title(), listed(s.Value), v.Stock.Title())
	if s.Family != "" {
		said = fmt.Sprintf("%s does not say what it is sold for, and %s is not usual in %s (common practice)", in.Stock.Title(), s.Family, v.Stock.Title())
		f.Levels = lint.Levels{OwnUse: lint.Consider, Class: lint.Should, Sale: lint.Should}
	}
	switch {
	case b.Makes == "melt" || v.Stock.Get("kind").Text() == "clamshell":
		// Nothing burns in a clamshell, and hard melts only come out of it more easily.
		f.Levels = lint.Every(lint.Consider)
		f.Message = said + ": it will be harder and give off its scent more slowly than a wax made for melts"
	case all.Blend && !all.MostlyUnfit():
		f.Levels = lint.Levels{OwnUse: lint.Consider, Class: lint.Consider, Sale: lint.Should}
		f.Message = fmt.Sprintf("%s; it is %s of this blend, and a blend with so much of it may let go of the wall: test it, and give a blend that proves itself its own stock item", said,
			batch.Percent(all.Unfit.Value, quantity.NoBasis))
	default:
		f.Message = said + ": " + whatHappens(in.Stock, v) + forWhom(p)
	}
	p.Report(f)
}

// whatHappens tells what the wrong wax does in this vessel.
func whatHappens(wax *schema.Block, v *batch.Vessel) string {
	wall := "the wall"
	end := ""
	if v.Stock.Get("material").Text() == "glass" {
		wall, end = "the glass", " and can crack it"
	}
	shrinks := "it shrinks as it sets"
	if s := wax.Get("shrinkage"); s.Known() {
		shrinks = "it shrinks by " + s.Amount().String() + " as it sets"
	}
	return fmt.Sprintf("%s, pulls away from %s, comes loose and rattles; hot wax runs down the gap%s", shrinks, wall, end)
}

func forWhom(p *lint.Pass) string {
	switch p.MadeFor {
	case lint.OwnUse:
		return ". On your own shelf, under your eyes, it is an experiment; for a class it should not be, and for sale it must not"
	case lint.Class:
		return ". In a class it should not be: people will do it again at home"
	}
	return ". For sale it must not be: a stranger will light it"
}

// listed is a list attribute in words: "pillar and votive".
func listed(v schema.Value) string {
	var words []string
	for _, item := range v.Items() {
		words = append(words, item.Text)
	}
	if len(words) == 0 {
		return "nothing"
	}
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return words[0]
}

// waxesFor offers the stock waxes that suit the use, hold this load and are
// handled at the recipe's temperatures: those of the same family first.
func waxesFor(p *lint.Pass, b *batch.Batch, in *batch.Ingredient, uses []string) []schema.Fix {
	var fit []*schema.Block
	for _, wax := range p.Shop().Shelf("wax") {
		if s := batch.SuitedFor(wax, uses...); s.State == schema.Known && s.Yes && s.Family == "" && holds(b, wax) && takesHeat(b, wax) {
			fit = append(fit, wax)
		}
	}
	family := in.Stock.Get("family").Text()
	slices.SortStableFunc(fit, func(x, y *schema.Block) int { return familyRank(x, family) - familyRank(y, family) })
	var fixes []schema.Fix
	for _, wax := range fit[:min(4, len(fit))] {
		fixes = append(fixes, repair.Relabel("use "+wax.Label+" in its place", in.Block, wax.Label))
	}
	return fixes
}

func familyRank(wax *schema.Block, family string) int {
	if wax.Get("family").Text() == family {
		return 0
	}
	return 1
}

// holds says whether the wax's stated limit covers the recipe's load.
func holds(b *batch.Batch, wax *schema.Block) bool {
	if len(b.Fragrances) == 0 {
		return true
	}
	limit := wax.Get("fragrance_limit")
	if !limit.Known() {
		return false
	}
	load := b.FragranceOfWax
	if limit.Amount().Basis() == quantity.OfTotal {
		load = b.FragranceOfTotal
	}
	return load.Known() && !limit.Amount().High().Base().Less(load.Value)
}

// takesHeat says whether every temperature of the recipe lies within what the
// wax's sheet states.
func takesHeat(b *batch.Batch, wax *schema.Block) bool {
	for i := range b.Steps {
		s := &b.Steps[i]
		attr := map[string]string{"melt": "melt_to", "pour": "pour_at", "add fragrance": "add_fragrance_at"}[s.Kind]
		if s.Heat.Spec == nil || !s.Heat.IsAmount() {
			continue
		}
		if ceiling := wax.Get("never_above"); ceiling.Known() && ceiling.Amount().High().Base().Less(s.Heat.Amount().High().Base()) {
			return false
		}
		if attr == "" {
			continue
		}
		if stated := wax.Get(attr); stated.Known() && !s.Heat.Amount().Within(stated.Amount()) {
			return false
		}
	}
	return true
}
