package batch_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

// The two meanings of a load, for a batch of 1000 g in all: 8 % of wax is
// 925.926 g and 74.074 g, 8 % of total is 920 g and 80 g. Both follow from the
// definitions, w + 0.08 w = 1000 and 0.08 * 1000.
func TestOfWaxAndOfTotal(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "925.925926 g" }
  fragrance "thyme" { load = "8 % of wax" }`)
	is(t, "1000", b.Total, 3, "total")
	is(t, "74.074", b.Fragrances[0].Weight, 3, "fragrance")
	is(t, "0.08", b.FragranceOfWax, 6, "of wax")
	is(t, "0.0740741", b.FragranceOfTotal, 7, "of total")

	b = of(t, `
  wax "quarry" { weight = "920 g" }
  fragrance "thyme" { load = "8 % of total" }`)
	is(t, "1000", b.Total, 9, "total")
	is(t, "80", b.Fragrances[0].Weight, 9, "fragrance")
	is(t, "0.08", b.FragranceOfTotal, 9, "of total")
	is(t, "0.0869565", b.FragranceOfWax, 7, "of wax")
}

// Sixteen ounces are a pound (NIST HB 44, Appendix C), so 1 oz per lb is 1/16
// of the wax and 1/17 of the total.
func TestOuncesPerPound(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "1 lb" }
  fragrance "thyme" { load = "1 oz per lb" }`)
	assert.True(t, b.FragranceOfWax.Value.Equal(ratio(1, 16)))
	assert.True(t, b.FragranceOfTotal.Value.Equal(ratio(1, 17)))
	// The ounce is 28.349 523 125 g exactly: NIST SP 811, Appendix B.
	is(t, "28.349523125", b.Fragrances[0].Weight, 9, "fragrance")

	b = of(t, `
  wax "quarry" { weight = "1 lb" }
  fragrance "thyme" { load = "1.5 oz per lb" }`)
	is(t, "0.09375", b.FragranceOfWax, 9, "of wax")
	is(t, "0.085714286", b.FragranceOfTotal, 9, "of total")
}

// 3 oz of fragrance in 50 oz of wax is exactly 6 % of wax: no rounding.
func TestThreeOuncesInFifty(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "50 oz" }
  fragrance "thyme" { weight = "3 oz" }`)
	assert.True(t, b.FragranceOfWax.Value.Equal(ratio(6, 100)))
	l := b.FragranceLimit()
	assert.False(t, l.Strictest.Value.Less(l.Load.Value), "6 % is within a limit of 6 %")
}

// The proportions that turn one basis into the other, a / (1 + a) and
// t / (1 - t), to seven figures.
func TestTables(t *testing.T) {
	for _, c := range []struct {
		from int64
		want string
	}{{6, "5.660377"}, {8, "7.407407"}, {10, "9.090909"}, {12, "10.714286"}} {
		assert.Equal(t, c.want, batch.TotalFromWax(ratio(c.from, 100)).Mul(quantity.Int(100)).Decimal(6), "%d %% of wax", c.from)
	}
	for _, c := range []struct {
		from int64
		want string
	}{{5, "5.263158"}, {6, "6.382979"}, {8, "8.695652"}, {10, "11.111111"}} {
		a, ok := batch.WaxFromTotal(ratio(c.from, 100))
		assert.True(t, ok)
		assert.Equal(t, c.want, a.Mul(quantity.Int(100)).Decimal(6), "%d %% of total", c.from)
	}
	_, ok := batch.WaxFromTotal(quantity.Int(1))
	assert.False(t, ok, "100 % of total leaves no wax")
}

// Loads of wax, loads of total and weights in one recipe. By hand:
// total = (500 (1 + 0.04) + 12) / (1 - 0.05) = 532 / 0.95 = 560 g.
func TestMixedLoadsAreSolvedExactly(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "500 g" }
  fragrance "thyme" { load = "5 % of total" }
  fragrance "kelp" { load = "4 % of wax" }
  additive "hardener" { weight = "12 g" }`)
	assert.True(t, b.Total.Value.Equal(quantity.Int(560)))
	assert.True(t, b.Fragrances[0].Weight.Value.Equal(quantity.Int(28)))
	assert.True(t, b.Fragrances[1].Weight.Value.Equal(quantity.Int(20)))
	assert.True(t, b.FragranceOfWax.Value.Equal(ratio(48, 500)))
	assert.True(t, b.FragranceOfTotal.Value.Equal(ratio(48, 560)))
	assert.True(t, b.Additives[0].OfTotal.Value.Equal(ratio(12, 560)))
	sum := quantity.Int(0)
	for _, list := range [][]batch.Ingredient{b.Waxes, b.Fragrances, b.Additives} {
		for _, in := range list {
			sum = sum.Add(in.Weight.Value)
		}
	}
	assert.True(t, sum.Equal(b.Total.Value), "what is weighed in makes the total")
}

