package batch

import (
	"wickrule/lint"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// PourAt is the range the wax is poured at; of a loose blend the common range.
func (b *Batch) PourAt() Stated { return b.commonRange("pour_at") }

// MeltTo is the range the wax is melted to; of a loose blend the common range.
// No family has a usual one.
func (b *Batch) MeltTo() Stated { return b.commonRange("melt_to") }

// AddFragranceAt is the range fragrance is added at; of a loose blend the
// common range.
func (b *Batch) AddFragranceAt() Stated { return b.commonRange("add_fragrance_at") }

// NeverAbove is the ceiling of the wax; of a loose blend the lowest.
func (b *Batch) NeverAbove() Stated { return b.strictest("never_above", lowest) }

// FlashPoint is the flash point of the wax; of a loose blend the lowest.
func (b *Batch) FlashPoint() Stated { return b.strictest("flash_point", lowest) }

// CongealsAt is where the wax begins to set; of a loose blend the highest.
func (b *Batch) CongealsAt() Stated { return b.strictest("congeals_at", highest) }

// Cure is how long a scented candle rests; of a loose blend the longest.
func (b *Batch) Cure() Stated { return b.strictest("cure", highest) }

// Density is the solid wax's; of a loose blend the average of the volumes, so
// the harmonic one of the densities by weight: the waxes lie side by side.
func (b *Batch) Density() Stated { return b.density }

// Shrinkage is the share of its volume that the wax loses from the pour to
// room temperature; of a loose blend the average by weight.
func (b *Batch) Shrinkage() Stated { return b.shrinkage }

// Ask says whether there is a figure at all, and has the pass say what could
// not be checked where neither a wax nor its family states it: also in a loose
// blend whose other waxes do.
func (s Stated) Ask(p *lint.Pass) bool {
	if s.Lacks != nil && (s.State == schema.Absent || s.Partly) {
		p.CannotCheck(s.Lacks, s.Attr)
	}
	return s.Known()
}

// Source is where a family's figure comes from, "common practice" or "from
// memory"; of a stated figure what its wax names as its source.
func (s Stated) Source() string {
	if s.Family != "" {
		return usualSource(s.Attr)
	}
	return s.Wax.Get("source").Text()
}

// AtLow is the statement that sets the low end: of a loose blend's common
// range that of the wax with the highest low end, else the figure itself.
func (s Stated) AtLow() Stated {
	if s.low != nil {
		return *s.low
	}
	return s
}

// AtHigh is the statement that sets the high end.
func (s Stated) AtHigh() Stated {
	if s.low != nil {
		s.low, s.Blend, s.Empty = nil, false, false
	}
	return s
}

// Middle is the figure as one number: half way between the ends of a range.
func (s Stated) Middle() Figure {
	switch s.State {
	case schema.Absent:
		return lacking(s.Lacks, s.Attr)
	case schema.Broken:
		return broken()
	}
	if !s.Amount.IsRange() {
		return known(s.Amount.Base())
	}
	return known(s.Low().Add(s.High()).Mul(half))
}

var half = quantity.NewRat(1, 2)

// ofWax is a figure of one wax: the sheet's, else the family's.
func (b *Batch) ofWax(wax *schema.Block, attr string) Stated {
	if wax == nil {
		return Stated{State: schema.Broken}
	}
	v := wax.Get(attr)
	switch {
	case v.IsAmount():
		return Stated{State: schema.Known, Amount: v.Amount(), Wax: wax, Value: v, Attr: attr}
	case v.Broken():
		return Stated{State: schema.Broken, Wax: wax, Attr: attr}
	case wax.Get("family").Broken() || wax.Get("suits").Broken():
		return Stated{State: schema.Broken, Wax: wax, Attr: attr}
	}
	s := Stated{Wax: wax, Lacks: wax, Attr: attr}
	if f := b.usual(wax); f != nil {
		if amount, ok := f.of(attr); ok {
			s.State, s.Amount, s.Family = schema.Known, amount, f.name
		}
	}
	return s
}

// strictest is the figure of the wax that another is kept off by: better says
// whether the first is stricter than the second. Waxes whose figure is broken
// are left out, since what the others cannot bear the blend cannot.
func (b *Batch) strictest(attr string, better func(a, b Stated) bool) Stated {
	if len(b.Waxes) == 1 {
		return b.ofWax(b.Waxes[0].Stock, attr)
	}
	var best, absent Stated
	for i := range b.Waxes {
		s := b.ofWax(b.Waxes[i].Stock, attr)
		switch s.State {
		case schema.Absent:
			absent = s
		case schema.Broken:
			if best.State != schema.Known {
				best = s
			}
		case schema.Known:
			if best.State != schema.Known || better(s, best) {
				best = s
			}
		}
	}
	return blended(best, absent)
}

// blended is what is known of a blend, with the wax that says nothing noted.
func blended(best, absent Stated) Stated {
	switch {
	case best.State == schema.Absent:
		best = absent
	case best.State == schema.Known && absent.Lacks != nil:
		best.Partly, best.Lacks, best.Attr = true, absent.Lacks, absent.Attr
	}
	best.Blend = true
	return best
}

func lowest(a, b Stated) bool  { return a.High().Less(b.High()) }
func highest(a, b Stated) bool { return b.Low().Less(a.Low()) }

// commonRange is the part of the range that every wax allows.
func (b *Batch) commonRange(attr string) Stated {
	if len(b.Waxes) == 1 {
		return b.ofWax(b.Waxes[0].Stock, attr)
	}
	top := b.strictest(attr, lowest)
	if !top.Known() {
		return top
	}
	bottom := b.strictest(attr, highest)
	if bottom.Wax != top.Wax {
		bottom.Blend = false
		top.low = &bottom
		top.Empty = top.High().Less(bottom.Low())
		if top.Family == "" {
			top.Family = bottom.Family
		}
	}
	return top
}

// average is the figure of a loose blend by weight, of the values themselves
// or, where inverse, of what they are one over of.
func (b *Batch) average(attr string, unit *quantity.Unit, inverse bool) Stated {
	if len(b.Waxes) == 1 {
		return b.ofWax(b.Waxes[0].Stock, attr)
	}
	avg := Stated{State: schema.Known, Blend: true, Attr: attr}
	sum, heaviest := known(none), none
	for i := range b.Waxes {
		in := &b.Waxes[i]
		s := b.ofWax(in.Stock, attr)
		if inverse {
			sum = sum.plus(in.OfWax.over(s.Middle()))
		} else {
			sum = sum.plus(in.OfWax.times(s.Middle()))
		}
		if s.Family != "" {
			avg.Family, avg.Lacks = s.Family, s.Lacks
		}
		if i == 0 || heaviest.Less(in.Weight.Value) {
			avg.Wax, heaviest = in.Stock, in.Weight.Value
		}
	}
	if inverse {
		sum = known(one).over(sum)
	}
	if !sum.Known() {
		return Stated{State: sum.State, Blend: true, Lacks: sum.Lacks, Attr: sum.Attr()}
	}
	avg.Amount = quantity.FromBase(sum.Value, unit)
	return avg
}
