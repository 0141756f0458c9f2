package quantity

import (
	"math/big"
	"strings"
	"testing"
	"unsafe"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ratio is a number in a test, written "25/3" or "0.05".
func ratio(t *testing.T, text string) *big.Rat {
	t.Helper()
	r, ok := new(big.Rat).SetString(text)
	require.True(t, ok, text)
	return r
}

func mustParse(t testing.TB, text string, accept ...Dimension) Quantity {
	t.Helper()
	q, err := Parse(text, accept...)
	if err != nil {
		t.Fatalf("%q: %s", text, err.Message)
	}
	return q
}

func TestReading(t *testing.T) {
	for _, c := range []struct {
		text      string
		dim       Dimension
		low, high string // base units; high "" for no range
	}{
		{"36 oz", Weight, "1020.5828325", ""},
		{"2 lb 8 oz", Weight, "1133.980925", ""},
		{"2lb8oz", Weight, "1133.980925", ""},
		{"1.13 kg", Weight, "1130", ""},
		{"20g", Weight, "20", ""},
		{".5 g", Weight, "1/2", ""},
		{"0 g", Weight, "0", ""},
		{"1 lb 8 oz to 2 lb", Weight, "680.388555", "907.18474"},
		{"20 g to 1 oz", Weight, "20", "28.349523125"},
		{"20g-30g", Weight, "20", "30"},
		{"300 mL", Volume, "300", ""},
		{"1 cup 2 fl oz", Volume, "295.735295625", ""},
		{"1/4 in", Length, "6.35", ""},
		{"1⁄4 in", Length, "6.35", ""},
		{"2 1/2 in", Length, "63.5", ""},
		{"2½ in", Length, "63.5", ""},
		{"2 ½ in", Length, "63.5", ""},
		{"½\"", Length, "12.7", ""},
		{"⅜ in", Length, "9.525", ""},
		{"⅓ cm", Length, "10/3", ""},
		{"1/2 to 3/4 in", Length, "12.7", "19.05"},
		{"168 to 182 °F", Temperature, "680/9", "250/3"},
		{"168 °F to 182 °F", Temperature, "680/9", "250/3"},
		{"168–182 °F", Temperature, "680/9", "250/3"},
		{"168 - 182 °F", Temperature, "680/9", "250/3"},
		{"168TO182 °F", Temperature, "680/9", "250/3"},
		{"100 °F to 45 °C", Temperature, "340/9", "45"},
		{"-5 °C", Temperature, "-5", ""},
		{"−5 °C", Temperature, "-5", ""},
		{"-5--2 °C", Temperature, "-5", "-2"},
		{"-5 to 5 °C", Temperature, "-5", "5"},
		{"4 to 8 °F", Difference, "20/9", "40/9"},
		{"15 °F", Difference, "25/3", ""},
		{"10 °C", Difference, "10", ""},
		{"1 h 45 min", Time, "6300", ""},
		{"2 weeks", Time, "1209600", ""},
		{"3–4 h", Time, "10800", "14400"},
		{"8 % of wax", Proportion, "2/25", ""},
		{"1 oz per lb", Proportion, "1/16", ""},
		{"60 g/kg", Proportion, "3/50", ""},
		{"5 to 10 % of wax", Proportion, "1/20", "1/10"},
		{"5 % to 10 % of wax", Proportion, "1/20", "1/10"},
		{"25 % of total", Proportion, "1/4", ""},
		{"12 %", Share, "3/25", ""},
		{"10 to 25 %", Share, "1/10", "1/4"},
		{"10 % to 25 %", Share, "1/10", "1/4"},
		{"0.90 g/mL", Density, "9/10", ""},
		{"900 kg/m³", Density, "9/10", ""},
		{"3 drops", Count, "3", ""},
		{"1/2 block", Count, "1/2", ""},
		{"12 candles", Count, "12", ""},
		{"0.0000000000000000000000000001 g", Weight, "0.0000000000000000000000000001", ""},
		{"123456789012345678901234567890 kg", Weight, "123456789012345678901234567890000", ""},
	} {
		q, err := Parse(c.text, c.dim)
		if !assert.Nil(t, err, "%q", c.text) {
			continue
		}
		assert.Equal(t, c.dim, q.Dim(), c.text)
		assert.Zero(t, ratio(t, c.low).Cmp(q.Base().Big()), "%q is %v", c.text, q.Base().Big())
		assert.Equal(t, c.high != "", q.IsRange(), c.text)
		if c.high != "" {
			assert.Zero(t, ratio(t, c.high).Cmp(q.High().Base().Big()), "%q up to %v", c.text, q.High().Base().Big())
		}
		assert.Equal(t, c.text, q.String(), "what was written prints back")
		assert.Equal(t, c.text, q.Written())
	}
}

// NIST SP 811 B.8: t/°C = (t/°F - 32)/1.8, and an interval of 1 °F is 1/1.8 K.
func TestFahrenheitAsPublished(t *testing.T) {
	for f, c := range map[string]string{
		"120 °F": "440/9", "140 °F": "60", "170 °F": "690/9", "175 °F": "715/9", "185 °F": "85", "200 °F": "840/9", "212 °F": "100",
		"225 °F": "965/9", "250 °F": "1090/9", "400 °F": "1840/9", "-40 °F": "-40", "32 °F": "0",
	} {
		assert.Zero(t, ratio(t, c).Cmp(mustParse(t, f).Base().Big()), f)
	}
	for f, k := range map[string]string{"10 °F": "50/9", "15 °F": "25/3", "20 °F": "100/9"} {
		assert.Zero(t, ratio(t, k).Cmp(mustParse(t, f, Difference).Base().Big()), "a difference of %s", f)
	}
	assert.Equal(t, Temperature, mustParse(t, "15 °F", Difference, Temperature).Dim(), "a temperature wins where both may stand")
}

// Common practice in the trade: an ounce of fragrance to the pound of wax; of total = a/(1+a) by algebra.
func TestLoadsAreExact(t *testing.T) {
	assert.Equal(t, "6.25 % of wax", mustParse(t, "1 oz per lb").In(PercentOfWax).String())
	assert.Equal(t, "9.375 % of wax", mustParse(t, "1.5 oz per lb").In(PercentOfWax).String())
	load, ok := mustParse(t, "3 oz").Base().Quo(mustParse(t, "50 oz").Base())
	require.True(t, ok)
	limit := mustParse(t, "6 % of wax")
	assert.True(t, load.Equal(limit.Base()), "3 oz in 50 oz is exactly 6 %")
	assert.Zero(t, FromBase(load, PercentOfWax).Cmp(limit))
	assert.True(t, mustParse(t, "5 % of wax").Base().Mul(mustParse(t, "20 %").Base()).Equal(mustParse(t, "1.0 %").Base()))
	total, _ := mustParse(t, "1 oz per lb").Base().Quo(mustParse(t, "1 oz per lb").Base().Add(Int(1)))
	assert.True(t, total.Equal(NewRat(1, 17)))
}

// 16 CFR 500.19(a) tabulates the rounded factors of the label law; the exact ones must round to them.
func TestLabelLawFactors(t *testing.T) {
	assert.Equal(t, "28.3495", Ounce.Factor.Decimal(4))
	assert.Equal(t, "453.592", Pound.Factor.Decimal(3))
	assert.Equal(t, "29.5735", FluidOunce.Factor.Decimal(4))
	assert.Equal(t, "2.54", mustParse(t, "1 in").In(Centimeter).Number().Decimal(4))
}

func TestFaults(t *testing.T) {
	for _, c := range []struct {
		text    string
		accept  []Dimension
		kind    ErrorKind
		at      string // the characters at fault
		says    string // part of the message
		suggest []string
	}{
		{"", []Dimension{Weight}, Empty, "", `write a weight, for instance "36 oz"`, nil},
		{"  ", []Dimension{Weight}, Empty, "  ", "nothing is written", nil},
		{"warm", []Dimension{Temperature}, NoNumber, "warm", `"176 °F"`, nil},
		{"about 65 g", []Dimension{Weight}, NoNumber, "about 65 g", "65 g", []string{"65 g"}},
		{"+10 °F", []Dimension{Difference}, NoNumber, "+10 °F", "10 °F", []string{"10 °F"}},
		{"168 to", []Dimension{Temperature}, NoNumber, " to", "upper end", nil},
		{"20", []Dimension{Weight}, UnitMissing, "20", "needs its unit", []string{"20 oz", "20 g", "20 lb", "20 kg"}},
		{"0.06", []Dimension{Proportion}, UnitMissing, "0.06", "needs its unit", []string{"0.06 % of wax", "0.06 % of total", "0.06 oz per lb"}},
		{"168 to 182", []Dimension{Temperature}, UnitMissing, "168 to 182", "", []string{"168 to 182 °F", "168 to 182 °C"}},
		{"168 °F to 182", []Dimension{Temperature}, UnitMissing, "182", "", []string{"168 °F to 182 °F", "168 °F to 182 °C"}},
		{"1 h 45", []Dimension{Time}, UnitMissing, "45", "", []string{"1 h 45 min", "1 h 45 s"}},
		{"30 to 1 h 45 min", []Dimension{Time}, UnitMissing, "30", "", []string{"30 min to 1 h 45 min", "30 s to 1 h 45 min"}},
		{"36 ouncs", []Dimension{Weight}, UnitUnknown, "ouncs", "", []string{"36 oz"}},
		{"20 m", []Dimension{Time}, UnitUnknown, "m", "", []string{"20 min"}},
		{"3 dropz", []Dimension{Count}, UnitUnknown, "dropz", "", []string{"3 drops"}},
		{"20 xyzzy", []Dimension{Weight}, UnitUnknown, "xyzzy", "a weight", nil},
		{"8 % of oil", []Dimension{Proportion}, UnitUnknown, "% of oil", "a proportion", nil},
		{"8 % of wax by weight", []Dimension{Proportion}, UnitUnknown, "% of wax by weight", "", []string{"8 % of wax"}},
		{"1 hour and 45 minutes", []Dimension{Time}, UnitUnknown, "hour and", "", []string{"1 h 45 minutes"}},
		{"180 farenheit", []Dimension{Temperature}, UnitUnknown, "farenheit", "", []string{"180 °F"}},
		{"180 °", []Dimension{Temperature}, UnitUnknown, "°", "which scale", []string{"180 °F", "180 °C"}},
		{"3 troy oz", []Dimension{Weight}, UnitUnknown, "troy oz", "precious metals", nil},
		{"3 imp fl oz", []Dimension{Volume}, UnitUnknown, "imp fl oz", "write mL", nil},
		{"353 K", []Dimension{Temperature}, UnitUnknown, "K", "°F or °C", nil},
		{"2 tbsp", []Dimension{Volume}, UnitUnknown, "tbsp", "weigh it", nil},
		{"1 lb 5 oz (595 g)", []Dimension{Weight}, UnitUnknown, "oz (", "twice", []string{"1 lb 5 oz"}},
		{"10 oz", []Dimension{Volume}, WrongKind, "10 oz", "is a weight", []string{"10 fl oz"}},
		{"8 to 12 oz", []Dimension{Volume}, WrongKind, "8 to 12 oz", "is a weight", []string{"8 to 12 fl oz"}},
		{"10 fl oz", []Dimension{Weight}, WrongKind, "10 fl oz", "depends on the liquid", nil},
		{"20 g", []Dimension{Temperature}, WrongKind, "20 g", `"20 g" is a weight; what belongs here is a temperature, for instance "176 °F" or "80 °C"`, nil},
		{"20", []Dimension{Difference}, UnitMissing, "20", `20 needs its unit: write "20 °F" or "20 °C"`, []string{"20 °F", "20 °C"}},
		{"12 % of wax", []Dimension{Share}, WrongKind, "12 % of wax", "is a proportion", []string{"12 %"}},
		{"182 to 168 °F", nil, RangeDescends, "182 to 168 °F", "does not ascend", []string{"168 to 182 °F"}},
		{"182 °F to 168 °F", nil, RangeDescends, "182 °F to 168 °F", "does not ascend", []string{"168 °F to 182 °F"}},
		{"50 °C to 100 °F", nil, RangeDescends, "50 °C to 100 °F", "does not ascend", []string{"100 °F to 50 °C"}},
		{"5 to 5 g", nil, RangeDescends, "5 to 5 g", "the same", []string{"5 g"}},
		{"2-1/2 in", nil, RangeDescends, "2-1/2 in", "", []string{"2 1/2 in", "1/2-2 in"}},
		{"2,5 g", nil, NumberUnreadable, "2,5", "decimal point", []string{"2.5 g"}},
		{"1,000 g", nil, NumberUnreadable, "1,000", "thousands", []string{"1000 g", "1.000 g"}},
		{"1,234.5 g", nil, NumberUnreadable, "1,234.5", "thousands", []string{"1234.5 g"}},
		{"1.234,5 g", nil, NumberUnreadable, "1.234,5", "decimal point", []string{"1234.5 g"}},
		{"1'000 g", nil, NumberUnreadable, "1'000", "thousands", []string{"1000 g"}},
		{"1 000 g", nil, NumberUnreadable, "1 000", "one number", []string{"1000 g"}},
		{"5. g", nil, NumberUnreadable, "5.", "one number", []string{"5 g"}},
		{"1.2.3 g", nil, NumberUnreadable, "1.2.3", "one number", nil},
		{"1e9 g", nil, NumberUnreadable, "1e9", "powers of ten", nil},
		{"1E-3 g", nil, NumberUnreadable, "1E-3", "powers of ten", nil},
		{"1/0 in", nil, NumberUnreadable, "1/0", "fraction", nil},
		{"1/2/3 in", nil, NumberUnreadable, "1/2/3", "fraction", nil},
		{"2 3/2 in", nil, NumberUnreadable, "2 3/2", "fraction", nil},
		{"2.5 1/2 in", nil, NumberUnreadable, "2.5 1/2", "fraction", nil},
		{"1-2-3 g", nil, NumberUnreadable, "1-2-3 g", "one number", nil},
		{"2 .5 oz", nil, NumberUnreadable, "2 .5", "one number", []string{"2.5 oz"}},
		{"2 lb 200 g", nil, MixedUnits, "2 lb 200 g", "mixes units", nil},
		{"8 oz 2 lb", nil, MixedUnits, "8 oz 2 lb", "mixes units", nil},
		{"180 °F 20 °F", nil, MixedUnits, "180 °F 20 °F", "mixes units", nil},
		{"20 g to 30 mL", nil, MixedUnits, "20 g to 30 mL", "mixes units", nil},
		{"5 % of wax to 6 % of total", nil, MixedUnits, "5 % of wax to 6 % of total", "mixes units", nil},
		{"3 drops to 5 chips", nil, MixedUnits, "3 drops to 5 chips", "mixes units", nil},
		{"8 %", []Dimension{Proportion}, BasisMissing, "8 %", "8 % of wax is 7.41 % of total", []string{"8 % of wax", "8 % of total"}},
		{"5 to 8 %", []Dimension{Weight, Proportion}, BasisMissing, "5 to 8 %", "of what", []string{"5 to 8 % of wax", "5 to 8 % of total"}},
		{"-5 g", nil, Negative, "-5", "minus sign", []string{"5 g"}},
		{"-2 lb 8 oz", nil, Negative, "-2", "minus sign", []string{"2 lb 8 oz"}},
		{"-10 °F", []Dimension{Difference}, Negative, "-10", "minus sign", []string{"10 °F"}},
		{"1234567890123456789012345678901 g", nil, TooLong, "1234567890123456789012345678901", "longer", nil},
		{"0.0000000000000000000000000000001 g", nil, TooLong, "0.0000000000000000000000000000001", "longer", nil},
		{strings.Repeat("9", 201), nil, TooLong, strings.Repeat("9", 201), "longer", nil},
	} {
		_, err := Parse(c.text, c.accept...)
		if !assert.NotNil(t, err, "%q", c.text) {
			continue
		}
		assert.Equal(t, c.kind, err.Kind, "%q: %s", c.text, err.Message)
		assert.Equal(t, c.at, c.text[err.Start:err.End], "%q", c.text)
		assert.Contains(t, err.Message, c.says, "%q", c.text)
		assert.Equal(t, c.suggest, err.Suggest, "%q", c.text)
		assert.Equal(t, err.Message, err.Error())
		for _, s := range err.Suggest {
			_, again := Parse(s, c.accept...)
			assert.Nil(t, again, "%q suggests %q", c.text, s)
		}
	}
}

func TestWrongKindSaysWhatItGot(t *testing.T) {
	_, err := Parse("10 oz", Volume)
	require.NotNil(t, err)
	assert.Equal(t, Weight, err.Got)
	_, err = Parse("8 %", Proportion)
	require.NotNil(t, err)
	assert.Equal(t, Share, err.Got)
	q, err := Parse("8 %", Proportion, Share)
	require.Nil(t, err, "a bare per cent is a share where shares are accepted")
	assert.Equal(t, NoBasis, q.Basis())
}

func TestEndsKeepTheirText(t *testing.T) {
	for _, c := range []struct{ text, low, high string }{
		{"168 to 182 °F", "168 °F", "182 °F"},
		{"168–182°F", "168°F", "182°F"},
		{" 168 °F to 80.5 °C ", "168 °F", "80.5 °C"},
		{" 5 % to 8 % of wax", "5 % of wax", "8 % of wax"},
		{"1/2-3/4\"", "1/2\"", "3/4\""},
		{"1 lb 8 oz to 2 lb", "1 lb 8 oz", "2 lb"},
	} {
		q := mustParse(t, c.text)
		assert.Equal(t, c.low, q.Low().Written())
		assert.Equal(t, c.high, q.High().Written())
		for _, end := range []Quantity{q.Low(), q.High()} {
			assert.False(t, end.IsRange())
			assert.Equal(t, end, end.Low())
			assert.Equal(t, end, end.High())
			again := mustParse(t, end.String(), q.Dim())
			assert.Zero(t, again.Cmp(end), "%q", end.String())
		}
	}
	q := mustParse(t, "20 g")
	assert.Equal(t, q, q.Low())
	assert.Equal(t, q, q.High())
}

func TestHalfOfTheLastDigit(t *testing.T) {
	for text, want := range map[string]string{
		"36.5 oz":      "1.41747615625", // half of 0.1 oz
		"36 oz":        "14.1747615625", // half an ounce
		"36.50 g":      "0.005",
		"1.45 kg":      "5",
		"2 lb 8 oz":    "14.1747615625",
		"2 lb 8.5 oz":  "1.41747615625",
		"1/4 in":       "0",
		"2½ in":        "0",
		"5 % of wax":   "1/200",
		"176 °F":       "5/18",
		"1 h 45 min":   "30",
		"5.0 to 8 g":   "0.05",
		"0.90 g/mL":    "0.005",
		"20.0000 mL":   "0.00005",
		"2.50 to 3 lb": "2.26796185",
	} {
		assert.Zero(t, ratio(t, want).Cmp(mustParse(t, text).HalfDigit().Big()), text)
	}
	assert.True(t, mustParse(t, "36.5 oz").In(Gram).HalfDigit().IsZero(), "a computed figure has no last digit")
	assert.Zero(t, ratio(t, "0.5").Cmp(mustParse(t, "5.0 to 8 g").High().HalfDigit().Big()))
}

func TestWithinIncludesTheEndPoints(t *testing.T) {
	limits := mustParse(t, "168 to 182 °F")
	for text, want := range map[string]bool{
		"168 °F": true, "182 °F": true, "175 °F": true, "167.99 °F": false, "182.01 °F": false,
		"170 to 182 °F": true, "170 to 183 °F": false, "160 to 170 °F": false, "80 °C": true, "84 °C": false,
	} {
		assert.Equal(t, want, mustParse(t, text).Within(limits), text)
	}
	assert.True(t, mustParse(t, "16 oz").Within(mustParse(t, "1 lb")))
}

func TestWhatHasNoOrderIsNotCompared(t *testing.T) {
	for _, pair := range [][2]string{{"20 g", "20 mL"}, {"8 % of wax", "8 % of total"}, {"8 % of wax", "8 %"}, {"3 drops", "3 chips"}} {
		a, b := mustParse(t, pair[0]), mustParse(t, pair[1])
		assert.False(t, a.Comparable(b), "%v", pair)
		assert.Panics(t, func() { a.Cmp(b) }, "%v", pair)
		assert.Panics(t, func() { a.Within(b) }, "%v", pair)
		assert.Panics(t, func() { a.In(b.Unit()) }, "%v", pair)
	}
	assert.Panics(t, func() { mustParse(t, "20 °F").Cmp(mustParse(t, "20 °F", Difference)) })
}

func TestConversionIsExactBothWays(t *testing.T) {
	for _, u := range Units() {
		for _, v := range Units() {
			if !u.measures(v) {
				continue
			}
			q := Of(NewRat(731, 100), u)
			there := q.In(v)
			assert.Same(t, v, there.Unit())
			assert.Zero(t, q.Cmp(there))
			assert.True(t, there.In(u).Number().Equal(NewRat(731, 100)), "%s in %s and back", u.Symbol, v.Symbol)
		}
	}
	r := mustParse(t, "168 to 185 °F").In(Celsius)
	assert.True(t, r.IsRange())
	assert.Equal(t, "85 °C", r.High().String())
}

func TestParts(t *testing.T) {
	for text, want := range map[string][]string{
		"36 oz":             {"36|oz"},
		"2 lb 8 oz":         {"2|lb", "8|oz"},
		"168 to 182 °F":     {"168|°F", "182|°F"},
		"168 °F–75 °C":      {"168|°F", "75|°C"},
		"5 to 8 % of wax":   {"5|% of wax", "8|% of wax"},
		"2 1/2 in":          {"2 1/2|in"},
		" ½\" ":             {"½|\""},
		"20":                {"20|"},
		"20 to 30":          {"20|", "30|"},
		"1 lb 8 oz to 2 lb": {"1|lb", "8|oz", "2|lb"},
		"":                  nil,
		"warm":              nil,
		"2,5 g":             nil,
	} {
		var got []string
		for _, p := range Parts(text) {
			got = append(got, text[p.NumberStart:p.NumberEnd]+"|"+text[p.UnitStart:p.UnitEnd])
		}
		assert.Equal(t, want, got, "%q", text)
	}
	assert.Nil(t, Parts(strings.Repeat("1 g ", 100)))
}

func TestAQuantityIsSmall(t *testing.T) {
	assert.LessOrEqual(t, unsafe.Sizeof(Quantity{}), uintptr(64))
	assert.Equal(t, None, Quantity{}.Dim())
	assert.Equal(t, "0", strings.TrimSpace(Quantity{}.String()))
}

// FuzzParse: reading never panics, places stay inside the text, and what was read prints back to the same.
func FuzzParse(f *testing.F) {
	for _, text := range []string{"36 oz", "2 lb 8 oz", "168–182 °F", "2½ in", "1 oz per lb", "5 % to 8 % of wax", "-5--2 °C", "1,000 g",
		"1e9 g", "1/0 in", "20 g to", "3 fl. oz.", "1 h 45", "20 cm^3", "½\"", "10\u202f%\u00a0of wax", "1 lb 5 oz (595 g)", "20 m", "8 %", "−5 ℃ to 5º C", "10000000000000000000000\"", "\xff20 g\xc2"} {
		f.Add(text, uint8(0))
		f.Add(text, uint8(Difference))
	}
	f.Fuzz(func(t *testing.T, text string, place uint8) {
		var accept []Dimension
		if d := Dimension(place % (uint8(Count) + 1)); d != None {
			accept = []Dimension{d}
		}
		for _, p := range Parts(text) {
			if p.NumberStart < 0 || p.NumberEnd <= p.NumberStart || p.UnitEnd < p.UnitStart || p.UnitStart < p.NumberEnd || p.UnitEnd > len(text) {
				t.Fatalf("%q has a part at %+v", text, p)
			}
		}
		q, err := Parse(text, accept...)
		if err != nil {
			if err.Kind == 0 || err.Message == "" || err.Start < 0 || err.End < err.Start || err.End > len(text) {
				t.Fatalf("%q: %+v", text, err)
			}
			for _, s := range err.Suggest {
				if _, again := Parse(s, accept...); again != nil {
					t.Fatalf("%q suggests %q, which does not read: %s", text, s, again.Message)
				}
			}
			return
		}
		if q.String() != text {
			t.Fatalf("%q prints as %q", text, q.String())
		}
		if q.High().Cmp(q.Low()) < 0 || q.IsRange() != (q.High().Cmp(q.Low()) > 0) {
			t.Fatalf("%q descends", text)
		}
		if len(Parts(text)) == 0 {
			t.Fatalf("%q has no parts", text)
		}
		for _, end := range []Quantity{q.Low(), q.High()} {
			again, err := Parse(end.String(), q.Dim())
			if err != nil || again.Cmp(end) != 0 || again.Unit() != end.Unit() || !again.HalfDigit().Equal(end.HalfDigit()) {
				t.Fatalf("%q: its end %q reads otherwise: %v", text, end.String(), err)
			}
		}
		for _, s := range []System{US, Metric} {
			// Thirty digits of one unit can be more of a smaller one, which is too long to read.
			if _, err := Parse(q.Low().Show(s), q.Dim()); err != nil && err.Kind != TooLong {
				t.Fatalf("%q shows as %q: %s", text, q.Low().Show(s), err.Message)
			}
			_, _ = q.Show(s), q.Both(s)
		}
		if _, err := Parse(q.In(q.Unit()).String(), q.Dim()); err != nil && err.Kind != TooLong && !q.IsRange() {
			t.Fatalf("%q computed prints as %q", text, q.In(q.Unit()).String())
		}
	})
}

func BenchmarkParse(b *testing.B) {
	for _, text := range []string{"5 % of wax", "1.45 kg", "176 °F", "168 to 182 °F", "2 lb 8 oz", "3/8 in"} {
		b.Run(text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Parse(text, Weight, Proportion, Temperature, Length); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkCmp(b *testing.B) {
	load, limit := mustParse(b, "7 % of wax"), mustParse(b, "6 % of wax")
	b.ReportAllocs()
	for b.Loop() {
		if load.Cmp(limit) <= 0 {
			b.Fatal("7 % is over 6 %")
		}
	}
}
