package cooling

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The model beside solutions that others have published. Each test names its
// source; what is expected is worked out here from the published equation, and
// beside it stands the figure that was worked out independently, to thirty
// digits, with another program.

// reference is a paraffin of middling figures.
var reference = medium{kSolid: 0.24, kLiquid: 0.15, cSolid: 2200, cLiquid: 2300, latent: 200_000, density: 900, liquidus: 57, width: 2}

// sharp is the reference wax setting at 56 °C all at once, or nearly.
func sharp(m medium, melts float64) medium {
	m.liquidus, m.width = melts+0.01, 0.02
	return m
}

var insulated = face{insulated: true}

// held is a face kept at the temperature of the air.
var held = face{fixed: math.Inf(1)}

// slab is wax that loses heat through its base alone.
func slab(m medium, depth, pour, wall float64) body {
	return body{radius: 0.01, depth: depth, wax: m, pour: pour, air: wall, side: insulated, top: insulated, base: held}
}

// frontAt is when set wax in a slab is so thick. The share that is set tells,
// since the rest is liquid.
func frontAt(b body, layers int, thick float64) float64 {
	s := newSolver(b, grid{1, layers})
	was := look{}
	for s.now < longest {
		s.renewFaces()
		s.step()
		l := s.see()
		if l.set*b.depth >= thick {
			return was.at + (l.at-was.at)*(thick-was.set*b.depth)/((l.set-was.set)*b.depth)
		}
		was = l
	}
	return math.Inf(1)
}

