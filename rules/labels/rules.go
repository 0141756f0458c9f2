// Package labels holds the rules about what a candle's labels must say.
//
// The texts of the standards are sold and were not at hand; what is known of
// them publicly, and what is from memory, stands in schema's list of cautions
// and in each rule's source.
package labels

import "wickrule/lint"

// Group is the handbook's heading for these rules.
const Group = "Labels and law"

// deferral stands under every rule here that rests on law.
const deferral = "This is an aid, not legal advice: the standards and the laws of each market have more to say than is checked here, " +
	"and they change. Ask the authority or a professional before you sell."

// Rules are the rules about labels, in handbook order.
func Rules() []*lint.Rule {
	return []*lint.Rule{
		WarningLabelMissing, CautionMissing, LabelNotForMarket,
		HazardLabelMissing, HazardLabelUnfounded, HazardUnknown, ComponentUnderstated, BannedIngredient,
		NetWeightMissing, NetWeightOverstated,
		LeadStatementMissing,
		SignalMissing, MakerMissing, LotMissing, LabelLanguage, LooksLikeFood,
	}
}
