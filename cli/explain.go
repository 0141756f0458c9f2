package cli

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/spf13/pflag"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/rules"
	"wickrule/schema"
)

func explainVerb() verb {
	return verb{
		name:   "explain",
		takes:  "[RULE]",
		about:  "tell what a rule finds, why it matters and how to put it right",
		help:   "Without a RULE it lists all of them by subject. The examples are recipes of the invented Larkspur Quay Candleworks, and what is said of them is found by checking them there and then.",
		offers: ruleNames,
		setup:  func(*pflag.FlagSet) action { return explain },
	}
}

func ruleNames(s *session) []string {
	var names []string
	for _, r := range s.Rules {
		names = append(names, r.Name)
	}
	return names
}

func explain(s *session, args []string) int {
	if len(args) > 1 {
		s.say("explain takes one rule")
		return NotWorked
	}
	p := report.NewPage(s.Look)
	if len(args) == 0 {
		listRules(p, s.Rules)
		fmt.Fprint(s.Out, p)
		return Good
	}
	for _, r := range s.Rules {
		if r.Name == args[0] {
			s.explainRule(p, r)
			fmt.Fprint(s.Out, p)
			return Good
		}
	}
	if shop := s.shopHere(); shop != nil {
		for _, r := range rules.Own(shop) {
			if r.Name == args[0] {
				explainOwn(p, shop, r)
				fmt.Fprint(s.Out, p)
				return Good
			}
		}
	}
	s.say("there is no rule %q: %s. wickrule explain lists them", args[0], schema.NearestOrKnown(args[0], ruleNames(s), `"`))
	return NotWorked
}

func listRules(p *report.Page, all []*lint.Rule) {
	group := ""
	for _, r := range all {
		if r.Group != group {
			if group != "" {
				p.Blank()
			}
			group = r.Group
			p.Heading(group)
			p.Blank()
		}
		if len(r.Name) > 28 {
			p.Line("  " + r.Name)
			p.Wrap("", 32, r.Title)
			continue
		}
		p.Wrap("  "+r.Name, 32, r.Title)
	}
}

// capital is a text as a sentence begins.
func capital(text string) string {
	if text == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}

// labels is where the text of an explanation starts.
const labels = 20

// explainHead is what every rule has to say first, built-in or of the shop.
func explainHead(p *report.Page, r *lint.Rule) {
	p.Title(r.Name, r.Group)
	p.Blank()
	p.Wrap("", 2, capital(r.Title)+".")
	p.Blank()
	part(p, "How loud", loudnessOf(r))
	part(p, "Why", r.Why)
	part(p, "To put it right", r.Remedy)
}

func (s *session) explainRule(p *report.Page, r *lint.Rule) {
	explainHead(p, r)
	part(p, "Mind", r.Cautions)
	part(p, "Source", r.Source)
	shop, errs := lint.Load(examples.Shop(), ".", nil)
	if len(errs) > 0 { // it is part of the program: a fault
		panic(errs[0])
	}
	for _, e := range r.Bad {
		s.showExample(p, "Wrong", shop, r, e)
	}
	for _, e := range r.Good {
		s.showExample(p, "Right", shop, r, e)
	}
	p.Wrap("", 2, report.Caution)
}

// explainOwn explains a rule of the shop's own, with the trials behind it.
func explainOwn(p *report.Page, shop *lint.Shop, r *lint.Rule) {
	explainHead(p, r)
	part(p, "Rests on", r.Source)
	rule := shop.Find("rule", r.Name)
	for _, item := range rule.Get("rests_on").Items() {
		if t := shop.Find("trial", item.Text); t != nil {
			showTrial(p, shop, t, false)
		}
	}
	n, _ := rule.File.Text.Position(rule.Span.Start)
	part(p, "Written in", fmt.Sprintf("%s, line %d", rule.File.Name, n))
	p.Wrap("", 2, report.Caution)
}

func part(p *report.Page, label, text string) {
	if strings.TrimSpace(text) == "" {
		return
	}
	lead := "  " + label
	for paragraph := range strings.SplitSeq(strings.TrimSpace(text), "\n\n") {
		p.Wrap(lead, labels, paragraph)
		lead = ""
	}
	p.Blank()
}

