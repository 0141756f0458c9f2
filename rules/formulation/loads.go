package formulation

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// The fragrance rules share what is worked out here. They measure one load
// against one limit and give way to each other, the loudest first:
// fragrance-over-limit where the load is over a stated limit;
// fragrance-load-extreme over 15 % of wax otherwise, also over a family's
// usual limit; fragrance-over-limit for that; fragrance-near-limit.

var (
	one            = quantity.Int(1)
	extreme        = quantity.NewRat(15, 100) // of wax: common practice
	extremeOfTotal = batch.TotalFromWax(extreme)
)

// judgement is how a recipe's load stands to what the wax holds.
type judgement uint8

const (
	within      judgement = iota
	near                  // over 95 % of the limit
	overStrict            // of a loose blend: over its strictest wax, within the average
	over                  // over the limit; of a loose blend over its average, or over every wax in it where that is not known
	unjudged              // something is not known
	noFragrance           // unscented
)

var nearly = quantity.NewRat(95, 100)

func judge(b *batch.Batch) (batch.Limit, judgement) {
	if len(b.Fragrances) == 0 {
		return batch.Limit{}, noFragrance
	}
	l := b.FragranceLimit()
	switch {
	case l.State != schema.Known || !l.Load.Known() || !l.Strictest.Known():
		return l, unjudged
	case l.Average.Known() && l.Average.Value.Less(l.Load.Value):
		return l, over
	case !l.Average.Known() && l.Loosest.Known() && l.Loosest.Value.Less(l.Load.Value):
		return l, over
	case l.Strictest.Value.Less(l.Load.Value):
		return l, overStrict
	case l.Strictest.Value.Mul(nearly).Less(l.Load.Value):
		return l, near
	}
	return l, within
}

// isExtreme says whether all fragrances together are over 15 % of the wax. Of
// total, over 15 parts in 115 is over that whatever else goes in; it counts
// where the load against the wax is not known.
func isExtreme(b *batch.Batch) bool {
	if b.FragranceOfWax.Known() {
		return extreme.Less(b.FragranceOfWax.Value)
	}
	return b.FragranceOfTotal.Known() && extremeOfTotal.Less(b.FragranceOfTotal.Value)
}

// main is the fragrance that most of the scent comes from: where findings
// about all of them point.
func main(b *batch.Batch) *batch.Ingredient {
	best := &b.Fragrances[0]
	for i := range b.Fragrances {
		in := &b.Fragrances[i]
		if in.OfWax.Known() && (!best.OfWax.Known() || best.OfWax.Value.Less(in.OfWax.Value)) {
			best = in
		}
	}
	return best
}

// atMain is its amount, and the amounts of the others as notes.
func atMain(b *batch.Batch) (lint.Place, []lint.Note) {
	in := main(b)
	var notes []lint.Note
	for i := range b.Fragrances {
		if other := &b.Fragrances[i]; other != in && !other.Said.Absent() {
			notes = append(notes, lint.Note{Place: lint.AtValue(other.Said), Message: "this fragrance counts too"})
		}
	}
	return lint.AtValue(in.Said), notes
}

// loadText is all fragrances together as a message says it, beside a limit on
// the same basis: as written where that is the very figure.
func loadText(b *batch.Batch, load, limit quantity.Rat, basis quantity.Basis) string {
	percent := batch.PercentBeside(load, limit, basis)
	if len(b.Fragrances) > 1 {
		parts := make([]string, len(b.Fragrances))
		for i := range b.Fragrances {
			parts[i] = b.Fragrances[i].Said.Amount().String()
		}
		return strings.Join(parts, " and ") + " together, " + percent + ","
	}
	written := b.Fragrances[0].Said.Amount()
	switch {
	case written.IsRange():
		return written.String() + " reaches " + percent + ", which"
	case isPercentOf(written, basis):
		return written.String()
	}
	return written.String() + " is " + percent + ", which"
}

// excess is how much too much, in weight where the batch is known, else in
// per cent.
func excess(p *lint.Pass, b *batch.Batch, l batch.Limit, limit quantity.Rat) string {
	if g := b.Over(l, limit); g.Known() {
		return weight(p, b, main(b).Said, g.Value)
	}
	return batch.Percent(l.Load.Value.Sub(limit), l.Basis)
}

// weight is a weight in g in the units that the maker weighs this in: those of
// the amount itself, where it is one that is weighed or measured out; else
// those of the wax; else the shop's.
func weight(p *lint.Pass, b *batch.Batch, said schema.Value, g quantity.Rat) string {
	system, found := weighedIn(said)
	for i := range b.Waxes {
		if !found {
			system, found = weighedIn(b.Waxes[i].Said)
		}
	}
	if !found {
		return batch.Grams(p.View, g)
	}
	return quantity.FromBase(g, quantity.Gram).Show(system)
}

