package cooling

import (
	"math"

	"wickrule/rules/batch"
)

// wallOf is what a vessel's wall does: its resistance in m2K/W, as thick as
// such walls usually are over what they conduct, and how well it radiates.
// Conductivities and emissivities: handbooks of heat transfer, from memory;
// thicknesses: common practice.
func wallOf(material string) (resistance, emissivity float64) {
	const dull = 0.9 // all but bare metal
	switch material {
	case "metal", "tin", "aluminum", "steel":
		return 0, 0.5 // used and waxy; bright metal shines back more, rusty metal less
	case "glass", "shell":
		return 0.003, dull // 3 mm at 1 W/mK
	case "ceramic":
		return 0.004, dull // 5 mm at 1.2
	case "concrete":
		return 0.008, dull // 8 mm at 1
	case "wood":
		return 0.05, dull // 8 mm at 0.15
	case "silicone", "rubber":
		return 0.04, dull // 8 mm at 0.2
	case "polycarbonate", "acrylic", "polypropylene", "polyethylene", "polystyrene", "printed PLA", "printed PETG", "printed ABS", "other plastic":
		return 0.01, dull // 2 mm at 0.2
	}
	return 0.003, dull
}

// onTheBench is what goes through the base into a wooden bench or a board, in
// W/m2K: 3 to 6, from memory.
const onTheBench = 5

// outline is the inside of a vessel as the model takes it: round, as wide all
// the way up. A block, a cone and a sphere are taken as the cylinder with as
// much wax for each area of wall, which is what sets how fast they cool.
type outline struct {
	radius  float64 // mm
	section float64 // mm2: how much wax stands in each mm of depth
}

func outlineOf(v *batch.Vessel) (outline, missing) {
	switch v.Kind {
	case "mold":
		return moldOutline(v)
	case "container":
		return roundOutline(v, 1.0/2, 1.0/4)
	}
	return outline{}, notApplicable // a taper is dipped
}

func moldOutline(v *batch.Vessel) (outline, missing) {
	shape := v.Stock.Get("shape")
	if shape.Broken() {
		return outline{}, brokenValue
	}
	switch shape.Text() {
	case "cylinder":
		return roundOutline(v, 1.0/2, 1.0/4)
	case "cone":
		return roundOutline(v, 1.0/3, 1.0/9)
	case "sphere":
		return roundOutline(v, 1.0/2, 1.0/6)
	case "block":
		return blockOutline(v)
	}
	return measuredOutline(v)
}

// roundOutline is as wide as a part of the diameter, and in section a part of
// its square times pi.
func roundOutline(v *batch.Vessel, radius, section float64) (outline, missing) {
	if !v.Diameter.Known() {
		return outline{}, waiting(v.Diameter)
	}
	d := v.Diameter.Value.Float64()
	return outline{d * radius, math.Pi * d * d * section}, nothing
}

// blockOutline: of a rectangle the area over half its girth.
func blockOutline(v *batch.Vessel) (outline, missing) {
	width, length := v.Stock.Get("width"), v.Stock.Get("length")
	if width.Broken() || length.Broken() || !v.Diameter.Known() {
		return outline{}, waiting(v.Diameter)
	}
	w := v.Diameter.Value.Float64()
	if width.IsAmount() {
		w = width.Amount().Base().Float64()
	}
	l := w
	if length.IsAmount() {
		l = length.Amount().Base().Float64()
	}
	return outline{w * l / (w + l), w * l}, nothing
}

// measuredOutline is of a mold of any shape, by what it holds and how tall it
// is.
func measuredOutline(v *batch.Vessel) (outline, missing) {
	for _, f := range []batch.Figure{v.Holds, v.Height} {
		if !f.Known() {
			return outline{}, waiting(f)
		}
	}
	section := 1000 * v.Holds.Value.Float64() / v.Height.Value.Float64()
	return outline{math.Sqrt(section / math.Pi), section}, nothing
}

// The model is for candles: no thinner or smaller, no larger than these, in m.
const (
	leastRadius, mostRadius = 0.008, 0.15
	leastDepth, mostDepth   = 0.006, 0.6
)

// faces sets what the wall, the top and the base of a body do. Wax that is
// poured onto wax loses nothing downwards.
func (b *body) faces(v *batch.Vessel, ontoWax bool) (assumed []Assumed, why missing) {
	material := v.Stock.Get("material")
	switch {
	case material.Broken():
		return nil, brokenValue
	case material.Absent():
		assumed = []Assumed{{v.Stock, "material", "a thin wall"}}
	}
	wall, emissivity := wallOf(material.Text())
	b.side = face{wall: wall, emissivity: emissivity, convection: upright, size: b.depth}
	b.top = face{emissivity: waxShines, convection: facingUp, size: 2 * b.radius}
	b.base = face{wall: wall, fixed: onTheBench}
	if ontoWax {
		b.base = face{insulated: true}
	}
	return assumed, nothing
}

// rounded is to the nearest step, so that what differs by less than matters is
// worked out once.
func rounded(x, step float64) float64 { return math.Round(x/step) * step }
