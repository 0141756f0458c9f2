package batch

import (
	"slices"

	"wickrule/lint"
	"wickrule/schema"
)

// Uses are the uses a wax may be sold for that suit what a recipe makes.
func Uses(makes string) []string {
	switch makes {
	case "pillar":
		return usesPillar
	case "jar":
		return usesJar
	case "tealight":
		return usesTealight
	case "votive":
		return usesVotive
	case "taper":
		return usesTaper
	case "melt":
		return usesMelt
	}
	return nil
}

var (
	usesPillar   = []string{"pillar"}
	usesJar      = []string{"container"}
	usesTealight = []string{"tealight", "container"}
	usesVotive   = []string{"votive"}
	usesTaper    = []string{"taper"}
	usesMelt     = []string{"melt", "container"}
)

// Suited says whether a wax suits a use.
type Suited struct {
	State  schema.State  // Known: Yes says it. Broken: silent. Absent: neither the wax nor its family says
	Yes    bool          // of several waxes: every one suits
	Wax    *schema.Block // the wax it is about: of several that do not suit, the heaviest
	Value  schema.Value  // its suits, or its tested_for where the use is only there; zero for a family's word
	Family string        // "" where the wax states suits; else the family whose usual uses decide (common practice)
	Tested bool          // suits only by the shop's own tested_for
	Lacks  *schema.Block // the wax that states no suits, where one does not
}

// Ask says whether it is known, and has the pass say what could not be checked
// where neither the wax nor its family says.
func (s Suited) Ask(p *lint.Pass) bool {
	if s.State == schema.Absent {
		p.CannotCheck(s.Lacks, "suits")
	}
	return s.State == schema.Known
}

// SuitedFor says whether the wax suits one of the uses ("pillar", "container").
func SuitedFor(wax *schema.Block, uses ...string) Suited {
	if wax == nil {
		return Suited{State: schema.Broken}
	}
	s := Suited{State: schema.Known, Wax: wax, Value: wax.Get("suits")}
	if tested := wax.Get("tested_for"); mentions(tested, uses) && !mentions(s.Value, uses) {
		s.Yes, s.Tested, s.Value = true, true, tested
		return s
	}
	switch {
	case s.Value.Known():
		s.Yes = mentions(s.Value, uses)
		return s
	case s.Value.Broken() || wax.Get("family").Broken():
		return Suited{State: schema.Broken, Wax: wax}
	}
	s.Value, s.Lacks = schema.Value{}, wax
	s.Family = wax.Get("family").Text()
	yes, no := usualUses(s.Family)
	allNo := len(uses) > 0
	for _, use := range uses {
		if slices.Contains(yes, use) {
			s.Yes = true
			return s
		}
		allNo = allNo && slices.Contains(no, use)
	}
	if !allNo {
		s.State, s.Family = schema.Absent, ""
	}
	return s
}

// usualUses is what waxes of a family are always, and what they are never,
// good for (common practice); what depends on the grade is in neither.
func usualUses(family string) (yes, no []string) {
	switch family {
	case "beeswax":
		return []string{"container", "pillar", "taper"}, nil
	case "coconut":
		return []string{"container"}, []string{"pillar", "votive", "taper"}
	case "rapeseed":
		return []string{"container"}, []string{"taper"}
	case "gel":
		return []string{"container"}, []string{"pillar", "votive", "taper"}
	case "palm":
		return []string{"pillar"}, []string{"taper"}
	case "stearin":
		return []string{"pillar", "taper"}, nil
	case "soy":
		return nil, []string{"taper"}
	}
	return nil, nil
}

func mentions(v schema.Value, uses []string) bool {
	for _, item := range v.Items() {
		if slices.Contains(uses, item.Text) {
			return true
		}
	}
	return false
}

// Suits says whether the recipe's wax suits one of the uses; of a loose blend,
// whether every wax in it does.
func (b *Batch) Suits(uses ...string) Suited {
	worst := Suited{State: schema.Absent}
	heaviest := none
	for i := range b.Waxes {
		in := &b.Waxes[i]
		s := SuitedFor(in.Stock, uses...)
		weight := in.Weight.Value
		if i == 0 || rank(s) > rank(worst) || rank(s) == rank(worst) && heaviest.Less(weight) {
			worst, heaviest = s, weight
		}
	}
	return worst
}

// rank orders answers: what does not suit is worth saying before what is not
// known, and that before what suits.
func rank(s Suited) int {
	switch {
	case s.State == schema.Known && !s.Yes:
		return 3
	case s.State == schema.Broken:
		return 2
	case s.State == schema.Absent:
		return 1
	}
	return 0
}
