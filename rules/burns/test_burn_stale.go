package burns

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/rules/formula"
	"wickrule/schema"
)

// TestBurnStale finds burns that were of another formulation.
var TestBurnStale = &lint.Rule{
	Name:   "test-burn-stale",
	Group:  Group,
	Title:  "the recipe was changed after its candles were burned",
	Levels: lint.Levels{OwnUse: lint.Consider, Class: lint.Consider, Sale: lint.Must},
	Why: "A burn speaks for the candle that was burned. More oil, another dye, a wick one size up or a wider jar burns hotter, sootier or not at all, and that " +
		"only shows in the flame. So every burn is written down with the fingerprint of what was burned, and counts for that alone. The fingerprint covers the waxes, fragrances, " +
		"additives and dyes with their proportions (to 0.1 % of wax, dyes to 0.01 %), the toppings, the vessel with its size and fill, and the wick with its size and number; not names, " +
		"words, the size of the batch, times and temperatures, or a corrected density or flash point.",
	Remedy: "Burn three candles of the recipe as it is now, or put back what was changed.",
	Card: lint.Card{
		Question: "I changed the recipe a little. Do I have to test it again?",
		Answer:   "Yes, before it is sold: a little more oil, another dye, a wick one size up or a wider jar burns in a way of its own.",
		AllRight: "More of the same, in the same proportions, is the same candle. So is another name or another label.",
		Do:       "Burn three candles of the recipe as it is now, or go back to what was tested.",
	},
	Source: "common practice, after the ideas of ASTM F2417 (from memory: what is tested is what is sold)",
	Cautions: "Never write the new fingerprint into an old burn: it would say that a candle was burned which was not. Burn on something that cannot burn, well away " +
		"from anything that can, with a working smoke alarm, and stay with it; never put water on burning wax.",
	Bad: []lint.Example{
		{
			About:   "more scent than in the candles that were burned",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `load = "5 % of wax"`, To: `load = "5.5 % of wax"`}},
			Flags:   []string{`"4g0w0vn-3e195k"`},
		},
		{
			About:   "another dye, for the kitchen table",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `made_for = "sale"`, To: `made_for = "own use"`}, {From: `weight = "0.6 g"`, To: `weight = "0.9 g"`}},
			Flags:   []string{`"4g0w0vn-3e195k"`},
		},
	},
	Good: []lint.Example{
		{About: "the fingerprint is the one that was burned", Recipe: "tide-pillar"},
		{About: "twice the batch is the same candle", Recipe: "tide-pillar", Changes: []lint.Change{
			{From: `weight = "1.24 kg"`, To: `weight = "2.48 kg"`}, {From: `weight = "0.6 g"`, To: `weight = "1.2 g"`}, {From: "count = 2", To: "count = 4"},
		}},
	},
	Check: checkStale,
}

// staleSpeaks says whether this rule says what test-burn-missing then need not:
// not where the shop turned it down.
func staleSpeaks(p *lint.Pass) bool {
	return TestBurnStale.Levels.For(p.MadeFor) != lint.Silent && p.HasRule(TestBurnStale.Name) && !p.Tuned(TestBurnStale.Name)
}

// checkStale speaks where enough candles passed, and too few since the recipe
// is what it is.
func checkStale(p *lint.Pass) {
	if !p.Loud(lint.Levels{}) || len(p.TestBurns()) == 0 {
		return
	}
	for _, t := range kinds(p) {
		if t.Stale() {
			old := formula.Latest(t.Older)
			p.Missing(lint.Finding{At: lint.AtValue(old.Get("formula")), Message: changedSince(p, &t, old)})
		}
	}
}

func changedSince(p *lint.Pass, t *formula.Tested, old *schema.Block) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s of %s burned well, but %s", candles(t.Outdated()), t.Subject, formula.WhyNot(p.View, old, t.Vessel))
	passed, _ := t.Passed()
	if p.MadeFor == lint.OwnUse {
		b.WriteString("; burn it in sight as if for the first time")
		return b.String()
	}
	b.WriteString("; ")
	switch len(passed) {
	case 0:
		fmt.Fprintf(&b, "three candles as it is now are wanted before it is %s", before(p))
	default:
		fmt.Fprintf(&b, "of it as it is now %s passed, and three are wanted before it is %s", list(passed), before(p))
	}
	return b.String()
}

func candles(names []string) string {
	if len(names) == 1 {
		return "candle " + names[0]
	}
	return "candles " + list(names)
}
