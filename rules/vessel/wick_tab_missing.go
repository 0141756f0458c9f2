package vessel

import (
	"cmp"
	"fmt"
	"slices"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
)

// WickTabMissing is a wick in a container that nothing holds to its place.
var WickTabMissing = &lint.Rule{
	Name:   "wick-tab-missing",
	Group:  group,
	Title:  "a container's wick without a tab, or without a step that sets it",
	Levels: lint.Levels{OwnUse: lint.Should, Class: lint.Should, Sale: lint.Must},
	Why: "The tab holds the wick upright in the middle and ends the flame above the bottom. Without it, or with a tab that nothing fixes, the wick falls over in the last of the wax " +
		"and burns at the wall, or burns down to the bare bottom: that is where glass cracks and tables are scorched.",
	Remedy: "Use a wick with a crimped tab, and set it with a sticker or glue that is rated for the heat of the pour. A tealight's tab may be set straight after the pour.",
	Card: lint.Card{
		Question: "What is the little metal foot of the wick for?",
		Answer: "It keeps the wick upright in the middle and ends the flame above the bottom. Without it the wick falls over at the end and burns " +
			"at the glass.",
		AllRight: "Pillars and tapers need none: their wax holds the wick.",
		Do:       "Use a wick with a crimped tab, and fix it with a sticker or a glue that is rated for the heat of the pour.",
	},
	Source: "common practice",
	Bad: []lint.Example{
		{
			About:   "a wick without a tab",
			Recipe:  "clover-jar",
			Changes: []lint.Change{{From: `"square-braid-6-tab"`, To: `"square-braid-5"`}},
			Flags:   []string{`"square-braid-5"`},
		},
		{
			About:   "no step that sets it",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: "  step \"set wick\" {\n    with = \"tab-sticker\"\n  }\n", To: ""}},
			Flags:   []string{`container "tumbler-10"`},
		},
		{
			About:   "a tealight, in a class",
			Recipe:  "saltmarsh-tealight",
			Changes: []lint.Change{{From: "  step \"set wick\" {\n    with = \"tab-sticker\"\n  }\n", To: ""}, {From: `made_for = "sale"`, To: `made_for = "class"`}},
			Flags:   []string{`container "tealight-cup"`},
		},
	},
	Good: []lint.Example{
		{About: "a tab, and a step that sets it", Recipe: "harbor-jar", Shows: `step "set wick"`},
		{About: "a tealight's wick set after the pour", Recipe: "shingle-tealight", Shows: `step "pour" {
    at = "166 °F"
  }
  step "set wick" {
    with = "tab-sticker"
    say  = "Straight after`},
		{About: "a pillar's wick is threaded and needs no tab", Recipe: "tide-pillar", Shows: `mold "pillar-3x6"`},
	},
	Also:  []string{"test-burn-missing"},
	Check: checkWickTab,
}

func checkWickTab(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Kind != "container" || v.Stock == nil || v.Wicks == 0 || !burns(b, v) {
			continue
		}
		w := wickOf(p, b, i)
		if w.said.Absent() {
			continue // wick-missing
		}
		if w.stock != nil {
			judgeTab(p, b, i, w)
		}
		if !setsWick(b, i) {
			p.Missing(lint.Finding{
				At: lint.AtHeader(v.Block),
				Message: fmt.Sprintf("no step sets the wick in %s: a tab that nothing holds floats off in the pour, and the flame ends up at the wall",
					v.Stock.Title()),
				Fixes: func() []schema.Fix { return settings(p, b, i) },
			})
		}
	}
}

func judgeTab(p *lint.Pass, b *batch.Batch, vessel int, w wicked) {
	tab := w.stock.Get("tab")
	if tab.Absent() {
		p.CannotCheck(w.stock, "tab")
	}
	if !tab.No() {
		return
	}
	p.Report(lint.Finding{
		At:      lint.AtValue(w.said),
		Notes:   batch.NoteAt("stated here", tab),
		Message: fmt.Sprintf("%s has no tab: in %s nothing holds it upright, and nothing ends the flame above the bottom", w.stock.Title(), b.Vessels[vessel].Stock.Title()),
		Fixes:   func() []schema.Fix { return swapWick(p, b, vessel, w) },
	})
}

func setsWick(b *batch.Batch, vessel int) bool {
	return slices.ContainsFunc(b.Steps, func(s batch.Step) bool { return s.Kind == "set wick" && s.Is(vessel) })
}

// settings offers a step that sets the wick in front of all others, one for
// each sticker or glue that states it holds to the hottest pour.
func settings(p *lint.Pass, b *batch.Batch, vessel int) []schema.Fix {
	pour := hottestPour(p, b, vessel)
	if pour == nil {
		return nil
	}
	var fit []*schema.Block
	for _, seal := range p.Shop().Shelf("seal") {
		holds := seal.Get("holds_to")
		if holdsTabs(seal.Get("kind").Text()) && holds.IsAmount() && !holds.Amount().Base().Less(high(pour)) {
			fit = append(fit, seal)
		}
	}
	slices.SortStableFunc(fit, func(x, y *schema.Block) int {
		return cmp.Compare(0, x.Get("holds_to").Amount().Cmp(y.Get("holds_to").Amount()))
	})
	v := &b.Vessels[vessel]
	var fixes []schema.Fix
	for _, seal := range fit[:min(len(fit), mostOffered)] {
		attrs := []repair.Attr{repair.Text("with", seal.Label)}
		if len(b.Vessels) > 1 {
			attrs = append([]repair.Attr{repair.Text("vessel", v.Block.Label)}, attrs...)
		}
		fixes = append(fixes, repair.FirstStep("set the wick with "+seal.Label, p.Recipe, repair.Step("set wick", attrs...)))
	}
	return fixes
}

func holdsTabs(kind string) bool {
	return kind == "sticker" || kind == "hot-melt glue" || kind == "silicone"
}
