package lint

import (
	"fmt"
	"slices"
	"strings"

	"wickrule/schema"
)

// rounds is how often a shop is mended and checked again before it is left as
// it is: fixes uncover what they hid, and a few rounds bring all of it out.
const rounds = 8

// MendOptions says what may be mended.
type MendOptions struct {
	All    bool                   // the preferred fix of every finding, unless it is a guess; else only what leaves what is made as it is
	Covers func(file string) bool // the files that may change; nil: all
}

// Mended is a shop after mending. Nothing is written: that is the caller's.
type Mended struct {
	Shop     *Shop
	Report   *Report // of the covered files as they are now
	Changed  []Rewritten
	Applied  []Repair
	Withheld []Repair // not safe, and All was not asked for; or a guess
	Skipped  []Repair // why stands in each
}

// Rewritten is a file whose text changed.
type Rewritten struct {
	File *schema.File // as it was read
	Text string       // as it is to be
}

// Repair is one fix of one finding.
type Repair struct {
	Rule  *Rule
	Title string
	At    Place  // in the text as it was when the fix was considered
	Why   string // Skipped: why it was not made
}

// Mend applies fixes that do not overlap, reads and checks the result
// again, and goes on until nothing changes. A fix is made whole or not at all.
// Fixes that would make more findings at must, or spoil a file's text, are
// left out again, alone where they can be told from the others.
func Mend(shop *Shop, rules func(*Shop) []*Rule, today string, o MendOptions) *Mended {
	if o.Covers == nil {
		o.Covers = func(string) bool { return true }
	}
	m := &mender{MendOptions: o, rules: rules, today: today, refused: map[refusal]bool{}}
	now := m.check(shop)
	var applied []Repair
	for range rounds {
		picks := m.choose(now)
		if len(picks) == 0 {
			break
		}
		done := m.admit(admitted{state: now, base: now.shop}, picks)
		for _, p := range done.picks {
			applied = append(applied, p.Repair)
		}
		now = done.state
	}
	out := &Mended{Shop: now.shop, Report: RunFor(now.shop, rules(now.shop), today, m.Covers), Applied: applied}
	out.Changed = changed(shop, now.shop)
	m.sortOut(now, out)
	return out
}

type mender struct {
	MendOptions
	rules   func(*Shop) []*Rule
	today   string
	refused map[refusal]bool
}

// refusal names a fix that made things worse in a way that outlasts the shift
// of its place by other fixes.
type refusal struct{ rule, file, recipe, message, title string }

// state is a shop and what is found in it.
type state struct {
	shop   *Shop
	report *Report
}

func (m *mender) check(shop *Shop) state {
	return state{shop: shop, report: Run(shop, m.rules(shop), m.today)}
}

// mustsOutside counts the findings at must, but for those about files whose
// text has just become readable: what a missing quote hid was there before.
func (s state) mustsOutside(files []string) int {
	n := 0
	for i := range s.report.Findings {
		f := &s.report.Findings[i]
		if f.Level != Must || slices.Contains(files, f.At.File.Name) || f.Recipe != nil && slices.Contains(files, f.Recipe.File.Name) {
			continue
		}
		n++
	}
	return n
}

// pick is a fix to be made.
type pick struct {
	Repair
	edits []schema.Edit
	first bool
	refusal
}

// candidate is the fix to be made for a finding: the preferred one, or the
// first safe one where only those are asked for. Held back: it has a fix, but
// no safe one.
func (m *mender) candidate(f *Found) (p pick, ok, heldBack bool) {
	if !m.Covers(f.At.File.Name) && (f.Recipe == nil || !m.Covers(f.Recipe.File.Name)) {
		return p, false, false
	}
	fixes := f.Repairs()
	if len(fixes) == 0 {
		return p, false, false
	}
	fix := fixes[0]
	if fix.Guess {
		heldBack = true
	} else if !m.All {
		i := slices.IndexFunc(fixes, func(f schema.Fix) bool { return f.Safe })
		if i < 0 {
			heldBack = true
		} else {
			fix = fixes[i]
		}
	}
	recipe := ""
	if f.Recipe != nil {
		recipe = f.Recipe.Label
	}
	return pick{
		Repair:  Repair{Rule: f.Rule, Title: fix.Title, At: f.At},
		edits:   fix.Edits,
		first:   fix.First,
		refusal: refusal{f.Rule.Name, f.At.File.Name, recipe, f.Message, fix.Title},
	}, true, heldBack
}

