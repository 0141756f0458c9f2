package cooling

import "math"

// body is what cools: round wax of one radius and depth, hot all through when
// it is poured, with three faces that give heat off.
type body struct {
	radius, depth float64 // m
	wax           medium
	pour          float64 // °C, what it is poured at
	air           float64 // °C, what it cools towards
	side          face    // the wall
	top           face    // the free surface
	base          face    // what it stands on
	bath          bath    // water round the wall and base for a while; zero: none
}

// medium is what the model knows of a wax. It begins to set at the liquidus
// and is set at the solidus, width below; its latent heat comes free evenly
// between the two.
type medium struct {
	kSolid, kLiquid float64 // W/mK
	cSolid, cLiquid float64 // J/kgK
	latent          float64 // J/kg
	density         float64 // kg/m3, as poured: the weight in the vessel does not change
	liquidus, width float64 // °C and K
}

func (m medium) solidus() float64 { return m.liquidus - m.width }

// bath is water that stands round the vessel from one time to another.
type bath struct {
	from, to float64 // s after the pour; equal: there is none
	water    float64 // °C
}

// grid is how finely a body is cut: rings from the axis to the wall, layers
// from the base to the top.
type grid struct{ rings, layers int }

// gridFor is fine enough that twice as fine moves no time by more than a few
// percent; see TestGridConvergence. Layers are about as thick as rings, within
// bounds that keep a tall candle quick to work out.
func gridFor(b body) grid {
	return grid{rings, int(math.Round(min(max(0.7*rings*b.depth/b.radius, 14), 27)))}
}

const rings = 12

// course is how a body cooled: times in s after the pour, +Inf for what does
// not come about.
type course struct {
	wallSets float64    // half way up, the wax at the wall begins to set
	wallSkin [3]float64 // set wax is as thick as skins say at the wall
	topSkin  [3]float64 // and at the top, on the axis
	halfSet  float64    // set wax reaches half way from the wall to the axis, where it is hottest
	coreSet  float64    // all is below the solidus
	core30   float64    // all is at coreCool or below
	curve    []Point

	givenOff, lost float64 // J per radian: through the faces, and out of the wax; equal but for rounding
}

// skins are the thicknesses in m that are looked for.
var skins = [3]float64{0.002, 0.003, 0.005}

// coreCool is how cool in °C a core is when a candle can be taken out. Common
// practice.
const coreCool = 30

// longest is how long a body is followed, in s: ten days.
const longest = 10 * 24 * 3600

// solve follows a body until its core is cool, by the enthalpy method: the heat
// in each ring is counted, and its temperature follows from that, so that the
// front where wax sets need not be tracked. Heat flows by the integral of the
// conductivity over the temperature, which makes the flow between two rings
// exact where both are steady. Steps in time are explicit and as long as is
// stable.
func solve(b body, g grid) course {
	s := newSolver(b, g)
	for !s.done() {
		s.renewFaces()
		for range stepsBetweenLooks {
			s.step()
		}
		s.look()
	}
	return s.finish()
}

const stepsBetweenLooks = 4

type solver struct {
	body
	grid
	dr, dz, dt float64
	heat       []float64 // J/m3 over the solidus, layer by layer from the base, each from the axis
	flow       []float64 // W/m: the integral of the conductivity from the solidus
	ring       []float64 // m2 per radian: the area of a ring from above
	inward     []float64 // flow between a ring and the next inside it, per unit of difference and layer, over the ring's volume
	outward    []float64 // the same for the next outside it

	sideU, topU, baseU []float64 // W/m2K from the middle of the outermost cell to the air
	now                float64
	c                  course
	before             look
	start              float64
	aim                float64 // °C: at this core temperature all is over
	every, looks       int     // which looks become points of the curve
}

// look is what is read off at one time.
type look struct {
	at               float64
	core, wall, over float64 // °C, °C, J/m3: the hottest heat
	set              float64 // share of the wax that is set
	wallSkin         float64 // m
	topSkin          float64
}

