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
	Why: "Which wick it gets is what decides how a candle burns, and the commonest fault there is. A recipe that does not say which leaves it to whoever " +
		"reaches into the drawer.",
	Remedy: "Name the wick that was tested in this vessel with this wax.",
	Source: "common practice",
	Bad: []lint.Example{{
		About:   "no wick named",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: "    wick  = \"flat-braid-24\"\n", To: ""}},
		Flags:   []string{`mold "pillar-3x6"`},
	}},
	Good: []lint.Example{{About: "a wick named", Recipe: "tide-pillar"}, {About: "melts have none", Recipe: "gorse-melt"}},
	Check: func(p *lint.Pass) {
		eachVessel(p, func(b *batch.Batch, _ int, v *batch.Vessel) {
			wicks := v.Block.Get("wicks")
			switch {
			case b.Makes == "melt":
			case wicks.Known() && wicks.Whole(1) == 0:
				p.Report(lint.Finding{At: lint.AtValue(wicks), Message: fmt.Sprintf("%s gets no wick: it is no candle like this", v.Stock.Title())})
			case v.WickSaid.Absent():
				p.Missing(lint.Finding{At: lint.AtHeader(v.Block), Message: fmt.Sprintf("nothing says which wick goes into %s", v.Stock.Title())})
			}
		})
	},
}
