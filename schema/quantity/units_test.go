package quantity

import (
	"math/big"
	"strings"
	"testing"

	general "github.com/bcicen/go-units"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The exact factors as published: NIST SP 811 (2008) Appendix B and NIST Handbook 44 Appendix C.
func TestFactorsAsPublished(t *testing.T) {
	published := map[*Unit]string{
		Ounce:             "28.349523125",  // HB 44 App. C: avoirdupois ounce, exactly
		Pound:             "453.59237",     // HB 44 App. C: avoirdupois pound, exactly
		FluidOunce:        "29.5735295625", // gallon of 231 in³ over 128
		CubicInch:         "16.387064",     // HB 44 App. C, exactly
		Cup:               "236.5882365",   // gallon over 16
		Pint:              "473.176473",    // gallon over 8
		Quart:             "946.352946",    // gallon over 4
		Inch:              "25.4",          // SP 811 B.8, exactly
		FahrenheitDegrees: "5/9",           // SP 811 B.8
		Minute:            "60",
		Hour:              "3600",
		Day:               "86400",
		OuncesPerPound:    "1/16", // HB 44 App. C: 16 oz in a pound
	}
	for u, text := range published {
		want, ok := new(big.Rat).SetString(text)
		require.True(t, ok)
		assert.Zero(t, want.Cmp(u.Factor.Big()), "%s is %v", u.Symbol, u.Factor.Big())
	}
	assert.True(t, OuncePerCubicInch.Factor.Mul(CubicInch.Factor).Equal(Ounce.Factor), "an ounce in a cubic inch")
	assert.True(t, Pound.Factor.Equal(Ounce.Factor.Mul(Int(16))))
	gallon := CubicInch.Factor.Mul(Int(231)) // HB 44 App. C
	assert.Equal(t, "3785.411784", gallon.Decimal(9))
	for u, parts := range map[*Unit]int64{FluidOunce: 128, Cup: 16, Pint: 8, Quart: 4} {
		assert.True(t, u.Factor.Mul(Int(parts)).Equal(gallon), u.Symbol)
	}
}

// A general-purpose unit library, written by others, must agree with the whole table.
func TestFactorsAgainstAGeneralLibrary(t *testing.T) {
	convert := func(n float64, from, to general.Unit) float64 {
		t.Helper()
		v, err := general.ConvertFloat(n, from, to)
		require.NoError(t, err)
		return v.Float()
	}
	inchInCm := convert(1, general.Inch, general.CentiMeter)
	ounceInGrams := convert(1, general.Ounce, general.Gram)
	checked := map[*Unit]float64{
		Kilogram:              convert(1, general.KiloGram, general.Gram),
		Milligram:             convert(1, general.MilliGram, general.Gram),
		Ounce:                 ounceInGrams,
		Pound:                 convert(1, general.Pound, general.Gram),
		Liter:                 convert(1, general.Liter, general.MilliLiter),
		FluidOunce:            convert(1, general.CustomaryFluidOunce, general.MilliLiter),
		CubicInch:             inchInCm * inchInCm * inchInCm,
		Cup:                   convert(0.5, general.FluidPint, general.MilliLiter),
		Pint:                  convert(1, general.FluidPint, general.MilliLiter),
		Quart:                 convert(1, general.FluidQuart, general.MilliLiter),
		Centimeter:            convert(1, general.CentiMeter, general.MilliMeter),
		Inch:                  convert(1, general.Inch, general.MilliMeter),
		CelsiusDegrees:        convert(11, general.Celsius, general.Kelvin) - convert(10, general.Celsius, general.Kelvin),
		FahrenheitDegrees:     convert(201, general.Fahrenheit, general.Celsius) - convert(200, general.Fahrenheit, general.Celsius),
		Minute:                convert(1, general.Minute, general.Second),
		Hour:                  convert(1, general.Hour, general.Second),
		Day:                   convert(1, general.Day, general.Second),
		Week:                  convert(0.5, general.Fortnight, general.Second),
		OuncesPerPound:        ounceInGrams / convert(1, general.Pound, general.Gram),
		GramsPerKilogram:      convert(1, general.Gram, general.KiloGram),
		KilogramPerCubicMeter: convert(1, general.KiloGram, general.Gram) / convert(1, general.KiloLiter, general.MilliLiter),
		OuncePerCubicInch:     ounceInGrams / (inchInCm * inchInCm * inchInCm),
	}
	for u, want := range checked {
		assert.InEpsilon(t, want, u.Factor.Float64(), 1e-9, u.Symbol)
	}
	for _, u := range Units() {
		if u.Factor.Equal(one) || u == PercentOfWax || u == PercentOfTotal || u == Percent || u == Fahrenheit {
			continue // base units, counts and per cents are no matter for a unit library; Fahrenheit follows
		}
		assert.Contains(t, checked, u, u.Symbol)
	}
	for _, f := range []int64{-40, 0, 32, 120, 176, 212, 450} {
		want := convert(float64(f), general.Fahrenheit, general.Celsius)
		assert.InDelta(t, want, Of(Int(f), Fahrenheit).Base().Float64(), 1e-9, "%d °F", f)
	}
}

func TestEverySpellingReads(t *testing.T) {
	seen := map[string]string{}
	for _, u := range Units() {
		spellings := append([]string{u.Symbol, u.Plural}, u.Spellings...)
		for _, s := range spellings {
			if s == "" {
				continue
			}
			forms := []string{"20 " + s, "20" + s, "20\u00a0" + s, "20\u202f" + s, " 20  " + s + " ", "20 " + strings.ToUpper(s)}
			for _, text := range forms {
				q, err := Parse(text, u.Dim)
				if !assert.Nil(t, err, "%q", text) {
					continue
				}
				assert.Same(t, u, q.Unit(), "%q", text)
				assert.True(t, q.Number().Equal(Int(20)), "%q", text)
				assert.Equal(t, text, q.String())
			}
		}
		if u.Dim == Difference {
			continue // spelled as the scales are
		}
		for _, s := range u.Spellings {
			assert.Empty(t, seen[s], "%q spells two units", s)
			seen[s] = u.Symbol
			assert.Less(t, len(s), longestSpelling-8)
		}
		assert.Same(t, u, UnitOf(u.Symbol))
	}
}

func TestSpellingsOnPaper(t *testing.T) {
	for text, u := range map[string]*Unit{
		"3 oz.": Ounce, "3 OZ": Ounce, "3 Ounces": Ounce, "3 lbs.": Pound, "3 fl. oz.": FluidOunce, "3 fl.oz.": FluidOunce, "3 FL OZ": FluidOunce,
		"3 F": Fahrenheit, "3 deg F": Fahrenheit, "3 deg. F": Fahrenheit, "3 degF": Fahrenheit, "3 degrees F": Fahrenheit, "3 ºF": Fahrenheit,
		"3 º F": Fahrenheit, "3 ° F": Fahrenheit, "3 ℉": Fahrenheit, "3 ℃": Celsius, "3°c": Celsius, "3 degrees Celsius": Celsius,
		"3 mL": Milliliter, "3 ML": Milliliter, "3 millilitres": Milliliter, "3 cm³": CubicCentimeter, "3 cm3": CubicCentimeter, "3 cm^3": CubicCentimeter,
		"3cm3": CubicCentimeter, "3 cc": CubicCentimeter, "3 in³": CubicInch, "3in3": CubicInch, "3 cu. in.": CubicInch, `3"`: Inch, "3 in.": Inch,
		"3 mins": Minute, "3 hrs": Hour, "3 hr.": Hour, "3 Weeks": Week,
		"3 %of wax": PercentOfWax, "3% of wax": PercentOfWax, "3 percent of wax": PercentOfWax, "3 per cent of total": PercentOfTotal, "3 percent": Percent,
		"3 oz/lb": OuncesPerPound, "3 oz / lb": OuncesPerPound, "3 oz. per lb.": OuncesPerPound, "3 g/kg": GramsPerKilogram,
		"3 kg/m³": KilogramPerCubicMeter, "3 kg/m3": KilogramPerCubicMeter, "3 g/cm³": GramPerMilliliter, "3 oz/in³": OuncePerCubicInch,
	} {
		q, err := Parse(text)
		if assert.Nil(t, err, "%q", text) {
			assert.Same(t, u, q.Unit(), "%q", text)
		}
	}
}

func TestTheTableHoldsTogether(t *testing.T) {
	for _, u := range Units() {
		assert.Positive(t, u.Factor.Sign(), u.Symbol)
		assert.NotEmpty(t, u.Source, u.Symbol)
		assert.NotEqual(t, None, u.Dim, u.Symbol)
		assert.Equal(t, u.Dim == Proportion, u.Basis != NoBasis, u.Symbol)
		assert.Equal(t, u.Dim == Count, u.Plural != "", u.Symbol)
	}
	assert.Same(t, FahrenheitDegrees, Fahrenheit.AsDifference())
	assert.Same(t, Gram, Gram.AsDifference())
	assert.Nil(t, UnitOf("furlong"))
	for d := Weight; d <= Count; d++ {
		assert.NotEmpty(t, d.String())
		for _, example := range strings.Split(d.Examples(), " or ") {
			_, err := Parse(strings.Trim(example, `"`), d)
			assert.Nil(t, err, "the example %s of a %s", example, d)
		}
		for _, u := range d.Units() {
			_, err := Parse("2 "+u, d)
			assert.Nil(t, err, "the unit %s of a %s", u, d)
		}
	}
}
