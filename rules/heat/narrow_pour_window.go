package heat

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/cooling"
	"wickrule/schema/quantity"
)

// NarrowPourWindow is wax that has cooled to its pour before anything can be
// stirred into it. It is silent where a figure is found wrong, and putting that
// right opens the window.
var NarrowPourWindow = &lint.Rule{
	Name:   "narrow-pour-window",
	Group:  group,
	Title:  "so small a drop from the melt to the pour that the pot is through it in under two minutes",
	Levels: lint.Every(lint.Consider),
	Why: "Off the heat the pot begins to cool at once. Where the pour is only a degree or two below the melt, it is past before the fragrance is stirred in and the pot carried over, " +
		"and a cooled pot tempts one to turn the heat up by guess.",
	Remedy: "Keep the pot on its thermostat while fragrance is stirred in, or pour cooler within the wax's range. Never make the melt hotter than the wax's sheet allows for the sake of time.",
	Source: "Newton's law of cooling, with the heat a pot gives off from memory; two minutes of stirring: common practice",
	Bad: []lint.Example{{
		About:   "one degree",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `to   = "186 °F"`, To: `to   = "181 °F"`}, {From: `at    = "176 °F"`, To: `at    = "180 °F"`}},
		Flags:   []string{`"180 °F"`},
	}},
	Good: []lint.Example{
		{About: "five degrees: some five minutes", Recipe: "tide-pillar", Changes: []lint.Change{{From: `to   = "186 °F"`, To: `to   = "181 °F"`}}},
		{About: "a range that reaches lower", Recipe: "tide-pillar", Changes: []lint.Change{{From: `to   = "186 °F"`, To: `to   = "181 °F"`}, {From: `at    = "176 °F"`, To: `at    = "175 to 180 °F"`}}},
	},
	Check: checkNarrowPourWindow,
}

// leastWindow is how long it takes at least to stir fragrance in, in s: common
// practice. No pot in which a candle is melted is through a drop of wideDrop, in
// K, as soon.
const leastWindow = 120

var wideDrop = quantity.Int(8)

func checkNarrowPourWindow(p *lint.Pass) {
	list := heats.In(p.View)
	for i := range list {
		j := &list[i]
		melt := j.melt
		if j.step.Kind != "pour" || melt == nil || melt.high.Less(j.low) || wideDrop.Less(melt.high.Sub(j.low)) {
			continue
		}
		if j.flash != within || j.ceiling != within || j.over != within || melt.under != within || j.doubted(p) || melt.doubted(p) {
			continue
		}
		if !batch.Of.In(p.View).Molten().Ask(p) {
			return
		}
		pot, ok := cooling.PotOf(p.View)
		if !ok {
			return
		}
		seconds := pot.Until(melt.high.Float64(), j.low.Float64())
		if seconds >= leastWindow {
			continue
		}
		pour, melted := j.value.Amount(), melt.value.Amount()
		p.Report(lint.Finding{
			At: lint.AtValue(j.value),
			Message: fmt.Sprintf("from the melt at %s to the pour at %s the pot cools by %s, in %s (±40 %%, %s): under the 2 min that stirring takes",
				batch.Both(p.View, melted.High()), batch.Both(p.View, pour.Low()), batch.ApartLike(melt.high.Sub(j.low), pour.Low()), cooling.Estimate(seconds).Brief(), cooling.Because),
			Notes: batch.NoteAt("melted here", melt.value),
		})
	}
}
