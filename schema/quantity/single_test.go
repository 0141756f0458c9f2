package quantity

import (
	"testing"
	"unsafe"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestASingleAmountComesBackWhole(t *testing.T) {
	for _, text := range []string{"36 oz", "2 lb 8 oz", "1.130 kg", " 20g ", "-5 °C", "1/3 in", "2½ in", "7.50 % of wax", "3 drops", "0 g", "12 %"} {
		q := mustParse(t, text)
		s, ok := q.Single()
		require.True(t, ok, text)
		assert.Equal(t, q, s.Quantity(text))
	}
	for _, text := range []string{"168 to 182 °F", "20 g to 1 oz", "0.0000000000000000000000001 g"} {
		_, ok := mustParse(t, text).Single()
		assert.False(t, ok, text)
	}
	_, ok := mustParse(t, "168 to 182 °F").Low().Single()
	assert.False(t, ok, "its text is in two pieces")
	assert.Equal(t, uintptr(24), unsafe.Sizeof(Single{}))
}
