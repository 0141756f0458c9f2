package drill

import (
	"cmp"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// Exercise is a recipe with slips planted in it.
type Exercise struct {
	Seed   string
	About  string // the rule or group that it begins with; "" any
	Number int    // counts from 1
	Recipe string
	Title  string
	Draft  bool   // set as one for a class that is not test burned yet
	Sound  string // the text without the slips
	Text   string // the text with them
	Faults []Planted
	Aside  []lint.Found // what else is found in Text: worth knowing, and there before or brought along
}

// Planted is one slip of an exercise, and what the checker says of it.
type Planted struct {
	Rule    *lint.Rule
	Slip    string
	Changes []Change
	Found   []lint.Found // in the exercise's text, in order of place
	fault   Fault
}

// Change is a piece of the recipe as it was and as it is in the exercise. Line
// is where it stands there; of lines left out, where they stood.
type Change struct {
	Line    int
	Was, Is []string // whole lines without their indentation; one may be empty
}

// Level is how loud the slip is.
func (p *Planted) Level() lint.Level {
	level := lint.Silent
	for i := range p.Found {
		level = max(level, p.Found[i].Level)
	}
	return level
}

// Lines are the lines of the exercise where the slip shows: those its rule
// points at, and those that were changed.
func (p *Planted) Lines() []int {
	var lines []int
	for i := range p.Found {
		at := p.Found[i].At
		if at.File.Name == ExerciseName {
			lines = append(lines, at.File.Text.Line(at.Span.Start))
		}
	}
	for _, c := range p.Changes {
		for i := range c.Is {
			lines = append(lines, c.Line+i)
		}
	}
	slices.Sort(lines)
	return slices.Compact(lines)
}

// plant lays faults into a base and checks that they are found, each by its
// rule, and nothing else that was not there before. False: it is not so.
func (s *School) plant(b *base, faults []Fault) (text string, said *lint.Report, ok bool) {
	var edits []schema.Edit
	for _, f := range faults {
		edits = append(edits, f.Edits...)
	}
	text, err := schema.Apply(b.text, edits)
	if err != nil || text == b.text {
		return "", nil, false
	}
	text = laidOut(text)
	said = s.check(text)
	return text, said, exactly(b.said, said, faults)
}

// exactly says whether a report has the findings of these faults, each by a
// rule of its own, and nothing else that the report of the sound recipe has
// not: no finding that must or should be put right, nothing that could not be
// checked, nothing conceded, no stopped rule.
func exactly(before, after *lint.Report, faults []Fault) bool {
	if len(after.Faults) > 0 || len(after.Conceded) != len(before.Conceded) {
		return false
	}
	wanted := map[string]bool{}
	for _, f := range faults {
		wanted[f.Rule] = true
	}
	found := map[string]bool{}
	for _, f := range loud(after.Findings) {
		if !wanted[f.Rule.Name] {
			return false
		}
		found[f.Rule.Name] = true
	}
	if len(found) != len(faults) {
		return false
	}
	for _, u := range after.Unchecked {
		i := slices.IndexFunc(before.Unchecked, func(o lint.Unchecked) bool { return o.Needs == u.Needs })
		if i < 0 || slices.ContainsFunc(u.Rules, func(r string) bool { return !slices.Contains(before.Unchecked[i].Rules, r) }) {
			return false
		}
	}
	return true
}

// inside says whether the faults stay in the recipe and out of each other's
// way: they change different lines.
func inside(b *base, faults []Fault) bool {
	type piece struct{ first, last, fault int }
	text := b.bench.Recipe.File.Text
	var pieces []piece
	for i, f := range faults {
		for _, e := range f.Edits {
			if !b.bench.Recipe.Span.Contains(e.Span) {
				return false
			}
			end := e.Span.End
			if end > e.Span.Start {
				end--
			}
			pieces = append(pieces, piece{text.Line(e.Span.Start), text.Line(end), i})
		}
	}
	for i, p := range pieces {
		for _, q := range pieces[:i] {
			if p.fault != q.fault && p.first <= q.last+1 && q.first <= p.last+1 {
				return false
			}
		}
	}
	return true
}

// proved says whether the faults together are exactly what is found, and each
// of them left out leaves exactly the others: so to mend one is never undone by
// another, and to mend all leaves a sound recipe.
func (s *School) proved(b *base, faults []Fault) (text string, said *lint.Report, ok bool) {
	if !inside(b, faults) {
		return "", nil, false
	}
	text, said, ok = s.plant(b, faults)
	for i := 0; ok && i < len(faults) && len(faults) > 1; i++ {
		_, _, ok = s.plant(b, slices.Concat(faults[:i], faults[i+1:]))
	}
	return text, said, ok
}

// made is the exercise of faults that were proved.
func (s *School) made(b *base, faults []Fault, text string, said *lint.Report) *Exercise {
	e := &Exercise{Recipe: b.key, Title: b.title, Draft: b.draft, Sound: b.text, Text: text}
	all := changes(b.text, faults)
	for i, f := range faults {
		p := Planted{Rule: s.named[f.Rule], Slip: f.Slip, Changes: all[i], fault: f}
		for _, found := range loud(said.Findings) {
			if found.Rule.Name == f.Rule {
				p.Found = append(p.Found, found)
			}
		}
		e.Faults = append(e.Faults, p)
	}
	slices.SortStableFunc(e.Faults, func(a, b Planted) int { return cmp.Compare(firstLine(&a), firstLine(&b)) })
	for _, f := range said.Findings {
		if f.Level < lint.Should {
			e.Aside = append(e.Aside, f)
		}
	}
	return e
}

func firstLine(p *Planted) int {
	if lines := p.Lines(); len(lines) > 0 {
		return lines[0]
	}
	return 0
}

// changes tells, for each fault, what became of which lines. Lines are those
// of the text with all faults in it.
func changes(was string, faults []Fault) [][]Change {
	type placed struct {
		schema.Edit
		fault int
	}
	var edits []placed
	for i, f := range faults {
		for _, e := range f.Edits {
			edits = append(edits, placed{e, i})
		}
	}
	slices.SortStableFunc(edits, func(a, b placed) int { return cmp.Compare(a.Span.Start, b.Span.Start) })
	text := schema.NewText(was)
	all := make([][]Change, len(faults))
	added := 0 // lines more than in the sound text, so far
	for _, e := range edits {
		first, last := text.Line(e.Span.Start), text.Line(e.Span.End)
		from, to := text.LineSpan(first), text.LineSpan(last)
		before := was[from.Start:e.Span.Start]
		old := was[from.Start:to.End]
		now := before + e.Text + was[e.Span.End:to.End]
		c := Change{Line: first + added, Was: plainLines(old), Is: plainLines(now)}
		common(&c)
		all[e.fault] = append(all[e.fault], c)
		added += strings.Count(e.Text, "\n") - strings.Count(was[e.Span.Start:e.Span.End], "\n")
	}
	return all
}

// common takes the lines off both ends that did not change.
func common(c *Change) {
	for len(c.Was) > 0 && len(c.Is) > 0 && c.Was[0] == c.Is[0] {
		c.Was, c.Is = c.Was[1:], c.Is[1:]
		c.Line++
	}
	for len(c.Was) > 0 && len(c.Is) > 0 && c.Was[len(c.Was)-1] == c.Is[len(c.Is)-1] {
		c.Was, c.Is = c.Was[:len(c.Was)-1], c.Is[:len(c.Is)-1]
	}
}

func plainLines(text string) []string {
	text = strings.TrimRight(text, "\r\n")
	if text == "" {
		return nil
	}
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " \t\r")
	}
	indent := len(lines[0]) - len(strings.TrimLeft(lines[0], " \t"))
	for i, line := range lines {
		if len(line) >= indent && strings.TrimSpace(line[:indent]) == "" {
			lines[i] = line[indent:]
		}
	}
	return lines
}
