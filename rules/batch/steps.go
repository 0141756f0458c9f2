package batch

import (
	"slices"

	"wickrule/schema"
	"wickrule/schema/quantity"
)

// Is says whether the step is about a vessel, by its index.
func (s *Step) Is(vessel int) bool { return slices.Contains(s.Vessels, vessel) }

// listSteps lists the steps, their times and the pours.
func (b *Batch) listSteps() {
	n, pours := 0, 0
	for _, inner := range b.Recipe.Blocks() {
		if inner.Name() == "step" {
			n++
			if isPour(inner.Spec.Kind) {
				pours++
			}
		}
	}
	b.Steps = make([]Step, n)
	everyVessel := make([]int, len(b.Vessels))
	for i := range everyVessel {
		everyVessel[i] = i
	}
	i := 0
	for _, inner := range b.Recipe.Blocks() {
		if inner.Name() == "step" {
			s := &b.Steps[i]
			s.Block, s.Kind, s.Index, s.Heat, s.Vessels = inner, inner.Spec.Kind, i, heat(inner), b.vesselsOf(inner, everyVessel)
			i++
		}
	}
	b.keepTime()
	b.listPours(pours)
}

func isPour(kind string) bool { return kind == "pour" || kind == "second pour" }

// heat is the temperature a step says of the wax.
func heat(step *schema.Block) schema.Value {
	switch step.Spec.Kind {
	case "melt":
		return step.Get("to")
	case "pour", "second pour", "add fragrance", "add dye", "add additive", "dip", "overdip", "prime wick":
		return step.Get("at")
	}
	return schema.Value{}
}

// vesselsOf are the vessels a step is about: the one it names, else all. A
// name that is broken or not in the recipe is another rule's finding; until it
// is put right the step is taken to be about all, so that nothing further is
// said for want of it.
func (b *Batch) vesselsOf(step *schema.Block, all []int) []int {
	said := step.Get("vessel")
	if !said.Known() {
		return all
	}
	var named []int
	for i := range b.Vessels {
		if b.Vessels[i].Block.Label == said.Text() {
			named = append(named, i)
		}
	}
	if named == nil {
		return all
	}
	return named
}

// listPours lists the pours with the last melt before each, and for a second
// pour the last pour before it that shares a vessel.
func (b *Batch) listPours(n int) {
	b.Pours = make([]Pour, 0, n)
	var melt *Step
	for i := range b.Steps {
		s := &b.Steps[i]
		switch s.Kind {
		case "melt":
			melt = s
		case "pour":
			b.Pours = append(b.Pours, Pour{Step: s, Melt: melt})
		case "second pour":
			b.Pours = append(b.Pours, Pour{Step: s, Second: true, Melt: melt, First: b.firstBefore(s)})
		}
	}
}

func (b *Batch) firstBefore(second *Step) *Step {
	for i := len(b.Pours) - 1; i >= 0; i-- {
		p := &b.Pours[i]
		if !p.Second && slices.ContainsFunc(p.Step.Vessels, second.Is) {
			return p.Step
		}
	}
	return nil
}

// keepTime works out when each step begins, from the waits as they are
// written:
//
//   - after counts from the end of the step before, from_pour from the first
//     pour; where both stand, from_pour counts;
//   - a step lasts as long as its for, hold, stir, or its dips and the waits
//     between them say, and else no time at all;
//   - a melt takes as long as the wax takes, so nothing after a melt has a time
//     from the start; beside wax already poured it is done meanwhile;
//   - what waits for wax to set (relief holes, a second pour, unmolding,
//     trimming) has no time where nothing says how long after the last pour it
//     comes: that wait is lacking and not nothing.
//
// Ranges count at their low end in FromStart and FromPour, at their upper end
// in FromPourLatest.
func (b *Batch) keepTime() {
	start := known(none)
	fromPour, latest := lacking(nil, ""), lacking(nil, "")
	poured, waited := false, false
	for i := range b.Steps {
		s := &b.Steps[i]
		fixed := poured && !s.Block.Get("from_pour").Absent()
		wait := s.Block.Get("after")
		if fixed {
			wait = s.Block.Get("from_pour")
			fromPour, latest = known(none), known(none)
			start = lacking(nil, "")
			if first := b.firstPour(i); first != nil {
				start = first.FromStart
			}
		}
		if !wait.Absent() {
			low, high := waits(wait)
			start, fromPour, latest = start.plus(low), fromPour.plus(low), latest.plus(high)
			waited = true
		}
		if poured && !waited && needsSetting(s.Kind) {
			gap := lacking(s.Block, "after")
			start, fromPour, latest = start.plus(gap), fromPour.plus(gap), latest.plus(gap)
		}
		if s.Kind == "pour" && !poured {
			poured = true
			fromPour, latest = known(none), known(none)
		}
		s.FromStart, s.FromPour, s.FromPourLatest = start, fromPour, latest
		if isPour(s.Kind) {
			waited = false
		}

		if s.Kind == "melt" && !poured {
			start = lacking(nil, "")
		}
		if d := duration(s); !d.Absent() {
			takes, takesAtMost := waits(d)
			if times := s.dips(); times != 1 {
				takes, takesAtMost = takes.scaled(quantity.Int(times)), takesAtMost.scaled(quantity.Int(times))
			}
			start, fromPour, latest = start.plus(takes), fromPour.plus(takes), latest.plus(takesAtMost)
			waited = waited || letsSet(s.Kind)
		}
	}
}

func (b *Batch) firstPour(before int) *Step {
	for i := range b.Steps[:before] {
		if b.Steps[i].Kind == "pour" {
			return &b.Steps[i]
		}
	}
	return nil
}

func needsSetting(kind string) bool {
	switch kind {
	case "relief holes", "second pour", "unmold", "trim base", "trim wick":
		return true
	}
	return false
}

// waits is a written time in seconds, from its low to its high end.
func waits(v schema.Value) (low, high Figure) {
	if !v.IsAmount() {
		return broken(), broken()
	}
	q := v.Amount()
	return known(q.Base()), known(q.High().Base())
}

// duration is what a step says of how long it takes; of dipping, of one dip.
func duration(s *Step) schema.Value {
	switch s.Kind {
	case "cool", "cure", "warm mold", "warm container", "prime wick":
		return s.Block.Get("for")
	case "melt":
		return s.Block.Get("hold")
	case "add fragrance", "add dye", "add additive":
		return s.Block.Get("stir")
	case "dip", "overdip":
		return s.Block.Get("wait")
	}
	return schema.Value{}
}

// letsSet says whether poured wax sets while the step lasts; a stir is over
// too soon to count as a wait.
func letsSet(kind string) bool {
	switch kind {
	case "add fragrance", "add dye", "add additive":
		return false
	}
	return true
}

// dips is how often the duration of a step comes round.
func (s *Step) dips() int64 {
	if s.Kind == "dip" || s.Kind == "overdip" {
		return int64(s.Block.Get("times").Whole(1))
	}
	return 1
}
