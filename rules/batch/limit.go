package batch

import (
	"wickrule/lint"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// Limit is the most fragrance the wax holds and what goes in, on one basis.
type Limit struct {
	State     schema.State   // Known; Broken: silent; Absent: Lacks states no limit and its family has none
	Basis     quantity.Basis // of the three proportions: as the limit is stated; where waxes differ, of wax
	Load      Figure         // ratio: all fragrances together
	Strictest Figure         // ratio: of the wax that holds least; a range counts at its upper end
	Loosest   Figure         // ratio: of the wax that holds most; over it no mixture of these waxes is within
	Average   Figure         // ratio: of all waxes by weight; of one wax the same
	At        Stated         // the limit that Strictest comes from, as it is stated
	Family    string         // "" where every wax states a limit; else the family whose usual one is used
	Lacks     *schema.Block  // the wax that states none, where one does not
	Blend     bool           // several waxes
}

// Ask says whether there is a limit, and has the pass say what could not be
// checked where neither the wax nor its family has one.
func (l Limit) Ask(p *lint.Pass) bool {
	if l.State == schema.Absent {
		p.CannotCheck(l.Lacks, "fragrance_limit")
	}
	return l.State == schema.Known
}

// FragranceLimit is the most fragrance the wax holds. A house blend uses its
// own limit; of a loose blend it is both the strictest and the average.
func (b *Batch) FragranceLimit() Limit {
	l := Limit{State: schema.Known, Blend: len(b.Waxes) > 1}
	if len(b.Waxes) == 0 {
		l.State = schema.Absent
		return l
	}
	for i := range b.Waxes {
		s := b.ofWax(b.Waxes[i].Stock, "fragrance_limit")
		switch s.State {
		case schema.Broken:
			l.State = schema.Broken
			return l
		case schema.Absent:
			l.State, l.Lacks = schema.Absent, s.Lacks
			return l
		}
		if s.Family != "" {
			l.Family, l.Lacks = s.Family, s.Lacks
		}
		switch basis := s.Amount.High().Basis(); {
		case i == 0:
			l.Basis = basis
		case l.Basis != basis:
			l.Basis = quantity.OfWax
		}
	}
	l.Load = b.FragranceOfWax
	if l.Basis == quantity.OfTotal {
		l.Load = b.FragranceOfTotal
	}
	l.Average = known(none)
	for i := range b.Waxes {
		in := &b.Waxes[i]
		s := b.ofWax(in.Stock, "fragrance_limit")
		limit := b.onBasis(s.Amount.High(), l.Basis)
		l.Average = l.Average.plus(in.OfWax.times(limit))
		if i == 0 || limit.Known() && (!l.Strictest.Known() || limit.Value.Less(l.Strictest.Value)) {
			l.Strictest, l.At = limit, s
		}
		if i == 0 || limit.Known() && (!l.Loosest.Known() || l.Loosest.Value.Less(limit.Value)) {
			l.Loosest = limit
		}
	}
	return l
}

// FragranceLimitOf is the limit that counts for one wax: its sheet's, else
// what is usual for its family.
func (b *Batch) FragranceLimitOf(wax *schema.Block) Stated { return b.ofWax(wax, "fragrance_limit") }

// onBasis is a limit as a ratio on a basis. A limit of total t is kept where
//
//	fragrance <= t (wax + rest + fragrance), so fragrance / wax <= t / (1 - t) (1 + rest / wax),
//
// with the rest the dyes and additives of this batch; that turns it exactly.
func (b *Batch) onBasis(limit quantity.Quantity, basis quantity.Basis) Figure {
	ratio := known(limit.Base())
	if limit.Basis() == basis || basis == quantity.OfTotal {
		return ratio
	}
	room := known(one).minus(ratio)
	return ratio.over(room).times(b.totalOverWax.minus(b.FragranceOfWax))
}

// Over is g of fragrance above what a limit on the Limit's basis allows:
// negative where there is room. Of total it is what would have to be left out,
// which also makes the total less.
func (b *Batch) Over(l Limit, limit quantity.Rat) Figure {
	over := l.Load.minus(known(limit))
	if l.Basis == quantity.OfTotal {
		return over.times(b.Total).over(known(one.Sub(limit)))
	}
	return over.times(b.WaxWeight)
}
