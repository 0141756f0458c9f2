// Package vessel holds the rules about what a candle is made in and what it
// burns with: the mold or container, the wick, what lies on top, and the pot.
package vessel

import "wickrule/lint"

// group is the handbook's heading for these rules.
const group = "Vessel and wick"

// Rules are the rules about vessels and wicks, in the handbook's order.
func Rules() []*lint.Rule {
	return []*lint.Rule{
		WaxNotForContainer, WaxNotForMold,
		ContainerNotForCandles, ContainerOverfilled,
		WickMissing, WickInMelt, WickOutsideDiameter, WickNotForWax, OneWickTooWide, LeadCore,
		MoldSoftens, GlassTooCold,
		WickTabMissing, BurnableTopping,
		PotOverfull,
	}
}
