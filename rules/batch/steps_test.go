package batch_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"wickrule/rules/batch"
)

// Waits are sums of what is written.
func TestTheTimeline(t *testing.T) {
	b := of(t, `
  mold "round" { }
  step "seal wick hole" { }
  step "melt" { to = "186 °F" }
  step "add fragrance" {
    at   = "183 °F"
    stir = "2 min"
  }
  step "pour" { at = "176 °F" }
  step "relief holes" { after = "1 h 45 min" }
  step "second pour" { at = "182 °F" }
  step "cool" { for = "12 to 14 h" }
  step "unmold" { after = "1 h" }
  step "trim wick" { to = "1/4 in" }`)
	minutes := []string{"", "", "", "0", "105", "105", "105", "885", "885"}
	latest := []string{"", "", "", "0", "105", "105", "105", "1005", "1005"}
	for i, s := range b.Steps {
		assert.Equal(t, i, s.Index)
		if minutes[i] == "" {
			lacks(t, "", "", s.FromPour)
			continue
		}
		is(t, minutes[i], per(s.FromPour, 60), 3, s.Kind)
		is(t, latest[i], per(s.FromPourLatest, 60), 3, s.Kind)
	}
	is(t, "0", b.Steps[1].FromStart, 3, "the melt")
	lacks(t, "", "", b.Steps[3].FromStart) // nobody says how long the melt takes
}

func per(f batch.Figure, unit int64) batch.Figure {
	f.Value = f.Value.Mul(ratio(1, unit))
	return f
}

func TestFromPourCountsFromTheFirst(t *testing.T) {
	b := of(t, `
  mold "round" { }
  step "pour" { at = "176 °F" }
  step "pour" { after = "45 min" }
  step "relief holes" { from_pour = "2 to 3 h" }
  step "unmold" {
    after     = "1 h"
    from_pour = "14 h"
  }`)
	is(t, "2700", b.Steps[1].FromPour, 0, "the second layer")
	is(t, "7200", b.Steps[2].FromPour, 0, "relief holes")
	is(t, "10800", b.Steps[2].FromPourLatest, 0, "relief holes at the latest")
	is(t, "50400", b.Steps[3].FromPour, 0, "where both are written, from_pour counts")
}

// A wait that nobody wrote is not a wait of nothing.
func TestSettingTakesTime(t *testing.T) {
	b := of(t, `
  mold "round" { }
  step "pour" { at = "176 °F" }
  step "relief holes" { count = 4 }
  step "second pour" { after = "2 h" }
  step "unmold" { }
  step "cure" { for = "3 d" }`)
	for _, i := range []int{1, 2} {
		assert.False(t, b.Steps[i].FromPour.Known())
		assert.Equal(t, "after", b.Steps[i].FromPour.Attr())
		assert.Equal(t, "relief holes", b.Steps[i].FromPour.Lacks.Spec.Kind)
	}
	assert.False(t, b.Steps[3].FromPour.Known())
}

// Stirring the next layer is no wait for the first one to set.
func TestStirringIsNoWait(t *testing.T) {
	b := of(t, `
  mold "round" { }
  step "pour" { at = "176 °F" }
  step "add dye" { stir = "2 min" }
  step "unmold" { }`)
	is(t, "0", b.Steps[1].FromPour, 0, "the dye")
	lacks(t, "unmold", "after", b.Steps[2].FromPour)
}

func TestDipsTakeTheirWaits(t *testing.T) {
	b := of(t, `
  taper "candle" { }
  step "warm mold" { for = "5 to 10 min" }
  step "dip" {
    times = 20
    wait  = "3 min"
  }
  step "cool" { for = "1 h" }
  step "cure" { for = "1 d" }`)
	is(t, "300", b.Steps[1].FromStart, 0, "the first dip")
	is(t, "3900", b.Steps[2].FromStart, 0, "after twenty waits")
	is(t, "7500", b.Steps[3].FromStart, 0, "after cooling")
}

func TestBrokenWaits(t *testing.T) {
	b := of(t, `
  mold "round" { }
  step "pour" { at = "176 °F" }
  step "relief holes" { after = "a while" }
  step "unmold" { from_pour = "14 h" }`)
	isBroken(t, b.Steps[1].FromPour)
	is(t, "50400", b.Steps[2].FromPour, 0, "from_pour begins anew")
}

func TestHeat(t *testing.T) {
	b := of(t, `
  mold "round" { }
  step "melt" { to = "186 °F" }
  step "pour" { at = "176 °F" }
  step "second pour" { }
  step "warm mold" { to = "110 °F" }
  step "trim wick" { to = "1/4 in" }`)
	assert.Equal(t, "186 °F", b.Steps[0].Heat.Amount().String())
	assert.Equal(t, "176 °F", b.Steps[1].Heat.Amount().String())
	assert.True(t, b.Steps[2].Heat.Absent())
	assert.NotNil(t, b.Steps[2].Heat.Spec)
	assert.Nil(t, b.Steps[3].Heat.Spec, "the mold's heat is not the wax's")
	assert.Nil(t, b.Steps[4].Heat.Spec)
}

func TestPoursAndTheirMelts(t *testing.T) {
	b := of(t, `
  mold "round" { }
  mold "little" { }
  step "pour" { vessel = "round" }
  step "melt" { to = "186 °F" }
  step "pour" { vessel = "little" }
  step "melt" { to = "184 °F" }
  step "second pour" { vessel = "round" }
  step "second pour" { }`)
	p := b.Pours
	assert.Len(t, p, 4)
	assert.Nil(t, p[0].Melt)
	assert.Equal(t, 1, p[1].Melt.Index)
	assert.Equal(t, 3, p[2].Melt.Index)
	assert.Equal(t, 0, p[2].First.Index, "the pour into the same mold")
	assert.Equal(t, 2, p[3].First.Index, "the last pour before, of those that share a vessel")
	assert.Equal(t, []int{0}, p[0].Step.Vessels)
	assert.Equal(t, []int{0, 1}, p[3].Step.Vessels)
	assert.True(t, p[2].Second)
}

func TestAMisspelledVesselIsTakenAsAll(t *testing.T) {
	b := of(t, `
  mold "round" { }
  step "seal wick hole" { vessel = "rownd" }`)
	assert.Equal(t, []int{0}, b.Steps[0].Vessels)
}