func weighedIn(said schema.Value) (quantity.System, bool) {
	if !said.IsAmount() {
		return 0, false
	}
	written := said.Amount()
	return written.Unit().System, written.Dim() == quantity.Weight || written.Dim() == quantity.Volume
}

// measured is an ingredient's amount beside a limit on the same basis: as it is
// written where that is the very figure, else with what it comes to.
func measured(in *batch.Ingredient, share, limit quantity.Rat, basis quantity.Basis) string {
	text := in.Said.Amount().String() + " of " + title(in)
	if isPercentOf(in.Said.Amount(), basis) {
		return text + " is"
	}
	return text + " is " + batch.PercentBeside(share, limit, basis) + ","
}

// isPercentOf says whether a single amount is written in per cent of the basis.
func isPercentOf(written quantity.Quantity, basis quantity.Basis) bool {
	return !written.IsRange() && written.Dim() == quantity.Proportion && written.Basis() == basis && strings.HasPrefix(written.Unit().Symbol, "%")
}

// lowered are the amounts of all fragrances brought down in proportion, so
// that together they are at most limit on the basis. Each is rounded down; none
// where one would come to nothing.
func lowered(b *batch.Batch, limit quantity.Rat, basis quantity.Basis) (title string, edits []schema.Edit) {
	if !b.FragranceOfWax.Known() || b.FragranceOfWax.Value.IsZero() {
		return "", nil
	}
	all := b.FragranceOfWax.Value
	target := limit // of wax
	if basis == quantity.OfTotal {
		// With o everything but the fragrance, as a ratio to the wax: a / (o + a) = limit.
		o, ok := others(b)
		if !ok {
			return "", nil
		}
		target, ok = limit.Mul(o).Quo(one.Sub(limit))
		if !ok {
			return "", nil
		}
	}
	factor, _ := target.Quo(all)
	total := target // everything, as a ratio to the wax, once it is lowered
	if o, ok := others(b); ok {
		total = total.Add(o)
	}
	var said []string
	for i := range b.Fragrances {
		in := &b.Fragrances[i]
		amount, ok := scaled(b, in, factor, target)
		if !ok || amount.Base().IsZero() {
			return "", nil
		}
		edits = append(edits, schema.SetValue(in.Said, schema.Quote(amount.String())))
		beside, load := loadBeside(in, in.OfWax.Value.Mul(factor), total)
		edits = append(edits, beside...)
		if len(b.Fragrances) == 1 {
			title = "lower the load to " + amount.String()
			if beside != nil {
				title += ", and the load beside it to " + load.String()
			}
			return title, edits
		}
		said = append(said, in.Block.Label+" to "+amount.String())
	}
	return "lower " + strings.Join(said, " and "), edits
}

// scaled is one fragrance's amount times a factor below one, in its own unit.
func scaled(b *batch.Batch, in *batch.Ingredient, factor, target quantity.Rat) (quantity.Quantity, bool) {
	written := in.Said.Amount().High()
	if written.Basis() == quantity.OfTotal && in.OfWax.Known() {
		o, ok := others(b)
		if !ok {
			return quantity.Quantity{}, false
		}
		share, ok := in.OfWax.Value.Mul(factor).Quo(o.Add(target))
		return repair.Lowered(written, share), ok
	}
	return repair.Lowered(written, written.Base().Mul(factor)), true
}

// others is everything but the fragrances as a ratio to the wax.
func others(b *batch.Batch) (quantity.Rat, bool) {
	if !b.FragranceOfWax.Known() || !b.FragranceOfTotal.Known() {
		return quantity.Rat{}, false
	}
	total, ok := b.FragranceOfWax.Value.Quo(b.FragranceOfTotal.Value)
	return total.Sub(b.FragranceOfWax.Value), ok
}

// heldBy is who holds how much at the most: the wax that decides, of a blend by
// itself, or what is usual for a family where a sheet is silent.
func heldBy(l batch.Limit) string {
	s := l.At
	switch {
	case s.Family != "":
		return fmt.Sprintf("%s usually holds (%s; %s does not state its own: common practice)", s.Family, s.Amount.String(), s.Lacks.Title())
	case l.Blend:
		return fmt.Sprintf("%s alone holds (%s)", s.Whose(), s.Amount.String())
	}
	return fmt.Sprintf("%s holds (%s)", s.Whose(), s.Amount.String())
}

// limitNote points at the limit where a sheet states it.
func limitNote(s batch.Stated) []lint.Note {
	if s.Value.Block == nil || !s.Value.Known() {
		return nil
	}
	return []lint.Note{{Place: lint.AtValue(s.Value), Message: fmt.Sprintf("what %s holds is stated here", s.Wax.Title())}}
}
