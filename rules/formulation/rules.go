// Package formulation holds the rules about what goes into a candle and how
// much of it.
package formulation

import "wickrule/lint"

const group = "Formulation"

// Rules are the rules about the formulation, in handbook order.
func Rules() []*lint.Rule {
	return []*lint.Rule{
		FragranceOverLimit, FragranceNearLimit, FragranceLoadExtreme, FragranceLimitUnknown, FragranceOverCertificate,
		LoadBasisUnstated, LoadLooksLikeFraction, WeightAndLoadDisagree, LiquidByVolume,
		DyeByEye, DyeOverLimit, AdditiveOutsideUsual,
		BatchDoesNotFill, BatchLeftOver,
		WaterInWax, GelNeedsGelSafe,
	}
}
