package lsp

import (
	"slices"

	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// stepOffer is a kind of step as it is offered.
type stepOffer struct {
	spec   *schema.BlockSpec
	needed bool // the recipe has it nowhere and asks for it, and here is its place
	why    string
	rank   int
}

// stepOrder is the kinds of step, those first that the recipe still needs and
// whose place in the working order is not past, in working order; then what
// may come next; last what is out of its place, or of no use in this recipe.
func (a *asked) stepOrder() []stepOffer {
	kinds := schema.StepKinds()
	before, after := a.stepsAround()
	stands := append(slices.Clone(before), after...)
	at := -1 // how far the work has come
	for _, kind := range before {
		if i := slices.Index(kinds, kind); kind != "note" {
			at = max(at, i)
		}
	}
	if n := len(before); n > 0 && (before[n-1] == "melt" || len(before) > 1 && slices.Contains(before[:n-1], "melt") && before[n-1] == "cool") {
		at = slices.Index(kinds, before[n-1]) // a new layer begins
	}
	end := len(kinds)
	for _, kind := range after {
		if i := slices.Index(kinds, kind); kind != "note" {
			end = min(end, i)
		}
	}
	needs := a.stepsNeeded()
	var offers []stepOffer
	for i, spec := range schema.Steps() {
		s := stepOffer{spec: spec, rank: 2}
		inPlace := i >= at && i <= end
		useless := a.uselessStep(spec.Kind)
		switch {
		case useless != "":
			s.rank, s.why = 5, useless
		case slices.Contains(needs, spec.Kind) && !slices.Contains(stands, spec.Kind):
			s.rank, s.why, s.needed = 0, "still to be done", true
			if !inPlace {
				s.rank, s.needed = 1, false
				s.why = "still to be done, usually before " + kinds[max(at, 0)]
				if i > end {
					s.why = "still to be done, usually after " + kinds[end]
				}
			}
		case slices.Contains(stands, spec.Kind):
			s.rank, s.why = 4, "stands already"
		case !inPlace:
			s.rank = 3
		}
		if spec.Kind == "note" {
			s.rank = 3
		}
		offers = append(offers, s)
	}
	slices.SortStableFunc(offers, func(x, y stepOffer) int { return x.rank - y.rank })
	return offers
}

// stepsAround are the kinds of step before and behind the cursor.
func (a *asked) stepsAround() (before, after []string) {
	if a.recipe == nil {
		return nil, nil
	}
	for step := range a.recipe.Each("step") {
		switch {
		case step == a.own || step.Spec.Kind == "":
		case step.Span.Start < a.at:
			before = append(before, step.Spec.Kind)
		default:
			after = append(after, step.Spec.Kind)
		}
	}
	return before, after
}

// stepsNeeded are the kinds of step that a recipe like this asks for, as far
// as its blocks tell.
func (a *asked) stepsNeeded() []string {
	b := a.made
	if b == nil {
		return nil
	}
	var kinds []string
	need := func(yes bool, kind string) {
		if yes {
			kinds = append(kinds, kind)
		}
	}
	molds, jars, tapers := vesselsOf(b, "mold"), vesselsOf(b, "container"), vesselsOf(b, "taper")
	lit := b.Makes != "melt" && len(b.Vessels) > 0
	hole := slices.ContainsFunc(b.Vessels, func(v batch.Vessel) bool { return v.Kind == "mold" && v.Stock.Get("wick_hole").Yes() })
	need(hole && lit, "seal wick hole")
	need(jars > 0 && lit, "set wick")
	need(len(b.Waxes) > 0, "melt")
	need(len(b.Additives) > 0, "add additive")
	need(len(b.Dyes) > 0, "add dye")
	need(len(b.Fragrances) > 0, "add fragrance")
	need(molds+jars > 0, "pour")
	need(a.shrinksMuch() && lit, "relief holes")
	need(a.shrinksMuch() && lit, "second pour")
	need(tapers > 0, "dip")
	need(molds > 0, "unmold")
	need(lit, "trim wick")
	need(len(b.Fragrances) > 0, "cure")
	need(len(b.Vessels) > 0 && b.Recipe.Get("made_for").Text() != "own use", "attach label")
	return kinds
}

func vesselsOf(b *batch.Batch, kind string) (n int) {
	for i := range b.Vessels {
		if b.Vessels[i].Kind == kind {
			n++
		}
	}
	return n
}

// What is poured into a mold wider than 40 mm and shrinks by more than 6 %
// caves in around the wick (common practice).
var (
	wideMold      = quantity.Int(40)
	muchShrinkage = quantity.NewRat(6, 100)
)

func (a *asked) shrinksMuch() bool {
	b := a.made
	shrinks := b.Shrinkage()
	if !shrinks.Known() || !shrinks.Middle().Known() || !muchShrinkage.Less(shrinks.Middle().Value) {
		return false
	}
	for i := range b.Waxes {
		if b.Waxes[i].Stock.Get("one_pour").Yes() {
			return false
		}
	}
	return slices.ContainsFunc(b.Vessels, func(v batch.Vessel) bool {
		return v.Kind == "mold" && v.Diameter.Known() && wideMold.Less(v.Diameter.Value)
	})
}

// uselessStep says why a kind of step has nothing to do in this recipe; ""
// where it may have.
func (a *asked) uselessStep(kind string) string {
	b := a.made
	if b == nil || len(b.Vessels) == 0 {
		return ""
	}
	switch kind {
	case "release", "warm mold", "unmold":
		if vesselsOf(b, "mold") == 0 {
			return "there is no mold here"
		}
	case "seal wick hole":
		if vesselsOf(b, "mold") == 0 {
			return "there is no mold here"
		}
		for i := range b.Vessels {
			if v := &b.Vessels[i]; v.Kind == "mold" && !v.Stock.Get("wick_hole").No() {
				return ""
			}
		}
		return "the mold has no open wick hole"
	case "warm container":
		if vesselsOf(b, "container") == 0 {
			return "there is no container here"
		}
	case "dip":
		if vesselsOf(b, "taper") == 0 {
			return "there is no taper here"
		}
	case "add dye":
		return unless(len(b.Dyes) > 0, "there is no dye here")
	case "add fragrance":
		return unless(len(b.Fragrances) > 0, "there is no fragrance here")
	case "add additive":
		return unless(len(b.Additives) > 0, "there is no additive here")
	case "set wick", "prime wick", "trim wick":
		return unless(b.Makes != "melt", "a melt has no wick")
	}
	return ""
}

func unless(fine bool, why string) string {
	if fine {
		return ""
	}
	return why
}
