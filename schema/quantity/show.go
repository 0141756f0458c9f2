package quantity

import "strings"

// figure is a number and its unit in print, apart so that a range can say the unit once. Where unit is empty the
// number has it inside, as "2 lb 8 oz" does.
type figure struct{ number, unit string }

func (f figure) String() string {
	if f.unit == "" {
		return f.number
	}
	return f.number + " " + f.unit
}

// String is the text as written, or where computed the number in its own unit: exact where six decimal places hold
// it, as a common fraction for lengths and counts, and else rounded to four figures. Rounding may go up: a limit that
// is written back into a recipe goes through Rat.Floor first.
func (q Quantity) String() string {
	if written := q.Written(); written != "" {
		return written
	}
	return q.print(func(base Rat, u *Unit) figure { return inUnit(base, u) })
}

// Show is q in the units of a system, rounded to what a workbench can use: at least three figures of a weight or
// volume, tenths of a degree, sixteenths of an inch. It is for reading; never judge or write back what it says.
func (q Quantity) Show(s System) string {
	return q.print(func(base Rat, u *Unit) figure { return inSystem(base, u, s) })
}

// Both is q as written with the other system in brackets, "186 °F (85.6 °C)"; a computed q comes in s first. What
// reads the same in both systems is said once.
func (q Quantity) Both(s System) string {
	first, other := q.Written(), q.Other()
	if first == "" {
		first, other = q.Show(s), q.Show(s.other())
	}
	if other == "" || other == first {
		return first
	}
	return first + " (" + other + ")"
}

// Other is q in the system it is not written in; "" for what has only one way of writing: times, counts, shares and
// per cents. Ounces per pound and grams per kilogram have per cent of wax.
func (q Quantity) Other() string {
	switch u := q.Unit(); u.Dim {
	case None, Time, Share, Count:
		return ""
	case Proportion:
		if u == PercentOfWax || u == PercentOfTotal {
			return ""
		}
	}
	return q.Show(q.Unit().System.other())
}

// print puts the ends of q together, the unit once where both have it.
func (q Quantity) print(one func(Rat, *Unit) figure) string {
	low := one(q.low, q.Unit())
	if q.high == nil {
		return low.String()
	}
	high := one(*q.high, &table[q.highUnit])
	if low.unit == high.unit && low.unit != "" {
		return low.number + " to " + high.String()
	}
	return low.String() + " to " + high.String()
}

// inUnit is a figure in its own unit.
func inUnit(base Rat, u *Unit) figure {
	n := u.number(base)
	if u.Dim == Count {
		return counted(n, u)
	}
	if millionths := n.Mul(powerOfTen(6)); millionths.isInt() {
		return figure{n.Decimal(6), u.Symbol}
	}
	if u.Dim == Length {
		if f := commonFraction(n, 64); f != "" {
			return figure{f, u.Symbol}
		}
	}
	return figure{figures(n, 4, 6), u.Symbol}
}

// inSystem is a figure in the units a system has for it.
func inSystem(base Rat, u *Unit, s System) figure {
	if base.Sign() < 0 && u.Dim != Temperature {
		f := inSystem(base.Neg(), u, s)
		f.number = "-" + f.number
		return f
	}
	switch u.Dim {
	case Weight:
		if s == Metric {
			return metricWeight(base)
		}
		return usWeight(base)
	case Volume:
		if s == US {
			return figure{figures(FluidOunce.number(base), 3, 2), FluidOunce.Symbol}
		}
		if base.Less(NewRat(9995, 10)) {
			return figure{figures(base, 3, 1), Milliliter.Symbol}
		}
		return figure{figures(Liter.number(base), 3, 2), Liter.Symbol}
	case Length:
		if s == Metric {
			return figure{figures(base, 3, 1), Millimeter.Symbol}
		}
		return inches(Inch.number(base))
	case Temperature:
		if s == US {
			return figure{Fahrenheit.number(base).Decimal(1), Fahrenheit.Symbol}
		}
		return figure{base.Decimal(1), Celsius.Symbol}
	case Difference:
		if s == US {
			return figure{figures(FahrenheitDegrees.number(base), all, 1), FahrenheitDegrees.Symbol}
		}
		return figure{figures(base, all, 1), CelsiusDegrees.Symbol}
	case Time:
		return duration(base)
	case Proportion, Share:
		return perCent(base, u)
	case Density:
		if s == US {
			return figure{figures(OuncePerCubicInch.number(base), 3, 3), OuncePerCubicInch.Symbol}
		}
		return figure{figures(base, 3, 3), GramPerMilliliter.Symbol}
	case Count:
		return counted(base, u)
	}
	return figure{figures(base, 3, 3), u.Symbol}
}

