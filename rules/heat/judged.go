// Package heat holds the rules about how hot the wax is made: its flash
// point, its ceiling, the ranges of its sheet, the scale a figure is in, and
// what heats it.
package heat

import (
	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// excess says by what kind of limit a temperature is out.
type excess uint8

const (
	within excess = iota
	usual         // of what is usual: a family's figure or common practice
	stated        // of a figure the stock states
)

// levels is how loud a rule speaks of the excess: its own levels for a stated
// limit, at most a should for what is usual.
func (e excess) levels() lint.Levels {
	if e == usual {
		return lint.Every(lint.Should)
	}
	return lint.Levels{}
}

// judged is one temperature of the wax and every limit it passes. The rules
// of this group read what they speak of from here, so that they agree on
// which of them speaks of a value.
//
// How they share a value, by the principle that one cause gets one finding,
// and that two limits of one value both speak unless a louder one of the same
// kind takes the place of a softer:
//
//   - A figure that makes sense only in the other scale is that and nothing
//     else: temperature-scale-doubtful takes the place of all the others. It
//     says itself what the figure breaks as it is written. Where a recipe
//     concedes the doubt or a shop tunes it, the figure is meant as written,
//     and the others speak.
//   - heat-near-flash (fire) and heat-above-ceiling (spoiled, smoking wax) are
//     two dangers: where both limits are stated, both speak.
//   - A stated limit of either takes the place of everything said of the same
//     value by a softer one: of the usual flash point or ceiling, and of
//     melt-too-hot, pour-too-hot and fragrance-added-too-hot.
//   - Of what is only usual the gravest speaks: flash point, then ceiling,
//     then the family's range. A range that the sheet states is not hidden by
//     what is only usual.
//   - pour-above-melt is silent where putting another finding right puts it
//     right too.
//   - A rule that the recipe concedes or the shop tunes takes no other's place.
type judged struct {
	step      *batch.Step
	value     schema.Value
	low, high quantity.Rat // °C
	limits    *limits
	own       *batch.Stated // the range of this kind of step; nil: it has none
	first     *judged       // of a second pour: the pour it fills up; nil: none that says how hot
	melt      *judged       // of a pour: the last melt before it; nil: none that says how hot

	doubt        excess // temperature-scale-doubtful
	flash        excess // heat-near-flash
	ceiling      excess // heat-above-ceiling
	over, under  excess // the own range
	noneInCommon bool   // a loose blend: over or under stand for a range that is empty

	flashOf, ceilingOf int // which wax of the limits decides
}

// heats is every temperature of the wax that the recipe says, in the order of
// its steps.
var heats = lint.NewFact("wax heats", judgeAll)

func judgeAll(view *lint.View) []judged {
	b := batch.Of.In(view)
	n := 0
	for i := range b.Steps {
		if b.Steps[i].Heat.IsAmount() {
			n++
		}
	}
	if n == 0 || len(b.Waxes) == 0 {
		return nil
	}
	list := make([]judged, 0, n)
	all := limitsOf(b, nil)
	p := pot{batch: b, all: all, now: all}
	for i := range b.Steps {
		s := &b.Steps[i]
		p.take(s)
		if !s.Heat.IsAmount() {
			continue
		}
		amount := s.Heat.Amount()
		list = append(list, judged{step: s, value: s.Heat, low: amount.Base(), high: amount.High().Base(), limits: p.now, own: p.now.own(s.Kind)})
		j := &list[len(list)-1]
		j.leansOn(b, list)
		j.judge(list)
	}
	return list
}

// leansOn finds the melt a pour comes after and the pour a second one fills up.
func (j *judged) leansOn(b *batch.Batch, before []judged) {
	for i := range b.Pours {
		pour := &b.Pours[i]
		if pour.Step != j.step {
			continue
		}
		for k := range before {
			switch before[k].step {
			case pour.First:
				j.first = &before[k]
			case pour.Melt:
				j.melt = &before[k]
			}
		}
	}
}

// judge holds the temperature against the limits. Before are the temperatures
// of the steps up to and with this one.
func (j *judged) judge(before []judged) {
	for i := range j.limits.waxes {
		w := &j.limits.waxes[i]
		if e := w.nearFlash(j.high); e > j.flash {
			j.flash, j.flashOf = e, i
		}
		if e := w.aboveCeiling(j.high); e > j.ceiling {
			j.ceiling, j.ceilingOf = e, i
		}
	}
	if j.own != nil && j.own.Known() {
		j.holdToRange(before)
	}
	j.doubt = j.doubtful()
}

// flashLimit is the temperature in °C that every step stays below: the flash
// point less the margin, and where the sheet states none not above the hard
// stop either.
func (w *waxLimits) flashLimit() quantity.Rat {
	switch {
	case !w.flash.Known():
		return hardStop
	case w.flash.Family != "":
		return quantity.Min(hardStop, w.flash.High().Sub(margin))
	}
	return w.flash.High().Sub(margin)
}

// nearFlash says whether a temperature is too near to where the wax's vapor
// can be lit. At the limit is too near.
func (w *waxLimits) nearFlash(t quantity.Rat) excess {
	switch {
	case w.flash.State == schema.Broken: // unreadable, or no such wax in stock: another rule says so
		return within
	case t.Less(w.flashLimit()):
		return within
	case w.flash.Known() && w.flash.Family == "":
		return stated
	}
	return usual
}

// aboveCeiling says whether a temperature is above what the wax bears. At the
// ceiling is all right. What is usual for the family gives way to a range that
// the sheet itself states.
func (w *waxLimits) aboveCeiling(t quantity.Rat) excess {
	c := &w.ceiling
	switch {
	case !c.Known() || !c.High().Less(t):
		return within
	case c.Family == "":
		return stated
	case w.top.Less(t):
		return usual
	}
	return within
}

// holdToRange holds the temperature against the range of its own step, end
// points included. A loose blend whose waxes have no range in common is said
// once, at the first step that needs one.
func (j *judged) holdToRange(before []judged) {
	low, high := j.own.Low(), j.own.High()
	if j.own.Empty {
		for i := range before[:len(before)-1] {
			if o := &before[i]; o.own == j.own && o.noneInCommon {
				return
			}
		}
		j.noneInCommon = true
		if high.Less(j.high) {
			j.over = excessOf(j.own.AtHigh())
		} else {
			j.under = excessOf(j.own.AtLow())
		}
		return
	}
	if high.Less(j.high) {
		j.over = excessOf(j.own.AtHigh())
	}
	if j.low.Less(low) && j.limits.allows(low) {
		j.under = excessOf(j.own.AtLow())
	}
}

// excessOf is by what kind of limit a figure of the stock is passed.
func excessOf(s batch.Stated) excess {
	if s.Family != "" {
		return usual
	}
	return stated
}

// allows says whether a temperature passes no limit, so that it may be spoken
// of as what a cooler one should have been.
func (l *limits) allows(t quantity.Rat) bool {
	for i := range l.waxes {
		if l.waxes[i].nearFlash(t) != within || l.waxes[i].aboveCeiling(t) != within {
			return false
		}
	}
	return true
}

// speaks says whether a rule's finding about a value is to be heard, so that
// it can take another's place: it is neither tuned by the shop nor conceded by
// the recipe.
func speaks(p *lint.Pass, rule string) bool {
	if p.Tuned(rule) {
		return false
	}
	for c := range p.Recipe.Each("concession") {
		if c.Label == rule {
			return false
		}
	}
	return true
}

const (
	scaleDoubtful = "temperature-scale-doubtful"
	nearFlash     = "heat-near-flash"
	aboveCeiling  = "heat-above-ceiling"
)

// doubted says whether the scale is in doubt, and that finding stands for all
// others.
func (j *judged) doubted(p *lint.Pass) bool { return j.doubt != within && speaks(p, scaleDoubtful) }

// overTaken says whether what is said of the flash point or the ceiling takes
// the place of what the own range would say of too much heat.
func (j *judged) overTaken(p *lint.Pass) bool {
	return j.flash.graver(j.over) && speaks(p, nearFlash) || j.ceiling.graver(j.over) && speaks(p, aboveCeiling)
}

// graver says whether passing a limit is graver than being over a range: a
// stated limit always is, and a usual one is graver than a usual range.
func (e excess) graver(over excess) bool { return e == stated || e == usual && over == usual }