// root of a falling function by halving.
func root(low, high float64, f func(float64) float64) float64 {
	for range 200 {
		if middle := (low + high) / 2; f(middle) > 0 {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}

// stefanLambda solves l exp(l²) erf l = Ste / sqrt pi.
func stefanLambda(ste float64) float64 {
	return root(0, 5, func(l float64) float64 { return ste/math.Sqrt(math.Pi) - l*math.Exp(l*l)*math.Erf(l) })
}

// near says how far a figure is from what is expected, and fails over a share.
func near(t *testing.T, what string, want, got, share float64) {
	t.Helper()
	off := got/want - 1
	t.Logf("%-44s expected %10.2f  got %10.2f  off %+.2f %%", what, want, got, 100*off)
	assert.InDelta(t, 0, off, share, what)
}

// The one-phase problem of Stefan in the plane, wax at the point where it sets
// on a wall held colder: s = 2 l sqrt(a t). H. S. Carslaw and J. C. Jaeger,
// Conduction of Heat in Solids, 2nd ed. (1959), chapter XI; V. Alexiades and
// A. D. Solomon, Mathematical Modeling of Melting and Freezing Processes (1993).
func TestStefan(t *testing.T) {
	for ste, want := range map[float64]float64{0.01: 0.070593276560429, 0.1: 0.220016272742938, 0.396: 0.419352885256150, 0.5: 0.464785920646244, 1: 0.620062633313595, 2: 0.800601362805608} {
		assert.InDelta(t, want, stefanLambda(ste), 1e-12)
	}
	beeswax := medium{kSolid: 0.25, kLiquid: 0.16, cSolid: 2500, cLiquid: 2400, latent: 177_000, density: 960}
	for _, c := range []struct {
		name     string
		wax      medium
		melts    float64
		five, at float64 // s until 5 and 10 mm are set
	}{
		{"paraffin, wall at 20 °C", sharp(reference, 56), 56, 293.207243, 1172.828974},
		{"like beeswax, wall at 20 °C", sharp(beeswax, 63), 63, 234.925473696, 939.701894784},
	} {
		b := slab(c.wax, 0.012, c.melts+0.01, 20)
		lambda := stefanLambda(c.wax.cSolid * (c.melts - 20) / c.wax.latent)
		for thick, want := range map[float64]float64{0.005: c.five, 0.010: c.at} {
			half := thick / (2 * lambda)
			assert.InEpsilon(t, want, half*half*c.wax.density*c.wax.cSolid/c.wax.kSolid, 1e-6)
			near(t, fmt.Sprintf("Stefan, %s, %g mm (s)", c.name, 1000*thick), want, frontAt(b, 96, thick), 0.01)
		}
	}
}

// The two-phase problem of Neumann, liquid wax hotter than where it sets.
// Carslaw and Jaeger, 2nd ed. (1959), section 11.2, for equal densities.
func TestNeumannTwoPhase(t *testing.T) {
	light := reference
	light.density = 850
	ice := medium{kSolid: 2.22, kLiquid: 0.556, cSolid: 2050, cLiquid: 4217, latent: 333_600, density: 1000}
	for _, c := range []struct {
		name              string
		wax               medium
		melts, pour, wall float64
		ten               float64 // s until 10 mm are set
	}{
		{"paraffin poured at 80 °C", light, 56, 80, 20, 1643.081718},
		{"paraffin poured at 93 °C", light, 56, 93, 20, 1982.967175},
		{"paraffin poured where it sets", light, 56, 56.01, 20, 1107.671809},
		{"water and ice, 10 °C on a wall at -10 °C", ice, 0, 10, -10, 953.062002},
	} {
		b := slab(sharp(c.wax, c.melts), 0.08, c.pour, c.wall)
		near(t, "Neumann, "+c.name+", 10 mm (s)", c.ten, frontAt(b, 400, 0.010), 0.01)
	}
}

// Wax hotter than where it sets in still surroundings: how soon its surface has
// come down to a temperature, before anything sets. Carslaw and Jaeger, 2nd ed.
// (1959), section 2.7: 1 - exp(x²) erfc(x) with x = h sqrt(a t) / k.
func TestSurfaceOfASemiInfiniteSolid(t *testing.T) {
	b := body{radius: 0.4, depth: 0.01, wax: reference, pour: 85, air: 20, side: face{fixed: 10}, top: insulated, base: insulated}
	x := root(0, 5, func(x float64) float64 { return math.Exp(x*x)*math.Erfc(x) - (57.0-20)/(85-20) })
	spread := b.wax.kLiquid / (b.wax.density * b.wax.cLiquid)
	want := math.Pow(x*b.wax.kLiquid/10, 2) / spread
	s := newSolver(b, grid{300, 1})
	for !(s.before.wall <= 57) {
		s.renewFaces()
		s.step()
		s.look()
	}
	near(t, "surface of a wide body down to 57 °C (s)", want, s.c.wallSets, 0.03)
}

// Setting inwards in a long cylinder with convection, quasi-steady: t = rho L /
// dT (R²/4k (1 - x² + 2 x² ln x) + R/2h (1 - x²)). Alexiades and Solomon (1993),
// chapter 3; V. J. Lunardini, Heat Transfer with Freezing and Thawing (1991).
// It leaves out the heat of the solid, so the wax here has hardly any.
func TestQuasiSteadyCylinder(t *testing.T) {
	m := sharp(reference, 56)
	m.cSolid, m.cLiquid = 22, 23
	for _, c := range []struct {
		radius, film float64
		half, centre float64
	}{
		{0.0254, 10, 6118.097, 9710.2083},
		{0.0381, 10, 10193.843, 17085.4688},
		{0.0508, 10, 14947.387, 26140.8333},
		{0.0254, 150, 0, 3783.542},
		{0.0381, 150, 0, 8195.469},
		{0.0508, 150, 0, 14287.5},
		{0.0254, math.Inf(1), 1355.597, 3360.2083},
		{0.0508, math.Inf(1), 5422.387, 13440.8333},
		{0.0381, math.Inf(1), 3050.093, 7560.4688},
	} {
		b := body{radius: c.radius, depth: 0.01, wax: m, pour: 56.01, air: 20, side: face{fixed: c.film}, top: insulated, base: insulated}
		got := solve(b, grid{24, 1})
		name := fmt.Sprintf("quasi-steady, R %g mm, h %g", 1000*c.radius, c.film)
		if c.half > 0 {
			near(t, name+", half way (s)", c.half, got.halfSet, 0.02)
		}
		near(t, name+", middle (s)", c.centre, got.coreSet, 0.02)
	}
}

// A body that conducts so well that it cools all through alike follows Newton's
// law of cooling (Incropera and DeWitt, Fundamentals of Heat and Mass Transfer,
// the lumped capacitance method): tau = rho c V / (h A), top and base included.
func TestLumpedBody(t *testing.T) {
	m := reference
	m.kSolid, m.kLiquid, m.liquidus = 50, 50, 10
	b := body{radius: 0.03, depth: 0.05, wax: m, pour: 85, air: 22, side: face{fixed: 10}, top: face{fixed: 10}, base: face{fixed: 10}}
	tau := 900 * 2300 * 0.03 * 0.05 / (10 * 2 * (0.03 + 0.05))
	s := newSolver(b, grid{6, 8})
	for s.before.core > 60 {
		s.renewFaces()
		s.step()
		s.before = s.see()
	}
	near(t, "lumped body, 85 to 60 °C (s)", tau*math.Log((85.0-22)/(60-22)), s.now, 0.01)
}

// Molds of 2, 3 and 4 in, so long that their ends do not count, in air and in
// water: an independent enthalpy program in one direction, of 120 rings
// (checked with 60), poured at 85 °C into 20 °C.
func TestEnthalpyTable(t *testing.T) {
	for _, c := range []struct {
		inches, film       float64
		skins              [3]float64 // min
		half, middle, cool float64    // h
	}{
		{2, 10, [3]float64{45, 57, 75}, 2.38, 3.67, 4.45},
		{2, 150, [3]float64{3.3, 5.6, 11}, 0.67, 1.43, 1.64},
		{3, 10, [3]float64{53, 65, 89}, 3.98, 6.48, 7.71},
		{3, 150, [3]float64{3.5, 5.8, 11.5}, 1.42, 3.09, 3.55},
		{4, 10, [3]float64{54, 73, 96}, 5.86, 9.91, 11.67},
		{4, 150, [3]float64{3.3, 6.4, 11.7}, 2.43, 5.38, 6.19},
		{2, 8, [3]float64{}, 0, 4.25, 0},
		{3, 8, [3]float64{}, 0, 7.37, 0},
		{4, 8, [3]float64{}, 0, 11.12, 0},
	} {
		b := body{radius: c.inches * 0.0254 / 2, depth: 0.05, wax: reference, pour: 85, air: 20, side: face{fixed: c.film}, top: insulated, base: insulated}
		got := solve(b, grid{rings, 1}) // the rings that the rules use
		name := fmt.Sprintf("%g in, h %g: ", c.inches, c.film)
		near(t, name+"middle set (h)", c.middle, got.coreSet/3600, 0.03)
		if c.half > 0 {
			near(t, name+"half way (h)", c.half, got.halfSet/3600, 0.03)
			near(t, name+"middle at 30 °C (h)", c.cool, got.core30/3600, 0.03)
			fine := solve(b, grid{48, 1})
			for i, want := range c.skins {
				assert.InDelta(t, want, fine.wallSkin[i]/60, 3, "%sskin of %g mm (min)", name, 1000*skins[i])
				t.Logf("%sskin of %g mm: expected %.1f min, got %.1f", name, 1000*skins[i], want, fine.wallSkin[i]/60)
			}
		}
	}
}

// A short candle sets sooner than an endless one: by its equivalent heat
// transfer dimension, which D. J. Cleland and R. L. Earle fitted to the freezing
// of short cylinders and bricks (ASHRAE Handbook, Refrigeration, freezing times
// of foods; from memory). The time is that of a slab over E; an endless cylinder
// has E = 2.
func TestShortCylinders(t *testing.T) {
	const film, k = 10, 0.24
	blend := func(beta, biot, weak, power float64) float64 {
		x := 2.32 / math.Pow(beta, 1.77)
		share := x / (math.Pow(biot, 1.34) + x)
		return share/beta + (1-share)*weak/math.Pow(beta, power)
	}
	slab := func(thick float64) float64 { return thick*thick/(8*k) + thick/(2*film) }
	for _, c := range []struct{ width, height float64 }{{0.0762, 0.1524}, {0.0762, 0.0762}, {0.127, 0.05}} {
		endless := slab(c.width) / 2
		short := slab(c.width) / (2 + blend(c.height/c.width, film*c.width/k, 0.50, 3.69))
		if c.height < c.width {
			short = slab(c.height) / (1 + 2*blend(c.width/c.height, film*c.height/k, 0.73, 2.50))
		}
		b := body{radius: c.width / 2, depth: c.height, wax: reference, pour: 85, air: 20, side: face{fixed: film}, top: face{fixed: film}, base: face{fixed: film}}
		got := solve(b, gridFor(b)).coreSet
		b.top, b.base = insulated, insulated
		near(t, fmt.Sprintf("%g by %g mm: share of an endless one's time", 1000*c.width, 1000*c.height), short/endless, got/solve(b, grid{rings, 1}).coreSet, 0.08)
	}
}
