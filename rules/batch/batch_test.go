package batch_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// shelf is the stock that the recipes of these tests are made from. The
// figures are round so that sums can be checked by hand.
const shelf = `
wax "quarry" {
  title           = "Quarry paraffin"
  family          = "paraffin"
  suits           = ["pillar"]
  pour_at         = "168 to 182 °F"
  melt_to         = "180 to 190 °F"
  never_above     = "240 °F"
  flash_point     = "450 °F"
  fragrance_limit = "6 % of wax"
  congeals_at     = "140 °F"
  density         = "0.90 g/mL"
  shrinkage       = "12 %"
  cure            = "1 to 3 d"
}
wax "shoal" {
  title           = "Shoal soy"
  family          = "soy"
  suits           = ["container"]
  pour_at         = "130 to 175 °F"
  melt_to         = "160 to 170 °F"
  never_above     = "185 °F"
  flash_point     = "440 °F"
  fragrance_limit = "10 % of total"
  congeals_at     = "114 °F"
  density         = "0.80 g/mL"
  shrinkage       = "6 %"
  cure            = "7 to 14 d"
}
wax "silent-pillar" {
  family = "paraffin"
  suits  = ["pillar"]
}
wax "silent-coconut" {
  family = "coconut"
}
wax "no-family" {
  title = "Left-over wax"
}
fragrance "thyme" {
  title   = "Thyme"
  density = "0.95 g/mL"
}
fragrance "kelp" {
  title = "Kelp"
}
dye "rust" {
  drop  = "0.03 g"
  piece = "1.2 g"
}
dye "chalk" {
  title = "Chalk"
}
additive "hardener" {
  title = "Hardener"
}
mold "round" {
  shape    = "cylinder"
  diameter = "3 in"
  height   = "6 in"
}
mold "tall-cone" {
  shape    = "cone"
  diameter = "3 in"
  height   = "6 in"
}
mold "ball" {
  shape    = "sphere"
  diameter = "3 in"
}
mold "brick" {
  shape  = "block"
  width  = "2 in"
  length = "3 in"
  height = "4 in"
}
mold "pebble" {
  shape = "other"
  holds = "400.7213 mL"
}
mold "measured" {
  shape    = "cylinder"
  diameter = "3 in"
  height   = "6 in"
  holds    = "680 mL"
}
mold "little" {
  makes    = "votive"
  shape    = "cylinder"
  diameter = "40 mm"
  height   = "50 mm"
}
mold "unmeasured" {
  shape    = "cylinder"
  diameter = "3 in"
}
container "tumbler" {
  kind     = "jar"
  diameter = "80 mm"
  height   = "100 mm"
  holds    = "400 mL"
}
container "bowl" {
  kind     = "bowl"
  diameter = "120 mm"
  height   = "60 mm"
  holds    = "400 mL"
}
container "cup" {
  kind  = "tealight cup"
  holds = "14 mL"
}
taper "candle" {
  diameter = "20 mm"
  length   = "250 mm"
}
wick "braid" {
  construction = "flat braid"
}
`

// of reads a shop of the shelf and one recipe with this body, and works out
// its batch.
func of(t testing.TB, body string) *batch.Batch {
	t.Helper()
	b, _ := viewed(t, body)
	return b
}

func viewed(t testing.TB, body string) (*batch.Batch, *lint.View) {
	t.Helper()
	return shopWith(t, shelf, body)
}

func shopWith(t testing.TB, stock, body string) (*batch.Batch, *lint.View) {
	t.Helper()
	files := []*schema.File{schema.Read("stock.candle.hcl", []byte(stock)), schema.Read("recipe.candle.hcl", []byte("recipe \"tried\" {\n"+body+"\n}\n"))}
	for _, f := range files {
		require.True(t, f.Whole, "%s does not parse: %v", f.Name, f.Problems)
	}
	require.Empty(t, files[0].Problems)
	shop := lint.NewShop("", files)
	require.Len(t, shop.Recipes(), 1)
	view := lint.NewView(shop, shop.Recipes()[0], "2026-10-20")
	return batch.Of.In(view), view
}

// is asserts a figure to so many decimal places.
func is(t *testing.T, want string, f batch.Figure, places int, what string) {
	t.Helper()
	if assert.True(t, f.Known(), "%s is not known (%v, lacks %v %s)", what, f.State, f.Lacks.Title(), f.Attr()) {
		assert.Equal(t, want, f.Value.Decimal(places), what)
	}
}

// lacks asserts that a figure is absent for want of an attribute.
func lacks(t *testing.T, key, attr string, f batch.Figure) {
	t.Helper()
	assert.Equal(t, schema.Absent, f.State)
	assert.Equal(t, attr, f.Attr())
	if key == "" {
		assert.Nil(t, f.Lacks)
	} else if assert.NotNil(t, f.Lacks) {
		assert.Equal(t, key, f.Lacks.Label)
	}
}

func isBroken(t *testing.T, f batch.Figure) {
	t.Helper()
	assert.Equal(t, schema.Broken, f.State)
}

func ratio(n, d int64) quantity.Rat { return quantity.NewRat(n, d) }
