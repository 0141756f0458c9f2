package cooling

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Stefan's problem once more, as depths after a time: s = 2 l sqrt(a t)
// (Carslaw and Jaeger, 2nd ed. (1959), chapter XI).
func TestStefanDepths(t *testing.T) {
	assert.InDelta(t, 0.306423905361211, stefanLambda(0.2), 1e-12)
	assert.InDelta(t, math.Sqrt(0.005), stefanLambda(0.01), 2e-4, "small Ste: l is about sqrt(Ste / 2)")
	depth := func(ste, spread, seconds float64) float64 {
		return 2000 * stefanLambda(ste) * math.Sqrt(spread*seconds)
	}
	paraffin, beeswax := reference.kSolid/(reference.density*reference.cSolid), 0.25/(960*2500.0)
	assert.InEpsilon(t, 7.152506843, depth(0.396, paraffin, 600), 1e-9)
	assert.InEpsilon(t, 17.519992148, depth(0.396, paraffin, 3600), 1e-9)
	assert.InEpsilon(t, 20.0, depth(0.396, paraffin, 4691.315896), 1e-9)
	assert.InEpsilon(t, 7.990621766, depth(2500*43.0/177_000, beeswax, 600), 1e-9)
	assert.InEpsilon(t, 19.572946053, depth(2500*43.0/177_000, beeswax, 3600), 1e-9)
	assert.InEpsilon(t, 0.505371294004, stefanLambda(2500*43.0/177_000), 1e-11)
}

// Stefan's problem to 20 mm, twice as deep as the other tests go (Carslaw and
// Jaeger, 2nd ed. (1959), chapter XI).
func TestStefanDeep(t *testing.T) {
	b := slab(sharp(reference, 56), 0.022, 56.01, 20)
	near(t, "Stefan, paraffin, wall at 20 °C, 20 mm (s)", 4691.315896, frontAt(b, 128, 0.020), 0.01)
}

// neumannLambda solves Neumann's equation for equal densities (Carslaw and
// Jaeger, 2nd ed. (1959), section 11.2).
func neumannLambda(m medium, melts, pour, wall float64) float64 {
	nu := math.Sqrt(m.kSolid / m.cSolid / (m.kLiquid / m.cLiquid))
	return root(1e-6, 3, func(l float64) float64 {
		return math.Exp(-l*l)/math.Erf(l) -
			m.kLiquid/m.kSolid*nu*(pour-melts)/(melts-wall)*math.Exp(-l*l*nu*nu)/math.Erfc(l*nu) -
			l*m.latent*math.Sqrt(math.Pi)/(m.cSolid*(melts-wall))
	})
}

func TestNeumannRoots(t *testing.T) {
	light := reference
	light.density = 850
	ice := medium{kSolid: 2.22, kLiquid: 0.556, cSolid: 2050, cLiquid: 4217, latent: 333_600, density: 1000}
	for name, c := range map[string]struct {
		m                        medium
		melts, pour, wall, lamda float64
	}{
		"80 °C": {light, 56, 80, 20, 0.344314732032208}, "93 °C": {light, 56, 93, 20, 0.313420518109143},
		"where it sets": {light, 56, 56, 20, 0.419352885256150}, "ice": {ice, 0, 10, -10, 0.155635931796775},
	} {
		assert.InDelta(t, c.lamda, neumannLambda(c.m, c.melts, c.pour, c.wall), 1e-12, name)
	}
	spread := light.kSolid / (light.density * light.cSolid)
	half := 0.005 / (2 * neumannLambda(light, 56, 80, 20))
	assert.InEpsilon(t, 410.770429, half*half/spread, 1e-8)
	assert.InEpsilon(t, 6.042908850, 2000*neumannLambda(light, 56, 80, 20)*math.Sqrt(spread*600), 1e-9)
	near(t, "Neumann, paraffin poured at 80 °C, 5 mm (s)", 410.770429, frontAt(slab(sharp(light, 56), 0.08, 80, 20), 400, 0.005), 0.03)
}

// A skin in the plane with convection, quasi-steady: t = rho L / dT (d²/2k + d/h)
// (Alexiades and Solomon (1993), chapter 3). The wax has hardly any heat but
// that of setting.
func TestQuasiSteadySkin(t *testing.T) {
	m := sharp(reference, 56)
	m.cSolid, m.cLiquid = 22, 23
	b := slab(m, 0.012, 56.01, 20)
	b.base = face{fixed: 10}
	for thick, want := range map[float64]float64{0.002: 1041.667, 0.003: 1593.75, 0.005: 2760.417} {
		assert.InEpsilon(t, want, 900*2e5/36*(thick*thick/0.48+thick/10), 1e-6)
		near(t, fmt.Sprintf("skin of %g mm (s)", 1000*thick), want, frontAt(b, 96, thick), 0.02)
	}
}

