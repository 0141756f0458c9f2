package cli

import (
	"fmt"
	"slices"

	"github.com/spf13/pflag"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/rules/shoprule"
	"wickrule/schema"
)

func proveVerb() verb {
	return verb{
		name:  "prove",
		takes: "[RULE...]",
		about: "try the shop's own rules against their examples",
		help: `A rule of the shop's own is tested where it is written: it must pass its sound examples and speak in its faulty ones. Only that rule runs, as it is written: an option that the shop file tunes is tried with what the rule says. Without a RULE all of the shop around the working folder are tried.

The exit status is 1 where a rule cannot be read, has no example of one kind, or an example comes out otherwise than it must.`,
		offers: ownRuleNames,
		live:   true,
		setup:  func(*pflag.FlagSet) action { return prove },
	}
}

// shopHere is the shop around the working folder, for verbs about the whole of
// it. Nil: it was said why not.
func (s *session) shopHere() *lint.Shop {
	shops, unread := s.find(nil)
	if len(shops) == 0 {
		s.sayUnread(unread)
		s.say("there are no recipe files here")
		return nil
	}
	o, unread := s.open(shops[0])
	s.sayUnread(unread)
	if o.Shop != nil {
		o.root.Close()
	}
	return o.Shop
}

// ownRuleNames are the names of the shop's own rules.
func ownRuleNames(s *session) []string {
	shop := s.shopHere()
	if shop == nil {
		return nil
	}
	return shop.Keys("rule")
}

func prove(s *session, args []string) int {
	shop := s.shopHere()
	if shop == nil {
		return NotWorked
	}
	for _, name := range args {
		if shop.Find("rule", name) == nil {
			s.say("this shop has no rule of its own called %q: %s", name, schema.NearestOrKnown(name, shop.Keys("rule"), `"`))
			return NotWorked
		}
	}
	p := report.NewPage(s.Look)
	proved, tried := 0, 0
	for _, rule := range shop.Rules() {
		if len(args) > 0 && !slices.Contains(args, rule.Label) {
			continue
		}
		tried++
		proof := shoprule.Prove(lint.NewFileView(shop, rule.File, s.today()), rule)
		if proof.Holds() {
			proved++
		}
		showProof(p, &proof)
		showUntried(p, shop, rule)
		p.Blank()
	}
	switch {
	case tried == 0:
		p.Wrap("", 0, "This shop has no rules of its own.")
	case proved == tried:
		p.Wrap("", 0, plural(tried, "rule", "rules")+", all proved.")
	default:
		p.Wrap("", 0, fmt.Sprintf("%s, %d proved.", plural(tried, "rule", "rules"), proved))
	}
	fmt.Fprint(s.Out, p)
	if proved < tried {
		return Found
	}
	return Good
}

// showProof tells what came of one rule.
func showProof(p *report.Page, proof *shoprule.Proof) {
	line := func(text string) { p.Wrap("", 4, text) }
	p.Wrap("", 2, proof.Rule.Label+": "+proof.Verdict())
	if !proof.Readable {
		line("it cannot be read: wickrule check says where")
	}
	if proof.Sound == 0 {
		line("untested: no sound example that it must pass")
	}
	if proof.Faulty == 0 {
		line("untested: no faulty example in which it must speak")
	}
	for _, e := range proof.Examples {
		if e.Says == "" {
			continue
		}
		n, _ := e.At.File.Text.Position(e.At.Span.Start)
		line(e.Says)
		line(fmt.Sprintf("%s, line %d", e.At.File.Name, n))
	}
}

// showUntried tells which figures of the shop's own no example is tried with.
func showUntried(p *report.Page, shop *lint.Shop, rule *schema.Block) {
	if shop.Find("rule", rule.Label) != rule {
		return // not the one that is tuned
	}
	for _, o := range shoprule.OptionsOf(shop, rule) {
		if o.Here != "" {
			p.Wrap("", 4, fmt.Sprintf("tried with %s %s, as the rule says; this shop has %s", o.Name, o.Is, o.Here))
		}
	}
}
