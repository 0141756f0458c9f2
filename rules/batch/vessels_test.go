package batch_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"wickrule/schema/quantity"
)

// A cylinder of 3 by 6 in (25.4 mm to the inch: NIST SP 811, Appendix B) holds
// pi d2 h / 4 = 695.000 mL; at 0.90 g/mL the finished candle weighs 625.500 g,
// and liquid wax at 0.78 g/mL fills it with 542.100 g, so 83.400 g top it up.
func TestAPillar(t *testing.T) {
	stock := `
wax "plain" {
  density   = "0.90 g/mL"
  shrinkage = "13.3333333333 %"
}
mold "round" {
  shape    = "cylinder"
  diameter = "3 in"
  height   = "6 in"
}
`
	b, _ := shopWith(t, stock, `
  wax "plain" { weight = "1251 g" }
  mold "round" { count = 2 }
  step "pour" { at = "176 °F" }`)
	v := b.Vessels[0]
	is(t, "695", v.Holds, 3, "volume")
	is(t, "625.5", v.Mass, 3, "finished")
	is(t, "542.1", v.FirstFill, 3, "first fill")
	is(t, "83.4", v.TopUp, 3, "top-up")
	is(t, "1251", b.Takes, 2, "takes")
	is(t, "0", b.Spare, 4, "spare")
	assert.Equal(t, "pillar", b.Makes)
}

// 400 g of water at 20 °C, 0.9982 g/mL (CRC Handbook of Chemistry and
// Physics), fill a mold of 400.7213 mL; at 0.90 g/mL the candle weighs
// 360.649 g.
func TestAMoldMeasuredWithWater(t *testing.T) {
	water, _ := quantity.Int(400).Quo(quantity.NewRat(9982, 10000))
	assert.Equal(t, "400.7213", water.Decimal(4))
	b := of(t, `
  wax "quarry" { weight = "1 kg" }
  mold "pebble" { }`)
	is(t, "400.7213", b.Vessels[0].Holds, 4, "volume")
	is(t, "360.649", b.Vessels[0].Mass, 3, "finished")
}

// Elementary geometry: a cone is a third of its cylinder (Elements, XII.10), a
// ball two thirds of the cylinder around it.
func TestShapes(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "1 kg" }
  mold "round" { }
  mold "tall-cone" { }
  mold "ball" { }
  mold "brick" { }
  taper "candle" { }`)
	third := quantity.NewRat(1, 3)
	cylinder := b.Vessels[0].Holds.Value
	assert.Equal(t, cylinder.Mul(third).Decimal(4), b.Vessels[1].Holds.Value.Decimal(4), "cone")
	// The cylinder around the ball is 3 by 3 in, half of the one above: 2/3 of 1/2.
	assert.Equal(t, cylinder.Mul(third).Decimal(4), b.Vessels[2].Holds.Value.Decimal(4), "ball")
	// 24 in³ of 16.387 064 mL: NIST SP 811, Appendix B.
	is(t, "393.289536", b.Vessels[3].Holds, 6, "block")
	is(t, "50.8", b.Vessels[3].Diameter, 3, "the smaller side of a block")
	is(t, "78.539816", b.Vessels[4].Holds, 6, "a taper, pi 2² 25 / 4 in cm")
	is(t, "70.68583", b.Vessels[4].Mass, 5, "a taper at 0.90 g/mL")
}

func TestWhatIsMeasuredWins(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "1 kg" }
  mold "measured" { fill = "3 in" }`)
	is(t, "680", b.Vessels[0].Holds, 3, "volume")
	is(t, "340", b.Vessels[0].Fill, 3, "half its height")
}

func TestFills(t *testing.T) {
	for _, c := range []struct {
		vessel, fill              string
		volume, headspace, weight string
	}{
		// The tumbler is 80 mm wide and 100 mm tall: 5.026548 mL a millimeter.
		{"container \"tumbler\"", ``, "400", "20.423", "360"},
		{"container \"tumbler\"", `"85 mm"`, "427.257", "15", "384.531"},
		{"container \"tumbler\"", `"12 mm below rim"`, "442.336", "12", "398.103"},
		{"container \"tumbler\"", `"300 mL"`, "300", "40.317", "270"},
		{"container \"tumbler\"", `"270 g"`, "300", "40.317", "270"},
		{"container \"tumbler\"", `"75 %"`, "300", "40.317", "270"},
		{"mold \"round\"", ``, "695", "0", "625.5"},
		{"mold \"round\"", `"1 1/2 in below rim"`, "521.25", "38.1", "469.125"},
		{"mold \"round\"", `"4.5 in"`, "521.25", "38.1", "469.125"},
		{"mold \"round\"", `"50 %"`, "347.5", "76.2", "312.75"},
		// A cone poured to half its height from the tip holds an eighth.
		{"mold \"tall-cone\"", `"3 in"`, "28.958", "76.2", "26.062"},
		// A ball filled to the middle holds half.
		{"mold \"ball\"", `"1 1/2 in"`, "115.833", "38.1", "104.25"},
		{"mold \"ball\"", `"9 in"`, "231.667", "-152.4", "208.5"},
	} {
		body := "\n wax \"quarry\" { weight = \"1 kg\" }\n" + c.vessel + " {\n"
		if c.fill != "" {
			body += "fill = " + c.fill + "\n"
		}
		b := of(t, body+"}\n")
		v, name := b.Vessels[0], c.vessel+" "+c.fill
		is(t, c.volume, v.Fill, 3, name+": volume")
		is(t, c.headspace, v.Headspace, 3, name+": headspace")
		is(t, c.weight, v.Mass, 3, name+": weight")
	}
}

