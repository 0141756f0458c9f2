package quantity

import (
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestRatStaysReducedAndSmall(t *testing.T) {
	assert.Equal(t, Rat{n: 1, d: 2}, NewRat(2, 4))
	assert.Equal(t, Rat{n: -1, d: 2}, NewRat(1, -2))
	assert.Equal(t, Rat{}, NewRat(0, 7), "zero has one form")
	assert.True(t, Rat{}.Equal(Int(0)))
	assert.Equal(t, Rat{n: 5, d: 6}, NewRat(1, 2).Add(NewRat(1, 3)))
	assert.Nil(t, Int(math.MaxInt64).Sub(Int(1)).big)
}

func TestRatTakesOverflowInItsStride(t *testing.T) {
	huge := Int(math.MaxInt64)
	sum := huge.Add(huge)
	assert.Equal(t, "18446744073709551614", sum.Decimal(3))
	back := sum.Sub(huge)
	assert.Equal(t, huge, back, "what fits again is small again")
	assert.Equal(t, "-9223372036854775808", Int(math.MinInt64).Decimal(0))
	assert.Equal(t, "9223372036854775808", Int(math.MinInt64).Abs().Decimal(0))
	assert.Equal(t, 1, huge.Mul(huge).Cmp(huge))
}

func TestRatQuoByZero(t *testing.T) {
	q, ok := Int(3).Quo(Rat{})
	assert.False(t, ok)
	assert.True(t, q.IsZero())
}

func TestDecimalRoundsHalfAwayFromZero(t *testing.T) {
	for _, c := range []struct {
		r      Rat
		places int
		want   string
	}{
		{NewRat(1, 8), 2, "0.13"},
		{NewRat(-1, 8), 2, "-0.13"},
		{NewRat(5, 2), 0, "3"},
		{NewRat(-5, 2), 0, "-3"},
		{NewRat(3, 2), 4, "1.5"},
		{NewRat(1, 3), 4, "0.3333"},
		{NewRat(-1, 1000), 2, "0"},
		{Int(1200), 2, "1200"},
		{NewRat(99_999, 1000), 1, "100"},
	} {
		assert.Equal(t, c.want, c.r.Decimal(c.places), "%v to %d places", c.r.Big(), c.places)
	}
}

func TestFloorNeverRaisesAndCeilNeverLowers(t *testing.T) {
	tenth := NewRat(1, 10)
	for _, c := range []struct{ r, floor, ceil Rat }{
		{NewRat(566, 100), NewRat(56, 10), NewRat(57, 10)},
		{NewRat(-566, 100), NewRat(-57, 10), NewRat(-56, 10)},
		{NewRat(56, 10), NewRat(56, 10), NewRat(56, 10)},
		{NewRat(1, 3), NewRat(3, 10), NewRat(4, 10)},
		{Rat{}, Rat{}, Rat{}},
	} {
		assert.True(t, c.r.Floor(tenth).Equal(c.floor), "floor of %v", c.r.Big())
		assert.True(t, c.r.Ceil(tenth).Equal(c.ceil), "ceil of %v", c.r.Big())
	}
	assert.True(t, Int(7).Floor(Rat{}).Equal(Int(7)), "no step leaves the number")
}

func TestMinMax(t *testing.T) {
	a, b := NewRat(1, 3), NewRat(1, 2)
	assert.Equal(t, a, Min(a, b))
	assert.Equal(t, a, Min(b, a))
	assert.Equal(t, b, Max(a, b))
	assert.Equal(t, b, Max(b, a))
}

// FuzzRat holds every operation against math/big.Rat.
func FuzzRat(f *testing.F) {
	f.Add(int64(1), int64(2), int64(1), int64(3))
	f.Add(int64(math.MaxInt64), int64(1), int64(math.MinInt64), int64(math.MaxInt64))
	f.Add(int64(math.MinInt64), int64(math.MinInt64), int64(-1), int64(math.MinInt64))
	f.Add(int64(0), int64(-5), int64(-28_349_523_125), int64(1_000_000_000))
	f.Add(int64(1<<62), int64(3), int64(1<<62), int64(3))
	f.Add(int64(1<<62), int64(1), int64(3), int64(1)) // a product between 2^63 and 2^64
	f.Add(int64(1), int64(1<<62), int64(1), int64(3))
	f.Fuzz(func(t *testing.T, an, ad, bn, bd int64) {
		if ad == 0 || bd == 0 {
			return
		}
		a, b := NewRat(an, ad), NewRat(bn, bd)
		x, y := big.NewRat(an, ad), big.NewRat(bn, bd)
		same := func(what string, want *big.Rat, got Rat) {
			t.Helper()
			if want.Cmp(got.Big()) != 0 {
				t.Fatalf("%v %s %v is %v, not %v", x, what, y, want, got.Big())
			}
			if got.big == nil && got.n != 0 && (got.d <= 0 || new(big.Int).GCD(nil, nil, new(big.Int).Abs(big.NewInt(got.n)), big.NewInt(got.d)).Int64() != 1) {
				t.Fatalf("%d/%d is not reduced", got.n, got.d)
			}
			if got.big != nil && got.big.Num().IsInt64() && got.big.Denom().IsInt64() && got.big.Num().Int64() != math.MinInt64 {
				t.Fatalf("%v would fit an int64", got.big)
			}
		}
		same("itself", x, a)
		same("+", new(big.Rat).Add(x, y), a.Add(b))
		same("-", new(big.Rat).Sub(x, y), a.Sub(b))
		same("*", new(big.Rat).Mul(x, y), a.Mul(b))
		same("neg", new(big.Rat).Neg(x), a.Neg())
		same("abs", new(big.Rat).Abs(x), a.Abs())
		if q, ok := a.Quo(b); ok {
			same("/", new(big.Rat).Quo(x, y), q)
		} else if y.Sign() != 0 {
			t.Fatalf("%v / %v has no answer", x, y)
		}
		if a.Cmp(b) != x.Cmp(y) || a.Sign() != x.Sign() || a.IsZero() != (x.Sign() == 0) {
			t.Fatalf("%v and %v are ordered otherwise", x, y)
		}
		if want, _ := x.Float64(); want != a.Float64() {
			t.Fatalf("%v as a float", x)
		}
		if b.Sign() > 0 {
			floor, ceil := a.Floor(b), a.Ceil(b)
			n, _ := floor.Quo(b)
			if !n.isInt() || a.Less(floor) || !a.Less(floor.Add(b)) || ceil.Less(a) {
				t.Fatalf("floor of %v by %v is %v", x, y, floor.Big())
			}
		}
	})
}
