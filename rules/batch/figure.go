package batch

import (
	"wickrule/schema"
	"wickrule/schema/quantity"
)

func known(value quantity.Rat) Figure { return Figure{Value: value, State: schema.Known} }

// lacking is a figure that waits for an attribute. A nil block: there is
// nothing to point at.
func lacking(b *schema.Block, attr string) Figure {
	if b == nil {
		return Figure{}
	}
	return Figure{Lacks: b, attr: b.Spec.Place(attr)}
}

func broken() Figure { return Figure{State: schema.Broken} }

// stated is the written amount in base units, a range at its upper end.
func stated(b *schema.Block, attr string) Figure { return statedAs(b.Get(attr)) }

func statedAs(v schema.Value) Figure {
	switch {
	case v.IsAmount():
		return known(v.Amount().High().Base())
	case v.Absent():
		return lacking(v.Block, v.Spec.Name)
	}
	return broken()
}

// without is the state of what rests on both: broken where one is, else
// lacking what one lacks. False: both are known.
func without(a, b Figure) (Figure, bool) {
	switch {
	case a.State == schema.Broken || b.State == schema.Broken:
		return broken(), true
	case a.State == schema.Absent:
		return Figure{Lacks: a.Lacks, attr: a.attr}, true
	case b.State == schema.Absent:
		return Figure{Lacks: b.Lacks, attr: b.attr}, true
	}
	return Figure{}, false
}

func (f Figure) plus(g Figure) Figure {
	if less, ok := without(f, g); ok {
		return less
	}
	return known(f.Value.Add(g.Value))
}

func (f Figure) minus(g Figure) Figure {
	if less, ok := without(f, g); ok {
		return less
	}
	return known(f.Value.Sub(g.Value))
}

func (f Figure) times(g Figure) Figure {
	if less, ok := without(f, g); ok {
		return less
	}
	return known(f.Value.Mul(g.Value))
}

// over is f divided by g. By nothing, as where a weight of 0 is written, it is
// broken.
func (f Figure) over(g Figure) Figure {
	if less, ok := without(f, g); ok {
		return less
	}
	q, ok := f.Value.Quo(g.Value)
	if !ok {
		return broken()
	}
	return known(q)
}

// scaled is f times a plain number.
func (f Figure) scaled(by quantity.Rat) Figure {
	if f.Known() {
		f.Value = f.Value.Mul(by)
	}
	return f
}

var (
	none = quantity.Int(0)
	one  = quantity.Int(1)
)
