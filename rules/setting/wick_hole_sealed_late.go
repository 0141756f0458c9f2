package setting

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// WickHoleSealedLate is a mold that is poured into before its wick hole is
// sealed. A mold that is never sealed is wick-hole-unsealed.
var WickHoleSealedLate = &lint.Rule{
	Name:   "wick-hole-sealed-late",
	Group:  group,
	Title:  "a wick hole sealed only after wax has been poured over it",
	Levels: lint.Every(lint.Must), Binding: true,
	Why: "The hole is at the bottom of the mold while you pour. A seal put on afterwards comes when the wax is on the bench already, " +
		"and whoever follows the sheet reaches under a full mold of hot wax to put it there. Nothing sticks to wet, waxy metal either.",
	Remedy:   "Move the sealing in front of the first pour into that mold.",
	Cautions: "Never reach under a mold that holds hot wax.",
	Source:   "common practice",
	Bad: []lint.Example{
		{
			About:  "sealed after the pour",
			Recipe: "tide-pillar",
			Changes: []lint.Change{
				{From: "  step \"seal wick hole\" {\n    with = \"rubber-plug\"\n  }\n", To: ""},
				{From: "  step \"relief holes\" {\n", To: "  step \"seal wick hole\" {\n    with = \"rubber-plug\"\n  }\n  step \"relief holes\" {\n"},
			},
			Flags: []string{`step "seal wick hole"`},
		},
		{
			About:  "sealed between two layers",
			Recipe: "tideline-layers",
			Changes: []lint.Change{
				{From: "  step \"seal wick hole\" {\n    with = \"wick-putty\"\n  }\n", To: ""},
				{From: "  step \"add dye\" {\n", To: "  step \"seal wick hole\" {\n    with = \"wick-putty\"\n  }\n  step \"add dye\" {\n"},
			},
			Flags: []string{`step "seal wick hole"`},
		},
	},
	Good: []lint.Example{
		{About: "sealed just before the pour", Recipe: "tide-pillar", Changes: []lint.Change{
			{From: "  step \"seal wick hole\" {\n    with = \"rubber-plug\"\n  }\n", To: ""},
			{From: "  step \"pour\" {\n", To: "  step \"seal wick hole\" {\n    with = \"rubber-plug\"\n  }\n  step \"pour\" {\n"},
		}},
		{About: "sealed in time, and pressed on again before the second pour", Recipe: "tide-pillar", Changes: []lint.Change{
			{From: "  step \"second pour\" {\n", To: "  step \"seal wick hole\" {\n    with = \"rubber-plug\"\n  }\n  step \"second pour\" {\n"},
		}},
	},
	Check: checkWickHoleSealedLate,
}

func checkWickHoleSealedLate(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Steps {
		if b.Steps[i].Kind == sealStep {
			checkSealedLate(p, b, &b.Steps[i])
		}
	}
}

// checkSealedLate looks at one sealing step. That it is written is reason
// enough to take the mold for one with a hole, unless its stock denies it.
func checkSealedLate(p *lint.Pass, b *batch.Batch, step *batch.Step) {
	var pour *batch.Step
	var mold *batch.Vessel
	for _, i := range step.Vessels {
		v := &b.Vessels[i]
		if yes, known, absent := hasHole(v); !yes && (known || !absent) {
			continue
		}
		s := sealingOf(p, b, i)
		if s.late != step || s.early != nil || s.loose != nil {
			continue
		}
		if pour == nil || s.pour.Index < pour.Index {
			pour, mold = s.pour, v
		}
	}
	if pour == nil {
		return
	}
	p.Report(lint.Finding{
		At: lint.AtHeader(step.Block),
		Message: fmt.Sprintf("the wick hole of %s is sealed in %s, after the pour in %s: by then the wax has run out over the bench",
			mold.Stock.Title(), place(step), place(pour)),
		Notes: []lint.Note{{Place: lint.AtHeader(pour.Block), Message: "poured here"}},
		Fixes: func() []schema.Fix { return move("seal the wick hole before the pour", step, pour) },
	})
}
