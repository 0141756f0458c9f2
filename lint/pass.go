package lint

import (
	"maps"
	"slices"

	"wickrule/schema"
)

// Pass is one rule looking at one recipe, or at one file.
type Pass struct {
	*View
	rule *Rule
	book *book
	out  *gathering
}

// RuleNames lists the names of all rules in force, sorted.
func (p *Pass) RuleNames() []string { return slices.Sorted(maps.Keys(p.book.named)) }

// HasRule says whether a rule of that name is in force.
func (p *Pass) HasRule(name string) bool { return p.RuleNamed(name) != nil }

// RuleNamed is the rule in force of that name, or nil.
func (p *Pass) RuleNamed(name string) *Rule { return p.book.named[name] }

// gathering collects what the rules say of one recipe or file.
type gathering struct {
	found     []Found
	conceded  []Conceded
	unchecked []need
	faults    []Fault
	whole     bool
}

// add takes in what was said of something else in the same file.
func (g *gathering) add(o gathering) {
	g.found = append(g.found, o.found...)
	g.conceded = append(g.conceded, o.conceded...)
	g.unchecked = append(g.unchecked, o.unchecked...)
	g.faults = append(g.faults, o.faults...)
}

type need struct {
	block *schema.Block
	attr  string
	rule  string
	level Level
}

// Report says a finding about something that is written.
func (p *Pass) Report(f Finding) {
	level := loudness(p.shop, p.rule, f.Levels, p.MadeFor)
	if level == Silent {
		return
	}
	p.out.found = append(p.out.found, Found{Finding: f, Rule: p.rule, Level: level, Recipe: p.Recipe})
}

// ReportAs says a finding in the name of another rule in force: of what keeps
// this one from being checked at all.
func (p *Pass) ReportAs(rule string, f Finding) {
	r := p.book.named[rule]
	if r == nil {
		return
	}
	if level := loudness(p.shop, r, f.Levels, p.MadeFor); level != Silent {
		p.out.found = append(p.out.found, Found{Finding: f, Rule: r, Level: level, Recipe: p.Recipe})
	}
}

// Missing says a finding about something that is not written, or about a sum
// that what is not written would change. While the text does not parse whole
// it may only be not written yet, so nothing is said then.
func (p *Pass) Missing(f Finding) {
	if p.Whole() {
		p.Report(f)
	}
}

// Whole says whether the recipe's text parsed whole, so that what is not there
// is really missing.
func (p *Pass) Whole() bool { return p.out.whole }

// WholeFile says whether the text of another file that the check leans on
// parsed whole.
func (v *View) WholeFile(f *schema.File) bool {
	v.note(look{aWhole, "", f.Name})
	return f.Whole
}

// Loud says whether the rule would speak at all with these levels (zero: its
// own), for checks that are costly.
func (p *Pass) Loud(l Levels) bool {
	return loudness(p.shop, p.rule, l, p.MadeFor) != Silent
}

// CannotCheck says that the rule waits for an attribute the block does not
// state. It is reported once for each attribute, whatever the number of rules
// and recipes that wait. A nil block, or a value that is written, says
// nothing.
func (p *Pass) CannotCheck(b *schema.Block, attr string) {
	if b == nil || !p.Whole() || !b.Get(attr).Absent() || !p.Loud(Levels{}) || !p.WholeFile(b.File) {
		return
	}
	level := Consider
	if p.MadeFor == Sale {
		level = Should
	}
	p.out.unchecked = append(p.out.unchecked, need{b, attr, p.rule.Name, level})
}
