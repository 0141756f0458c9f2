package heat

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// PourAboveMelt is a first pour hotter than the wax was made. Of ranges the
// upper ends are held together: a sheet's melt of 180 to 190 °F and pour of
// 168 to 182 °F copied out in full are sound.
//
// It is silent where the pour is found too hot, or the melt too cool, and
// putting that right puts this right: one cause, one finding.
var PourAboveMelt = &lint.Rule{
	Name:   "pour-above-melt",
	Group:  group,
	Title:  "a pour hotter than the melt before it",
	Levels: lint.Every(lint.Should),
	Why: "Wax only cools between the melt and the pour, so the recipe asks for what cannot happen: one of the two figures is wrong. " +
		"Whoever follows it puts the pot back on the heat, and nobody has said how far.",
	Remedy: "Look both figures up in the wax's sheet and put the wrong one right.",
	Source: "common practice",
	Bad: []lint.Example{{
		About:   "both within the wax's ranges, and not in order",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `to   = "186 °F"`, To: `to   = "180 °F"`}, {From: `at    = "176 °F"`, To: `at    = "181 °F"`}},
		Flags:   []string{`"181 °F"`},
	}},
	Good: []lint.Example{{
		About:   "poured as hot as it was melted",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `to   = "186 °F"`, To: `to   = "181 °F"`}, {From: `at    = "176 °F"`, To: `at    = "181 °F"`}},
	}},
	Check: checkPourAboveMelt,
}

func checkPourAboveMelt(p *lint.Pass) {
	list := heats.In(p.View)
	for i := range list {
		j := &list[i]
		melt := j.melt
		if j.step.Kind != "pour" || melt == nil || !melt.high.Less(j.high) || j.doubted(p) || melt.doubted(p) {
			continue
		}
		if j.flash != within || j.ceiling != within || j.over != within && !melt.high.Less(j.own.High()) {
			continue
		}
		if melt.under != within && !melt.own.Low().Less(j.high) {
			continue
		}
		pour, melted := j.value.Amount(), melt.value.Amount()
		p.Report(lint.Finding{
			At: lint.AtValue(j.value),
			Message: fmt.Sprintf("%s is %s hotter than the melt before it, %s: one of the two is wrong",
				reached(p.View, pour.High(), pour), batch.ApartLike(j.high.Sub(melt.high), pour.High()), batch.Both(p.View, melted.High())),
			Notes: batch.NoteAt("melted here", melt.value),
		})
	}
}