func TestABowlHasNoStraightWalls(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "1 kg" }
  container "bowl" { fill = "10 mm below rim" }
  container "bowl" { }`)
	is(t, "10", b.Vessels[0].Headspace, 3, "as it is written")
	lacks(t, "", "", b.Vessels[0].Fill)
	is(t, "400", b.Vessels[1].Fill, 3, "to the fill line")
	lacks(t, "", "", b.Vessels[1].Headspace)
}

func TestSizesThatAreNotStatedAreAskedFor(t *testing.T) {
	b := of(t, `
  wax "no-family" { weight = "1 kg" }
  mold "unmeasured" { }
  container "cup" { }
  mold "round" { }`)
	lacks(t, "unmeasured", "height", b.Vessels[0].Holds)
	lacks(t, "cup", "height", b.Vessels[1].Headspace)
	lacks(t, "no-family", "density", b.Vessels[2].Mass)
	lacks(t, "unmeasured", "height", b.Takes)
}

func TestAnUnknownVesselIsBroken(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "1 kg" }
  mold "rond" { wick = "brade" }`)
	isBroken(t, b.Vessels[0].Holds)
	isBroken(t, b.Takes)
	isBroken(t, b.Spare)
	assert.Nil(t, b.Vessels[0].Wick)
	assert.Equal(t, "brade", b.Vessels[0].WickSaid.Text())
	assert.Equal(t, "", b.Makes)
}

func TestWhatIsLeftBelowTheRim(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "1 kg" }
  mold "round" { }
  step "pour" { leave = "1 in" }`)
	// 5/6 of 695 mL at 0.90 * 0.88 g/mL.
	is(t, "458.7", b.Vessels[0].FirstFill, 2, "first fill")
	is(t, "166.8", b.Vessels[0].TopUp, 2, "top-up")
}

func TestARangeOfWhatIsLeftCountsAtItsUpperEnd(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "1 kg" }
  mold "round" { }
  step "pour" { leave = "1/2 to 1 in" }`)
	is(t, "458.7", b.Vessels[0].FirstFill, 2, "first fill")
}

func TestLayersHaveNoSingleTopUp(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "1 kg" }
  mold "round" { }
  step "pour" { leave = "3 in" }
  step "pour" { leave = "1 in" }`)
	is(t, "275.22", b.Vessels[0].FirstFill, 2, "the first layer")
	lacks(t, "", "", b.Vessels[0].TopUp)
}

func TestMakes(t *testing.T) {
	for want, vessel := range map[string]string{
		"pillar":   `mold "round" { }`,
		"votive":   `mold "little" { }`,
		"jar":      `container "tumbler" { }`,
		"tealight": `container "cup" { }`,
		"taper":    `taper "candle" { }`,
	} {
		assert.Equal(t, want, of(t, vessel).Makes, vessel)
	}
	assert.Equal(t, "melt", of(t, "makes = \"melt\"\nmold \"round\" { }").Makes)
}

func TestCountsAndWicks(t *testing.T) {
	b := of(t, `
  wax "quarry" { weight = "1 kg" }
  mold "round" {
    count = 3
    wick  = "braid"
    wicks = 2
  }
  mold "little" { }`)
	v := b.Vessels
	assert.Equal(t, 3, v[0].Count)
	assert.Equal(t, 2, v[0].Wicks)
	assert.Equal(t, "braid", v[0].Wick.Label)
	assert.Equal(t, 1, v[1].Count)
	assert.Equal(t, 1, v[1].Wicks)
	assert.Nil(t, v[1].Wick)
	assert.Equal(t, 4, b.Candles())
}

func TestWhatIsBrokenOrUnsaidOfAVessel(t *testing.T) {
	stock := shelf + `
mold "shapeless" {
  diameter = "3 in"
  height   = "6 in"
}
mold "nameless-shape" {
  holds  = "300 mL"
  height = "80 mm"
}
container "some-glass" {
  diameter = "80 mm"
  height   = "100 mm"
  holds    = "400 mL"
}
`
	b, _ := shopWith(t, stock, `
  wax "quarry" { weight = "1 kg" }
  container "some-glass" { }
  mold "shapeless" { }
  mold "nameless-shape" { fill = "40 mm" }
  mold "round" { fill = "nearly full" }`)
	assert.Equal(t, "jar", b.Makes, "a container of no stated kind")
	lacks(t, "some-glass", "kind", b.Vessels[0].Headspace)
	is(t, "360", b.Vessels[0].Mass, 3, "what it holds is stated")
	lacks(t, "shapeless", "holds", b.Vessels[1].Mass)
	lacks(t, "nameless-shape", "shape", b.Vessels[2].Fill)
	is(t, "40", b.Vessels[2].Headspace, 3, "the height is stated")
	isBroken(t, b.Vessels[3].Fill)
	isBroken(t, b.Vessels[3].Mass)
	isBroken(t, b.Takes)
}
