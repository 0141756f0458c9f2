// Package vessel holds the rules about what a candle is made in and what wick
// stands in it.
package vessel

import (
	"wickrule/lint"
	"wickrule/rules/batch"
)

const group = "Vessel and wick"

// Rules are the rules about vessels and wicks, in handbook order.
func Rules() []*lint.Rule {
	return []*lint.Rule{
		WaxNotForContainer, WaxNotForMold,
		ContainerNotForCandles, ContainerOverfilled,
		WickMissing, WickOutsideDiameter, WickNotForWax, OneWickTooWide, LeadCore,
		MoldSoftens, GlassTooColdForPour, WickTabMissing, BurnableTopping, PotOverfull,
	}
}

// eachVessel calls the check for every vessel that is in stock.
func eachVessel(p *lint.Pass, check func(b *batch.Batch, index int, v *batch.Vessel)) {
	b := batch.Of.In(p.View)
	for i := range b.Vessels {
		if b.Vessels[i].Stock != nil {
			check(b, i, &b.Vessels[i])
		}
	}
}

// firstPour is the first pour into a vessel, or nil.
func firstPour(b *batch.Batch, vessel int) *batch.Step {
	for i := range b.Pours {
		if p := &b.Pours[i]; !p.Second && p.Step.Is(vessel) {
			return p.Step
		}
	}
	return nil
}

// hottestPour is the pour into a vessel with the highest temperature said, or
// nil.
func hottestPour(b *batch.Batch, vessel int) *batch.Step {
	var hottest *batch.Step
	for i := range b.Pours {
		s := b.Pours[i].Step
		if !s.Is(vessel) || !s.Heat.IsAmount() {
			continue
		}
		if hottest == nil || hottest.Heat.Amount().High().Base().Less(s.Heat.Amount().High().Base()) {
			hottest = s
		}
	}
	return hottest
}
