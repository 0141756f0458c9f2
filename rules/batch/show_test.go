package batch_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

func TestFiguresReadInTheShopsUnits(t *testing.T) {
	metric := shelf + "shop \"bench\" { units = \"metric\" }\n"
	_, us := viewed(t, oneWax)
	_, si := shopWith(t, metric, oneWax)
	g := quantity.Int(65)
	assert.Equal(t, "65 g", batch.Grams(si, g))
	assert.Equal(t, "2.29 oz", batch.Grams(us, g))
	// 80 °C is 176 °F: NIST SP 811, B.8.
	assert.Equal(t, "176 °F (80 °C)", batch.Degrees(us, quantity.Int(80)))
	assert.Equal(t, "80 °C (176 °F)", batch.Degrees(si, quantity.Int(80)))
	// A difference of 5 K is one of 9 °F, not of 41.
	assert.Equal(t, "9 °F", batch.ApartLike(quantity.Int(5), quantity.Of(quantity.Int(176), quantity.Fahrenheit)))
	assert.Equal(t, "12 mm", batch.Millimeters(si, quantity.Int(12)))
	assert.Equal(t, "300 mL", batch.Milliliters(si, quantity.Int(300)))
	assert.Equal(t, "1 h 45 min", batch.Time(quantity.Int(6300)))
}

func TestLoadsReadOnBothBases(t *testing.T) {
	b := of(t, oneWax+"fragrance \"thyme\" { load = \"8 % of wax\" }\n")
	assert.Equal(t, "8 % of wax (7.41 % of total)", batch.Loads(b.FragranceOfWax, b.FragranceOfTotal))
	assert.Equal(t, "8 % of wax", batch.Loads(b.FragranceOfWax, batch.Figure{}))
}

func TestALoadReadsApartFromItsLimit(t *testing.T) {
	limit := ratio(6, 100)
	assert.Equal(t, "7 % of wax", batch.PercentBeside(ratio(7, 100), limit, quantity.OfWax))
	assert.Equal(t, "6.0004 % of wax", batch.PercentBeside(ratio(60004, 1000000), limit, quantity.OfWax))
	assert.Equal(t, "6 % of total", batch.PercentBeside(limit, limit, quantity.OfTotal))
}

func TestRangesReadWithBothScales(t *testing.T) {
	b, view := viewed(t, oneWax+evenSoy)
	assert.Equal(t, "168 °F (75.6 °C) to 175 °F (79.4 °C)", b.PourAt().Range(view))
	assert.Equal(t, "Shoal soy", b.PourAt().AtHigh().Whose())
	b, view = viewed(t, oneWax)
	assert.Equal(t, "168 to 182 °F (75.6 to 83.3 °C)", b.PourAt().Range(view))
	assert.Equal(t, "Quarry paraffin", b.PourAt().Whose())
	b, _ = viewed(t, "wax \"silent-pillar\" { weight = \"1 kg\" }\n")
	assert.Equal(t, "paraffin as a rule", b.PourAt().Whose())
}
