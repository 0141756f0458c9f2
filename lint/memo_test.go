package lint

import (
	"sync"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"

	"wickrule/schema"
)

// A key is computed once in a shop, whoever asks and how many at once; in what
// an edit makes of the shop as well; and never more are kept than the bound.
func TestMemo(t *testing.T) {
	var computed atomic.Int64
	double := NewMemo("double", func(n int) int { computed.Add(1); return 2 * n })
	shop := NewShop(".", nil)
	var wg sync.WaitGroup
	for range 8 {
		wg.Go(func() {
			for n := range 100 {
				if got := double.In(&View{shop: shop}, n); got != 2*n {
					t.Errorf("double of %d is %d", n, got)
				}
			}
		})
	}
	wg.Wait()
	assert.EqualValues(t, 100, computed.Load())

	assert.Equal(t, 100, double.Kept(shop))

	edited := shop.With(schema.Read("a.candle.hcl", nil))
	assert.Equal(t, 14, double.In(&View{shop: edited}, 7))
	assert.EqualValues(t, 100, computed.Load())

	for n := range 3 * mostMemos {
		double.In(&View{shop: shop}, n)
	}
	assert.LessOrEqual(t, len(shop.memos.kept), mostMemos)
}