func newSolver(b body, g grid) *solver {
	n := g.rings * g.layers
	s := &solver{body: b, grid: g, dr: b.radius / float64(g.rings), dz: b.depth / float64(g.layers)}
	cells := make([]float64, 2*n+3*g.rings)
	s.heat, s.flow, cells = cells[:n], cells[n:2*n], cells[2*n:]
	s.ring, s.inward, s.outward = cells[:g.rings], cells[g.rings:2*g.rings], cells[2*g.rings:]
	s.sideU, s.topU, s.baseU = make([]float64, g.layers), make([]float64, g.rings), make([]float64, g.rings)
	for i := range g.rings {
		in, out := float64(i)*s.dr, float64(i+1)*s.dr
		s.ring[i] = (out*out - in*in) / 2
		s.inward[i] = in / (s.dr * s.ring[i])
		s.outward[i] = out / (s.dr * s.ring[i])
	}
	s.outward[g.rings-1] = 0 // the wall is reckoned by itself
	for i := range s.heat {
		s.heat[i] = b.wax.heatAt(b.pour)
	}
	s.dt = s.stableStep()
	s.c = course{wallSets: math.Inf(1), halfSet: math.Inf(1), coreSet: math.Inf(1), core30: math.Inf(1)}
	for i := range skins {
		s.c.wallSkin[i], s.c.topSkin[i] = math.Inf(1), math.Inf(1)
	}
	s.start = s.total()
	s.aim = coreCool
	if b.air > coreCool-1 {
		s.aim = b.wax.solidus() - 0.01 // the core of a candle does not get cooler than the room
	}
	s.every = 1
	s.renewFaces()
	s.before = s.see()
	s.c.curve = append(s.c.curve, s.before.point())
	return s
}

// stableStep is the longest step in s that keeps every cell from giving more
// heat than would leave it as cool as what it gives it to.
func (s *solver) stableStep() float64 {
	spread := max(s.wax.kSolid/s.wax.cSolid, s.wax.kLiquid/s.wax.cLiquid) / s.wax.density
	k := max(s.wax.kSolid, s.wax.kLiquid)
	side := s.side.most(s.bath)
	end := max(s.top.most(bath{}), s.base.most(s.bath))
	across := max(2, 1+share(side*s.dr/k)) / (s.dr * s.dr)
	along := max(2, 1+share(end*s.dz/k)) / (s.dz * s.dz)
	if s.layers == 1 {
		along = share(end*s.dz/k) * 2 / (s.dz * s.dz)
	}
	if s.rings == 1 {
		across = share(side*s.dr/k) * 2 / (s.dr * s.dr)
	}
	return 0.9 / (spread * (across + along))
}

// share turns a face's exchange, as a Biot number of one cell, into how much
// stronger it draws than the next cell would: at most twice.
func share(biot float64) float64 {
	if math.IsInf(biot, 1) {
		return 2
	}
	return biot / (1 + biot/2)
}

func (s *solver) done() bool { return s.before.core <= s.aim || s.now >= longest }

