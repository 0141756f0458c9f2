package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// WickMissing is a candle without a wick.
var WickMissing = &lint.Rule{
	Name:   "wick-missing",
	Group:  group,
	Title:  "a candle without a wick",
	Levels: lint.Every(lint.Must),
	Why: "The wick decides how a candle burns more than anything else in it. Where the recipe names none, whoever pours takes what lies at hand, " +
		"and a wick of the wrong size soots, overheats the glass, or drowns. Nothing else about the wick can be checked either.",
	Remedy: "Name the wick of every mold, container and taper. If what you make has no flame, say makes = \"melt\".",
	Source: "common practice",
	Bad: []lint.Example{
		{
			About:   "a jar",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: "    wick  = \"cored-cotton-44\"\n", To: ""}},
			Flags:   []string{`container "tumbler-10"`},
		},
		{
			About:   "a pillar",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: "    wick  = \"flat-braid-24\"\n", To: ""}},
			Flags:   []string{`mold "pillar-3x6"`},
		},
		{
			About:   "no wicks, by number",
			Recipe:  "three-bells-bowl",
			Changes: []lint.Change{{From: `wicks        = 3`, To: `wicks        = 0`}},
			Flags:   []string{`0`},
		},
	},
	Good: []lint.Example{
		{About: "a jar with its wick", Recipe: "harbor-jar"},
		{About: "melts have none", Recipe: "gorse-melt"},
	},
	Also:  []string{"test-burn-missing"},
	Check: checkWickMissing,
}

func checkWickMissing(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Stock == nil || !burns(b, v) {
			continue
		}
		made := b.MadeIn(v)
		if v.Wicks == 0 {
			p.Report(lint.Finding{
				At:      lint.AtValue(v.Block.Get("wicks")),
				Message: fmt.Sprintf("wicks = 0 leaves the %s in %s without a wick: say how many each has, or makes = \"melt\" if it has no flame", made, v.Stock.Title()),
			})
			continue
		}
		if !wickOf(p, b, i).said.Absent() {
			continue
		}
		in := " in " + v.Stock.Title()
		if v.Kind == "taper" {
			in = ", " + v.Stock.Title() + ","
		}
		p.Missing(lint.Finding{
			At:      lint.AtHeader(v.Block),
			Message: fmt.Sprintf("the %s%s has no wick: name it, wick = \"…\", or say makes = \"melt\" if it has no flame", made, in),
		})
	}
}