// What is hotter than where it sets cools first, taken as one body: tau = rho c R
// / (2 h) for a long cylinder (Incropera and DeWitt, lumped capacitance).
func TestSuperheat(t *testing.T) {
	pot := Newton{Tau: reference.density * reference.cLiquid * 0.0381 / (2 * 10), Air: 20}
	assert.InDelta(t, 3943.35, pot.Tau, 1e-9)
	assert.InDelta(t, 2330.0, pot.Until(85, 56), 0.05)
}

// The first tenth of the way in a long cylinder, quasi-steady: t = rho L / dT
// (R²/4k (1 - x² + 2 x² ln x) + R/2h (1 - x²)) at x = 0.9 (Alexiades and Solomon
// (1993), chapter 3; Lunardini (1991)). Wax with hardly any heat but that of
// setting; the front is told by the share that is set, 1 - x² of the section.
func TestQuasiSteadyCylinderNearTheWall(t *testing.T) {
	m := sharp(reference, 56)
	m.cSolid, m.cLiquid = 22, 23
	const x = 0.9
	for _, c := range []struct{ radius, film, want float64 }{
		{0.0254, math.Inf(1), 64.9057}, {0.0381, math.Inf(1), 146.0377}, {0.0508, math.Inf(1), 259.6227},
		{0.0254, 10, 1271.406}, {0.0381, 10, 1955.788}, {0.0508, 10, 2672.623},
	} {
		formula := m.density * m.latent / 36 * (c.radius*c.radius/(4*m.kSolid)*(1-x*x+2*x*x*math.Log(x)) + c.radius/(2*c.film)*(1-x*x))
		assert.InEpsilon(t, c.want, formula, 1e-5)
		b := body{radius: c.radius, depth: 0.01, wax: m, pour: 56.01, air: 20, side: face{fixed: c.film}, top: insulated, base: insulated}
		near(t, fmt.Sprintf("quasi-steady, R %g mm, h %g, a tenth set (s)", 1000*c.radius, c.film), c.want, shareSetAt(b, 96, 1-x*x), 0.02)
	}
}

// shareSetAt is when so much of a long cylinder is set.
func shareSetAt(b body, rings int, share float64) float64 {
	s := newSolver(b, grid{rings, 1})
	was := look{}
	for s.now < longest {
		s.renewFaces()
		s.step()
		l := s.see()
		if l.set >= share {
			return was.at + (l.at-was.at)*(share-was.set)/(l.set-was.set)
		}
		was = l
	}
	return math.Inf(1)
}

// A rule of thumb for short candles beside the model: a candle as wide as D and
// as tall as H, cooled all round, sets in 1 / (1 + D²/2H²) of an endless one's
// time. It adds up the rates of an endless cylinder and a slab, as the
// quasi-steady times of Alexiades and Solomon (1993), chapter 3, have them with
// the wall held cold; the adding up is an estimate and no published solution. In air the
// film counts as well, and counts the same at every face, so that the rule
// overstates what the ends do. Hence the band: the model is slower than the
// rule, by at most a quarter, faster than an endless candle, and comes to both
// as candles grow tall. Cleland and Earle's fit (TestShortCylinders) lies
// between as well.
func TestShortCandlesBesideTheRuleOfThumb(t *testing.T) {
	const width = 0.0762
	side := face{fixed: 10}
	endless := solve(body{radius: width / 2, depth: 0.05, wax: reference, pour: 85, air: 20, side: side, top: insulated, base: insulated}, grid{rings, 1}).coreSet
	before := 0.0
	for _, c := range []struct{ tall, rule float64 }{{1, 2.0 / 3}, {1.5, 9.0 / 11}, {2, 8.0 / 9}, {4, 32.0 / 33}} {
		assert.InDelta(t, c.rule, 1/(1+1/(2*c.tall*c.tall)), 1e-12)
		b := body{radius: width / 2, depth: c.tall * width, wax: reference, pour: 85, air: 20, side: side, top: side, base: side}
		share := solve(b, gridFor(b)).coreSet / endless
		t.Logf("H = %g D: rule of thumb %.3f, model %.3f of an endless one's time", c.tall, c.rule, share)
		assert.Greater(t, share, c.rule, "H = %g D: not sooner than the rule of thumb says", c.tall)
		assert.Less(t, share, min(1.01, 1.25*c.rule), "H = %g D: not later than an endless one, nor by a quarter than the rule", c.tall)
		assert.Greater(t, share, before, "H = %g D: a taller candle takes no less time", c.tall)
		before = share
	}
	assert.InDelta(t, 1, before, 0.03, "four times as tall as wide: as an endless one")
}
