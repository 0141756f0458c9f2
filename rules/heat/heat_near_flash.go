package heat

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// NearFlash is wax made so hot that its vapor is near to being lit. Which
// rules speak beside it is written down at judged.
var NearFlash = &lint.Rule{
	Name:   nearFlash,
	Group:  group,
	Title:  "wax heated to within 30 °C (54 °F) of its flash point",
	Levels: lint.Every(lint.Must), Binding: true,
	Why: "At its flash point the vapor over hot wax can be lit by a flame or a spark, and a pot of burning wax cannot be put out with water. " +
		"Burners overshoot, thermometers read low, and wax at the bottom is hotter than at the top, so every step stays 30 °C (54 °F) below. " +
		"This is the flash point of the wax; that of a fragrance is another matter. Where the sheet states none, what is usual for the family counts, " +
		"and 121 °C (250 °F) is as far as anybody goes.",
	Remedy: "Lower the temperature to what the sheet says for this step, and look up the flash point in the safety data sheet if the stock does not state it.",
	Cautions: "If wax smokes, it is too hot already: turn off the heat, do not move the pot, put the lid on. Never water. " +
		"The supplier's safety data sheet and the fire code go before anything here.",
	Card: lint.Card{
		Question: "How hot may wax be made?",
		Answer: "Never within 30 °C (54 °F) of its flash point, and no hotter than its sheet says. Where nobody states one, nobody goes beyond 121 " +
			"°C (250 °F).",
		AllRight: "Within the range on the wax's sheet, with a thermometer in the pot and somebody beside it.",
		Do:       "Look up melting range and flash point before you start. If wax smokes it is too hot: heat off, lid on, do not move it.",
	},
	Source: "common practice; flash point as ISO 2719 and ASTM D93 measure it",
	Bad: []lint.Example{
		{
			About:   "at the limit: 450 °F less 54 °F",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `to   = "186 °F"`, To: `to   = "396 °F"`}},
			Flags:   []string{`"396 °F"`},
		},
		{
			About:   "a second pour",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `at    = "182 °F"`, To: `at    = "400 °F"`}},
			Flags:   []string{`"400 °F"`},
		},
		{
			About:   "no flash point stated: 121 °C is as hot as wax is made",
			Recipe:  "quayside-taper",
			Changes: []lint.Change{{From: `wax "ropewalk-dipping"`, To: `wax "capstan-dipping"`}, {From: `at = "164 °F"`, To: `at = "121 °C"`}},
			Stock: `wax "capstan-dipping" {
  title            = "Capstan paraffin, dipping grade"
  family           = "paraffin"
  suits            = ["taper"]
  melt_to          = "160 to 175 °F"
  pour_at          = "155 to 165 °F"
  add_fragrance_at = "158 to 165 °F"
  congeals_at      = "140 °F"
  never_above      = "260 °F"
  fragrance_limit  = "2 % of wax"
  density          = "0.91 g/mL"
  shrinkage        = "12 %"
  cure             = "1 to 3 days"
  conductivity     = "0.24 W/(m K)"
  heat_capacity    = "2.2 kJ/(kg K)"
  latent_heat      = "200 kJ/kg"
}
`,
			Flags: []string{`"121 °C"`},
			Level: lint.Should,
		},
	},
	Good: []lint.Example{{
		About:   "a degree below the limit (and over the ceiling, which is another rule)",
		Recipe:  "tide-pillar",
		Changes: []lint.Change{{From: `to   = "186 °F"`, To: `to   = "395 °F"`}},
	}},
	Also:  []string{aboveCeiling, "second-pour-out-of-step", "seal-too-weak", "test-burn-missing"},
	Check: checkNearFlash,
}

func checkNearFlash(p *lint.Pass) {
	list := heats.In(p.View)
	for i := range list {
		j := &list[i]
		if i == 0 || j.limits != list[i-1].limits {
			askForFlash(p, j.limits)
		}
		if j.flash == within || j.doubted(p) || j.flash == usual && j.ceiling == stated && speaks(p, aboveCeiling) {
			continue
		}
		p.Report(lint.Finding{
			At:      lint.AtValue(j.value),
			Levels:  j.flash.levels(),
			Message: j.flashMessage(p.View),
			Notes:   batch.NoteAt("flash point stated here", j.limits.waxes[j.flashOf].flash.Value),
			Fixes:   j.lowered,
		})
	}
}

func (j *judged) flashMessage(view *lint.View) string {
	whole := j.value.Amount()
	w := &j.limits.waxes[j.flashOf]
	said := reached(view, whole.High(), whole)
	f := &w.flash
	if f.Known() && (f.Family == "" || !j.high.Less(f.High().Sub(margin))) {
		where := fmt.Sprintf("%s below", batch.ApartLike(f.High().Sub(j.high), whole.High()))
		switch over := j.high.Sub(f.High()); over.Sign() {
		case 0:
			where = "just"
		case 1:
			where = fmt.Sprintf("%s above", batch.ApartLike(over, whole.High()))
		}
		message := fmt.Sprintf("%s is %s the flash point of %s, %s, where its vapor can be lit: stay more than %s below it",
			said, where, whose(*f), batch.Both(view, f.Amount), batch.ApartLike(margin, whole.High()))
		if f.Family != "" {
			message += ". " + silent(*f)
		}
		return message
	}
	return fmt.Sprintf("%s is too hot for a wax whose flash point is not known: stay below %s (common practice), and look up the flash point of %s in its safety data sheet",
		said, batch.DegreesLike(hardStop, whole.High()), f.Wax.Title())
}

// askForFlash has the pass say which sheets state none: what is usual for the
// family is no more than a guess at it.
func askForFlash(p *lint.Pass, l *limits) {
	for i := range l.waxes {
		if s := &l.waxes[i].flash; s.Family != "" || s.State == schema.Absent {
			p.CannotCheck(s.Lacks, s.Attr)
		}
	}
}