// step lets heat flow for dt.
func (s *solver) step() {
	w := &s.wax
	slope, liquidSlope := w.kSolid/(w.density*w.cSolid), w.kLiquid/(w.density*w.cLiquid)
	full := w.heatToMelt()
	atFull := w.width * (w.kSolid + w.kLiquid) / 2
	for i, h := range s.heat {
		switch {
		case h <= 0:
			s.flow[i] = slope * h
		case h >= full:
			s.flow[i] = atFull + liquidSlope*(h-full)
		default:
			molten := h / full
			s.flow[i] = w.width * molten * (w.kSolid + (w.kLiquid-w.kSolid)*molten/2)
		}
	}
	side, ends := s.air, s.air
	if s.inBath() {
		side, ends = s.bath.water, s.bath.water
	}
	last, n := s.rings-1, s.rings
	perHeight := 1 / (s.dz * s.dz)
	for j := range s.layers {
		row := s.flow[j*n : (j+1)*n]
		below, above := row, row
		if j > 0 {
			below = s.flow[(j-1)*n : j*n]
		}
		if j < s.layers-1 {
			above = s.flow[(j+1)*n : (j+2)*n]
		}
		heat := s.heat[j*n : (j+1)*n]
		loss := s.sideU[j] * (w.temperature(heat[last]) - side)
		inner := 0.0 // the difference to the ring inside
		for i, f := range row {
			outer := 0.0
			if i < last {
				outer = row[i+1] - f
			}
			gain := s.outward[i]*outer - s.inward[i]*inner + (below[i]+above[i]-2*f)*perHeight
			inner = outer
			if j == 0 && s.baseU[i] != 0 {
				out := s.baseU[i] * (w.temperature(heat[i]) - ends)
				gain -= out / s.dz
				s.c.givenOff += out * s.ring[i] * s.dt
			}
			if j == s.layers-1 && s.topU[i] != 0 {
				out := s.topU[i] * (w.temperature(heat[i]) - s.air)
				gain -= out / s.dz
				s.c.givenOff += out * s.ring[i] * s.dt
			}
			if i == last {
				gain -= loss * s.radius / s.ring[last]
				s.c.givenOff += loss * s.radius * s.dz * s.dt
			}
			heat[i] += gain * s.dt
		}
	}
	s.now += s.dt
}

func (s *solver) inBath() bool { return s.now >= s.bath.from && s.now < s.bath.to }

// renewFaces works out how well each face gives heat off now.
func (s *solver) renewFaces() {
	n := s.rings
	for j := range s.layers {
		s.sideU[j] = s.exchange(s.side, s.heat[j*n+n-1], s.dr, s.sideU[j], s.inBath())
	}
	for i := range s.rings {
		s.baseU[i] = s.exchange(s.base, s.heat[i], s.dz, s.baseU[i], s.inBath())
		s.topU[i] = s.exchange(s.top, s.heat[(s.layers-1)*n+i], s.dz, s.topU[i], false)
	}
}

// exchange is from the middle of a cell to what is round it, in W/m2K: half the
// cell, the wall, and the film outside, one behind the other. The film depends
// on how hot the surface is, which is taken from the exchange before.
func (s *solver) exchange(f face, heat, thick, before float64, wet bool) float64 {
	if f.insulated {
		return 0
	}
	t := s.wax.temperature(heat)
	half := thick / (2 * s.wax.conductivity(heat))
	if wet {
		return 1 / (half + f.wall + 1/water)
	}
	surface := t
	if before > 0 {
		surface = t - before*(t-s.air)*(half+f.wall)
	}
	return 1 / (half + f.wall + 1/f.film(surface, s.air))
}

// see reads off how things stand.
func (s *solver) see() look {
	n := s.rings
	l := look{at: s.now}
	hottest, row := math.Inf(-1), 0
	liquid, all := 0.0, 0.0
	full := s.wax.heatToMelt()
	for j := range s.layers {
		for i := range n {
			h := s.heat[j*n+i]
			if h > hottest {
				hottest, row = h, j
			}
			all += s.ring[i]
			if h > 0 {
				liquid += s.ring[i] * min(h/full, 1)
			}
		}
	}
	l.over, l.core, l.set = hottest, s.wax.temperature(hottest), 1-liquid/all
	l.wallSkin = s.radius - s.liquidRadius(row)
	l.topSkin = s.skinFromTop()
	middle := s.layers / 2
	outer := s.heat[middle*n+n-1]
	t := s.wax.temperature(outer)
	around := s.air
	if s.inBath() {
		around = s.bath.water
	}
	l.wall = t - s.sideU[middle]*(t-around)*s.dr/(2*s.wax.conductivity(outer))
	return l
}

// liquidRadius is how far from the axis the wax of a layer is liquid, as if
// all that is liquid in it stood together.
func (s *solver) liquidRadius(layer int) float64 {
	full, area := s.wax.heatToMelt(), 0.0
	for i := range s.rings {
		if h := s.heat[layer*s.rings+i]; h > 0 {
			area += s.ring[i] * min(h/full, 1)
		}
	}
	return math.Sqrt(2 * area)
}

