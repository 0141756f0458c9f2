package heat

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// AboveCeiling is wax made hotter than its supplier ever allows. It takes the
// place of melt-too-hot, pour-too-hot and fragrance-added-too-hot; how the
// rules share a value is written down at judged.
var AboveCeiling = &lint.Rule{
	Name:   aboveCeiling,
	Group:  group,
	Title:  "wax heated above its ceiling",
	Levels: lint.Every(lint.Must), Binding: true,
	Why: "The ceiling is the supplier's word for how hot this wax is ever made. Above it wax begins to smoke and break down: it yellows, smells, burns badly, " +
		"and the smoke over the pot is fuel. Every step counts, the second pour too.",
	Remedy:   "Lower the temperature to what the sheet says for this step.",
	Cautions: "If wax smokes, turn off the heat and put the lid on. Never water.",
	Card: lint.Card{
		Question: "The wax smokes a little. Is it ready now?",
		Answer:   "It is too hot. Above the ceiling on its sheet wax breaks down: it yellows, smells and burns badly, and the smoke is fuel.",
		AllRight: "Anything below the ceiling; clear, still, liquid wax is ready.",
		Do:       "Turn off the heat, put the lid on, and let it cool to what the sheet says.",
	},
	Source: "the supplier's data sheet; where it is silent, common practice for the family",
	Bad: []lint.Example{
		{
			About:   "a melt",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `to   = "178 °F"`, To: `to   = "190 °F"`}},
			Flags:   []string{`"190 °F"`},
		},
		{
			About:   "a second pour",
			Recipe:  "skep-beeswax",
			Changes: []lint.Change{{From: `at    = "166 °F"`, To: `at    = "186 °F"`}},
			Flags:   []string{`"186 °F"`},
		},
		{
			About:   "no ceiling stated: what is usual for dipping paraffin",
			Recipe:  "quayside-taper",
			Changes: []lint.Change{{From: `wax "ropewalk-dipping"`, To: `wax "capstan-dipping"`}, {From: `at = "164 °F"`, To: `at = "204 °F"`}},
			Stock: `wax "capstan-dipping" {
  title            = "Capstan paraffin, dipping grade"
  family           = "paraffin"
  suits            = ["taper"]
  melt_to          = "160 to 175 °F"
  pour_at          = "155 to 165 °F"
  add_fragrance_at = "158 to 165 °F"
  congeals_at      = "140 °F"
  flash_point      = "420 °F"
  fragrance_limit  = "2 % of wax"
  density          = "0.91 g/mL"
  shrinkage        = "12 %"
  cure             = "1 to 3 days"
  conductivity     = "0.24 W/(m K)"
  heat_capacity    = "2.2 kJ/(kg K)"
  latent_heat      = "200 kJ/kg"
}
`,
			Flags: []string{`"204 °F"`},
			Level: lint.Should,
		},
	},
	Good: []lint.Example{{
		About:   "just the ceiling",
		Recipe:  "skep-beeswax",
		Changes: []lint.Change{{From: `at    = "166 °F"`, To: `at    = "85 °C"`}},
	}},
	Also:  []string{"second-pour-out-of-step", "test-burn-missing"},
	Check: checkAboveCeiling,
}

func checkAboveCeiling(p *lint.Pass) {
	list := heats.In(p.View)
	for i := range list {
		j := &list[i]
		if i == 0 || j.limits != list[i-1].limits {
			askForCeiling(p, j.limits)
		}
		if j.ceiling == within || j.doubted(p) || j.ceiling == usual && j.flash != within && speaks(p, nearFlash) {
			continue
		}
		c := &j.limits.waxes[j.ceilingOf].ceiling
		whole := j.value.Amount()
		message := fmt.Sprintf("%s is %s over the ceiling of %s, %s", reached(p.View, whole.High(), whole), batch.ApartLike(j.high.Sub(c.High()), whole.High()),
			whose(*c), batch.Both(p.View, c.Amount))
		if c.Family != "" {
			message += ". " + silent(*c)
		}
		p.Report(lint.Finding{
			At:      lint.AtValue(j.value),
			Levels:  j.ceiling.levels(),
			Message: message,
			Notes:   batch.NoteAt(limitHere, c.Value),
			Fixes:   j.lowered,
		})
	}
}

// askForCeiling has the pass say which sheets state none: what is usual for the
// family is no more than a guess at it.
func askForCeiling(p *lint.Pass, l *limits) {
	for i := range l.waxes {
		if s := &l.waxes[i].ceiling; s.Family != "" || s.State == schema.Absent {
			p.CannotCheck(s.Lacks, s.Attr)
		}
	}
}
