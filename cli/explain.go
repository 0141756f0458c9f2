package cli

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/pflag"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/rules"
	"wickrule/rules/card"
	"wickrule/rules/explained"
	"wickrule/rules/shoprule"
	"wickrule/schema"
)

func explainVerb() verb {
	return verb{
		name:  "explain",
		takes: "[RULE]",
		about: "tell what a rule finds, why it matters and how to put it right",
		help: `Without a RULE it lists all of them by subject. The examples are recipes of the invented Larkspur Quay Candleworks, and what is said of them is found by checking them there and then.

With --card it makes a card to hand to a customer: the question that people ask, the short answer, why, when it is still all right, what to do. --format html makes a page for the printer, A5 or A6, which needs nothing but itself.`,
		offers: ruleNames,
		setup: func(flags *pflag.FlagSet) action {
			v := explainCommand{}
			v.card = flags.Bool("card", false, "make a card to hand to a customer")
			v.form = oneOf(flags, "format", "how to write the card: markdown, or html for the printer", "markdown", "html")
			v.flags = flags
			return v.run
		},
	}
}

type explainCommand struct {
	card  *bool
	form  *choice
	flags *pflag.FlagSet
}

func ruleNames(s *session) []string {
	var names []string
	for _, r := range s.Rules {
		names = append(names, r.Name)
	}
	return names
}

func (v explainCommand) run(s *session, args []string) int {
	switch {
	case len(args) > 1:
		s.say("explain takes one rule")
		return NotWorked
	case !*v.card && v.flags.Changed("format"):
		s.say("--format says how a card is written: it goes with --card")
		return NotWorked
	case *v.card && len(args) == 0:
		s.say("--card needs a rule: wickrule explain lists them")
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
			if *v.card {
				return v.write(s, card.Of(r, s.shopAround()))
			}
			s.explainRule(p, r)
			fmt.Fprint(s.Out, p)
			return Good
		}
	}
	if shop := s.shopHere(); shop != nil {
		for _, r := range rules.Own(shop) {
			if r.Name == args[0] {
				if *v.card {
					return v.write(s, card.OfOwn(r, shop, shop.Find("rule", r.Name)))
				}
				explainOwn(p, shop, r)
				fmt.Fprint(s.Out, p)
				return Good
			}
		}
	}
	s.say("there is no rule %q: %s. wickrule explain lists them", args[0], schema.NearestOrKnown(args[0], ruleNames(s), `"`))
	return NotWorked
}

// write writes a card.
func (v explainCommand) write(s *session, c *card.Card) int {
	var out bytes.Buffer
	var err error
	if v.form.word == "html" {
		err = c.HTML(&out)
	} else {
		err = c.Markdown(&out)
	}
	if err == nil {
		_, err = io.Copy(s.Out, &out)
	}
	if err != nil {
		s.say("the card could not be written: %v", err)
		return NotWorked
	}
	return Good
}

// shopAround is the shop around the working folder, for what does without one
// too; nil: there is none.
func (s *session) shopAround() *lint.Shop {
	here := s.locate(".")
	root, ok := lint.ShopAbove(os.DirFS(here.volume), here.path)
	if !ok {
		return nil
	}
	o, _ := s.open(found{here.volume, lint.Asked{Root: root}})
	s.progress.erase()
	if o.Shop != nil {
		o.root.Close()
	}
	return o.Shop
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

// labels is where the text of an explanation starts.
const labels = 20

// explainHead is what every rule has to say first, built-in or of the shop.
func explainHead(p *report.Page, r *lint.Rule) {
	p.Title(r.Name, r.Group)
	p.Blank()
	p.Wrap("", 2, schema.Capital(r.Title)+".")
	p.Blank()
	part(p, "How loud", r.Loudness())
	part(p, "Why", r.Why)
	part(p, "To put it right", r.Remedy)
}

func (s *session) explainRule(p *report.Page, r *lint.Rule) {
	explainHead(p, r)
	part(p, "Mind", r.Cautions)
	part(p, "Source", r.Source)
	shop := demoShop()
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
	rule := shop.Find("rule", r.Name)
	for _, o := range shoprule.OptionsOf(shop, rule) {
		part(p, "Option "+o.Name, o.String())
	}
	part(p, "Rests on", r.Source)
	for _, t := range explained.Behind(shop, rule) {
		showTrial(p, &t, false)
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

// showExample lays the example over the demo shop, shows the block it is
// about, and what the rule says of it.
func (s *session) showExample(p *report.Page, label string, base *lint.Shop, r *lint.Rule, e lint.Example) {
	p.Wrap("  "+label, labels, schema.Capital(e.About)+":")
	p.Blank()
	tried, err := explained.Try(base, s.rulesFor, r, e, s.today())
	if err != nil {
		p.Wrap("", labels, "(cannot be shown: "+err.Error()+")")
		p.Blank()
		return
	}
	for _, line := range tried.Excerpt {
		p.Line(strings.Repeat(" ", labels) + report.Clean(line.Text))
	}
	p.Blank()
	for i := range tried.Said {
		p.Wrap("", labels, tried.Said[i].Message)
		for _, fix := range tried.Said[i].Repairs() {
			p.Wrap("", labels, "to put it right: "+fix.Title)
			break
		}
	}
	if len(tried.Said) > 0 {
		p.Blank()
	}
}