func loudnessOf(r *lint.Rule) string {
	word := func(l lint.Level) string {
		if l == lint.Silent {
			return "silent"
		}
		return l.String()
	}
	text := "for sale " + word(r.Levels.Sale) + ", for a class " + word(r.Levels.Class) + ", for own use " + word(r.Levels.OwnUse)
	if r.Levels == lint.Every(r.Levels.Sale) {
		text = word(r.Levels.Sale) + ", whatever it is made for"
	}
	switch {
	case r.About == lint.AboutFormat && r.Binding:
		text += "; it is about how the text is written and can be neither conceded nor turned down"
	case r.About == lint.AboutFormat:
		text += "; it is about how the text is written and cannot be conceded"
	case r.Binding:
		text += "; in what is made for sale it can be neither conceded nor turned down"
	}
	return text
}

// showExample lays the example over the demo shop, shows the block it is
// about, and what the rule says of it.
func (s *session) showExample(p *report.Page, label string, base *lint.Shop, r *lint.Rule, e lint.Example) {
	p.Wrap("  "+label, labels, capital(e.About)+":")
	p.Blank()
	shop, about, err := e.Over(base)
	if err != nil {
		p.Wrap("", labels, "(cannot be shown: "+err.Error()+")")
		p.Blank()
		return
	}
	var said []lint.Found
	for _, f := range lint.Run(shop, s.rulesFor(shop), s.today()).Findings {
		if f.Rule != r {
			continue
		}
		for _, file := range about {
			if f.At.File == file || f.Recipe != nil && f.Recipe.File == file {
				said = append(said, f)
				break
			}
		}
	}
	file, span := about[0], changedSpan(about[0], e)
	if len(said) > 0 {
		file, span = said[0].At.File, said[0].At.Span
	}
	for _, line := range excerpt(file, span) {
		p.Line(strings.Repeat(" ", labels) + report.Clean(line))
	}
	p.Blank()
	for i := range said {
		p.Wrap("", labels, said[i].Message)
		for _, fix := range said[i].Repairs() {
			p.Wrap("", labels, "to put it right: "+fix.Title)
			break
		}
	}
	if len(said) > 0 {
		p.Blank()
	}
}

// changedSpan is where the example's first change stands.
func changedSpan(file *schema.File, e lint.Example) schema.Span {
	for _, c := range e.Changes {
		if at := strings.Index(file.Text.String(), c.To); at >= 0 && c.To != "" {
			// From its last character, since a change often starts in the block before.
			end := int32(at + len(strings.TrimRight(c.To, " \n")))
			return schema.Span{Start: end, End: end}
		}
	}
	return schema.Span{}
}

// shownLines is how long a block may be to be shown whole.
const shownLines = 16

// excerpt is the innermost block around the span, or, where that is long, its
// first and last lines and those around the span.
func excerpt(file *schema.File, span schema.Span) []string {
	first, last := 1, file.Text.Lines()
	blocks := file.Blocks
	for inside := true; inside; {
		inside = false
		for _, b := range blocks {
			if b.Span.Contains(span) {
				first, last = file.Text.Line(b.Span.Start), file.Text.Line(max(b.Span.Start, b.Span.End-1))
				blocks, inside = b.Blocks(), true
				break
			}
		}
	}
	var lines []string
	line := func(n int) string { return strings.TrimRight(file.Text.Slice(file.Text.LineSpan(n)), " ") }
	at := file.Text.Line(span.Start)
	for n := first; n <= last; n++ {
		switch {
		case last-first < shownLines, n == first, n == last, n >= at-1 && n <= at+1:
			lines = append(lines, line(n))
		case lines[len(lines)-1] != "…":
			lines = append(lines, "…")
		}
	}
	return outdent(lines)
}

// outdent takes the common indentation away.
func outdent(lines []string) []string {
	common := -1
	for _, l := range lines {
		if l == "" || l == "…" {
			continue
		}
		if n := len(l) - len(strings.TrimLeft(l, " ")); common < 0 || n < common {
			common = n
		}
	}
	for i, l := range lines {
		if len(l) >= common && common > 0 && l != "…" {
			lines[i] = l[common:]
		}
	}
	return lines
}
