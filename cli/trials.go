package cli

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/schema"
)

func trialsVerb() verb {
	return verb{
		name:  "trials",
		about: "list what the shop has tried out, and what it still wonders",
		help:  "The trials of the shop around the working folder: first the questions that are still open, then what is known, each with what came of it and the rules that rest on it.",
		setup: func(*pflag.FlagSet) action { return trials },
	}
}

func trials(s *session, args []string) int {
	if len(args) > 0 {
		s.say("trials takes nothing after it")
		return NotWorked
	}
	shop := s.shopHere()
	if shop == nil {
		return NotWorked
	}
	p := report.NewPage(s.Look)
	var open, known []*schema.Block
	for _, t := range shop.Trials() {
		if isOpen(t) {
			open = append(open, t)
		} else {
			known = append(known, t)
		}
	}
	list := func(heading string, all []*schema.Block) {
		if len(all) == 0 {
			return
		}
		p.Heading(heading)
		p.Blank()
		for _, t := range all {
			showTrial(p, shop, t, true)
		}
	}
	list("Still open", open)
	list("Known", known)
	if len(open)+len(known) == 0 {
		p.Wrap("", 0, "This shop has written no trials down yet.")
	}
	fmt.Fprint(s.Out, p)
	return Good
}

func isOpen(trial *schema.Block) bool {
	outcome := trial.Get("outcome")
	return outcome.Absent() || outcome.Text() == "open"
}

// showTrial tells of one trial: what was asked, of what, and what came of it.
func showTrial(p *report.Page, shop *lint.Shop, t *schema.Block, rests bool) {
	head := t.Label
	if date := t.Get("date").Text(); date != "" {
		head += ", " + date
	}
	switch outcome := t.Get("outcome").Text(); {
	case isOpen(t):
		head += ": open"
	case outcome != "":
		head += ": " + outcome
	}
	p.Wrap("", 2, head)
	line := func(label, text string) {
		if text = strings.Join(strings.Fields(text), " "); text != "" {
			p.Wrap("    "+label, labels, text)
		}
	}
	line("asked", t.Get("question").Text())
	var about []string
	if key := t.Get("tried"); key.Known() {
		about = append(about, titleOf(shop, key))
	}
	if key := t.Get("recipe"); key.Known() {
		about = append(about, "in "+titleOf(shop, key))
	}
	if upTo := t.Get("up_to"); upTo.IsAmount() {
		about = append(about, "up to "+upTo.Amount().String())
	}
	line("tried", strings.Join(about, ", "))
	line("noted", t.Get("notes").Text())
	if rests {
		line("bears out", strings.Join(restingOn(shop, t.Label), ", "))
	}
	p.Blank()
}

// titleOf is the title of what a key leads to, else the key.
func titleOf(shop *lint.Shop, key schema.Value) string {
	if b := shop.Resolve(lint.Reference{Kinds: key.Spec.Refers, Key: key.Text()}); b != nil {
		return b.Title()
	}
	return key.Text()
}

// restingOn are the rules that name a trial.
func restingOn(shop *lint.Shop, trial string) []string {
	var all []string
	for _, rule := range shop.Rules() {
		if slices.ContainsFunc(rule.Get("rests_on").Items(), func(i schema.Item) bool { return i.Text == trial }) {
			all = append(all, rule.Label)
		}
	}
	return all
}
