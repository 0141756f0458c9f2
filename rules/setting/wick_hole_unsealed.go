package setting

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// WickHoleUnsealed is a mold with a hole in its bottom that nothing closes. A
// mold that is sealed, only too late, is wick-hole-sealed-late.
var WickHoleUnsealed = &lint.Rule{
	Name:   "wick-hole-unsealed",
	Group:  group,
	Title:  "a mold whose wick hole is never sealed",
	Levels: lint.Every(lint.Must), Binding: true,
	Why: "A pillar mold stands upside down: the hole for the wick is at the bottom while you pour. If nothing closes it, hot wax runs out " +
		"underneath, over the bench, onto hands and feet, and onto whatever heats the pot. It often starts slowly and is seen late. " +
		"The wick drawn through the hole does not close it, and masking tape does not either: its glue lets go below the heat of a pour.",
	Remedy: "Add a step \"seal wick hole\" before the pour, with a plug, putty, or screw bedded in putty whose maker states that it holds to the heat of the pour. " +
		"Where a wick pin or a self-closing slit fills the hole, write wick_hole = false in the mold's stock item.",
	Cautions: "Press the seal onto dry, clean metal, and look at it again before each pour. Stand the mold in a tray.",
	Card: lint.Card{
		Question: "Why does my mold leak?",
		Answer: "A pillar mold stands on its head, with the hole for the wick at the bottom. The wick does not close it: it has to be sealed before " +
			"the pour.",
		AllRight: "Molds whose hole is filled by a wick pin or a slit that closes itself.",
		Do:       "Press a plug, putty, or a screw bedded in putty onto dry, clean metal, look at it before each pour, and stand the mold in a tray.",
	},
	Source: "common practice",
	Bad: []lint.Example{
		{
			About:   "no sealing step",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: "  step \"seal wick hole\" {\n    with = \"rubber-plug\"\n  }\n", To: ""}},
			Flags:   []string{`mold "pillar-3x6"`},
		},
		{
			About:  "the sealing step is for another mold",
			Recipe: "tide-pillar",
			Changes: []lint.Change{
				{From: `"sale"`, To: `"own use"`},
				{From: `"1.24 kg"`, To: `"1 kg"`},
				{From: "    count = 2\n    wick  = \"flat-braid-24\"\n  }\n", To: "    count = 1\n    wick  = \"flat-braid-24\"\n  }\n  mold \"pillar-3x4\" {\n    count = 1\n    wick  = \"flat-braid-24\"\n  }\n"},
				{From: "    with = \"rubber-plug\"\n", To: "    with   = \"rubber-plug\"\n    vessel = \"pillar-3x6\"\n"},
			},
			Flags: []string{`mold "pillar-3x4"`},
		},
		{
			About:   "masking tape is no seal",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `"rubber-plug"`, To: `"masking-tape"`}},
			Stock:   "seal \"masking-tape\" {\n  title = \"Masking tape\"\n  kind  = \"tape\"\n}\n",
			Flags:   []string{`"masking-tape"`},
		},
		{
			About:  "on one's own shelf as well",
			Recipe: "tide-pillar",
			Changes: []lint.Change{
				{From: `"sale"`, To: `"own use"`},
				{From: "  step \"seal wick hole\" {\n    with = \"rubber-plug\"\n  }\n", To: ""},
			},
			Flags: []string{`mold "pillar-3x6"`},
		},
	},
	Good: []lint.Example{
		{About: "sealed before the pour", Recipe: "tide-pillar", Shows: `step "seal wick hole"`},
		{About: "sealed after the melt, and still before the pour", Recipe: "tide-pillar", Changes: []lint.Change{
			{From: "  step \"seal wick hole\" {\n    with = \"rubber-plug\"\n  }\n", To: ""},
			{From: "  step \"pour\" {\n", To: "  step \"seal wick hole\" {\n    with = \"rubber-plug\"\n  }\n  step \"pour\" {\n"},
		}},
		{About: "a mold with a wick pin has no open hole", Recipe: "lantern-votive", Shelf: `mold votive-small`},
		{About: "a jar has no wick hole", Recipe: "harbor-jar", Shows: `container "`},
	},
	Check: checkWickHoleUnsealed,
}

