package heat

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// TemperatureNeverSaid is a melt or a pour without a figure.
var TemperatureNeverSaid = &lint.Rule{
	Name:   "temperature-never-said",
	Group:  group,
	Title:  "a melt or a pour that does not say how hot",
	Levels: lint.Every(lint.Should),
	Why: "\"Until melted\" is a different heat for everybody at the pot, and wax shows no sign before it smokes. Without a figure nothing about heat can be checked: " +
		"not the flash point, not the ceiling, not what the seal and the mold bear.",
	Remedy: "Write the temperature down, from the wax's sheet, and keep a thermometer in the pot.",
	Source: "common practice",
	Bad: []lint.Example{
		{
			About:   "a melt",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `    to   = "178 °F"` + "\n", To: ""}},
			Flags:   []string{`step "melt"`},
		},
		{
			About:   "a pour",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `    at = "138 °F"` + "\n", To: ""}},
			Flags:   []string{`step "pour"`},
		},
		{
			About:   "a second pour",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `    at    = "182 °F"` + "\n", To: ""}},
			Flags:   []string{`step "second pour"`},
		},
	},
	Good: []lint.Example{{
		About:   "a range is a figure too",
		Recipe:  "fogbank-soy",
		Changes: []lint.Change{{From: `at = "138 °F"`, To: `at = "135 to 140 °F"`}},
	}},
	Check: checkTemperatureNeverSaid,
}

func checkTemperatureNeverSaid(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Steps {
		s := &b.Steps[i]
		switch s.Kind {
		case "melt", "pour", "second pour":
			if s.Heat.Absent() {
				p.Missing(lint.Finding{At: lint.AtHeader(s.Block), Message: neverSaid(p, b, s)})
			}
		}
	}
}

// neverSaid names the sheet's figure where it is stated, as text: to write it
// down is for a person who knows what is really done.
func neverSaid(p *lint.Pass, b *batch.Batch, s *batch.Step) string {
	message := fmt.Sprintf("this %s does not say how hot", s.Kind)
	if s.Kind == "second pour" {
		return message + ": 5 to 10 °F (3 to 6 °C) above the first pour is common practice, and never above the wax's ceiling"
	}
	at, done := b.PourAt(), "poured"
	if s.Kind == "melt" {
		at, done = b.MeltTo(), "melted"
	}
	at = sound(at)
	if !at.Known() || at.Empty || at.Family != "" || at.Blend {
		return message
	}
	return message + fmt.Sprintf(": %s is %s at %s", at.Whose(), done, at.Range(p.View))
}
