package cooling_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/cooling"
)

// The demo shop states all that the model rests on: every first pour into a
// mold or jar is modeled, and nothing stands in for what is not stated. Where
// it is not modeled it is not for the model: gel, melts, tealights, dipping.
func TestTheDemoShop(t *testing.T) {
	shop, errs := lint.Load(examples.Shop(), ".", nil)
	require.Empty(t, errs)
	modeled, not := 0, map[string]bool{}
	for _, recipe := range shop.Recipes() {
		view := lint.NewView(shop, recipe, "2026-10-20")
		b := batch.Of.In(view)
		for _, p := range cooling.Of.In(view).Pours {
			assert.Empty(t, p.Assumed, recipe.Label)
			assert.Empty(t, p.Basis(), recipe.Label)
			assert.Nil(t, p.Lacks, recipe.Label)
			w := p.Windows(view)
			if w == nil {
				not[recipe.Label+", "+p.Step.Kind] = true
				continue
			}
			modeled++
			assert.Less(t, w.ReliefHoles.From, w.ReliefHoles.To, recipe.Label)
			assert.Less(t, w.SecondPour.From, w.SecondPour.To, recipe.Label)
			assert.LessOrEqual(t, w.SecondPour.To, w.Unmold, recipe.Label)
			assert.Less(t, float64(w.Unmold), p.SurelyCool(), recipe.Label)
			// Hobby guidance for a pillar is 4 to 8 h and overnight to be sure; nothing here takes longer than a night.
			assert.Greater(t, float64(w.Unmold), 1.0*3600, recipe.Label)
			assert.Less(t, float64(w.Unmold), 10.0*3600, recipe.Label)
		}
		if len(b.Pours) > 0 {
			pot, ok := cooling.PotOf(view)
			require.True(t, ok, recipe.Label)
			assert.Greater(t, pot.Tau, 20.0*60, recipe.Label)
			assert.Less(t, pot.Tau, 180.0*60, recipe.Label)
		}
	}
	assert.Equal(t, map[string]bool{
		"gorse-melt, pour": true, "saltmarsh-tealight, pour": true, "shingle-tealight, pour": true, "tidepool-gel, pour": true,
		"harbor-jar, second pour":      true, // a film of wax
		"tideline-layers, second pour": true,
		"skep-beeswax, second pour":    true, // a shape in which nobody can reckon how much
	}, not)
	assert.Greater(t, modeled, 18)
}
