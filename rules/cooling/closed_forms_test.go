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
	assert.InEpsilon(t, 7.990621766, depth(2500*43.0/177_000, beeswax, 600), 1e-9)
	assert.InEpsilon(t, 19.572946053, depth(2500*43.0/177_000, beeswax, 3600), 1e-9)
	assert.InEpsilon(t, 0.505371294004, stefanLambda(2500*43.0/177_000), 1e-11)
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
