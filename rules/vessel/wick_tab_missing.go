package vessel

import (
	"fmt"
	"slices"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
)

// WickTabMissing is a wick in a container that can float off.
var WickTabMissing = &lint.Rule{
	Name:   "wick-tab-missing",
	Group:  group,
	Title:  "a wick in a container without a tab, or not fixed to the bottom",
	Levels: lint.Levels{OwnUse: lint.Should, Class: lint.Should, Sale: lint.Must},
	Why: "When the last of the wax is liquid a wick that is not held drifts to the wall with its flame, and glass cracks there. The tab holds it upright in the middle, " +
		"and its neck puts the flame out above the bottom.",
	Remedy: "Use a wick with a tab, and fix the tab to the bottom in a step \"set wick\".",
	Source: "common practice",
	Bad: []lint.Example{
		{
			About:   "no step that fixes it",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: "  step \"set wick\" {\n    with = \"tab-sticker\"\n  }\n", To: ""}},
			Flags:   []string{`container "tumbler-10"`},
		},
		{
			About:   "a wick without a tab",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `"cored-cotton-44"`, To: `"bare-core"`}},
			Stock:   "wick \"bare-core\" {\n  construction = \"cored\"\n  core         = \"cotton\"\n  burns        = \"2.5 to 3.25 in\"\n  families     = [\"paraffin\"]\n  trim         = \"1/4 in\"\n  tab          = false\n}\n",
			Flags:   []string{`"bare-core"`},
		},
	},
	Also: []string{"test-burn-missing"},
	Good: []lint.Example{{About: "a tab, held by a sticker", Recipe: "harbor-jar"}, {About: "a pillar needs none", Recipe: "tide-pillar"}},
	Check: func(p *lint.Pass) {
		eachVessel(p, func(b *batch.Batch, index int, v *batch.Vessel) {
			if !needsTab(b, v) || v.WickSaid.Absent() {
				return
			}
			if v.Wick != nil {
				p.CannotCheck(v.Wick, "tab")
				if tab := v.Wick.Get("tab"); tab.No() {
					p.Report(lint.Finding{
						At:      lint.AtValue(v.WickSaid),
						Message: fmt.Sprintf("%s has no tab: in %s it will drift to the wall with its flame when the wax is liquid", v.Wick.Title(), v.Stock.Title()),
						Notes:   []lint.Note{{Place: lint.AtValue(tab), Message: "that it has none is stated here"}},
						Fixes: func() []schema.Fix {
							if !v.Diameter.Known() || v.Wicks < 1 {
								return nil
							}
							return wicksFor(p, b, v)
						},
					})
				}
			}
			if !slices.ContainsFunc(b.Steps, func(s batch.Step) bool { return s.Kind == "set wick" && s.Is(index) }) {
				p.Missing(lint.Finding{
					At:      lint.AtHeader(v.Block),
					Message: fmt.Sprintf("no step fixes the wick to the bottom of %s: it will drift to the wall with its flame when the wax is liquid", v.Stock.Title()),
					Fixes:   func() []schema.Fix { return setWick(p, b, index, v) },
				})
			}
		})
	},
}

// needsTab says whether the wick of this vessel stands on its bottom.
func needsTab(b *batch.Batch, v *batch.Vessel) bool {
	return v.Kind == "container" && b.Makes != "melt"
}

// setWick offers to fix the wick with each stock seal made for tabs that holds
// to the pour.
func setWick(p *lint.Pass, b *batch.Batch, index int, v *batch.Vessel) []schema.Fix {
	var fixes []schema.Fix
	pour := hottestPour(b, index)
	for _, seal := range p.Shop().Shelf("seal") {
		switch seal.Get("kind").Text() {
		case "sticker", "silicone", "hot-melt glue":
		default:
			continue
		}
		holds := seal.Get("holds_to")
		if len(fixes) == 4 || !holds.Known() || pour != nil && holds.Amount().Low().Base().Less(pour.Heat.Amount().High().Base()) {
			continue
		}
		attrs := []repair.Attr{repair.Text("with", seal.Label)}
		if len(b.Vessels) > 1 {
			attrs = append(attrs, repair.Text("vessel", v.Block.Label))
		}
		fixes = append(fixes, repair.FirstStep("set the wick with "+seal.Label, p.Recipe, repair.Step("set wick", attrs...)))
	}
	return fixes
}
