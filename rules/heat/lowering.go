package heat

import (
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// overFirst is how far a lowered second pour stays above the first: the upper
// end of what is usual, 10 °F. Common practice.
var overFirst = quantity.NewRat(50, 9)

// lowered are the fixes of too much heat: one edit that brings the temperature
// down to the top of what the step should be, and never one that raises it.
func (j *judged) lowered() []schema.Fix {
	written := j.value.Amount()
	to, ok := j.writeDown(j.target(), written.High().Unit())
	if !ok {
		return nil
	}
	text := to.String()
	if low := written.Low(); written.IsRange() && low.Base().Less(to.Base()) && !j.belowOwn(low.Base()) {
		text = startOf(low, to) + " to " + text
	}
	title := "lower it to " + text
	switch j.step.Kind {
	case "melt":
		title = "melt to " + text
	case "pour":
		title = "pour at " + text
	case "second pour":
		title = "make the second pour at " + text
	case "add fragrance":
		title = "add the fragrance at " + text
	}
	return []schema.Fix{repair.Rewrite(title, j.value, schema.Quote(text))}
}

// startOf is the low end of a range, its unit left out where the high end has
// the same.
func startOf(low, high quantity.Quantity) string {
	if low.Unit() == high.Unit() {
		return low.Number().Decimal(6)
	}
	return low.String()
}

func (j *judged) belowOwn(t quantity.Rat) bool {
	return j.own != nil && j.own.Known() && !j.own.Empty && t.Less(j.own.Low())
}

// target is the temperature to come down to, in °C: the top of the step's own
// range; of a second pour a little above the first; of a dip or a primed wick
// the top of what the wax is poured at, and of stirring in dye or an additive
// the top of what it is melted to. It passes no ceiling of the wax.
func (j *judged) target() quantity.Rat {
	use := j.own
	switch j.step.Kind {
	case "second pour", "dip", "overdip", "prime wick":
		use = &j.limits.pour
	case "add dye", "add additive":
		use = &j.limits.melt
	}
	top := j.high
	switch {
	case j.first != nil:
		top = j.first.high.Add(overFirst)
	case use != nil && use.Known():
		top = use.High()
	}
	for i := range j.limits.waxes {
		w := &j.limits.waxes[i]
		if w.ceiling.Known() {
			top = quantity.Min(top, w.ceiling.High())
		}
		top = quantity.Min(top, w.flashLimit())
	}
	return top
}

// writeDown is the temperature in a unit, rounded down to whole degrees; to
// tenths where a whole degree would fall out of the step's own range; one
// degree lower where it would be just the limit to the flash point. False: the
// figures of the stock leave no room.
func (j *judged) writeDown(top quantity.Rat, unit *quantity.Unit) (quantity.Quantity, bool) {
	one := quantity.Int(1)
	exact := quantity.FromBase(top, unit).Number()
	to := quantity.Of(exact.Floor(one), unit)
	if j.belowOwn(to.Base()) {
		to = quantity.Of(exact.Floor(quantity.NewRat(1, 10)), unit)
	}
	for i := range j.limits.waxes {
		if !to.Base().Less(j.limits.waxes[i].flashLimit()) {
			to = quantity.Of(to.Number().Sub(one), unit)
			break
		}
	}
	return to, to.Base().Less(j.high) && !j.belowOwn(to.Base())
}