// reach says whether the fix stays within the files that may change.
func (m *mender) reach(shop *Shop, p *pick) error {
	if len(p.edits) == 0 {
		return fmt.Errorf("it changes nothing")
	}
	for _, e := range p.edits {
		if !m.Covers(e.File.Name) {
			return fmt.Errorf("it would change %s, which was not asked for", e.File.Name)
		}
		if !shop.holds(e.File) {
			return fmt.Errorf("it is about a text of %s that is out of date", e.File.Name)
		}
	}
	return nil
}

// holds says whether this very text is the shop's.
func (s *Shop) holds(f *schema.File) bool {
	i, ok := slices.BinarySearchFunc(s.Files(), f.Name, func(f *schema.File, name string) int { return strings.Compare(f.Name, name) })
	return ok && s.Files()[i] == f
}

// choose takes the fixes that can be made together, in the order of the
// report. Those that touch one already chosen wait for the next round, and
// where one comes first, all others do.
func (m *mender) choose(s state) []pick {
	var picks []pick
	taken := map[*schema.File][]schema.Span{}
	for i := range s.report.Findings {
		p, ok, heldBack := m.candidate(&s.report.Findings[i])
		if !ok || heldBack || m.refused[p.refusal] || m.reach(s.shop, &p) != nil {
			continue
		}
		clash := slices.ContainsFunc(p.edits, func(e schema.Edit) bool {
			return slices.ContainsFunc(taken[e.File], e.Span.Overlaps)
		})
		if clash {
			continue
		}
		for _, e := range p.edits {
			taken[e.File] = append(taken[e.File], e.Span)
		}
		picks = append(picks, p)
	}
	if slices.ContainsFunc(picks, first) {
		return slices.DeleteFunc(picks, func(p pick) bool { return !first(p) })
	}
	return picks
}

func first(p pick) bool { return p.first }

// admitted is the fixes of a round found good together, and the shop with
// them; base is the shop that their edits are about.
type admitted struct {
	state
	base  *Shop
	picks []pick
}

// admit adds fixes to those admitted: all at once where that makes nothing
// worse, else by halves down to the one that does, which is refused for good.
func (m *mender) admit(so admitted, more []pick) admitted {
	if len(more) == 0 {
		return so
	}
	if next, ok := m.try(so, more); ok {
		return next
	}
	if len(more) == 1 {
		m.refused[more[0].refusal] = true
		return so
	}
	half := len(more) / 2
	return m.admit(m.admit(so, more[:half]), more[half:])
}

func (m *mender) try(so admitted, more []pick) (admitted, bool) {
	picks := slices.Concat(so.picks, more)
	edits := map[*schema.File][]schema.Edit{}
	for _, p := range picks {
		for _, e := range p.edits {
			edits[e.File] = append(edits[e.File], e)
		}
	}
	var files []*schema.File
	var healed []string
	for _, f := range so.base.Files() { // in order, not as the map has them
		if edits[f] == nil {
			continue
		}
		text, err := schema.Apply(f.Text.String(), schema.Laid(f, edits[f]))
		if err != nil {
			return so, false
		}
		read := schema.Read(f.Name, []byte(text))
		if f.Whole && !read.Whole {
			return so, false
		}
		if !f.Whole && read.Whole {
			healed = append(healed, f.Name)
		}
		files = append(files, read)
	}
	s := m.check(so.base.With(files...))
	if s.mustsOutside(healed) > so.mustsOutside(healed) {
		return so, false
	}
	return admitted{s, so.base, picks}, true
}

// sortOut tells of the fixes that are left why they were not made.
func (m *mender) sortOut(s state, out *Mended) {
	for i := range s.report.Findings {
		p, ok, heldBack := m.candidate(&s.report.Findings[i])
		if !ok {
			continue
		}
		err := m.reach(s.shop, &p)
		switch {
		case heldBack:
			out.Withheld = append(out.Withheld, p.Repair)
			continue
		case err != nil:
			p.Why = err.Error()
		case m.refused[p.refusal]:
			p.Why = "it would leave more that must be put right than before"
		default:
			p.Why = fmt.Sprintf("it stands in the way of another fix, or has no end: %d rounds were not enough", rounds)
		}
		out.Skipped = append(out.Skipped, p.Repair)
	}
}

// changed lists the files whose texts differ.
func changed(before, after *Shop) []Rewritten {
	old := make(map[string]*schema.File, len(before.Files()))
	for _, f := range before.Files() {
		old[f.Name] = f
	}
	var list []Rewritten
	for _, f := range after.Files() {
		if was := old[f.Name]; was != f && was.Text.String() != f.Text.String() {
			list = append(list, Rewritten{was, f.Text.String()})
		}
	}
	slices.SortFunc(list, func(a, b Rewritten) int { return strings.Compare(a.File.Name, b.File.Name) })
	return list
}
