package drill

import (
	"errors"
	"slices"
	"strings"
)

// mostFaults is how many slips an exercise has at most.
const mostFaults = 3

// mostRecipes is how many recipes are looked at for one rule.
const mostRecipes = 60

// What there may be nothing to plant in, or nothing to plant.
var (
	ErrNoSoundRecipe = errors.New("none of the recipes is sound, so there is nothing to make exercises of")
	ErrNoSlip        = errors.New("no slip of this kind can be planted in the recipes there are")
)

// Series is the exercises of one seed, one after the other: each begins with
// another rule, until all that can be reached have had their turn.
type Series struct {
	school *School
	seed   string
	about  string
	rules  []string // in the order of their turns
	taken  []*taken
	turn   int            // of the next rule
	number int            // of the last exercise
	used   map[string]int // how often each rule was in an exercise
}

// Series begins the exercises of a seed. About is a rule or a group of rules
// that each exercise begins with; "" any.
func (s *School) Series(seed, about string) *Series {
	var rules []string
	for rule := range s.of {
		if r := s.named[rule]; r != nil && (about == "" || strings.EqualFold(about, r.Name) || strings.EqualFold(about, r.Group)) {
			rules = append(rules, rule)
		}
	}
	slices.Sort(rules)
	var all []*taken
	for i := range s.taken {
		all = append(all, &s.taken[i])
	}
	all = shuffled(newDraw(seed, "recipes", 0), all)
	return &Series{school: s, used: map[string]int{}, seed: seed, about: about, rules: shuffled(newDraw(seed, "rules", 0), rules), taken: all[:min(len(all), mostRecipes)]}
}

// Next makes the next exercise.
func (s *Series) Next() (*Exercise, error) {
	b, fault, err := s.first()
	if err != nil {
		return nil, err
	}
	d := newDraw(s.seed, "further", s.number)
	faults := []Fault{fault}
	wanted := 1 + d.IntN(mostFaults)
	// What was proved once is proved; each further slip is tried with it.
	text, said, _ := s.school.proved(b, faults)
	further := shuffled(d, s.school.kinds)
	slices.SortStableFunc(further, func(a, b Kind) int { return s.used[a.Rule] - s.used[b.Rule] }) // what was not seen yet comes first
	for _, kind := range further {
		if len(faults) == wanted {
			break
		}
		if slices.ContainsFunc(faults, func(f Fault) bool { return f.Rule == kind.Rule }) || s.school.named[kind.Rule] == nil {
			continue
		}
		for _, more := range shuffled(d, kind.In(b.bench)) {
			try := append(slices.Clip(faults), more)
			if t, r, ok := s.school.proved(b, try); ok {
				faults, text, said = try, t, r
				break
			}
		}
	}
	for _, f := range faults {
		s.used[f.Rule]++
	}
	e := s.school.made(b, faults, text, said)
	e.Seed, e.About, e.Number = s.seed, s.about, s.number
	return e, nil
}

// first finds the first slip of the next exercise: by the rule whose turn it
// is, in the first recipe it can be planted in.
func (s *Series) first() (*base, Fault, error) {
	s.number++
	for skipped := 0; skipped <= len(s.rules); skipped++ {
		if len(s.rules) == 0 {
			break
		}
		rule := s.rules[s.turn%len(s.rules)]
		round := s.turn / len(s.rules)
		s.turn++
		d := newDraw(s.seed, rule, round)
		for _, t := range shuffled(d, s.taken) {
			for _, b := range shuffled(d, s.school.bases(t)) {
				for _, kind := range shuffled(d, s.school.of[rule]) {
					for _, fault := range shuffled(d, kind.In(b.bench)) {
						if _, _, ok := s.school.proved(b, []Fault{fault}); ok {
							return b, fault, nil
						}
					}
				}
			}
		}
	}
	if slices.ContainsFunc(s.taken, func(t *taken) bool { return len(s.school.bases(t)) > 0 }) {
		return nil, Fault{}, ErrNoSlip
	}
	return nil, Fault{}, ErrNoSoundRecipe
}

// Subjects are the groups and the rules that exercises can be about, sorted.
func (s *School) Subjects() []string {
	var all []string
	for rule := range s.of {
		if r := s.named[rule]; r != nil {
			all = append(all, r.Name, strings.ToLower(r.Group))
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}
