package formula

import (
	"slices"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// Wanted is how many candles must have burned well before one is sold: common
// practice, after the ideas of ASTM F2417 (from memory: three samples).
const Wanted = 3

// Tested is one kind of candle the recipe makes, and the burns that speak of
// it: a jar tested says nothing of a tin.
type Tested struct {
	Subject string          // "Tide and thyme pillar", of several kinds "… in Clear tumbler, 10 oz"
	Vessel  int             // index into batch.Batch.Vessels
	Current []*schema.Block // burns of the formulation as it is now
	Older   []*schema.Block // burns of another, or that do not say of which
}

// Tests lists the kinds of candle a recipe makes that burn with a flame, with
// their burns.
func Tests(view *lint.View) []Tested {
	b := batch.Of.In(view)
	if len(b.Vessels) < 2 {
		if b.Makes == "melt" {
			return nil
		}
		return []Tested{test(view, b, 0, view.Recipe.Title())}
	}
	var list []Tested
	var seen []string
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Stock == nil || b.MadeIn(v) == "melt" || slices.Contains(seen, same(v)) {
			continue
		}
		seen = append(seen, same(v))
		list = append(list, test(view, b, i, view.Recipe.Title()+" in "+v.Stock.Title()))
	}
	return list
}

// same is what two vessel blocks have in common that make the same candle.
func same(v *batch.Vessel) string {
	return v.Kind + " " + v.Block.Label + " " + v.WickSaid.Text() + v.Block.Get("wicks").Written() + v.Block.Get("fill").Written()
}

// test sorts the burns that speak of one kind of candle. Without burns no code
// is worked out.
func test(view *lint.View, b *batch.Batch, vessel int, subject string) Tested {
	t := Tested{Subject: subject, Vessel: vessel}
	for _, burn := range view.TestBurns() {
		switch {
		case !Speaks(burn, vessel, b):
		case Of.In(view).Current(burn, vessel):
			t.Current = append(t.Current, burn)
		default:
			t.Older = append(t.Older, burn)
		}
	}
	return t
}

// CodeOf is the fingerprint of one vessel of the recipe, by its index; where the
// recipe has none, its own.
func (f *Formulation) CodeOf(vessel int) string {
	if vessel < len(f.Each) {
		return f.Each[vessel].Code
	}
	return f.Code
}

// Passed are the candles of this formulation whose every burn passed, and
// failed those of which one did not.
func (t *Tested) Passed() (passed, failed []string) { return batch.Burned(t.Current) }

// Outdated are the candles that passed and are of another formulation.
func (t *Tested) Outdated() []string {
	passed, _ := batch.Burned(t.Older)
	return passed
}

// Enough says whether as many candles passed as are wanted.
func (t *Tested) Enough() bool {
	passed, _ := t.Passed()
	return len(passed) >= Wanted
}

// Stale says whether enough candles passed and too few of them as the recipe
// is now: then the change is what is to be said, and not that none was burned.
func (t *Tested) Stale() bool {
	passed, _ := t.Passed()
	return len(passed) < Wanted && len(passed)+len(t.Outdated()) >= Wanted
}

// ToEnd says whether a candle of this formulation was burned to its end. A
// value that cannot be read is taken for yes, since another rule says it.
func (t *Tested) ToEnd() bool {
	for _, burn := range t.Current {
		if end := burn.Get("to_end"); end.Yes() || end.Broken() {
			return true
		}
	}
	return false
}
