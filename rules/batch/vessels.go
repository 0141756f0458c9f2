package batch

import (
	"wickrule/lint"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// listVessels lists the vessels and measures them.
func (b *Batch) listVessels(view *lint.View) {
	n := 0
	for _, inner := range b.Recipe.Blocks() {
		if isVessel(inner.Name()) {
			n++
		}
	}
	b.Vessels = make([]Vessel, n)
	i := 0
	for _, inner := range b.Recipe.Blocks() {
		if isVessel(inner.Name()) {
			b.Vessels[i].read(view, inner)
			i++
		}
	}
}

func isVessel(name string) bool { return name == "mold" || name == "container" || name == "taper" }

// read fills in what the recipe and the shelves say of a vessel.
func (v *Vessel) read(view *lint.View, block *schema.Block) {
	v.Block, v.Kind = block, block.Name()
	v.WickSaid, v.Wicks, v.Count = block.Get("wick"), block.Get("wicks").Whole(1), block.Get("count").Whole(1)
	v.Stock, _ = view.Stock(v.Kind, block.Label)
	if v.WickSaid.Known() {
		v.Wick, _ = view.Stock("wick", v.WickSaid.Text())
	}
	if v.Stock == nil {
		b := broken()
		v.Diameter, v.Height, v.Holds, v.Fill, v.Headspace, v.Mass, v.FirstFill, v.TopUp = b, b, b, b, b, b, b, b
		return
	}
	v.measure()
}

// makes is what the recipe makes: what it says, else what its first vessel
// is for.
func makes(recipe *schema.Block, vessels []Vessel) string {
	if said := recipe.Get("makes"); !said.Absent() {
		return said.Text()
	}
	if len(vessels) == 0 || vessels[0].Stock == nil {
		return ""
	}
	stock := vessels[0].Stock
	switch vessels[0].Kind {
	case "taper":
		return "taper"
	case "mold":
		if said := stock.Get("makes"); !said.Absent() {
			return said.Text()
		}
		return "pillar"
	}
	kind := stock.Get("kind")
	switch kind.Text() {
	case "jar", "tin", "bowl":
		return "jar"
	case "tealight cup":
		return "tealight"
	case "votive glass":
		return "votive"
	case "clamshell":
		return "melt"
	}
	if kind.Absent() {
		return "jar"
	}
	return ""
}

// fillVessels works out what goes into each. The steps are known by now.
//
// A finished candle weighs its volume at the density of the solid wax alone:
// fragrance, dye and additives fill room as well, and their own densities
// differ from wax by too little to matter beside how full a vessel is poured.
func (b *Batch) fillVessels() {
	liquid := b.liquidDensity()
	solid := b.density.Middle()
	b.Takes = known(none)
	if len(b.Vessels) == 0 {
		b.Takes = lacking(nil, "")
	}
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Stock != nil {
			v.fill(solid)
			b.firstFill(i, liquid)
		}
		b.Takes = b.Takes.plus(v.Mass.scaled(quantity.Int(int64(v.Count))))
	}
	b.Spare = b.Total.minus(b.Takes).over(b.Takes)
}

// liquidDensity is g/mL as poured: the solid's less what it shrinks by.
func (b *Batch) liquidDensity() Figure {
	return b.density.Middle().times(known(one).minus(b.shrinkage.Middle()))
}

// fill works out the volume, headspace and weight of one finished candle.
func (v *Vessel) fill(density Figure) {
	said := v.Block.Get("fill")
	switch {
	case said.Broken():
		v.Fill, v.Headspace, v.Mass = broken(), broken(), broken()
		return
	case said.Absent():
		v.Fill = v.Holds
		v.Headspace = known(none)
		if v.Kind == "container" {
			v.Headspace = v.Height.minus(v.heightOf(v.Fill))
		}
		v.Mass = v.Fill.times(density)
		return
	}
	amount := said.Amount().High()
	base := known(amount.Base())
	switch amount.Dim() {
	case quantity.Length:
		height := base
		if said.BelowRim() {
			v.Headspace = base
			height = v.Height.minus(base)
		} else {
			v.Headspace = v.Height.minus(base)
		}
		v.Fill = v.upTo(height)
	case quantity.Weight:
		v.Fill = base.over(density)
		v.Headspace = v.Height.minus(v.heightOf(v.Fill))
		v.Mass = base
		return
	case quantity.Share:
		v.Fill = v.Holds.times(base)
		v.Headspace = v.Height.minus(v.heightOf(v.Fill))
	default:
		v.Fill = base
		v.Headspace = v.Height.minus(v.heightOf(v.Fill))
	}
	v.Mass = v.Fill.times(density)
}

// firstFill works out what the first pour puts into a vessel: up to what it
// leaves below the rim, else as high as the finished candle, and what is left
// for a second pour to top up. In layers nothing is said of the top-up, since
// later layers fill the vessel as well.
func (b *Batch) firstFill(vessel int, liquid Figure) {
	v := &b.Vessels[vessel]
	var first *Step
	pours := 0
	for i := range b.Pours {
		if p := &b.Pours[i]; !p.Second && p.Step.Is(vessel) {
			if first == nil {
				first = p.Step
			}
			pours++
		}
	}
	if first == nil {
		v.FirstFill, v.TopUp = lacking(nil, ""), lacking(nil, "")
		return
	}
	volume := v.Fill
	switch leave := first.Block.Get("leave"); {
	case leave.Broken():
		volume = broken()
	case leave.Known():
		volume = v.upTo(v.Height.minus(known(leave.Amount().High().Base())))
	}
	v.FirstFill = volume.times(liquid)
	v.TopUp = lacking(nil, "")
	if pours == 1 {
		v.TopUp = v.Mass.minus(v.FirstFill)
	}
}

// Molten is the volume in mL of everything weighed in once it is melted, at
// pour temperature.
func (b *Batch) Molten() Figure { return b.Total.over(b.liquidDensity()) }
