package batch

import (
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// form is the inside of a vessel as geometry knows it.
type form uint8

const (
	unknownForm form = iota // holds what was measured; heights in it cannot be reckoned
	straight                // the same section from bottom to rim: cylinder, block, straight jar
	cone                    // the tip at the bottom, as it is poured, the base at the rim
	sphere
)

// pi is closer to the number than 1e-15.
var pi = quantity.NewRat(80_143_857, 25_510_582)

var (
	piOver4   = pi.Mul(quantity.NewRat(1, 4))
	piOver6   = pi.Mul(quantity.NewRat(1, 6))
	piOver12  = pi.Mul(quantity.NewRat(1, 12))
	mmPerML   = quantity.Int(1000) // cubic millimeters
	millionth = quantity.NewRat(1, 1_000_000)
)

// rounded is a figure that pi had a part in, to the nearest millionth of a mL,
// mm or mm2: no measured size is as exact, and numbers of that length stay quick
// to reckon with.
func rounded(f Figure) Figure {
	if f.Known() {
		f.Value = f.Value.Add(millionth.Mul(half)).Floor(millionth)
	}
	return f
}

// milliliters turns cubic millimeters into mL.
func milliliters(cubic Figure) Figure { return rounded(cubic.over(known(mmPerML))) }

// section is the area of the vessel in mm2: pi d2 / 4, or width times length.
func (v *Vessel) section() Figure {
	if v.shape == "block" {
		return v.width.times(v.length)
	}
	return v.Diameter.times(v.Diameter).scaled(piOver4)
}

// capacity is the volume up to the rim, from the shape.
func (v *Vessel) capacity() Figure {
	d := v.Diameter
	switch v.form {
	case straight:
		return milliliters(v.section().times(v.Height))
	case cone:
		return milliliters(d.times(d).times(v.Height).scaled(piOver12))
	case sphere:
		return milliliters(d.times(d).times(d).scaled(piOver6))
	}
	return lacking(v.Stock, "holds")
}

// upTo is the volume in mL up to a height above the bottom, in mm. What was
// measured with water is shared out by the shape; a container's measure is to
// a fill line of unknown height, so there the size counts.
func (v *Vessel) upTo(height Figure) Figure {
	switch {
	case v.form == unknownForm:
		return v.formless()
	case v.form == straight && (v.Kind == "container" || !v.Height.Known()):
		return milliliters(v.section().times(height))
	}
	part := height.over(v.Height)
	if !part.Known() {
		return part
	}
	switch u := quantity.Min(quantity.Max(part.Value, none), one); v.form {
	case cone:
		return v.Holds.scaled(u.Mul(u).Mul(u))
	case sphere: // of the sphere's volume a cap of height u d has 3 u2 - 2 u3
		return v.Holds.scaled(u.Mul(u).Mul(quantity.Int(3).Sub(u.Mul(quantity.Int(2)))))
	}
	return v.Holds.times(part)
}

// formless is the state of what cannot be reckoned for want of a form: what
// would tell it is asked for, where it is not written.
func (v *Vessel) formless() Figure {
	attr := "kind"
	if v.Kind == "mold" {
		attr = "shape"
	}
	switch said := v.Stock.Get(attr); {
	case said.Broken():
		return broken()
	case said.Absent():
		return lacking(v.Stock, attr)
	}
	return lacking(nil, "")
}

// heightOf is the height in mm that a volume in mL stands at: in straight
// walls only.
func (v *Vessel) heightOf(volume Figure) Figure {
	switch {
	case v.form == unknownForm:
		return v.formless()
	case v.form != straight:
		return lacking(nil, "")
	case v.Kind == "container":
		return rounded(volume.times(known(mmPerML)).over(rounded(v.section())))
	}
	return volume.over(v.Holds).times(v.Height)
}

// measure reads the size of a vessel from the shelves.
func (v *Vessel) measure() {
	s := v.Stock
	switch v.Kind {
	case "mold":
		v.measureMold()
	case "container":
		v.Diameter, v.Height = stated(s, "diameter"), stated(s, "height")
		v.Holds = stated(s, "holds")
		if kind := s.Get("kind"); kind.Known() {
			switch kind.Text() {
			case "jar", "tin", "tealight cup":
				v.form = straight
			}
		}
	case "taper":
		v.form = straight
		v.Diameter, v.Height = stated(s, "diameter"), stated(s, "length")
		v.Holds = v.capacity()
	}
}

func (v *Vessel) measureMold() {
	s := v.Stock
	shape := s.Get("shape")
	v.shape = shape.Text()
	v.Diameter, v.Height = stated(s, "diameter"), stated(s, "height")
	switch v.shape {
	case "cylinder":
		v.form = straight
	case "cone":
		v.form = cone
	case "sphere":
		v.form = sphere
		v.Height = v.Diameter
	case "block":
		v.form = straight
		v.width, v.length = stated(s, "width"), stated(s, "length")
		if s.Get("length").Absent() {
			v.length = v.width
		}
		if !s.Get("width").Absent() || v.Diameter.State == schema.Absent {
			v.Diameter = smaller(v.width, v.length)
		}
	}
	v.Holds = stated(s, "holds")
	if v.Holds.State == schema.Absent {
		v.Holds = v.capacity()
		if shape.Broken() {
			v.Holds = broken()
		}
	}
}

func smaller(a, b Figure) Figure {
	if less, ok := without(a, b); ok {
		return less
	}
	return known(quantity.Min(a.Value, b.Value))
}
