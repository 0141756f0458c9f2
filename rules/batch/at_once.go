package batch

import (
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// AtOnce is the part of the batch that is in the pot at once: all of it, but
// where every melt names its waxes, as for layers, the heaviest of what is
// melted together. A melt after a pour begins with the pot empty.
func (b *Batch) AtOnce() quantity.Rat {
	most, now := none, none
	poured := true
	for i := range b.Steps {
		s := &b.Steps[i]
		switch s.Kind {
		case "melt":
			named := s.Block.Get("wax")
			if !named.Known() {
				return one
			}
			if poured {
				now = none
			}
			poured = false
			now = now.Add(b.partOf(named))
			most = quantity.Max(most, now)
		case "pour":
			poured = true
		}
	}
	if most.IsZero() {
		return one
	}
	return quantity.Min(most, one)
}

// partOf is the part of all wax that the named ones are; all of it where that
// is not known.
func (b *Batch) partOf(named schema.Value) quantity.Rat {
	part := none
	for i := range b.Waxes {
		in := &b.Waxes[i]
		for _, item := range named.Items() {
			if item.Text != in.Block.Label {
				continue
			}
			if !in.OfWax.Known() {
				return one
			}
			part = part.Add(in.OfWax.Value)
		}
	}
	return part
}