func TestLoadsAreKnownWithoutTheWax(t *testing.T) {
	b := of(t, `
  wax "quarry" { }
  fragrance "thyme" { load = "8 % of wax" }`)
	lacks(t, "quarry", "weight", b.WaxWeight)
	lacks(t, "quarry", "weight", b.Total)
	lacks(t, "quarry", "weight", b.Fragrances[0].Weight)
	is(t, "0.08", b.FragranceOfWax, 6, "of wax")
	is(t, "0.0740741", b.FragranceOfTotal, 7, "of total")

	b = of(t, `
  wax "quarry" { }
  fragrance "thyme" { load = "8 % of wax" }
  dye "rust" { weight = "1 g" }`)
	is(t, "0.08", b.FragranceOfWax, 6, "of wax")
	lacks(t, "quarry", "weight", b.FragranceOfTotal)
}

func TestABarePercentIsReadAsOfWax(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "100 g" }
  fragrance "thyme" { load = "8 %" }`)
	is(t, "8", b.Fragrances[0].Weight, 6, "fragrance")
	is(t, "0.08", b.FragranceOfWax, 6, "of wax")
}

func TestCountsAndVolumesAreWeighedThroughTheStock(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "1 kg" }
  fragrance "thyme" { weight = "40 mL" }
  dye "rust" { amount = "10 drops" }
  dye "rust" { weight = "1/2 block" }`)
	is(t, "38", b.Fragrances[0].Weight, 6, "40 mL at 0.95 g/mL")
	is(t, "0.3", b.Dyes[0].Weight, 6, "drops")
	is(t, "0.6", b.Dyes[1].Weight, 6, "half a block")
	is(t, "1038.9", b.Total, 6, "total")
}

// A US fluid ounce is 29.573 529 562 5 mL exactly (NIST SP 811, Appendix B),
// so 1 fl oz of oil at 0.95 g/mL weighs 28.0949 g.
func TestAFluidOunceOfOil(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "1 kg" }
  fragrance "thyme" { weight = "1 fl oz" }`)
	is(t, "28.0949", b.Fragrances[0].Weight, 4, "a fluid ounce")
}

func TestWhatIsNotStatedIsAskedFor(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "1 kg" }
  fragrance "kelp" { weight = "40 mL" }
  dye "chalk" { amount = "10 drops" }
  dye "chalk" { amount = "2 chips" }`)
	lacks(t, "kelp", "density", b.Fragrances[0].Weight)
	lacks(t, "chalk", "drop", b.Dyes[0].Weight)
	lacks(t, "chalk", "piece", b.Dyes[1].Weight)
	lacks(t, "kelp", "density", b.Total)

	b = of(t, `
  wax "quarry" { weight = "1 kg" }
  fragrance "kelp" { }`)
	lacks(t, "kelp", "load", b.FragranceOfWax)
}

