package cooling_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules/cooling"
	"wickrule/schema"
)

const shelf = `
shop "quarry" { room = "20 °C" }
wax "stated" {
  title         = "Stated paraffin"
  family        = "paraffin"
  suits         = ["pillar", "container"]
  congeals_at   = "58 °C"
  density       = "0.90 g/mL"
  shrinkage     = "12 %"
  conductivity  = "0.24 W/mK"
  heat_capacity = "2.2 kJ/kgK"
  latent_heat   = "200 kJ/kg"
}
wax "silent" {
  title  = "Silent paraffin"
  family = "paraffin"
  suits  = ["pillar"]
}
wax "soft" {
  title         = "Soft soy"
  family        = "soy"
  congeals_at   = "46 °C"
  density       = "0.90 g/mL"
  shrinkage     = "6 %"
  conductivity  = "0.22 W/mK"
  heat_capacity = "2.0 kJ/kgK"
  latent_heat   = "120 kJ/kg"
}
wax "house" {
  title       = "House blend"
  family      = "blend"
  congeals_at = "58 °C"
  density     = "0.90 g/mL"
  shrinkage   = "12 %"
}
wax "clear" {
  title       = "Clear gel"
  family      = "gel"
  congeals_at = "70 °C"
  density     = "0.86 g/mL"
  shrinkage   = "5 %"
}
wax "slip" {
  title        = "A slip of a decimal point"
  family       = "paraffin"
  suits        = ["pillar"]
  conductivity = "24 W/mK"
}
wax "broken" {
  title       = "Broken"
  family      = "paraffin"
  suits       = ["pillar"]
  latent_heat = "much"
}
wax "nameless" { title = "Left-over wax" }
mold "round" {
  title    = "Round mold"
  shape    = "cylinder"
  diameter = "76 mm"
  height   = "150 mm"
  material = "metal"
}
mold "low" {
  title    = "Low mold"
  shape    = "cylinder"
  diameter = "76 mm"
  height   = "30 mm"
  material = "metal"
}
mold "rubbery" {
  title    = "Silicone mold"
  shape    = "cylinder"
  diameter = "76 mm"
  height   = "150 mm"
  material = "silicone"
}
mold "square" {
  title    = "Square mold"
  shape    = "block"
  width    = "76 mm"
  height   = "150 mm"
  material = "metal"
}
mold "tip" {
  title    = "Cone"
  shape    = "cone"
  diameter = "76 mm"
  height   = "150 mm"
  material = "metal"
}
mold "ball" {
  title    = "Ball"
  shape    = "sphere"
  diameter = "76 mm"
  material = "metal"
}
mold "shape" {
  title    = "A figure"
  shape    = "other"
  height   = "80 mm"
  holds    = "240 mL"
  material = "silicone"
}
mold "unsaid" {
  title    = "Unsaid wall"
  shape    = "cylinder"
  diameter = "76 mm"
  height   = "150 mm"
}
mold "thread" {
  title    = "A straw"
  shape    = "cylinder"
  diameter = "10 mm"
  height   = "150 mm"
}
mold "tray" {
  title = "Melt tray"
  makes = "melt"
  shape = "other"
  holds = "100 mL"
  height = "1 in"
}
container "jar" {
  title    = "Jar"
  kind     = "jar"
  diameter = "70 mm"
  height   = "80 mm"
  holds    = "250 mL"
  material = "glass"
}
taper "long" {
  title    = "Taper"
  diameter = "22 mm"
  length   = "250 mm"
}
`

// pours are the pours of a recipe whose body is given.
func pours(t *testing.T, body string) (*lint.View, []cooling.Pour) {
	t.Helper()
	shop := lint.NewShop(".", []*schema.File{
		schema.Read("shelf.candle.hcl", []byte(shelf)),
		schema.Read("recipe.candle.hcl", []byte("recipe \"it\" {\n  title = \"It\"\n"+body+"\n}\n")),
	})
	view := lint.NewView(shop, shop.Find("recipe", "it"), "2026-10-20")
	return view, cooling.Of.In(view).Pours
}

// windows of the first pour of a recipe.
func windows(t *testing.T, body string) *cooling.Windows {
	t.Helper()
	view, all := pours(t, body)
	require.NotEmpty(t, all, body)
	w := all[0].Windows(view)
	require.NotNil(t, w, "%s: waits for %s", body, all[0].Attr)
	return w
}

func in(vessel, wax string) string {
	return `wax "` + wax + `" { weight = "1 kg" }` + "\n" + vessel + "\n" + `step "melt" { to = "85 °C" }` + "\n" + `step "pour" { at = "80 °C" }` + "\n"
}

// Size, shape, wall, room and water count, each in the way it does.
func TestWhatCounts(t *testing.T) {
	base := windows(t, in(`mold "round" {}`, "stated"))
	slower := func(what, body string) { t.Helper(); assert.Greater(t, windows(t, body).CoreSet, base.CoreSet, what) }
	sooner := func(what, body string) { t.Helper(); assert.Less(t, windows(t, body).CoreSet, base.CoreSet, what) }
	sooner("a low mold", in(`mold "low" {}`, "stated"))
	slower("silicone", in(`mold "rubbery" {}`, "stated"))
	sooner("a cone", in(`mold "tip" {}`, "stated"))
	sooner("a ball", in(`mold "ball" {}`, "stated"))
	sooner("a jar of glass, not as tall", in(`container "jar" {}`, "stated"))
	slower("a warm room", in(`mold "round" {}`, "stated")+`room = "28 °C"`)
	slower("a warm room of the cool step", in(`mold "round" {}`, "stated")+"step \"cool\" {\n for = \"12 h\"\n room = \"28 °C\"\n}")
	sooner("a water bath", in(`mold "round" {}`, "stated")+"step \"cool\" {\n for = \"2 h\"\n in = \"water\"\n}")
	sooner("a cold water bath after an hour", in(`mold "round" {}`, "stated")+"step \"cool\" {\n after = \"1 h\"\n for = \"2 h\"\n room = \"10 °C\"\n in = \"water\"\n}")
	assert.InEpsilon(t, float64(base.CoreSet), float64(windows(t, in(`mold "square" {}`, "stated")).CoreSet), 0.02, "a square block as wide: as much wax for each area of wall")
	windows(t, in(`mold "shape" {}`, "stated"))
}

