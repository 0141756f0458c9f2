package setting

import (
	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

// firstPour is the step that first puts wax into a vessel; nil: none does.
func firstPour(b *batch.Batch, vessel int) *batch.Step {
	for i := range b.Pours {
		if b.Pours[i].Step.Is(vessel) {
			return b.Pours[i].Step
		}
	}
	return nil
}

// secondPour is the first step that tops a vessel up; nil: none does.
func secondPour(b *batch.Batch, vessel int) *batch.Step {
	for i := range b.Pours {
		if b.Pours[i].Second && b.Pours[i].Step.Is(vessel) {
			return b.Pours[i].Step
		}
	}
	return nil
}

// layers is how often a vessel is poured into, second pours not counted, and
// the last of those pours.
func layers(b *batch.Batch, vessel int) (n int, last *batch.Step) {
	for i := range b.Pours {
		if !b.Pours[i].Second && b.Pours[i].Step.Is(vessel) {
			n++
			last = b.Pours[i].Step
		}
	}
	return n, last
}

// fills is the pour that a second one tops up in a vessel: the last before it;
// nil: none.
func fills(b *batch.Batch, second *batch.Step, vessel int) *batch.Step {
	var last *batch.Step
	for i := range b.Pours {
		if p := &b.Pours[i]; !p.Second && p.Step.Index < second.Index && p.Step.Is(vessel) {
			last = p.Step
		}
	}
	return last
}

// doneBetween says whether a step of that kind is done to a vessel between its
// pour and another step.
func doneBetween(kind string, b *batch.Batch, first, s *batch.Step, vessel int) bool {
	for i := first.Index + 1; i < s.Index; i++ {
		if o := &b.Steps[i]; o.Kind == kind && o.Is(vessel) {
			return true
		}
	}
	return false
}

// made is what is made in a vessel; "" not known.
func made(b *batch.Batch, v *batch.Vessel) string {
	if v.Stock == nil {
		return b.Makes
	}
	return b.MadeIn(v)
}

const scaleDoubtful = "temperature-scale-doubtful"

// doubted says whether a temperature makes no sense as written, while the same
// number in the other scale lies where the wax is worked: which scale is meant
// has to be settled first, and that is another rule's finding. Where the
// recipe concedes it or the shop tunes it, the figure is meant as written.
func doubted(p *lint.Pass, b *batch.Batch, s *batch.Step) bool {
	if !s.Heat.IsAmount() || !p.HasRule(scaleDoubtful) || p.Tuned(scaleDoubtful) {
		return false
	}
	for c := range p.Recipe.Each("concession") {
		if c.Label == scaleDoubtful {
			return false
		}
	}
	written := s.Heat.Amount()
	pour, melt := b.PourAt(), b.MeltTo()
	if !pour.Known() {
		return false
	}
	low, high := quantity.Min(pour.Low(), pour.High()), quantity.Max(pour.Low(), pour.High())
	if melt.Known() {
		high = quantity.Max(high, quantity.Max(melt.Low(), melt.High()))
	}
	other := quantity.Fahrenheit
	switch written.Unit() {
	case quantity.Celsius:
		top := hardStop
		if ceiling := b.NeverAbove(); ceiling.Known() {
			top = quantity.Min(top, ceiling.High())
		}
		if !top.Less(written.Base()) {
			return false
		}
	case quantity.Fahrenheit:
		other = quantity.Celsius
		bottom := coldest
		if sets := b.CongealsAt(); sets.Known() {
			bottom = sets.Low()
		}
		if !written.High().Base().Less(bottom) {
			return false
		}
	}
	meantLow := quantity.Of(written.Number(), other).Base()
	meantHigh := quantity.Of(written.High().Number(), other).Base()
	return !meantLow.Less(low) && !high.Less(meantHigh)
}

// Nobody works wax above 121 °C (250 °F), and no candle wax is worked below
// 100 °F (37.8 °C). Common practice.
var (
	hardStop = quantity.Int(121)
	coldest  = quantity.Of(quantity.Int(100), quantity.Fahrenheit).Base()
)