func TestByEyeCountsAsNothing(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "1 kg" }
  dye "rust" { amount = "to shade" }`)
	is(t, "1000", b.Total, 6, "total")
	assert.True(t, b.Dyes[0].ByEye)
	lacks(t, "", "", b.Dyes[0].Weight)
	lacks(t, "", "", b.Dyes[0].OfWax)
}

// The format has no ranges in a recipe's loads and weights: nobody weighs one.
func TestALoadThatIsARangeIsBroken(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "100 g" }
  fragrance "thyme" { load = "4 to 6 % of wax" }`)
	isBroken(t, b.FragranceOfWax)
	isBroken(t, b.Total)
}

func TestAWeightCountsAndTheLoadIsKept(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "1 kg" }
  fragrance "thyme" {
    load   = "5 % of wax"
    weight = "65 g"
  }
  fragrance "kelp" {
    load   = "1 % of total"
    weight = "10 g"
  }`)
	is(t, "0.075", b.FragranceOfWax, 6, "of wax")
	is(t, "50", b.LoadWeight(&b.Fragrances[0]), 6, "what the load asks for")
	is(t, "10.75", b.LoadWeight(&b.Fragrances[1]), 6, "what the load of total asks for")
}

func TestUnknownStockBreaksOnlyWhatRestsOnIt(t *testing.T) {
	b := of(t, `
  wax "quary" { weight = "1 kg" }
  fragrance "time" { weight = "40 mL" }
  fragrance "tyme" { weight = "50 g" }`)
	is(t, "1000", b.WaxWeight, 6, "wax")
	isBroken(t, b.Fragrances[0].Weight)
	is(t, "50", b.Fragrances[1].Weight, 6, "a weight rests on nothing")
	isBroken(t, b.FragranceOfWax)
	assert.Nil(t, b.Waxes[0].Stock)
}

func TestBrokenValuesBreak(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "a kilo or so" }
  fragrance "thyme" { weight = "50 g" }`)
	isBroken(t, b.WaxWeight)
	isBroken(t, b.Total)
	isBroken(t, b.FragranceOfWax)

	b = of(t, `
  wax "quarry" { weight = "1 kg" }
  fragrance "thyme" { load = "lots" }`)
	isBroken(t, b.FragranceOfWax)
	isBroken(t, b.Total)
}

func TestNothingDividesByNothing(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "0 g" }
  fragrance "thyme" { weight = "50 g" }`)
	isBroken(t, b.FragranceOfWax)
	b = of(t, `
  wax "quarry" { weight = "1 kg" }
  fragrance "thyme" { load = "100 % of total" }`)
	isBroken(t, b.Total)
	b = of(t, ``)
	lacks(t, "", "", b.WaxWeight)
	lacks(t, "", "", b.Takes)
	assert.Equal(t, "", b.Makes)
}

func TestAnUnscentedRecipeHasALoadOfNothing(t *testing.T) {
	b := of(t, `wax "quarry" { weight = "1 kg" }`)
	is(t, "0", b.FragranceOfWax, 6, "of wax")
	is(t, "0", b.FragranceOfTotal, 6, "of total")
}

// A second way to the same total: feed the loads of total back into it until
// it stops changing.
func TestTheTotalIsTheFixedPoint(t *testing.T) {
	for _, c := range []struct{ wax, ofWax, ofTotal, weight float64 }{
		{500, 4, 5, 12}, {1450, 0, 8, 0.6}, {33.3, 10, 12.5, 7}, {2000, 0.25, 0, 3}, {800, 6, 40, 1},
	} {
		b := of(t, fmt.Sprintf(`
  wax "quarry" { weight = "%v g" }
  fragrance "thyme" { load = "%v %% of wax" }
  fragrance "kelp" { load = "%v %% of total" }
  additive "hardener" { weight = "%v g" }`, c.wax, c.ofWax, c.ofTotal, c.weight))
		total := 0.0
		for range 200 {
			total = c.wax*(1+c.ofWax/100) + c.weight + total*c.ofTotal/100
		}
		assert.InDelta(t, total, b.Total.Value.Float64(), 1e-6, "%+v", c)
		assert.InDelta(t, total*c.ofTotal/100, b.Fragrances[1].Weight.Value.Float64(), 1e-6, "%+v", c)
	}
}