func checkWickHoleUnsealed(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Vessels {
		v := &b.Vessels[i]
		yes, known, absent := hasHole(v)
		if !yes && (known || !absent) {
			continue
		}
		s := sealingOf(p, b, i)
		switch {
		case s.early != nil:
		case s.loose != nil:
			reportNoSeal(p, b, s.loose)
		case s.late != nil: // wick-hole-sealed-late
		case absent:
			if made(b, v) != "melt" { // a melt has no wick, and its molds as a rule no hole
				p.CannotCheck(v.Stock, "wick_hole")
			}
		default:
			reportUnsealed(p, b, i, s.pour)
		}
	}
}

func reportUnsealed(p *lint.Pass, b *batch.Batch, vessel int, pour *batch.Step) {
	v := &b.Vessels[vessel]
	heat := "hot wax"
	if pour != nil && pour.Heat.IsAmount() {
		heat = "wax at " + batch.Both(p.View, pour.Heat.Amount())
	}
	p.Missing(lint.Finding{
		At:      lint.AtHeader(v.Block),
		Message: fmt.Sprintf("nothing seals the wick hole of %s: %s runs out of it over the bench. Seal it before the pour", v.Stock.Title(), heat),
		Notes:   batch.NoteAt("its wick hole is stated here", v.Stock.Get("wick_hole")),
		Fixes:   func() []schema.Fix { return sealFixes(p, b, vessel) },
	})
}

// sealFixes offers a sealing step in front of all others, one for each seal
// that holds every pour into the mold; where none does, the first pour.
func sealFixes(p *lint.Pass, b *batch.Batch, vessel int) []schema.Fix {
	need, ok := hottest(p, b, []int{vessel})
	if !ok {
		return nil
	}
	seals := sealsThatHold(p, need, sealStep)
	if first, ok := firstHeat(p, b, vessel); ok && len(seals) == 0 {
		seals = sealsThatHold(p, first, sealStep)
	}
	v := &b.Vessels[vessel]
	title := "seal the wick hole with "
	if len(b.Vessels) > 1 {
		title = "seal the wick hole of " + v.Block.Label + " with "
	}
	var fixes []schema.Fix
	for _, seal := range seals {
		step := repair.Step(sealStep, forVessel(b, v, repair.Text("with", seal.Label))...)
		fixes = append(fixes, repair.FirstStep(title+seal.Label, p.Recipe, step))
	}
	return fixes
}

func firstHeat(p *lint.Pass, b *batch.Batch, vessel int) (quantity.Rat, bool) {
	first := firstPour(b, vessel)
	if first == nil || !first.Heat.IsAmount() || doubted(p, b, first) {
		return quantity.Rat{}, false
	}
	return first.Heat.Amount().High().Base(), true
}

// reportNoSeal says that what a step seals with does not seal.
func reportNoSeal(p *lint.Pass, b *batch.Batch, step *batch.Step) {
	item := step.Block.Get("with").Items()[0]
	seal, _ := p.Stock("seal", item.Text)
	p.Report(lint.Finding{
		At: lint.AtItem(step.Block.Get("with"), item),
		Message: fmt.Sprintf("%s is no seal: its glue lets go below 60 to 70 °C (140 to 158 °F, common practice), cooler than any pour, and the wax runs out of the wick hole. "+
			"Where its maker rates it for more, write holds_to in its stock item", seal.Title()),
		Fixes: func() []schema.Fix {
			need, ok := hottest(p, b, step.Vessels)
			if !ok {
				return nil
			}
			return swapSeal(p, step, item, need)
		},
	})
}
