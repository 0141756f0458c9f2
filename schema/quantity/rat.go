package quantity

import (
	"math/big"
	"math/bits"
	"strconv"
	"strings"
)

// Rat is an exact rational number. The zero value is 0. It is held as a reduced int64 fraction, and as a
// *big.Rat only where that would overflow, so ordinary figures cost no allocation. A Rat never changes.
type Rat struct {
	n, d int64 // reduced, d > 0; zero is always 0, 0
	big  *big.Rat
}

// NewRat is n over d. Like big.NewRat it panics where d is 0: a fraction over nothing is a mistake in the program.
func NewRat(n, d int64) Rat {
	if d == 0 {
		panic("quantity: a fraction over 0")
	}
	neg := (n < 0) != (d < 0)
	return fromParts(neg, magnitude(n), magnitude(d))
}

// Int is the whole number n.
func Int(n int64) Rat { return NewRat(n, 1) }

// fromBig takes r over; it is brought back to int64 where it fits, so equal numbers have one form.
func fromBig(r *big.Rat) Rat {
	if r.Sign() == 0 {
		return Rat{}
	}
	num, den := r.Num(), r.Denom()
	if num.IsInt64() && den.IsInt64() && num.Int64() != -1<<63 {
		return Rat{n: num.Int64(), d: den.Int64()}
	}
	return Rat{big: r}
}

// fromParts reduces num over den, den not 0.
func fromParts(neg bool, num, den uint64) Rat {
	if num == 0 {
		return Rat{}
	}
	if den != 1 {
		g := gcd(num, den)
		num, den = num/g, den/g
	}
	if num > 1<<63-1 || den > 1<<63-1 {
		r := new(big.Rat).SetFrac(new(big.Int).SetUint64(num), new(big.Int).SetUint64(den))
		if neg {
			r.Neg(r)
		}
		return Rat{big: r}
	}
	if neg {
		return Rat{n: -int64(num), d: int64(den)}
	}
	return Rat{n: int64(num), d: int64(den)}
}

// magnitude is |n|, right for the most negative int64 too.
func magnitude(n int64) uint64 {
	if n < 0 {
		return -uint64(n)
	}
	return uint64(n)
}

// gcd is the greatest common divisor of two numbers that are not both 0, by halving and subtracting:
// several times faster than dividing.
func gcd(a, b uint64) uint64 {
	if a == 0 {
		return b
	}
	if b == 0 {
		return a
	}
	shift := bits.TrailingZeros64(a | b)
	a >>= bits.TrailingZeros64(a)
	for b != 0 {
		b >>= bits.TrailingZeros64(b)
		if a > b {
			a, b = b, a
		}
		b -= a
	}
	return a << shift
}

// den is the denominator of a small number; the zero value stands for 0/1.
func (r Rat) den() int64 {
	if r.d == 0 {
		return 1
	}
	return r.d
}

// Big is a copy as a *big.Rat.
func (r Rat) Big() *big.Rat {
	if r.big != nil {
		return new(big.Rat).Set(r.big)
	}
	return big.NewRat(r.n, r.den())
}

// asBig is the number as a *big.Rat that must not be changed.
func (r Rat) asBig() *big.Rat {
	if r.big != nil {
		return r.big
	}
	return big.NewRat(r.n, r.den())
}

// mulFits is a*b and whether it stays below 2^63.
func mulFits(a, b uint64) (uint64, bool) {
	hi, lo := bits.Mul64(a, b)
	return lo, hi == 0 && lo <= 1<<63-1
}

// Add is r + s.
func (r Rat) Add(s Rat) Rat {
	if r.big == nil && s.big == nil {
		if sum, ok := addSmall(r, s); ok {
			return sum
		}
	}
	return fromBig(new(big.Rat).Add(r.asBig(), s.asBig()))
}

func addSmall(r, s Rat) (Rat, bool) {
	rd, sd := uint64(r.den()), uint64(s.den())
	g := uint64(1)
	if rd != 1 && sd != 1 {
		g = gcd(rd, sd)
	}
	a, okA := mulFits(magnitude(r.n), sd/g)
	b, okB := mulFits(magnitude(s.n), rd/g)
	den, okD := mulFits(rd, sd/g)
	if !okA || !okB || !okD {
		return Rat{}, false
	}
	x, y := int64(a), int64(b)
	if r.n < 0 {
		x = -x
	}
	if s.n < 0 {
		y = -y
	}
	sum := x + y
	if (x > 0) == (y > 0) && (sum > 0) != (x > 0) && x != 0 && y != 0 {
		return Rat{}, false
	}
	return fromParts(sum < 0, magnitude(sum), den), true
}

// Sub is r - s.
func (r Rat) Sub(s Rat) Rat { return r.Add(s.Neg()) }

// Mul is r times s.
func (r Rat) Mul(s Rat) Rat {
	if r.big == nil && s.big == nil {
		neg := (r.n < 0) != (s.n < 0)
		if p, ok := mulSmall(neg, magnitude(r.n), uint64(r.den()), magnitude(s.n), uint64(s.den())); ok {
			return p
		}
	}
	return fromBig(new(big.Rat).Mul(r.asBig(), s.asBig()))
}

