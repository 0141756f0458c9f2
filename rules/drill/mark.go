package drill

import (
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// Outcome is what became of one slip.
type Outcome uint8

const (
	Still    Outcome = iota // its rule still speaks
	Mended                  // its rule has nothing more to say
	Conceded                // silenced by a concession: the slip is still there
	TakenOut                // what it was about was taken out: the rule is silent, and the recipe no longer what it was
	Unjudged                // it cannot be told: a figure its rule needs is gone, or the text cannot be read whole
)

// Mark is what the checker says of what a learner made of an exercise.
type Mark struct {
	Slips     []Marked // as in the exercise
	Broken    []lint.Found
	Unchecked []lint.Unchecked // figures that rules wait for and that were there
	SetAside  []string         // blocks that do not belong into the exercise, by name and key
	Restored  []string         // attributes that were set back to what the recipe is for: "made_for"
	NoRecipe  bool             // there is no recipe in the text: nothing else was looked at
	Unread    bool             // the text does not parse whole
}

// Marked is one slip, and what is said of it now.
type Marked struct {
	*Planted
	Outcome Outcome
	Said    []lint.Found // by its rule, where it still speaks
	What    string       // what was taken out
}

// Good says whether every slip was mended and nothing was broken.
func (m *Mark) Good() bool {
	if m.NoRecipe || m.Unread || len(m.Broken)+len(m.Unchecked) > 0 {
		return false
	}
	return !slices.ContainsFunc(m.Slips, func(s Marked) bool { return s.Outcome != Mended })
}

// Mark judges a learner's text. It is judged as the recipe it was set as: other
// blocks than the recipe do not count, nor does another purpose, since a rule
// that is turned down or a candle for oneself mends nothing.
func (s *School) Mark(e *Exercise, text string) *Mark {
	m := &Mark{}
	_, file, recipe := s.read(text, e.Recipe)
	if recipe == nil {
		m.NoRecipe = true
		return m
	}
	m.Unread = !file.Whole
	_, _, sound := s.read(e.Sound, e.Recipe)
	_, _, set := s.read(e.Text, e.Recipe)
	said, before := s.check(m.judged(e, recipe, sound, text)), s.check(e.Text)
	for _, u := range said.Unchecked {
		if !slices.ContainsFunc(before.Unchecked, func(o lint.Unchecked) bool { return o.Needs == u.Needs }) {
			m.Unchecked = append(m.Unchecked, u)
		}
	}
	planted := map[string]bool{}
	for i := range e.Faults {
		p := &e.Faults[i]
		planted[p.Rule.Name] = true
		m.Slips = append(m.Slips, m.judge(p, said, sound, set, recipe))
	}
	for _, f := range loud(said.Findings) {
		if !planted[f.Rule.Name] {
			m.Broken = append(m.Broken, f)
		}
	}
	return m
}

// purpose is what decides how the recipe is judged.
var purpose = [...]string{"made_for", "markets", "makes"}

// judged is the text that is judged: the recipe alone, for what it was set for.
func (m *Mark) judged(e *Exercise, recipe, sound *schema.Block, text string) string {
	file := recipe.File
	if !file.Whole {
		return text
	}
	var edits []schema.Edit
	for _, b := range file.Blocks {
		if b != recipe {
			m.SetAside = append(m.SetAside, Header(b))
			blank := strings.Repeat("\n", strings.Count(file.Text.Slice(b.Span), "\n")) // so that lines keep their numbers
			edits = append(edits, schema.Edit{File: file, Span: b.Span, Text: blank})
		}
	}
	for _, name := range purpose {
		now, set := recipe.Get(name), sound.Get(name)
		if now.Written() == set.Written() || touches(e, sound, name) {
			continue
		}
		m.Restored = append(m.Restored, name)
		if set.Absent() {
			edits = append(edits, schema.Edit{File: file, Span: schema.Span{Start: now.NameSpan().Start, End: now.Span().End}})
		} else {
			edits = append(edits, schema.SetValue(now, set.Written()))
		}
	}
	if changed, err := schema.Apply(text, edits); err == nil {
		return changed
	}
	return text
}

// touches says whether a slip changed an attribute of the recipe itself.
func touches(e *Exercise, sound *schema.Block, attr string) bool {
	v := sound.Get(attr)
	if v.Absent() {
		return false
	}
	whole := schema.Span{Start: v.NameSpan().Start, End: v.Span().End}
	for i := range e.Faults {
		for _, edit := range e.Faults[i].fault.Edits {
			if whole.Overlaps(edit.Span) {
				return true
			}
		}
	}
	return false
}

// judge tells what became of one slip.
func (m *Mark) judge(p *Planted, said *lint.Report, sound, set, now *schema.Block) Marked {
	slip := Marked{Planted: p, Outcome: Mended}
	for _, f := range loud(said.Findings) {
		if f.Rule.Name == p.Rule.Name {
			slip.Said = append(slip.Said, f)
			slip.Outcome = Still
		}
	}
	if slip.Outcome == Still {
		return slip
	}
	conceded := slices.ContainsFunc(said.Conceded, func(c lint.Conceded) bool { return c.Rule.Name == p.Rule.Name })
	waits := slices.ContainsFunc(m.Unchecked, func(u lint.Unchecked) bool { return slices.Contains(u.Rules, p.Rule.Name) })
	what := takenOut(p, sound, set, now)
	switch {
	case conceded:
		slip.Outcome = Conceded
	case m.Unread:
		slip.Outcome = Unjudged
	case what != "":
		slip.Outcome, slip.What = TakenOut, what
	case waits:
		slip.Outcome = Unjudged
	}
	return slip
}

// takenOut is what a slip is about and that stands in the sound recipe and in
// the exercise, and not in the recipe any more; "": all of it is there.
func takenOut(p *Planted, sound, set, now *schema.Block) string {
	subjects := map[*schema.BlockSpec]string{}
	for _, edit := range p.fault.Edits {
		for _, b := range sound.Blocks() {
			if b.Span.Overlaps(edit.Span) {
				subjects[b.Spec] = called(b)
			}
		}
	}
	for _, f := range p.Found {
		for _, b := range set.Blocks() {
			if f.At.File.Name == ExerciseName && b.Span.Contains(f.At.Span) {
				subjects[b.Spec] = called(b)
			}
		}
	}
	for _, b := range sound.Blocks() { // in the order written
		name, asked := subjects[b.Spec]
		if asked && count(now, b.Spec) < min(count(sound, b.Spec), count(set, b.Spec)) {
			return name
		}
	}
	return valueTakenOut(p, sound, set, now)
}

// valueTakenOut is the same for a value that the slip changed.
func valueTakenOut(p *Planted, sound, set, now *schema.Block) string {
	for i, b := range sound.Blocks() {
		inSet, inNow := alike(sound, i, set), alike(sound, i, now)
		if inSet == nil || inNow == nil {
			continue
		}
		for v := range b.Attrs() {
			whole := schema.Span{Start: v.NameSpan().Start, End: v.Span().End}
			changed := slices.ContainsFunc(p.fault.Edits, func(e schema.Edit) bool { return whole.Overlaps(e.Span) })
			if changed && !inSet.Get(v.Spec.Name).Absent() && inNow.Get(v.Spec.Name).Absent() && !saidOtherwise(inNow, v.Spec.Name) {
				return v.Spec.Name + " of " + called(b)
			}
		}
	}
	return ""
}

// ways are attributes that say the same thing in different ways.
var ways = [][]string{{"weight", "load", "amount"}, {"after", "from_pour"}}

func saidOtherwise(b *schema.Block, attr string) bool {
	for _, set := range ways {
		if !slices.Contains(set, attr) {
			continue
		}
		for _, other := range set {
			if other != attr && b.Spec.Attr(other) != nil && !b.Get(other).Absent() {
				return true
			}
		}
	}
	return false
}

// alike is the block of another form of the recipe that corresponds to the
// i-th of one: of as many of its kind the same; nil: they are not as many.
func alike(of *schema.Block, i int, in *schema.Block) *schema.Block {
	spec, nth := of.Blocks()[i].Spec, 0
	if count(of, spec) != count(in, spec) {
		return nil
	}
	for _, b := range of.Blocks()[:i] {
		if b.Spec == spec {
			nth++
		}
	}
	for _, b := range in.Blocks() {
		if b.Spec != spec {
			continue
		}
		if nth == 0 {
			return b
		}
		nth--
	}
	return nil
}

func count(recipe *schema.Block, spec *schema.BlockSpec) (n int) {
	for _, b := range recipe.Blocks() {
		if b.Spec == spec {
			n++
		}
	}
	return n
}

// called is how one speaks of a block of a recipe: "the step pour", "the
// fragrance".
func called(b *schema.Block) string {
	if b.Spec.Kind != "" {
		return "the step " + b.Spec.Kind
	}
	return "the " + b.Spec.Name
}