// skinFromTop is how thick the set wax is that lies over the liquid on the
// axis.
func (s *solver) skinFromTop() float64 {
	full, thick := s.wax.heatToMelt(), 0.0
	for j := s.layers - 1; j >= 0; j-- {
		h := s.heat[j*s.rings]
		if h >= full {
			break
		}
		thick += s.dz * (1 - max(h, 0)/full)
	}
	return thick
}

// look notes what has come about since the last look. Times are read off the
// straight line between the two.
func (s *solver) look() {
	l, was := s.see(), s.before
	s.crossed(&s.c.wallSets, was.wall-s.wax.liquidus, l.wall-s.wax.liquidus, l)
	for i, thick := range skins {
		s.crossed(&s.c.wallSkin[i], thick-was.wallSkin, thick-l.wallSkin, l)
		s.crossed(&s.c.topSkin[i], thick-was.topSkin, thick-l.topSkin, l)
	}
	s.crossed(&s.c.halfSet, s.radius/2-was.wallSkin, s.radius/2-l.wallSkin, l)
	s.crossed(&s.c.coreSet, was.over, l.over, l)
	s.crossed(&s.c.core30, was.core-coreCool, l.core-coreCool, l)
	s.before = l
	s.looks++
	if s.looks%s.every == 0 || l.core <= s.aim {
		s.c.curve = append(s.c.curve, l.point())
	}
	if len(s.c.curve) >= 2*curvePoints {
		s.thin()
	}
}

// crossed sets a time that was not reached yet where a measure has fallen to
// nothing.
func (s *solver) crossed(at *float64, before, now float64, l look) {
	if !math.IsInf(*at, 1) || now > 0 {
		return
	}
	*at = l.at
	if before > 0 {
		*at = s.before.at + (l.at-s.before.at)*before/(before-now)
	}
}

// curvePoints is about how many points a curve keeps; up to twice as many.
const curvePoints = 48

// thin leaves every other point out, so that any length of time has about as
// many.
func (s *solver) thin() {
	kept := s.c.curve[:0]
	for i, p := range s.c.curve {
		if i%2 == 0 {
			kept = append(kept, p)
		}
	}
	s.c.curve = kept
	s.every *= 2
}

func (l look) point() Point {
	return Point{Seconds: l.at, Core: l.core, Wall: l.wall, Set: l.set}
}

// total is the heat in the wax over the solidus, in J per radian.
func (s *solver) total() float64 {
	sum := 0.0
	for j := range s.layers {
		for i := range s.rings {
			sum += s.heat[j*s.rings+i] * s.ring[i] * s.dz
		}
	}
	return sum
}

func (s *solver) finish() course {
	s.c.lost = s.start - s.total()
	return s.c
}

// heatToMelt is J/m3 from the solidus to the liquidus.
func (m *medium) heatToMelt() float64 {
	return m.density * (m.latent + m.width*(m.cSolid+m.cLiquid)/2)
}

// heatAt is J/m3 over the solidus at a temperature.
func (m *medium) heatAt(celsius float64) float64 {
	switch {
	case celsius <= m.solidus():
		return m.density * m.cSolid * (celsius - m.solidus())
	case celsius >= m.liquidus:
		return m.heatToMelt() + m.density*m.cLiquid*(celsius-m.liquidus)
	}
	return m.heatToMelt() * (celsius - m.solidus()) / m.width
}

// temperature is in °C at a heat.
func (m *medium) temperature(heat float64) float64 {
	full := m.heatToMelt()
	switch {
	case heat <= 0:
		return m.solidus() + heat/(m.density*m.cSolid)
	case heat >= full:
		return m.liquidus + (heat-full)/(m.density*m.cLiquid)
	}
	return m.solidus() + m.width*heat/full
}

// conductivity is in W/mK at a heat.
func (m *medium) conductivity(heat float64) float64 {
	full := m.heatToMelt()
	switch {
	case heat <= 0:
		return m.kSolid
	case heat >= full:
		return m.kLiquid
	}
	return m.kSolid + (m.kLiquid-m.kSolid)*heat/full
}
