package cooling

import (
	"math"

	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

// Estimate is a modeled time in s after a pour. It is good to ±40 %: how well
// a wall gives heat off, drafts, what stands beside it, and the wax itself
// are known no better. +Inf: it does not come about in ten days.
type Estimate float64

// Spread is how far off an estimate may be, as a share.
const Spread = 0.4

// Because says why estimates are no better, to stand after "±40 %, ".
const Because = "since drafts, the wall and the wax itself are known no better"

// Never says whether it does not come about.
func (e Estimate) Never() bool { return math.IsInf(float64(e), 1) }

// Low and High are the ends of what is likely, in s.
func (e Estimate) Low() float64  { return float64(e) * (1 - Spread) }
func (e Estimate) High() float64 { return float64(e) * (1 + Spread) }

// String is the time as people say it: "6 h 30 min"; "never" where it does not
// come about.
func (e Estimate) String() string { return about(float64(e)) }

// Span is the ends of what is likely: "4 to 9 h".
func (e Estimate) Span() string { return about(e.Low()) + " to " + about(e.High()) }

// Brief is a time of a few minutes, in seconds where it is under one: "about
// 40 s", "no time at all".
func (e Estimate) Brief() string {
	switch {
	case e < 1:
		return "no time at all"
	case e < 60:
		return "about " + batch.Time(quantity.Int(int64(max(rounded(float64(e), 10), 10))))
	}
	return "about " + e.String()
}

// about is a time rounded to what such an estimate is worth.
func about(seconds float64) string {
	if math.IsInf(seconds, 1) {
		return "never"
	}
	minutes := seconds / 60
	step := 30.0
	switch {
	case minutes < 10:
		step = 1
	case minutes < 120:
		step = 5
	case minutes < 480:
		step = 15
	}
	return batch.Time(quantity.Int(60 * int64(max(rounded(minutes, step), 1))))
}
