package burns

import (
	"fmt"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// wanted is how many candles must have burned well before one is sold.
const wanted = 3

// TestBurnMissing counts the candles whose recorded burns all passed.
var TestBurnMissing = &lint.Rule{
	Name:   "test-burn-missing",
	Group:  Group,
	Title:  "fewer than three candles of this recipe burned and passed",
	Levels: lint.Levels{OwnUse: lint.Silent, Class: lint.Consider, Sale: lint.Must},
	Why: "No figure on a sheet tells how this wax, this scent, this wick and this vessel burn together; only burning them does. One candle may burn well " +
		"by chance, so three are burned, each to its end, four hours at a time, before the recipe is sold.",
	Remedy: "Burn three candles of this recipe, each on its own, with the wick trimmed, four hours on and at least one off, until they end. Write each burn " +
		"down as a test_burn with its candle (\"A\", \"B\", \"C\"), its cycle and its result.",
	Source: "common practice, after the ideas of ASTM F2417 (from memory: three samples)",
	Cautions: "Burn on something that cannot burn, well away from anything that can, with a working smoke alarm, and stay with it. Have a lid or a fire blanket at hand; " +
		"never put water on burning wax. A record kept here is not a test report by a laboratory.",
	Bad: []lint.Example{
		{
			About:  "only two candles burned, one burn without its candle",
			Recipe: "tide-pillar",
			Changes: []lint.Change{{
				From: "    candle     = \"C\"\n    cycle      = 1\n    burned_for = \"4 h\"\n    to_end     = false\n",
				To:   "    cycle      = 1\n    burned_for = \"4 h\"\n    to_end     = false\n",
			}, {
				From: "    candle     = \"C\"\n    cycle      = 22\n",
				To:   "    candle     = \"B\"\n    cycle      = 22\n",
			}},
			Flags: []string{`recipe "tide-pillar"`},
		},
	},
	Good:  []lint.Example{{About: "three candles burned to their end", Recipe: "tide-pillar"}, {About: "a melt has no flame", Recipe: "gorse-melt"}},
	Check: checkMissing,
}

// checkMissing counts for each vessel of the recipe: a jar tested says nothing
// of a tin. A burn that names no vessel counts for all of them.
func checkMissing(p *lint.Pass) {
	b := batch.Of.In(p.View)
	if !p.Loud(lint.Levels{}) {
		return
	}
	burns := p.TestBurns()
	if len(b.Vessels) < 2 {
		if b.Makes == "melt" {
			return
		}
		judge(p, p.Recipe.Title(), lint.AtHeader(p.Recipe), burns)
		return
	}
	var judged []string
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Stock == nil || b.MadeIn(v) == "melt" || slices.Contains(judged, v.Block.Label) {
			continue
		}
		judged = append(judged, v.Block.Label)
		judge(p, p.Recipe.Title()+" in "+v.Stock.Title(), lint.AtHeader(v.Block), inVessel(burns, v.Block.Label))
	}
}

func inVessel(burns []*schema.Block, key string) []*schema.Block {
	var in []*schema.Block
	for _, burn := range burns {
		if v := burn.Get("vessel"); !v.Known() || v.Text() == key {
			in = append(in, burn)
		}
	}
	return in
}

func judge(p *lint.Pass, subject string, at lint.Place, burns []*schema.Block) {
	passed, failed := batch.Burned(burns)
	if len(passed) >= wanted {
		return
	}
	var b strings.Builder
	switch {
	case len(burns) == 0:
		fmt.Fprintf(&b, "no candle of %s has been burned yet", subject)
	case len(passed) == 0:
		fmt.Fprintf(&b, "no candle of %s has burned and passed yet", subject)
	case len(passed) == 1:
		fmt.Fprintf(&b, "only one candle of %s has burned and passed (%s)", subject, passed[0])
	default:
		fmt.Fprintf(&b, "only %d candles of %s have burned and passed (%s)", len(passed), subject, strings.Join(passed, ", "))
	}
	if len(failed) > 0 {
		fmt.Fprintf(&b, ", and %s did not pass", strings.Join(failed, ", "))
	}
	b.WriteString("; three are wanted before it is ")
	if p.MadeFor == lint.Class {
		b.WriteString("taught")
	} else {
		b.WriteString("sold")
	}
	p.Missing(lint.Finding{At: at, Message: b.String()})
}
