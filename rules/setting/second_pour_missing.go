package setting

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// SecondPourMissing is a mold that shrinking wax sets in and nothing tops up.
var SecondPourMissing = &lint.Rule{
	Name:   "second-pour-missing",
	Group:  group,
	Title:  "a wax that shrinks much, in a mold, with no second pour",
	Levels: lint.Every(lint.Should),
	Why: "Wax sets from the wall inwards and takes up less room as it does. What sets last, round the wick, has nothing left to fill its place: " +
		"a well sinks in, or a cave stays hidden under a firm skin. The candle stands crooked and burns down in a rush when it reaches the hollow. " +
		"A second pour, a little hotter than the first, fills it. In a warm room, where wax sets slowly, some do without.",
	Remedy: "Leave about 3/8 in below the rim, open relief holes as it sets, and pour again a little hotter than the first time. " +
		"Where it works for you without, record a concession in the recipe with the reason; where the supplier sells the wax as needing one pour, write one_pour = true in its stock item.",
	Card: lint.Card{
		Question: "Why is there a hole beside the wick?",
		Answer: "Wax takes up less room as it sets, and what sets last, round the wick, has nothing left to fill its place. A second pour, a little " +
			"hotter than the first, fills it.",
		AllRight: "Narrow molds, waxes that shrink little or are sold as needing one pour; and in a warm room, where wax sets slowly, some do without.",
		Do:       "Leave about 3/8 in (10 mm) below the rim, poke relief holes as it sets, and pour again 5 to 10 °F (3 to 6 °C) hotter.",
	},
	Source: "common practice",
	Bad: []lint.Example{
		{
			About:   "relief holes and no second pour",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: secondPourOfTidePillar, To: ""}},
			Flags:   []string{`mold "pillar-3x6"`},
		},
		{
			About:  "a wax whose shrinkage is not stated: what is usual counts",
			Recipe: "tide-pillar",
			Changes: []lint.Change{
				{From: secondPourOfTidePillar, To: ""},
				{From: `"northlight-pillar"`, To: `"southlight-pillar"`},
			},
			Stock: southlight,
			Flags: []string{`mold "pillar-3x6"`},
		},
		{
			About:   "palm: often poured once, worth knowing",
			Recipe:  "slipway-pillar",
			Changes: []lint.Change{{From: "  step \"second pour\" {\n    after = \"30 min\"\n    at    = \"203 °F\"\n  }\n", To: ""}},
			Flags:   []string{`mold "pillar-2x5"`},
			Level:   lint.Consider,
		},
	},
	Good: []lint.Example{
		{About: "a soy blend that shrinks by 5 %", Recipe: "breakwater-block"},
		{About: "layers: each fills what the one before has lost", Recipe: "tideline-layers",
			Changes: []lint.Change{{From: "  step \"second pour\" {\n    after = \"45 min\"\n    at    = \"182 °F\"\n  }\n", To: ""}}},
		{About: "a votive 1 1/2 in wide", Recipe: "lantern-votive",
			Changes: []lint.Change{{From: "  step \"second pour\" {\n    after = \"30 min\"\n    at    = \"178 °F\"\n  }\n", To: ""}}},
		{About: "a jar", Recipe: "fogbank-soy", Shows: `container "`},
	},
	Also:  []string{"test-burn-missing"}, // the burns are of another wax
	Check: checkSecondPourMissing,
}

const secondPourOfTidePillar = "  step \"second pour\" {\n    after = \"1 h 15 min\"\n    at    = \"182 °F\"\n    say   = \"Stop just below the line the first pour left.\"\n  }\n"

const southlight = `wax "southlight-pillar" {
  title            = "Southlight paraffin, pillar grade"
  family           = "paraffin"
  suits            = ["pillar"]
  melt_to          = "180 to 190 °F"
  pour_at          = "168 to 182 °F"
  add_fragrance_at = "175 to 188 °F"
  congeals_at      = "140 °F"
  never_above      = "240 °F"
  flash_point      = "450 °F"
  fragrance_limit  = "6 % of wax"
  density          = "0.91 g/mL"
  cure             = "1 to 3 days"
  conductivity     = "0.24 W/mK"
  heat_capacity    = "2.2 kJ/kgK"
  latent_heat      = "200 kJ/kg"
}
`

// Common practice: wax that shrinks by more than this, in a mold wider than
// this in mm, is topped up.
var (
	muchShrinkage = quantity.NewRat(6, 100)
	narrowMold    = quantity.Int(40)
)

func checkSecondPourMissing(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Kind != "mold" || v.Stock == nil || !standsAlone(made(b, v)) {
			continue
		}
		// Of several pours one after another each fills what the one before has
		// lost, and the last is too shallow to lose much.
		if n, _ := layers(b, i); n != 1 || secondPour(b, i) != nil || onePour(b) {
			continue
		}
		if !v.Diameter.Ask(p) || !narrowMold.Less(v.Diameter.Value) {
			continue
		}
		shrinks := b.Shrinkage()
		if !shrinks.Ask(p) || !shrinks.Middle().Known() || !muchShrinkage.Less(shrinks.Middle().Value) {
			continue
		}
		reportNoSecondPour(p, b, i, shrinks)
	}
}

