// Package house holds the rules about the format itself: what is written and
// cannot be read, names that lead nowhere, concessions.
package house

import "wickrule/lint"

// Group is the handbook's heading for these rules.
const Group = "The format itself"

// formatSource is the source of every rule that only says what the house
// format allows.
const formatSource = "the house format, schema/FORMAT.md"

// Rules are the rules about the format, in handbook order.
func Rules() []*lint.Rule {
	return []*lint.Rule{
		Syntax, NotALiteral, TwoOnOneLine,
		UnknownBlock, UnknownAttribute, AttributeMissing, AttributeRepeated,
		QuantityUnreadable, UnitMissing, UnitWrongKind, UnknownWord, ValueWrongKind, KeyForm, BlockRepeated,
		UnknownKey, KeyRepeated, UnknownStep,
		MadeForMissing, UnusedStock, RulesFolderUnread,
		ConcessionExpired, ConcessionUnused, ConcessionWithoutReason, ConcessionNotAllowed,
	}
}
