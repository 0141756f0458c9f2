package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestShow(t *testing.T) {
	for _, c := range []struct {
		text       string
		dim        Dimension
		us, metric string
	}{
		{"65 g", Weight, "2.29 oz", "65 g"},
		{"0.6 g", Weight, "0.021 oz", "0.6 g"},
		{"1.45 kg", Weight, "3 lb 3.1 oz", "1.45 kg"},
		{"40 oz", Weight, "2 lb 8 oz", "1.134 kg"},
		{"16 oz", Weight, "1 lb", "454 g"},
		{"15.96 oz", Weight, "1 lb", "452 g"},
		{"999.6 g", Weight, "2 lb 3.3 oz", "1 kg"},
		{"0.0001 g", Weight, "0.000004 oz", "0.0001 g"},
		{"0 g", Weight, "0 oz", "0 g"},
		{"300 mL", Volume, "10.1 fl oz", "300 mL"},
		{"1 qt", Volume, "32 fl oz", "946 mL"},
		{"2 qt", Volume, "64 fl oz", "1.89 L"},
		{"1/4 in", Length, "1/4 in", "6.4 mm"},
		{"76 mm", Length, "3 in", "76 mm"},
		{"2.9 in", Length, "2.9 in", "73.7 mm"},
		{"12 mm", Length, "0.472 in", "12 mm"},
		{"25.4 cm", Length, "10 in", "254 mm"},
		{"186 °F", Temperature, "186 °F", "85.6 °C"},
		{"-40 °C", Temperature, "-40 °F", "-40 °C"},
		{"10 °F", Difference, "10 °F", "5.6 °C"},
		{"50 °C", Difference, "90 °F", "50 °C"},
		{"105 min", Time, "1 h 45 min", "1 h 45 min"},
		{"90 s", Time, "1 min 30 s", "1 min 30 s"},
		{"59.6 s", Time, "1 min", "1 min"},
		{"14 h", Time, "14 h", "14 h"},
		{"2 weeks", Time, "14 d", "14 d"},
		{"76 h", Time, "3 d 4 h", "3 d 4 h"},
		{"1 oz per lb", Proportion, "6.25 % of wax", "6.25 % of wax"},
		{"0.025 % of wax", Proportion, "0.025 % of wax", "0.025 % of wax"},
		{"25 % of total", Proportion, "25 % of total", "25 % of total"},
		{"12 %", Share, "12 %", "12 %"},
		{"0.91 g/mL", Density, "0.526 oz/in³", "0.91 g/mL"},
		{"1/2 block", Count, "1/2 block", "1/2 block"},
		{"1 drop", Count, "1 drop", "1 drop"},
		{"3 drops", Count, "3 drops", "3 drops"},
		{"168 to 182 °F", Temperature, "168 to 182 °F", "75.6 to 83.3 °C"},
		{"900 g to 1.2 kg", Weight, "1 lb 15.7 oz to 2 lb 10.3 oz", "900 g to 1.2 kg"},
		{"5 to 10 % of wax", Proportion, "5 to 10 % of wax", "5 to 10 % of wax"},
	} {
		q := mustParse(t, c.text, c.dim)
		assert.Equal(t, c.us, q.Show(US), c.text)
		assert.Equal(t, c.metric, q.Show(Metric), c.text)
	}
}

func TestBothSystems(t *testing.T) {
	for text, want := range map[string]string{
		"186 °F":        "186 °F (85.6 °C)",
		"85 °C":         "85 °C (185 °F)",
		"168 to 182 °F": "168 to 182 °F (75.6 to 83.3 °C)",
		"36 oz":         "36 oz (1.021 kg)",
		"1 h 45 min":    "1 h 45 min",
		"12 %":          "12 %",
		"5 % of wax":    "5 % of wax",
		"1 oz per lb":   "1 oz per lb (6.25 % of wax)",
		"3 drops":       "3 drops",
	} {
		assert.Equal(t, want, mustParse(t, text).Both(US), text)
		assert.Equal(t, want, mustParse(t, text).Both(Metric), "what was written comes first in any shop")
	}
	computed := FromBase(NewRat(770, 9), Fahrenheit)
	assert.Equal(t, "186 °F (85.6 °C)", computed.Both(US))
	assert.Equal(t, "85.6 °C (186 °F)", computed.Both(Metric))
	assert.Equal(t, "85.6 °C", mustParse(t, "186 °F").Other())
	assert.Empty(t, mustParse(t, "12 %").Other())
}

func TestComputedInItsOwnUnit(t *testing.T) {
	for want, q := range map[string]Quantity{
		"6 % of wax":          Of(Int(6), PercentOfWax),
		"5.6 % of wax":        Of(NewRat(566, 100).Floor(NewRat(1, 10)), PercentOfWax),
		"7.407 % of total":    FromBase(NewRat(2, 27), PercentOfTotal),
		"1.45 kg":             FromBase(Int(1450), Kilogram),
		"2.5 lb":              Of(NewRat(5, 2), Pound),
		"1/3 in":              Of(NewRat(1, 3), Inch),
		"0.375 in":            Of(NewRat(3, 8), Inch),
		"3 drops":             Of(Int(3), Drop),
		"1/2 block":           Of(NewRat(1, 2), Block),
		"85.56 °C":            FromBase(NewRat(770, 9), Celsius),
		"10 °F":               Of(Int(10), FahrenheitDegrees),
		"-2.5 g":              Of(NewRat(-5, 2), Gram), // a shortfall is a weight below nothing
		"75.56 to 83.33 °C":   mustParse(t, "168 to 182 °F").In(Celsius),
		"0.000000000000001 g": Of(NewRat(1, 1e15), Gram),
	} {
		assert.Equal(t, want, q.String())
		assert.Empty(t, q.Written())
	}
	assert.Equal(t, "-2.5 g", Of(NewRat(-5, 2), Gram).Show(Metric))
}
