package burns

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/rules/formula"
)

// TestBurnMissing counts the candles of the formulation as it is now whose
// recorded burns all passed.
var TestBurnMissing = &lint.Rule{
	Name:   "test-burn-missing",
	Group:  Group,
	Title:  "fewer than three candles of this formulation burned and passed",
	Levels: lint.Levels{OwnUse: lint.Silent, Class: lint.Consider, Sale: lint.Must},
	Why: "No figure on a sheet tells how this wax, this scent, this wick and this vessel burn together; only burning them does. One candle may burn well " +
		"by chance, so three are burned, each to its end, four hours at a time, before the recipe is sold. A candle made from another formulation counts as another candle: " +
		"a little more oil or a wick one size up burns in a way of its own.",
	Remedy: "Burn three candles of this recipe, each on its own, with the wick trimmed, four hours on and at least one off, until they end. Write each burn " +
		"down as a test_burn with the formula the batch sheet prints, its candle (\"A\", \"B\", \"C\"), its cycle and its result: wickrule burn does that.",
	Card: lint.Card{
		Question: "How do I know that my candle is safe to sell?",
		Answer:   "Burn three of it to their end before you sell the first. No figure on a sheet tells how this wax, scent, wick and vessel burn together.",
		AllRight: "A candle for yourself, which you watch as it burns, is its own first test.",
		Do:       "Four hours on and at least one off, the wick trimmed each time, on something that cannot burn and in sight. Write down what you see.",
	},
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
	Good:  []lint.Example{{About: "three candles burned to their end, of which this is the last", Recipe: "tide-pillar", Shows: "candle     = \"C\"\n    cycle      = 22\n"}, {About: "a melt has no flame", Recipe: "gorse-melt", Shows: `makes    = "melt"`}},
	Check: checkMissing,
}

// checkMissing counts for each kind of candle by itself. Where enough were
// burned before the recipe was changed, that is said and not this.
func checkMissing(p *lint.Pass) {
	if !p.Loud(lint.Levels{}) {
		return
	}
	for _, t := range kinds(p) {
		if !t.Enough() && !(t.Stale() && staleSpeaks(p)) {
			p.Missing(lint.Finding{At: at(p, &t), Message: tooFew(p, &t)})
		}
	}
}

func tooFew(p *lint.Pass, t *formula.Tested) string {
	passed, failed := t.Passed()
	var b strings.Builder
	switch {
	case len(t.Current) == 0 && len(t.Older) == 0:
		fmt.Fprintf(&b, "no candle of %s has been burned yet", t.Subject)
	case len(t.Current) == 0:
		fmt.Fprintf(&b, "no candle of %s as it is now has been burned yet", t.Subject)
	case len(passed) == 0:
		fmt.Fprintf(&b, "no candle of %s has burned and passed yet", t.Subject)
	case len(passed) == 1:
		fmt.Fprintf(&b, "only one candle of %s has burned and passed (%s)", t.Subject, passed[0])
	default:
		fmt.Fprintf(&b, "only %d candles of %s have burned and passed (%s)", len(passed), t.Subject, strings.Join(passed, ", "))
	}
	if len(failed) > 0 {
		fmt.Fprintf(&b, ", and %s did not pass", strings.Join(failed, ", "))
	}
	fmt.Fprintf(&b, "; three are wanted before it is %s", before(p))
	if old := formula.Latest(t.Older); old != nil {
		if n := len(t.Older); n == 1 {
			b.WriteString(". One older burn does not count: ")
		} else {
			fmt.Fprintf(&b, ". %d older burns do not count: ", n)
		}
		b.WriteString(formula.WhyNot(p.View, old, t.Vessel))
	}
	return b.String()
}
