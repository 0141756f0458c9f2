package heat

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// OpenHeat is wax over something that nothing keeps from overheating it.
var OpenHeat = &lint.Rule{
	Name:   "open-heat",
	Group:  group,
	Title:  "wax melted over direct heat or in a microwave",
	Levels: lint.Levels{OwnUse: lint.Should, Class: lint.Must, Sale: lint.Must},
	Why: "A water bath cannot make wax hotter than boiling water, and a melter with a thermostat stops where it is set. A flame, a plate without a thermostat " +
		"or a microwave stops nowhere: the wax at the bottom or in the middle passes its flash point while the top still looks calm, and a flame is there to light it.",
	Remedy: "Melt over a water bath or in a thermostatic melter, with a thermometer in the wax, and top the water up.",
	Cautions: "Burning wax is put out like burning oil: heat off, lid on, leave it. Never water, never carry the pot. " +
		"Check with the fire code and the insurer before you melt for others.",
	Card: lint.Card{
		Question: "Can I melt wax on the stove or in the microwave?",
		Answer:   "Not over direct heat, and not in a microwave: nothing stops there, and wax that gets too hot burns like frying oil.",
		AllRight: "On the stove in a water bath: the pot of wax stands in a pan of water. Or in a melter with a thermostat.",
		Do:       "Keep a thermometer in the wax, top the water up before it boils away, and stay with it.",
	},
	Source: "common practice",
	Bad: []lint.Example{
		{
			About:   "over a plate, in a class",
			Recipe:  "first-lesson",
			Changes: []lint.Change{{From: `over = "thermostatic melter"`, To: `over = "direct heat"`}},
			Flags:   []string{`"direct heat"`},
		},
		{
			About:   "a microwave, on one's own shelf",
			Recipe:  "kitchen-shelf",
			Changes: []lint.Change{{From: `over = "water bath"`, To: `over = "microwave"`}},
			Flags:   []string{`"microwave"`},
		},
		{
			About:   "a pot that stands on a plate, where the melt does not say",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `    over = "thermostatic melter"` + "\n", To: ""}, {From: `pot      = "melter-8"`, To: `pot      = "camp-pot"`}},
			Stock:   "pot \"camp-pot\" {\n  title = \"Pot on a hot plate\"\n  holds = \"8 qt\"\n  heat  = \"direct heat\"\n}\n",
			Flags:   []string{`"camp-pot"`},
		},
	},
	Good: []lint.Example{{
		About:   "the melt says what it stands over, and that counts",
		Recipe:  "fogbank-soy",
		Changes: []lint.Change{{From: `pot      = "melter-8"`, To: `pot      = "camp-pot"`}},
		Stock:   "pot \"camp-pot\" {\n  title = \"Pot on a hot plate\"\n  holds = \"8 qt\"\n  heat  = \"direct heat\"\n}\n",
	}},
	Check: checkOpenHeat,
}

func checkOpenHeat(p *lint.Pass) {
	var reported schema.Value
	for step := range p.Recipe.Each("step") {
		if step.Spec.Kind != "melt" {
			continue
		}
		s := sourceOf(p, step)
		if s.lacks != nil {
			p.CannotCheck(s.lacks, s.attr)
		}
		if s.source != directHeat && s.source != microwave {
			continue
		}
		if s.pot != nil {
			if reported.Known() {
				continue // several melts in one pot
			}
			reported = s.said
		}
		p.Report(lint.Finding{At: lint.AtValue(s.said), Message: s.danger(), Notes: batch.NoteAt("its heat is stated here", s.pot.Get("heat"))})
	}
}

func (s *heatSource) danger() string {
	where := "the wax is melted over direct heat"
	if s.source == microwave {
		where = "the wax is melted in a microwave"
	}
	if s.pot != nil {
		where += fmt.Sprintf(" (%s)", s.pot.Title())
	}
	if s.source == microwave {
		return where + ": it heats in spots, past the flash point in one place while another is still hard, and nothing stops it. Use a water bath or a thermostatic melter"
	}
	return where + ": nothing stops it short of the flash point, and a flame or a glowing plate is there to light it. Use a water bath or a thermostatic melter"
}
