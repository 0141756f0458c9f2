package heat

import (
	"fmt"
	"iter"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

// ofKind is the temperatures of one kind of step. Where their range is not
// known, the pass says so once.
func ofKind(p *lint.Pass, kind string) iter.Seq[*judged] {
	return func(yield func(*judged) bool) {
		list := heats.In(p.View)
		var asked *batch.Stated
		for i := range list {
			j := &list[i]
			if j.step.Kind != kind {
				continue
			}
			if j.own != asked {
				j.own.Ask(p)
				asked = j.own
			}
			if !yield(j) {
				return
			}
		}
	}
}

// checkOver reports what is over the range of its kind of step; done is the
// word for the step: "poured". How the rules share a value is written down at
// judged.
func checkOver(p *lint.Pass, kind, done string) {
	for j := range ofKind(p, kind) {
		if j.over == within || j.doubted(p) || j.overTaken(p) {
			continue
		}
		if j.noneInCommon {
			reportNoneInCommon(p, j, done)
			continue
		}
		top, whole := j.own.AtHigh(), j.value.Amount()
		p.Report(lint.Finding{
			At:      lint.AtValue(j.value),
			Message: outside(p, j, top, done, reached(p.View, whole.High(), whole)+" is "+batch.ApartLike(j.high.Sub(j.own.High()), whole.High())+" hotter") + byAHair(j.high, j.own.High(), whole.High()),
			Notes:   batch.NoteAt(limitHere, top.Value),
			Fixes:   j.lowered,
		})
	}
}

// checkUnder reports what is under the range of its kind of step. Bringing it
// up is for a person to do: there is no fix.
func checkUnder(p *lint.Pass, kind, done string) {
	for j := range ofKind(p, kind) {
		if j.under == within || j.doubted(p) {
			continue
		}
		if j.noneInCommon {
			reportNoneInCommon(p, j, done)
			continue
		}
		bottom, whole := j.own.AtLow(), j.value.Amount()
		p.Report(lint.Finding{
			At:      lint.AtValue(j.value),
			Message: outside(p, j, bottom, done, reached(p.View, whole.Low(), whole)+" is "+batch.ApartLike(j.own.Low().Sub(j.low), whole.Low())+" cooler") + byAHair(j.low, j.own.Low(), whole.Low()),
			Notes:   batch.NoteAt(limitHere, bottom.Value),
		})
	}
}

// outside is the sentence about a temperature out of a range: whose range,
// and of a blend which wax sets the end that is passed.
func outside(p *lint.Pass, j *judged, end batch.Stated, done, measured string) string {
	switch {
	case end.Family != "":
		return fmt.Sprintf("%s than %s is usually %s: %s. %s", measured, end.Family, done, j.own.Range(p.View), silent(end))
	case j.own.Blend:
		return fmt.Sprintf("%s than this blend is %s: %s is what its waxes have in common, and %s sets that end", measured, done, j.own.Range(p.View), end.Wax.Title())
	}
	return fmt.Sprintf("%s than %s is %s: %s", measured, end.Wax.Title(), done, j.own.Range(p.View))
}

// byAHair is the limit with more digits, where rounded to tenths it would read
// the same as what is over or under it: limits are compared exactly.
func byAHair(t, limit quantity.Rat, written quantity.Quantity) string {
	in := quantity.FromBase(limit, written.Unit()).Number()
	if quantity.FromBase(t, written.Unit()).Number().Decimal(1) != in.Decimal(1) {
		return ""
	}
	return " (" + in.Decimal(3) + " " + written.Unit().Symbol + " to the digit)"
}

// reportNoneInCommon says that the waxes of a loose blend have no range in
// common.
func reportNoneInCommon(p *lint.Pass, j *judged, done string) {
	low, high := j.own.AtHigh(), j.own.AtLow() // the range that ends first, and the one that begins after it
	var b strings.Builder
	fmt.Fprintf(&b, "no temperature suits all waxes of this blend: %s is %s at %s, %s at %s. ", whoOf(low), done, batch.Both(p.View, low.Amount), whoOf(high), batch.Both(p.View, high.Amount))
	b.WriteString("Try the blend out and write it down as a wax of its own, with the figures you found")
	p.Report(lint.Finding{At: lint.AtValue(j.value), Message: b.String(), Notes: batch.NoteAt("range stated here", low.Value, high.Value)})
}

// whoOf is the wax of a range, with a word where the range is its family's.
func whoOf(s batch.Stated) string {
	if s.Family != "" {
		return s.Wax.Title() + " (usual for " + s.Family + "; common practice)"
	}
	return s.Wax.Title()
}
