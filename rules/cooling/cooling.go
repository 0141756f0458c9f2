// Package cooling models how wax cools: in the pot, until it is poured, and in
// the vessel, until it can be taken out. Rules, hovers and the batch sheet read
// its times from here, so that they agree.
//
// The wax in a vessel is followed by the enthalpy method in two directions,
// from the axis to the wall and from the base to the top, so that a wide low
// jar and a tall pillar both come out right. What the model leaves out (the
// warmth of the vessel itself, currents in the liquid, candles side by side,
// the heat that a second pour brings into the first) lies within the ±40 % that
// every time for people carries. Nothing here judges, and no limit that guards
// against fire rests on it.
package cooling

import (
	"math"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// Of is how the pours of a view's recipe cool. The recipe must not be nil.
// Asking for it is cheap: a pour is worked out when its Windows are asked for.
var Of = lint.NewFact("cooling", compute)

// Cooling is how the pours of a recipe cool.
type Cooling struct {
	Pours []Pour // one for each pour and second pour into each vessel, in order
}

// Into is the pour of a step into a vessel, by its index in the batch; nil:
// that step pours nothing into it.
func (c *Cooling) Into(vessel int, step *batch.Step) *Pour {
	for i := range c.Pours {
		if p := &c.Pours[i]; p.Vessel == vessel && p.Step == step {
			return p
		}
	}
	return nil
}

// Pour is the wax that one pour puts into one vessel: the whole candle, a
// layer, or what a second pour tops up.
type Pour struct {
	Step    *batch.Step
	Vessel  int // index into the batch's vessels
	Second  bool
	State   schema.State  // Known: it is modeled. Broken: a value it rests on cannot be read. Absent: not modeled
	Lacks   *schema.Block // Absent: the block that does not state Attr; nil: the model is not for this (melts, tealights, gel …)
	Attr    string
	Assumed []Assumed // what is usual stands in for these
	body    body
}

// Modeled says whether there are windows for it.
func (p *Pour) Modeled() bool { return p.State == schema.Known }

// Ask says whether there are windows for it, and where an attribute that is
// not written would give them has the pass say so.
func (p *Pour) Ask(pass *lint.Pass) bool {
	if p.State == schema.Absent && p.Lacks != nil {
		pass.CannotCheck(p.Lacks, p.Attr)
	}
	return p.Modeled()
}

// Windows are the times at which a pour reaches each stage, and from when to
// when a step makes sense. All count from the pour.
type Windows struct {
	WallSets            Estimate // the wax at the wall begins to set
	Skin2, Skin3, Skin5 Estimate // set wax is 2, 3 and 5 mm thick at the wall and at the top
	HalfSet             Estimate // set wax reaches half way from the wall to the middle
	CoreSet             Estimate // all is set
	CoreCool            Estimate // all is at 30 °C (86 °F) or below; never in a room as warm as that

	ReliefHoles Window // from a skin of 3 mm until half is set
	SecondPour  Window // from a skin of 5 mm until all is set
	Unmold      Estimate
	Curve       []Point
}

// Window is from when to when a step makes sense.
type Window struct{ From, To Estimate }

// Windows works the pour out, or finds it worked out; nil where it is not
// modeled.
func (p *Pour) Windows(view *lint.View) *Windows {
	if !p.Modeled() {
		return nil
	}
	return solved.In(view, p.body)
}

var solved = lint.NewMemo("cooling windows", func(b body) *Windows {
	c := solve(b, gridFor(b))
	skin := func(i int) Estimate { return Estimate(max(c.wallSkin[i], c.topSkin[i])) }
	w := &Windows{
		WallSets: Estimate(c.wallSets), Skin2: skin(0), Skin3: skin(1), Skin5: skin(2),
		HalfSet: Estimate(c.halfSet), CoreSet: Estimate(c.coreSet), CoreCool: Estimate(c.core30), Curve: c.curve,
	}
	w.ReliefHoles = Window{min(w.Skin3, w.HalfSet), w.HalfSet}
	w.SecondPour = Window{min(w.Skin5, w.CoreSet), w.CoreSet}
	w.Unmold = w.CoreCool
	if w.Unmold.Never() {
		w.Unmold = w.CoreSet
	}
	return w
})

// WorkedOut is how many pours have been worked out in a shop, for those who
// measure: it is what costs.
func WorkedOut(shop *lint.Shop) int { return solved.Kept(shop) }

// SurelyCool is a time in s by which the model has every core set, and at 30 °C
// where the room lets it come to that. It takes no working out: a step after
// it needs no model.
func (p *Pour) SurelyCool() float64 {
	if !p.Modeled() {
		return math.Inf(1)
	}
	return surelyCool(p.body)
}

// SurelyOpen is a stretch of time in s, without working the pour out, in which
// the model is sure to have relief holes make sense. From is after to where
// nothing can be said so cheaply.
func (p *Pour) SurelyOpen() (from, to float64) {
	if !p.Modeled() {
		return math.Inf(1), 0
	}
	return surelyOpen(p.body)
}

func compute(view *lint.View) *Cooling {
	b := batch.Of.In(view)
	c := &Cooling{}
	if len(b.Pours) == 0 || len(b.Vessels) == 0 {
		return c
	}
	wax, assumed, why := mediumOf(b)
	c.Pours = make([]Pour, 0, len(b.Pours))
	for i := range b.Pours {
		for _, vessel := range b.Pours[i].Step.Vessels {
			p := Pour{Step: b.Pours[i].Step, Vessel: vessel, Second: b.Pours[i].Second, Assumed: assumed}
			p.body.wax = wax
			w := why
			if w == nothing {
				w = p.set(view, b)
			}
			p.State, p.Lacks, p.Attr = w.State, w.Lacks, w.Attr
			c.Pours = append(c.Pours, p)
		}
	}
	return c
}

// set works out the body that a pour is.
func (p *Pour) set(view *lint.View, b *batch.Batch) missing {
	v := &b.Vessels[p.Vessel]
	if v.Stock == nil {
		return brokenValue
	}
	switch b.MadeIn(v) {
	case "pillar", "votive", "jar":
	default:
		return notApplicable
	}
	heat := p.Step.Heat
	switch {
	case heat.Absent():
		return missing{Lacks: p.Step.Block, Attr: "at"}
	case !heat.IsAmount():
		return brokenValue
	}
	o, why := outlineOf(v)
	if why != nothing {
		return why
	}
	depth, why := p.depth(b, o)
	if why != nothing {
		return why
	}
	p.body.radius = rounded(o.radius/1000, 0.0005)
	p.body.depth = rounded(depth/1000, 0.001)
	p.body.pour = rounded(celsius(heat.Amount()), 1)
	p.body.air = rounded(celsius(p.room(view, b)), 1)
	assumed, why := p.body.faces(v, p.Second || layer(b, p) > 0)
	if why != nothing {
		return why
	}
	if len(assumed) > 0 {
		p.Assumed = append(p.Assumed[:len(p.Assumed):len(p.Assumed)], assumed...)
	}
	p.body.bath = p.bath(view, b)
	return p.body.fits()
}

// fits says whether the model is for such a body.
func (b *body) fits() missing {
	if !within(b.radius, leastRadius, mostRadius) || !within(b.depth, leastDepth, mostDepth) ||
		!within(b.pour, b.wax.liquidus, 130) || !within(b.air, -20, b.wax.solidus()-5) ||
		b.bath.to > b.bath.from && !within(b.bath.water, 0, b.wax.solidus()-5) {
		return notApplicable
	}
	return nothing
}

// layer is how many pours went into the vessel before this one, second pours
// not counted.
func layer(b *batch.Batch, p *Pour) int {
	n := 0
	for i := range b.Pours {
		if o := &b.Pours[i]; !o.Second && o.Step.Index < p.Step.Index && o.Step.Is(p.Vessel) {
			n++
		}
	}
	return n
}

// depth is how deep the wax of the pour stands, in mm.
func (p *Pour) depth(b *batch.Batch, o outline) (float64, missing) {
	v := &b.Vessels[p.Vessel]
	grams := v.FirstFill
	switch {
	case p.Second && v.TopUp.State == schema.Absent:
		return 0, notApplicable // in layers, and where nobody can reckon how high the first stands
	case p.Second:
		grams = v.TopUp
	case layer(b, p) > 0:
		return p.layerDepth(b)
	}
	if grams.State == schema.Absent && v.Mass.Known() && !p.Second {
		grams = v.Mass // how high a pour stands in such a shape cannot be reckoned: as high as the candle ends
	}
	if !grams.Known() {
		return 0, waiting(grams)
	}
	return 1e6 * grams.Value.Float64() / p.body.wax.density / o.section, nothing
}

// layerDepth is by how much less a pour leaves below the rim than the one
// before it.
func (p *Pour) layerDepth(b *batch.Batch) (float64, missing) {
	var before *batch.Step
	for i := range b.Pours {
		if o := &b.Pours[i]; !o.Second && o.Step.Index < p.Step.Index && o.Step.Is(p.Vessel) {
			before = o.Step
		}
	}
	was, is := before.Block.Get("leave"), p.Step.Block.Get("leave")
	if !was.IsAmount() || !is.IsAmount() {
		return 0, notApplicable
	}
	return was.Amount().Base().Sub(is.Amount().High().Base()).Float64(), nothing
}

// room is how warm it is where the candle cools: as its cool step says, else
// the recipe, else the shop.
func (p *Pour) room(view *lint.View, b *batch.Batch) quantity.Quantity {
	for i := p.Step.Index + 1; i < len(b.Steps); i++ {
		s := &b.Steps[i]
		if s.Kind != "cool" || !s.Is(p.Vessel) || s.Block.Get("in").Text() == "water" {
			continue
		}
		if said := s.Block.Get("room"); said.IsAmount() {
			return said.Amount()
		}
	}
	return roomOf(view)
}

func roomOf(view *lint.View) quantity.Quantity {
	if said := view.Recipe.Get("room"); said.IsAmount() {
		return said.Amount()
	}
	return view.Room()
}

// bath is the first step after the pour that cools the vessel in water.
func (p *Pour) bath(view *lint.View, b *batch.Batch) bath {
	for i := p.Step.Index + 1; i < len(b.Steps); i++ {
		s := &b.Steps[i]
		if s.Kind != "cool" || !s.Is(p.Vessel) || s.Block.Get("in").Text() != "water" {
			continue
		}
		if !s.FromPour.Known() || !p.Step.FromPour.Known() {
			break
		}
		w := bath{from: s.FromPour.Value.Sub(p.Step.FromPour.Value).Float64(), to: longest, water: rounded(celsius(roomOf(view)), 1)}
		if said := s.Block.Get("room"); said.IsAmount() {
			w.water = rounded(celsius(said.Amount()), 1)
		}
		if said := s.Block.Get("for"); said.IsAmount() {
			w.to = w.from + said.Amount().Base().Float64()
		}
		return w
	}
	return bath{}
}
