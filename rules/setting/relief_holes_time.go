package setting

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/cooling"
	"wickrule/schema/quantity"
)

// ReliefHolesTooEarly is relief holes poked before there is a skin.
var ReliefHolesTooEarly = &lint.Rule{
	Name:   "relief-holes-too-early",
	Group:  group,
	Title:  "relief holes before there is a skin to open",
	Levels: lint.Every(lint.Should),
	Why:    "Holes poked into wax that is still liquid close behind the stick. The skin forms after it, the hollow grows under that, and whoever reads that the holes are done leaves it shut.",
	Remedy: "Wait until the skin bears and dents, about 3 mm (1/8 in) of set wax, and open the holes again until the second pour.",
	Source: "a cooling model of the vessel (enthalpy method, convection and radiation), good to ±40 %; 2 to 3 h: common practice",
	Bad: []lint.Example{
		{
			About:   "20 min after the pour, and not opened again",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `after = "2 h"`, To: `after = "20 min"`}, {From: "    again = \"40 min\"\n", To: ""}},
			Flags:   []string{`"20 min"`},
		},
		{
			About:   "opened again all along: worth knowing",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `after = "2 h"`, To: `after = "20 min"`}},
			Flags:   []string{`"20 min"`},
			Level:   lint.Consider,
		},
	},
	Good: []lint.Example{
		{About: "2 h after the pour", Recipe: "tide-pillar"},
		{About: "1 h 15 min: sooner than the rule of thumb, and by the model there is a skin", Recipe: "tide-pillar", Changes: []lint.Change{{From: `after = "2 h"`, To: `after = "1 h 15 min"`}}},
		{About: "a votive after 1 h", Recipe: "lantern-votive"},
	},
	Check: checkReliefHolesTooEarly,
}

// ReliefHolesTooLate is relief holes poked when most of the wax is set.
var ReliefHolesTooLate = &lint.Rule{
	Name:   "relief-holes-too-late",
	Group:  group,
	Title:  "relief holes when more than half is set",
	Levels: lint.Every(lint.Should),
	Why: "By then the hollow has formed and pulled at the sides and at the wick. A stick goes through firm wax only by force, and cracks it; " +
		"what was to be let out is shut in for good.",
	Remedy: "Poke them once the skin is 3 mm (1/8 in) thick, and open them again until the second pour.",
	Source: "a cooling model of the vessel (enthalpy method, convection and radiation), good to ±40 %; 2 to 3 h: common practice",
	Bad: []lint.Example{
		{
			About:   "9 h after the pour",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `after = "2 h"`, To: `after = "9 h"`}},
			Flags:   []string{`"9 h"`},
		},
		{
			About:   "a votive after 4 h",
			Recipe:  "lantern-votive",
			Changes: []lint.Change{{From: `after = "1 h"`, To: `after = "4 h"`}},
			Flags:   []string{`"4 h"`},
		},
	},
	Good: []lint.Example{
		{About: "2 h after the pour", Recipe: "tide-pillar"},
		{About: "4 h: later than the rule of thumb, and by the model not half is set", Recipe: "tide-pillar", Changes: []lint.Change{{From: `after = "2 h"`, To: `after = "4 h"`}}},
	},
	Check: checkReliefHolesTooLate,
}

// The rule of thumb: relief holes are opened 2 to 3 h after the pour. Common
// practice.
var (
	thumbFrom = quantity.Int(2 * 3600)
	thumbTo   = quantity.Int(3 * 3600)
)

const thumb = "the rule of thumb is 2 to 3 h (common practice)"

// opening is the first relief holes after a pour into a vessel.
type opening struct {
	step        *batch.Step
	pour        *cooling.Pour
	early, late quantity.Rat // s after the pour
	holes       cooling.Window
}

func checkReliefHolesTooEarly(p *lint.Pass) {
	var said *batch.Step
	eachOpening(p, func(o opening) {
		skin := o.holes.From
		if o.step == said || !o.early.Less(thumbFrom) && !thumbTo.Less(o.late) || o.early.Float64() >= skin.Low() {
			return
		}
		said = o.step
		f := lint.Finding{At: atWait(o.step)}
		if !o.early.Less(thumbFrom) || !o.step.Block.Get("again").Absent() {
			f.Levels = lint.Every(lint.Consider)
		}
		f.Message = reckoned(fmt.Sprintf("relief holes %s after the pour come at least %s before there is a skin to open: by the cooling model 3 mm (1/8 in) are set after %s; %s%s",
			long(o.early), cooling.Estimate(skin.Low()-o.early.Float64()), spread(skin), thumb, o.disagrees(p)), o.pour)
		p.Report(f)
	})
}

func checkReliefHolesTooLate(p *lint.Pass) {
	var said *batch.Step
	eachOpening(p, func(o opening) {
		half := o.holes.To
		if o.step == said || !thumbTo.Less(o.late) && !o.early.Less(thumbFrom) || o.late.Float64() <= half.High() {
			return
		}
		said = o.step
		f := lint.Finding{At: atWait(o.step)}
		if !thumbTo.Less(o.late) {
			f.Levels = lint.Every(lint.Consider)
		}
		f.Message = reckoned(fmt.Sprintf("relief holes %s after the pour come at least %s after it has set half way in: by the cooling model that takes %s; %s%s",
			long(o.late), cooling.Estimate(o.late.Float64()-half.High()), spread(half), thumb, o.disagrees(p)), o.pour)
		p.Report(f)
	})
}

// disagrees says so where the model and the rule of thumb have no time in
// common.
func (o opening) disagrees(p *lint.Pass) string {
	if o.holes.From.Low() > thumbTo.Float64() || o.holes.To.High() < thumbFrom.Float64() {
		v := &batch.Of.In(p.View).Vessels[o.pour.Vessel]
		return ". The two disagree: the model goes by the size of " + v.Stock.Title() + ", the rule of thumb by a wide pillar"
	}
	return ""
}

// eachOpening gives the first relief holes after each pour. Within the rule of
// thumb they are sound whatever the model says, which then is not asked.
func eachOpening(p *lint.Pass, judge func(opening)) {
	b := batch.Of.In(p.View)
	for i := range b.Steps {
		s := &b.Steps[i]
		if s.Kind != "relief holes" {
			continue
		}
		for _, vessel := range s.Vessels {
			first := fills(b, s, vessel)
			if first == nil || doneBetween("relief holes", b, first, s, vessel) || b.Vessels[vessel].Stock == nil || doubted(p, b, first) {
				continue
			}
			early, late := since(s, first)
			if early.Known() && late.Known() && !early.Value.Less(thumbFrom) && !thumbTo.Less(late.Value) {
				continue
			}
			pour := cooling.Of.In(p.View).Into(vessel, first)
			if pour == nil || !pour.Ask(p) || !early.Ask(p) || !late.Ask(p) {
				continue
			}
			if from, to := pour.SurelyOpen(); early.Value.Float64() >= cooling.Estimate(from).Low() && late.Value.Float64() <= cooling.Estimate(to).High() {
				continue
			}
			judge(opening{s, pour, early.Value, late.Value, pour.Windows(p.View).ReliefHoles})
		}
	}
}
