package cooling

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// usualBodies are candles of every build: a votive, pillars, a jar, a tin, a
// bowl; in metal, glass and silicone; in air and in water.
func usualBodies() map[string]body {
	wax := medium{kSolid: 0.24, kLiquid: 0.15, cSolid: 2200, cLiquid: 2300, latent: 200_000, density: 800, liquidus: 60, width: 4}
	soy := medium{kSolid: 0.22, kLiquid: 0.16, cSolid: 2000, cLiquid: 2100, latent: 120_000, density: 855, liquidus: 46, width: 8}
	made := func(m medium, radius, depth, pour float64, material string) body {
		wall, shines := wallOf(material)
		return body{radius: radius, depth: depth, wax: m, pour: pour, air: 21, side: face{wall: wall, emissivity: shines, convection: upright, size: depth},
			top: face{emissivity: waxShines, convection: facingUp, size: 2 * radius}, base: face{wall: wall, fixed: onTheBench}}
	}
	wet := made(wax, 0.038, 0.14, 80, "metal")
	wet.bath = bath{from: 0, to: longest, water: 21}
	return map[string]body{
		"votive":           made(wax, 0.019, 0.045, 78, "metal"),
		"pillar":           made(wax, 0.038, 0.143, 80, "metal"),
		"silicone":         made(wax, 0.030, 0.080, 74, "silicone"),
		"slim pillar":      made(wax, 0.0285, 0.118, 92, "polycarbonate"),
		"jar":              made(soy, 0.035, 0.060, 59, "glass"),
		"tin":              made(soy, 0.038, 0.042, 58, "tin"),
		"bowl":             made(soy, 0.0635, 0.054, 61, "ceramic"),
		"pillar in a bath": wet,
	}
}

// Twice as fine a grid moves no time much: what the rules use is fine enough.
func TestGridConvergence(t *testing.T) {
	for name, b := range usualBodies() {
		g := gridFor(b)
		coarse, fine := solve(b, g), solve(b, grid{2 * g.rings, 2 * g.layers})
		for _, c := range []struct {
			what         string
			coarse, fine float64
			within       float64
		}{
			{"core set", coarse.coreSet, fine.coreSet, 0.02},
			{"core at 30 °C", coarse.core30, fine.core30, 0.02},
			{"half set", coarse.halfSet, fine.halfSet, 0.03},
			{"skin of 5 mm at the wall", coarse.wallSkin[2], fine.wallSkin[2], 0.08},
			{"skin of 3 mm at the wall", coarse.wallSkin[1], fine.wallSkin[1], 0.10},
			{"skin of 5 mm at the top", coarse.topSkin[2], fine.topSkin[2], 0.15},
			{"skin of 3 mm at the top", coarse.topSkin[1], fine.topSkin[1], 0.25},
		} {
			off := c.coarse/c.fine - 1
			t.Logf("%-18s %-26s %v: %6.1f min, twice as fine %6.1f min, off %+.1f %%", name, c.what, g, c.coarse/60, c.fine/60, 100*off)
			assert.InDelta(t, c.fine, c.coarse, max(c.within*c.fine, 90), "%s: %s", name, c.what)
		}
	}
}

// What goes out through the faces is what the wax has lost, to a part in 1e9.
func TestEnergyIsConserved(t *testing.T) {
	for name, b := range usualBodies() {
		c := solve(b, gridFor(b))
		assert.InEpsilon(t, c.lost, c.givenOff, 1e-9, name)
		assert.Positive(t, c.lost)
	}
}

// Stages come in their order, and a curve falls.
func TestStagesComeInOrder(t *testing.T) {
	for name, b := range usualBodies() {
		c := solve(b, gridFor(b))
		order := []float64{0, c.wallSets, c.wallSkin[0], c.wallSkin[1], c.wallSkin[2], c.coreSet, c.core30}
		for i := 1; i < len(order); i++ {
			assert.Less(t, order[i-1], order[i], "%s: stage %d", name, i)
		}
		assert.Less(t, c.halfSet, c.coreSet, name)
		assert.GreaterOrEqual(t, len(c.curve), curvePoints/2, name)
		assert.Less(t, len(c.curve), 2*curvePoints+2, name)
		for i := 1; i < len(c.curve); i++ {
			before, now := c.curve[i-1], c.curve[i]
			assert.Less(t, before.Seconds, now.Seconds, name)
			assert.LessOrEqual(t, now.Core, before.Core+1e-9, name)
			assert.GreaterOrEqual(t, now.Set, before.Set-1e-9, name)
			assert.LessOrEqual(t, now.Wall, now.Core+1e-9, name)
		}
		last := c.curve[len(c.curve)-1]
		assert.InDelta(t, coreCool, last.Core, 0.5, name)
		assert.Equal(t, 1.0, last.Set, name)
	}
}

