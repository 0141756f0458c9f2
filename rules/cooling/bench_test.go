package cooling_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/cooling"
)

// What asking costs: gathering what is poured where, the bounds that spare the
// model, the pot, and windows that are worked out already. The model itself is
// BenchmarkSolve.
func BenchmarkAsking(b *testing.B) {
	shop, errs := lint.Load(examples.Shop(), ".", nil)
	require.Empty(b, errs)
	recipe := shop.Find("recipe", "tide-pillar")
	warm := lint.NewView(shop, recipe, "2026-10-20")
	for i := range cooling.Of.In(warm).Pours {
		cooling.Of.In(warm).Pours[i].Windows(warm)
	}
	b.Run("batch", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			batch.Of.In(lint.NewView(shop, recipe, "2026-10-20"))
		}
	})
	b.Run("batch and pours", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			cooling.Of.In(lint.NewView(shop, recipe, "2026-10-20"))
		}
	})
	b.Run("bounds", func(b *testing.B) {
		b.ReportAllocs()
		p := &cooling.Of.In(warm).Pours[0]
		for b.Loop() {
			p.SurelyCool()
			p.SurelyOpen()
		}
	})
	b.Run("pot", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			cooling.PotOf(warm)
		}
	})
	b.Run("windows known", func(b *testing.B) {
		b.ReportAllocs()
		p := &cooling.Of.In(warm).Pours[0]
		for b.Loop() {
			p.Windows(warm)
		}
	})
}
