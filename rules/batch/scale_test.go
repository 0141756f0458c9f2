package batch_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"wickrule/schema/quantity"
)

// Each candle of 695 mL at 0.90 g/mL takes 625.5 g.
func TestNeeded(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "1000 g" }
  fragrance "thyme" { load = "5 % of wax" }
  dye "rust" { amount = "to shade" }
  mold "round" { count = 2 }`)
	needs := b.Needed(4)
	assert.Len(t, needs, 3)
	total := quantity.Int(0)
	for _, n := range needs[:2] {
		total = total.Add(n.Scaled.Value)
	}
	assert.Equal(t, "2502", total.Decimal(2))
	is(t, "2382.86", needs[0].Scaled, 2, "wax, 2502 / 1.05")
	is(t, "119.14", needs[1].Scaled, 2, "fragrance")
	assert.False(t, needs[2].Scaled.Known(), "by eye")
}

func TestYield(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "1500 g" }
  mold "round" { count = 2 }`)
	y, ok := b.Yield()
	assert.True(t, ok)
	assert.Equal(t, []int{2}, y.Filled)
	assert.Equal(t, "249", y.Left.Decimal(1))
	assert.Equal(t, "0.398", y.LeftFor.Decimal(3))
	is(t, "0.199", b.Spare, 3, "spare")

	b = of(t, `
  wax "quarry" { weight = "900 g" }
  mold "round" { }
  mold "little" { count = 2 }`)
	y, ok = b.Yield()
	assert.True(t, ok)
	// A little one is pi 4² 5 / 4 = 62.832 mL, 56.549 g: four more.
	assert.Equal(t, []int{1, 4}, y.Filled)

	_, ok = of(t, `wax "quarry" { weight = "900 g" }`).Yield()
	assert.False(t, ok)
}