// What makes a candle cool more slowly does so in the model.
func TestWhatSlowsCooling(t *testing.T) {
	base := usualBodies()["pillar"]
	time := func(change func(*body)) float64 {
		b := base
		change(&b)
		return solve(b, gridFor(b)).coreSet
	}
	usual := time(func(*body) {})
	for name, change := range map[string]func(*body){
		"wider":          func(b *body) { b.radius *= 1.2 },
		"taller":         func(b *body) { b.depth *= 1.5 },
		"poured hotter":  func(b *body) { b.pour += 10 },
		"a warmer room":  func(b *body) { b.air += 6 },
		"a thick wall":   func(b *body) { b.side.wall = 0.04 },
		"more latent":    func(b *body) { b.wax.latent *= 1.2 },
		"conducts worse": func(b *body) { b.wax.kSolid *= 0.7 },
		"on wax":         func(b *body) { b.base = insulated },
	} {
		assert.Greater(t, time(change), usual, name)
	}
	assert.Less(t, time(func(b *body) { b.bath = bath{0, longest, 21} }), 0.7*usual, "in water")
	assert.Less(t, time(func(b *body) { b.bath = bath{3600, 7200, 21} }), usual, "in water for an hour")
	assert.Less(t, time(func(b *body) { b.side.emissivity = 0.9 }), usual, "a dull wall")
}

// A room as warm as 30 °C never has the core at 30 °C, and ends all the same.
func TestAWarmRoom(t *testing.T) {
	b := usualBodies()["pillar"]
	b.air = 31
	c := solve(b, gridFor(b))
	assert.True(t, math.IsInf(c.core30, 1))
	assert.False(t, math.IsInf(c.coreSet, 1))
}

// The bounds that spare the model hold, for bodies of every build within what is
// modeled: cool by comes after the model by a tenth at least.
func TestTheBoundsHold(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	between := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
	materials := []string{"metal", "glass", "silicone", "polycarbonate", "wood", "ceramic"}
	tightest, skin, half := math.Inf(1), math.Inf(1), math.Inf(1)
	for range 600 {
		m := medium{kSolid: between(0.18, 0.30), kLiquid: between(0.14, 0.17), cSolid: between(1800, 2900), cLiquid: between(2000, 2500),
			latent: between(90_000, 220_000), density: between(760, 900), liquidus: between(42, 66), width: between(2, 10)}
		b := body{radius: between(0.015, 0.08), depth: between(0.02, 0.25), wax: m, pour: m.liquidus + between(1, 40), air: between(10, min(34, m.solidus()-6))}
		wall, shines := wallOf(materials[r.IntN(len(materials))])
		b.side = face{wall: wall, emissivity: shines, convection: upright, size: b.depth}
		b.top = face{emissivity: waxShines, convection: facingUp, size: 2 * b.radius}
		b.base = face{wall: wall, fixed: onTheBench}
		if r.IntN(2) == 0 {
			b.base = insulated
		}
		c := solve(b, grid{8, gridFor(b).layers})
		latest := c.coreSet
		if !math.IsInf(c.core30, 1) {
			latest = c.core30
		}
		from, to := surelyOpen(b)
		skin, half = min(skin, from/max(c.wallSkin[1], c.topSkin[1])), min(half, c.halfSet/to)
		assert.Greater(t, from, max(c.wallSkin[1], c.topSkin[1]), fmt.Sprintf("%+v", b))
		assert.Less(t, to, c.halfSet, fmt.Sprintf("%+v", b))
		tightest = min(tightest, surelyCool(b)/latest)
		assert.Greater(t, surelyCool(b), 1.1*latest, fmt.Sprintf("%+v", b))
	}
	t.Logf("cool by: at least %.2f times the model; a skin by: %.2f; half set: the model at least %.2f times the bound", tightest, skin, half)
}

func BenchmarkSolve(b *testing.B) {
	for name, body := range usualBodies() {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				solve(body, gridFor(body))
			}
		})
	}
}