// metricWeight is grams to the gram below a kilogram (finer for little), kilograms to the gram above.
func metricWeight(base Rat) figure {
	if base.Less(NewRat(9995, 10)) {
		return figure{figures(base, 3, 2), Gram.Symbol}
	}
	return figure{figures(Kilogram.number(base), 4, 3), Kilogram.Symbol}
}

// usWeight is ounces below a pound, pounds and ounces to a tenth above.
func usWeight(base Rat) figure {
	ounces := Ounce.number(base)
	tenths := rounded(ounces.Mul(Int(10)))
	if tenths.Less(Int(160)) {
		return figure{figures(ounces, 3, 3), Ounce.Symbol}
	}
	pounds := tenths.Floor(Int(160))
	rest, _ := tenths.Sub(pounds).Quo(Int(10))
	pounds, _ = pounds.Quo(Int(160))
	if rest.IsZero() {
		return figure{pounds.Decimal(0), Pound.Symbol}
	}
	return figure{number: pounds.Decimal(0) + " lb " + rest.Decimal(1) + " oz"}
}

// inches is a length in the sixteenths a ruler has, or in decimals where those are over 0.5 % off.
func inches(n Rat) figure {
	sixteenths, _ := rounded(n.Mul(Int(16))).Quo(Int(16))
	text := commonFraction(sixteenths, 16)
	if off := sixteenths.Sub(n).Abs(); text != "" && !n.Mul(NewRat(1, 200)).Less(off) {
		return figure{text, Inch.Symbol}
	}
	return figure{figures(n, 3, 3), Inch.Symbol}
}

// duration is "45 s", "2 min 30 s", "1 h 45 min", and from two days on "3 d 4 h".
func duration(base Rat) figure {
	switch {
	case base.Less(NewRat(595, 10)):
		return figure{figures(base, all, 1), Second.Symbol}
	case base.Less(Int(595)):
		return twoUnits(base, Minute, Second)
	case base.Less(Int(48*3600 - 30)):
		return twoUnits(base, Hour, Minute)
	}
	return twoUnits(base, Day, Hour)
}

// twoUnits is a magnitude rounded to the small unit and said in both, leaving out what is 0.
func twoUnits(base Rat, large, small *Unit) figure {
	total := rounded(small.number(base)).Mul(small.Factor)
	whole := total.Floor(large.Factor)
	rest := small.number(total.Sub(whole)).Decimal(0)
	first := large.number(whole).Decimal(0)
	switch {
	case rest == "0":
		return figure{first, large.Symbol}
	case first == "0":
		return figure{rest, small.Symbol}
	}
	return figure{number: first + " " + large.Symbol + " " + rest + " " + small.Symbol}
}

// perCent is a proportion or share in per cent: hundredths, thousandths below one.
func perCent(base Rat, u *Unit) figure {
	symbol := Percent.Symbol
	if b := u.Basis; b != NoBasis {
		symbol += " " + b.String()
	}
	n := base.Mul(Int(100))
	places := 2
	if n.Less(one) {
		places = 3
	}
	return figure{figures(n, all, places), symbol}
}

// counted is a number of things, in words that agree with it: "1/2 block", "1 drop", "3 drops".
func counted(n Rat, u *Unit) figure {
	text := commonFraction(n, 16)
	if text == "" {
		text = figures(n, all, 2)
	}
	if one.Less(n) || n.IsZero() {
		return figure{text, u.Plural}
	}
	return figure{text, u.Symbol}
}

// commonFraction is n as "3", "1/4" or "2 1/2", "" where the part below one needs a denominator over largest.
func commonFraction(n Rat, largest int64) string {
	if n.big != nil || n.den() > largest || n.Sign() < 0 {
		return ""
	}
	whole := n.floorInt()
	part := n.Sub(whole)
	if part.IsZero() {
		return whole.Decimal(0)
	}
	text := Int(part.n).Decimal(0) + "/" + Int(part.d).Decimal(0)
	if whole.IsZero() {
		return text
	}
	return whole.Decimal(0) + " " + text
}

// all asks figures for every decimal place it is allowed.
const all = 99

// figures is n rounded to so many decimal places, fewer where that many significant figures are reached sooner; the
// digits before the point always stand, and a number that is not 0 never prints as 0.
func figures(n Rat, significant, places int) string {
	before := 0
	for limit := one; before < mostDigits && !n.Abs().Less(limit); limit = limit.Mul(Int(10)) {
		before++
	}
	places = min(places, max(0, significant-before))
	text := n.Decimal(places)
	for !n.IsZero() && strings.Trim(text, "-0.") == "" {
		places++
		text = n.Decimal(places)
	}
	return text
}

// rounded is the nearest whole number, halves away from 0.
func rounded(n Rat) Rat {
	if n.Sign() < 0 {
		return rounded(n.Neg()).Neg()
	}
	return n.Add(NewRat(1, 2)).floorInt()
}
