package lsp

import (
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// otherUnits offers to write the amount at the place on the other scale, or in
// the units of the other system.
func (a *actions) otherUnits() {
	v, ok := valueAt(a.block, a.at.Start)
	if !ok || !v.IsAmount() {
		return
	}
	a.rewrite(func(finer quantity.Rat) (string, []schema.Edit) {
		text := converted(v, finer)
		if text == "" {
			return "", nil
		}
		return "write " + quoteless(v) + " as " + text, []schema.Edit{schema.SetValue(v, schema.Quote(text))}
	})
}

// quoteless is an amount as it is written.
func quoteless(v schema.Value) string {
	text := v.Amount().Written()
	if v.BelowRim() {
		text += belowRim
	}
	return text
}

const belowRim = " below rim"

// converted is an amount in the units of the other system; "" where it has
// none. Rounding makes a range narrower, a heat lower and a limit stricter, and
// never the other way. Finer is how much less than usual it may change, as a
// ratio.
func converted(v schema.Value, finer quantity.Rat) string {
	q := v.Amount()
	up := isUp(v)
	low, high := inOther(q.Low(), finer, up || q.IsRange()), inOther(q.High(), finer, up)
	if low.number == "" {
		return ""
	}
	text := low.number + low.unit
	if q.IsRange() {
		if text = low.number + " to " + high.number + high.unit; low.unit != high.unit {
			text = low.number + low.unit + " to " + high.number + high.unit
		}
	}
	if v.BelowRim() {
		text += belowRim
	}
	return text
}

// written is a number and its unit with the space before it, apart so that a
// range can say the unit once.
type written struct{ number, unit string }

func inOther(q quantity.Quantity, finer quantity.Rat, up bool) written {
	slack := slackOf(q).Mul(finer)
	to := quantity.Metric
	if q.Unit().System == quantity.Metric {
		to = quantity.US
	}
	switch q.Dim() {
	case quantity.Temperature:
		return tenths(q, pick(to, quantity.Fahrenheit, quantity.Celsius), up)
	case quantity.Difference:
		return tenths(q, pick(to, quantity.FahrenheitDegrees, quantity.CelsiusDegrees), up)
	case quantity.Weight:
		return written{number: weightIn(q.Base(), slack, to, up)}
	case quantity.Volume:
		metric := quantity.Milliliter
		if !q.Base().Less(quantity.Int(1000)) {
			metric = quantity.Liter
		}
		return near(q, pick(to, quantity.FluidOunce, metric), slack, up)
	case quantity.Length: // inches come out even in mm; sizes decide what fits
		return near(q, pick(to, quantity.Inch, quantity.Millimeter), slack.Mul(quantity.NewRat(1, 100)), up)
	case quantity.Proportion:
		if u := q.Unit(); u == quantity.OuncesPerPound || u == quantity.GramsPerKilogram {
			return near(q, quantity.PercentOfWax, slack, false)
		}
	}
	return written{}
}

func pick(s quantity.System, us, metric *quantity.Unit) *quantity.Unit {
	if s == quantity.US {
		return us
	}
	return metric
}

// tenths is a temperature to a tenth of a degree, which is finer than a
// thermometer in wax reads.
func tenths(q quantity.Quantity, unit *quantity.Unit, up bool) written {
	n, tenth := q.In(unit).Number(), quantity.NewRat(1, 10)
	if up {
		return written{n.Ceil(tenth).Decimal(1), " " + unit.Symbol}
	}
	return written{n.Floor(tenth).Decimal(1), " " + unit.Symbol}
}

func near(q quantity.Quantity, unit *quantity.Unit, slack quantity.Rat, up bool) written {
	n := rounded(q.In(unit).Number(), slack, up)
	return written{n.Decimal(mostPlaces), " " + unit.Symbol}
}
