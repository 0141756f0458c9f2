package batch_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules/batch"
)

// The demo shop states all that the figures rest on, so that each is known,
// and its batches fill their vessels with a little to spare.
func TestTheDemoShop(t *testing.T) {
	shop, errs := lint.Load(examples.Shop(), ".", nil)
	require.Empty(t, errs)
	require.NotEmpty(t, shop.Recipes())
	for _, recipe := range shop.Recipes() {
		b, name := batch.Of.In(lint.NewView(shop, recipe, "2026-10-20")), recipe.Label
		assert.NotEmpty(t, b.Makes, name)
		assert.True(t, b.FragranceOfTotal.Known(), name)
		if assert.True(t, b.Spare.Known(), name) {
			spare := b.Spare.Value
			assert.False(t, spare.Less(ratio(0, 1)), "%s is short: %s", name, spare.Decimal(3))
			assert.True(t, b.Makes == "taper" || !ratio(1, 10).Less(spare), "%s leaves %s over", name, spare.Decimal(3))
		}
		for _, s := range []batch.Stated{b.PourAt(), b.MeltTo(), b.AddFragranceAt(), b.NeverAbove(), b.FlashPoint(), b.CongealsAt(), b.Cure(), b.Density(), b.Shrinkage()} {
			assert.True(t, s.Known(), "%s: %s", name, s.Attr)
			assert.Equal(t, "", s.Family, "%s: %s", name, s.Attr)
			assert.False(t, s.Empty, "%s: %s", name, s.Attr)
		}
		for _, p := range b.Pours {
			assert.NotNil(t, p.Melt, "%s pours before it melts", name)
			assert.True(t, p.Step.FromPour.Known(), "%s: when its %s is", name, p.Step.Kind)
		}
	}
}
