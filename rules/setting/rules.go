// Package setting holds the rules about what happens between the melting pot
// and the finished candle: the wick hole and its seal, the pours and their
// order, the setting, the cure and the trim.
package setting

import "wickrule/lint"

const group = "Sealing, pouring, setting"

// Rules are the rules of this group, in handbook order.
func Rules() []*lint.Rule {
	return []*lint.Rule{
		WickHoleUnsealed,
		WickHoleSealedLate,
		SealTooWeak,
		SecondPourMissing,
		NoRoomForSecondPour,
		SecondPourTooSoon,
		SecondPourTooCool,
		SecondPourOutOfStep,
		ReliefHolesMissing,
		ReliefHolesTooEarly, ReliefHolesTooLate,
		UnmoldTooSoon,
		StepsOutOfOrder,
		IngredientNeverAdded,
		StirTooShort,
		CureTooShort,
		WickUntrimmed,
	}
}