// standsAlone says whether what is made is a candle that leaves its mold and
// is thick enough to sink in.
func standsAlone(makes string) bool {
	switch makes {
	case "melt", "taper", "tealight":
		return false
	}
	return true
}

// onePour says whether every wax is sold as needing one pour, or says
// something of it that cannot be read.
func onePour(b *batch.Batch) bool {
	for i := range b.Waxes {
		stock := b.Waxes[i].Stock
		if stock == nil || stock.Get("one_pour").Broken() {
			return true
		}
		if !stock.Get("one_pour").Yes() {
			return false
		}
	}
	return true
}

func reportNoSecondPour(p *lint.Pass, b *batch.Batch, vessel int, shrinks batch.Stated) {
	v := &b.Vessels[vessel]
	f := lint.Finding{
		At:    lint.AtHeader(v.Block),
		Notes: batch.NoteAt("shrinkage stated here", shrinks.Value),
		Fixes: func() []schema.Fix { return addSecondPour(p, b, vessel) },
	}
	if oftenOnce(b) {
		f.Levels = lint.Every(lint.Consider)
	}
	f.Message = fmt.Sprintf("%s, over the %s from which a mold over %s wide is topped up (common practice), and %s is %s wide with no second pour: it sinks in round the wick or hides a cave. "+
		"In a warm room, where wax sets slowly, some do without: then say so in a concession with its reason",
		shrinkage(shrinks), quantity.FromBase(muchShrinkage, quantity.Percent), millimeters(narrowMold), v.Stock.Title(), batch.Millimeters(p.View, v.Diameter.Value))
	p.Missing(f)
}

// shrinkage says how much the wax shrinks, and whose figure it is.
func shrinkage(s batch.Stated) string {
	subject := "the blend"
	if !s.Blend {
		subject = s.Wax.Title()
	}
	if s.Family != "" {
		return fmt.Sprintf("%s shrinks by %s, as is usual for %s (%s states none; %s)", subject, s.Amount, s.Family, s.Lacks.Title(), s.Source())
	}
	return fmt.Sprintf("%s shrinks by %s", subject, s.Amount)
}

// oftenOnce says whether the waxes are all of families that many pour once:
// beeswax and palm (common practice).
func oftenOnce(b *batch.Batch) bool {
	for i := range b.Waxes {
		switch b.Waxes[i].Stock.Get("family").Text() {
		case "beeswax", "palm":
		default:
			return false
		}
	}
	return true
}

// addSecondPour offers a second pour 5 °F (of one in °C, 3 °C) above the
// first, and less where the wax, the mold or a seal bears less. Common
// practice is 5 to 10 °F. Where that leaves it below the first, nothing is
// offered.
func addSecondPour(p *lint.Pass, b *batch.Batch, vessel int) []schema.Fix {
	_, first := layers(b, vessel)
	if !first.Heat.IsAmount() || doubted(p, b, first) {
		return nil
	}
	pour := first.Heat.Amount().High()
	above := quantity.Int(5)
	if pour.Unit() == quantity.Celsius {
		above = quantity.Int(3)
	}
	heat := quantity.Of(pour.Number().Add(above).Floor(quantity.Int(1)), pour.Unit())
	if !borne(p, b, vessel, heat.Base()) {
		heat = pour
		if !borne(p, b, vessel, heat.Base()) {
			return nil
		}
	}
	v := &b.Vessels[vessel]
	at := repair.Text("at", heat.String())
	if holes := lastAfter(b, first, vessel, "relief holes"); holes != nil {
		step := repair.Step("second pour", forVessel(b, v, repair.Text("after", "1 h"), at)...)
		return []schema.Fix{repair.After("pour again at "+heat.String()+", 1 h after the relief holes", holes.Block, step)}
	}
	step := repair.Step("second pour", forVessel(b, v, repair.Text("after", "3 h"), at)...)
	return []schema.Fix{repair.After("pour again at "+heat.String()+", 3 h after the pour", first.Block, step)}
}

// borne says whether the wax, the mold and its seals bear a temperature in °C.
func borne(p *lint.Pass, b *batch.Batch, vessel int, heat quantity.Rat) bool {
	if ceiling := b.NeverAbove(); ceiling.Known() && ceiling.High().Less(heat) {
		return false
	}
	if flash := b.FlashPoint(); flash.Known() && !heat.Less(flash.High().Sub(flashMargin)) {
		return false
	}
	softens := b.Vessels[vessel].Stock.Get("softens_at")
	if softens.IsAmount() && softens.Amount().Base().Less(heat.Add(softeningMargin)) {
		return false
	}
	return heat.Less(hardStop) && holdsAll(p, b, vessel, heat)
}

// Common practice: wax stays 30 °C below its flash point, and a pour 5 °C
// below where the mold softens.
var (
	flashMargin     = quantity.Int(30)
	softeningMargin = quantity.Int(5)
)

// lastAfter is the last step of a kind behind another, about a vessel; nil:
// none.
func lastAfter(b *batch.Batch, s *batch.Step, vessel int, kind string) *batch.Step {
	var last *batch.Step
	for i := s.Index + 1; i < len(b.Steps); i++ {
		if b.Steps[i].Kind == kind && b.Steps[i].Is(vessel) {
			last = &b.Steps[i]
		}
	}
	return last
}
