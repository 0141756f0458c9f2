package heat

import "wickrule/lint"

// Rules are the rules about heat, in the handbook's order.
func Rules() []*lint.Rule {
	return []*lint.Rule{
		NearFlash,
		AboveCeiling,
		PourTooHot, PourTooCool,
		MeltTooHot, MeltTooCool,
		PourAboveMelt, NarrowPourWindow,
		TemperatureNeverSaid,
		ScaleDoubtful,
		FragranceTooHot, FragranceTooCool,
		FragranceAboveItsFlash,
		OpenHeat,
		HeatLeftOn,
	}
}