// Each layer counts from its own pour and has its own depth; a second pour is
// what tops up.
func TestLayersAndSecondPours(t *testing.T) {
	pour := func(leave string) string { return "step \"pour\" {\n at = \"80 °C\"\n leave = \"" + leave + "\"\n}\n" }
	start := `wax "stated" { weight = "1 kg" }` + "\nmold \"round\" {}\nstep \"melt\" { to = \"85 °C\" }\n"
	view, all := pours(t, start+pour("100 mm")+pour("10 mm"))
	require.Len(t, all, 2)
	thin, thick := all[0].Windows(view), all[1].Windows(view)
	require.NotNil(t, thin)
	require.NotNil(t, thick)
	assert.Less(t, thin.CoreSet, thick.CoreSet, "50 mm and 90 mm")

	view, all = pours(t, start+pour("10 mm")+"step \"second pour\" {\n after = \"3 h\"\n at = \"83 °C\"\n}\n")
	require.Len(t, all, 2)
	assert.True(t, all[1].Second)
	assert.Same(t, &cooling.Of.In(view).Pours[1], cooling.Of.In(view).Into(0, all[1].Step))
	assert.Less(t, all[1].Windows(view).CoreSet, all[0].Windows(view).CoreSet)
}

// What is usual for the family stands in where a sheet is silent, and is told.
func TestWhatIsAssumed(t *testing.T) {
	_, all := pours(t, in(`mold "round" {}`, "silent"))
	require.True(t, all[0].Modeled())
	assert.Equal(t, "Taken for the congeals_at, density, shrinkage, conductivity, heat_capacity and latent_heat that Silent paraffin does not state, what is usual for paraffin (from memory)", all[0].Basis())
	_, all = pours(t, in(`mold "unsaid" {}`, "stated"))
	assert.Equal(t, "Taken for the material that Unsaid wall does not state, what is usual for a thin wall (from memory)", all[0].Basis())
	_, all = pours(t, in(`mold "round" {}`, "stated"))
	assert.Empty(t, all[0].Basis())
}

// What the model is not for has no windows, and asks for nothing; what a sheet
// could say is named.
func TestWhatIsNotModeled(t *testing.T) {
	for _, c := range []struct {
		name, body, lacks string
		state             schema.State
	}{
		{"gel", in(`container "jar" {}`, "clear"), "", schema.Absent},
		{"melts", in(`mold "tray" {}`, "stated"), "", schema.Absent},
		{"a straw", in(`mold "thread" {}`, "stated"), "", schema.Absent},
		{"figures no wax has", in(`mold "round" {}`, "slip"), "", schema.Absent},
		{"a room as hot as the wax", in(`mold "round" {}`, "stated") + `room = "55 °C"`, "", schema.Absent},
		{"a blend that was never measured", in(`mold "round" {}`, "house"), "conductivity", schema.Absent},
		{"nothing is known of the wax", in(`mold "round" {}`, "nameless"), "congeals_at", schema.Absent},
		{"a broken figure", in(`mold "round" {}`, "broken"), "", schema.Broken},
		{"an unknown wax", in(`mold "round" {}`, "nowhere"), "", schema.Broken},
		{"an unknown mold", in(`mold "nowhere" {}`, "stated"), "", schema.Broken},
		{"no figure at the pour", `wax "stated" { weight = "1 kg" }` + "\nmold \"round\" {}\nstep \"pour\" {}\n", "at", schema.Absent},
	} {
		view, all := pours(t, c.body)
		require.Len(t, all, 1, c.name)
		assert.Equal(t, c.state, all[0].State, c.name)
		assert.Equal(t, c.lacks, all[0].Attr, c.name)
		assert.Equal(t, c.lacks != "", all[0].Lacks != nil, c.name)
		assert.Nil(t, all[0].Windows(view), c.name)
	}
	_, none := pours(t, `wax "stated" { weight = "1 kg" }`+"\ntaper \"long\" {}\nstep \"dip\" { at = \"70 °C\" }\n")
	assert.Empty(t, none, "tapers are dipped")
}

// Times for people are rounded to what they are worth, with their spread.
func TestEstimates(t *testing.T) {
	for seconds, want := range map[float64]string{40: "1 min", 400: "7 min", 3000: "50 min", 3900: "1 h 5 min", 22_500: "6 h 15 min", 40_000: "11 h"} {
		assert.Equal(t, want, cooling.Estimate(seconds).String())
	}
	assert.Equal(t, "2 h 30 min to 5 h 30 min", cooling.Estimate(4*3600).Span())
	assert.InDelta(t, 0.6*100, cooling.Estimate(100).Low(), 1e-9)
	assert.InDelta(t, 1.4*100, cooling.Estimate(100).High(), 1e-9)
	assert.Equal(t, "about 40 s", cooling.Estimate(42).Brief())
	assert.Equal(t, "no time at all", cooling.Estimate(0).Brief())
}
