package setting

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/cooling"
)

// SecondPourTooSoon is a second pour into wax that has not begun to shrink
// away.
var SecondPourTooSoon = &lint.Rule{
	Name:   "second-pour-too-soon",
	Group:  group,
	Title:  "a second pour before there is a skin",
	Levels: lint.Every(lint.Should),
	Why: "A second pour fills what the first leaves empty as it sets. Poured into wax that is still liquid, it is only more of the first pour: " +
		"the well or the hollow forms after it, and nothing is left to fill it.",
	Remedy: "Wait until the skin bears and dents, about 3 mm (1/8 in) of set wax. In a wide mold open relief holes then, and pour once the hollow shows; " +
		"some wait until the candle is cold.",
	Card: lint.Card{
		Question: "When can the second pour be made?",
		Answer:   "Once a skin has formed that bears and dents, and the middle has begun to sink. In a wide pillar that takes an hour or two, in a votive less.",
		AllRight: "Waiting longer, until all is cold, is another way of doing it.",
		Do:       "Watch the top. Keep a part of the batch warm until it has sunk, and pour it a little hotter than the first.",
	},
	Source: "a cooling model of the vessel (enthalpy method, convection and radiation), good to ±40 %; that a skin is waited for: common practice",
	Bad: []lint.Example{
		{
			About:   "ten minutes after the first, with nothing opened",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: reliefHolesOfTidePillar, To: ""}, {From: `after = "1 h 15 min"`, To: `after = "10 min"`}},
			Flags:   []string{`"10 min"`},
		},
		{
			About:   "a jar topped up at once: worth knowing",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `after = "3 h"`, To: `after = "5 min"`}},
			Flags:   []string{`"5 min"`},
			Level:   lint.Consider,
		},
	},
	Also: []string{"relief-holes-missing"},
	Good: []lint.Example{
		{About: "1 h 15 min after the relief holes, 3 h 15 min after the pour", Recipe: "tide-pillar"},
		{About: "a votive after 1 h 30 min", Recipe: "lantern-votive"},
		{About: "a jar after 3 h", Recipe: "harbor-jar"},
	},
	Check: checkSecondPourTooSoon,
}

func checkSecondPourTooSoon(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Pours {
		if !b.Pours[i].Second {
			continue
		}
		second := b.Pours[i].Step
		for _, vessel := range second.Vessels {
			if sayTooSoon(p, b, second, vessel) {
				break
			}
		}
	}
}

// sayTooSoon says so of a second pour into one vessel, where it is. From the
// rule of thumb for relief holes on it is soon enough whatever the model says,
// which then is not asked; so it is where it follows relief holes without a
// wait that is written, since those are judged.
func sayTooSoon(p *lint.Pass, b *batch.Batch, second *batch.Step, vessel int) bool {
	first := fills(b, second, vessel)
	v := &b.Vessels[vessel]
	if first == nil || v.Stock == nil || doneBetween("second pour", b, first, second, vessel) || doubted(p, b, first) {
		return false
	}
	early, _ := since(second, first)
	if early.Known() && !early.Value.Less(thumbFrom) || waitOf(second).Absent() && doneBetween("relief holes", b, first, second, vessel) {
		return false
	}
	pour := cooling.Of.In(p.View).Into(vessel, first)
	if pour == nil || !pour.Ask(p) || !early.Ask(p) {
		return false
	}
	if from, _ := pour.SurelyOpen(); early.Value.Float64() >= cooling.Estimate(from).Low() {
		return false
	}
	skin := pour.Windows(p.View).ReliefHoles.From
	if early.Value.Float64() >= skin.Low() {
		return false
	}
	f := lint.Finding{At: atWait(second)}
	empty := "Nothing has shrunk yet that it could fill, and what is left empty later stays so"
	if v.Kind == "container" {
		f.Levels = lint.Every(lint.Consider)
		empty = "The top has not sunk yet that it is to level"
	}
	f.Message = reckoned(fmt.Sprintf("the second pour %s after the first comes at least %s before there is a skin on %s: by the cooling model 3 mm (1/8 in) are set after %s. %s",
		long(early.Value), cooling.Estimate(skin.Low()-early.Value.Float64()), v.Stock.Title(), spread(skin), empty), pour)
	p.Report(f)
	return true
}