// mulSmall is (rn/rd) times (sn/sd). Both are reduced, so dividing crosswise leaves a reduced product.
func mulSmall(neg bool, rn, rd, sn, sd uint64) (Rat, bool) {
	if rn == 0 || sn == 0 {
		return Rat{}, true
	}
	if sd != 1 {
		g := gcd(rn, sd)
		rn, sd = rn/g, sd/g
	}
	if rd != 1 {
		g := gcd(sn, rd)
		sn, rd = sn/g, rd/g
	}
	num, okN := mulFits(rn, sn)
	den, okD := mulFits(rd, sd)
	if !okN || !okD {
		return Rat{}, false
	}
	if neg {
		return Rat{n: -int64(num), d: int64(den)}, true
	}
	return Rat{n: int64(num), d: int64(den)}, true
}

// Quo is r over s. Where s is 0 it is 0 and false.
func (r Rat) Quo(s Rat) (Rat, bool) {
	if s.IsZero() {
		return Rat{}, false
	}
	if r.big == nil && s.big == nil {
		neg := (r.n < 0) != (s.n < 0)
		if q, ok := mulSmall(neg, magnitude(r.n), uint64(r.den()), uint64(s.den()), magnitude(s.n)); ok {
			return q, true
		}
	}
	return fromBig(new(big.Rat).Quo(r.asBig(), s.asBig())), true
}

// Neg is -r.
func (r Rat) Neg() Rat {
	if r.big != nil {
		return fromBig(new(big.Rat).Neg(r.big))
	}
	return Rat{n: -r.n, d: r.d}
}

// Abs is r without its sign.
func (r Rat) Abs() Rat {
	if r.Sign() < 0 {
		return r.Neg()
	}
	return r
}

// Sign is -1, 0 or 1.
func (r Rat) Sign() int {
	switch {
	case r.big != nil:
		return r.big.Sign()
	case r.n < 0:
		return -1
	case r.n > 0:
		return 1
	}
	return 0
}

// Cmp is -1 where r is below s, 0 where they are equal, 1 where r is above.
func (r Rat) Cmp(s Rat) int {
	if r.big != nil || s.big != nil {
		return r.asBig().Cmp(s.asBig())
	}
	if a, b := r.Sign(), s.Sign(); a != b {
		if a < b {
			return -1
		}
		return 1
	}
	hi, lo := bits.Mul64(magnitude(r.n), uint64(s.den()))
	shi, slo := bits.Mul64(magnitude(s.n), uint64(r.den()))
	cmp := 0
	switch {
	case hi < shi || hi == shi && lo < slo:
		cmp = -1
	case hi != shi || lo != slo:
		cmp = 1
	}
	if r.n < 0 {
		return -cmp
	}
	return cmp
}

// Less says whether r is below s.
func (r Rat) Less(s Rat) bool { return r.Cmp(s) < 0 }

// Equal says whether r and s are the same number.
func (r Rat) Equal(s Rat) bool { return r.Cmp(s) == 0 }

// IsZero says whether r is 0.
func (r Rat) IsZero() bool { return r.big == nil && r.n == 0 }

// Float64 is the nearest float, for models and drawings. Never judge a limit with it.
func (r Rat) Float64() float64 {
	const exact = 1 << 53 // whole numbers up to here are floats, and one division rounds once
	if r.big == nil && -exact <= r.n && r.n <= exact && r.d <= exact {
		return float64(r.n) / float64(r.den())
	}
	f, _ := r.asBig().Float64()
	return f
}

// Min is the smaller of two numbers.
func Min(a, b Rat) Rat {
	if b.Less(a) {
		return b
	}
	return a
}

// Max is the larger of two numbers.
func Max(a, b Rat) Rat {
	if a.Less(b) {
		return b
	}
	return a
}

// isInt says whether r is a whole number.
func (r Rat) isInt() bool {
	if r.big != nil {
		return r.big.IsInt()
	}
	return r.den() == 1
}

// floorInt is the largest whole number not above r.
func (r Rat) floorInt() Rat {
	if r.isInt() {
		return r
	}
	if r.big != nil {
		// Int.Div rounds towards minus infinity for a positive divisor, and a denominator is one.
		return fromBig(new(big.Rat).SetInt(new(big.Int).Div(r.big.Num(), r.big.Denom())))
	}
	n := r.n / r.d
	if r.n < 0 {
		n--
	}
	return Int(n)
}

// Floor is the largest multiple of step not above r, as a lowered load is rounded: down, never up. Where step is
// not above 0 it is r itself.
func (r Rat) Floor(step Rat) Rat {
	if step.Sign() <= 0 {
		return r
	}
	if n, ok := r.floorSmall(step); ok {
		return Int(n).Mul(step)
	}
	n, _ := r.Quo(step)
	return n.floorInt().Mul(step)
}

// floorSmall is how many whole steps go into r, where two machine words are
// enough to tell: the quotient itself need not fit, as a measure with pi in it
// cut to millionths does not.
func (r Rat) floorSmall(step Rat) (int64, bool) {
	if r.big != nil || step.big != nil || r.n < 0 {
		return 0, false
	}
	over, den := bits.Mul64(uint64(r.den()), uint64(step.n))
	high, low := bits.Mul64(uint64(r.n), uint64(step.den()))
	if over != 0 || high >= den {
		return 0, false
	}
	whole, _ := bits.Div64(high, low, den)
	return int64(whole), whole <= 1<<63-1
}

// Ceil is the smallest multiple of step not below r. Where step is not above 0 it is r itself.
func (r Rat) Ceil(step Rat) Rat { return r.Neg().Floor(step).Neg() }

// Decimal is r with at most so many decimal places, rounded half away from zero, trailing zeros dropped.
func (r Rat) Decimal(places int) string {
	if r.isInt() && r.big == nil {
		return strconv.FormatInt(r.n, 10)
	}
	text := r.asBig().FloatString(places)
	if strings.IndexByte(text, '.') >= 0 {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}
