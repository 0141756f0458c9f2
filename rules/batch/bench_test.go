package batch_test

import (
	"testing"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// A recipe of about a kilobyte.
const usualRecipe = `
  wax "quarry" { weight = "1.45 kg" }
  fragrance "thyme" { load = "5 % of wax" }
  dye "rust" { weight = "0.6 g" }
  mold "round" {
    count = 2
    wick  = "braid"
  }
  step "seal wick hole" { say = "Press it home." }
  step "melt" { to = "186 °F" }
  step "add dye" { dye = "rust" }
  step "add fragrance" {
    at   = "183 °F"
    stir = "2 min"
  }
  step "pour" {
    at    = "176 °F"
    leave = "3/8 in"
  }
  step "relief holes" { after = "1 h 45 min" }
  step "second pour" { at = "182 °F" }
  step "unmold" { after = "14 h" }
  step "trim wick" { to = "1/4 in" }
  step "note" { say = "Check the base." }`

func BenchmarkBatch(b *testing.B) {
	_, view := viewed(b, usualRecipe)
	shop, recipe := view.Shop(), view.Recipe
	b.ReportAllocs()
	for b.Loop() {
		batch.Of.In(lint.NewView(shop, recipe, "2026-10-20"))
	}
}

func BenchmarkStated(b *testing.B) {
	batchOf, _ := viewed(b, usualRecipe)
	b.ReportAllocs()
	for b.Loop() {
		batchOf.PourAt()
		batchOf.NeverAbove()
		batchOf.FragranceLimit()
	}
}
