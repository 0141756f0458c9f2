package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"wickrule/lint/report"
	"wickrule/rules/explained"
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
	var open, known []explained.Trial
	for _, b := range shop.Trials() {
		if t := explained.TrialOf(shop, b); t.Open() {
			open = append(open, t)
		} else {
			known = append(known, t)
		}
	}
	list := func(heading string, all []explained.Trial) {
		if len(all) == 0 {
			return
		}
		p.Heading(heading)
		p.Blank()
		for i := range all {
			showTrial(p, &all[i], true)
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

// showTrial tells of one trial: what was asked, of what, and what came of it.
func showTrial(p *report.Page, t *explained.Trial, rests bool) {
	head := t.Key
	if t.Date != "" {
		head += ", " + t.Date
	}
	if t.Outcome != "" {
		head += ": " + t.Outcome
	}
	p.Wrap("", 2, head)
	line := func(label, text string) {
		if text != "" {
			p.Wrap("    "+label, labels, text)
		}
	}
	line("asked", t.Asked)
	line("tried", t.Tried)
	line("noted", t.Noted)
	if rests {
		line("bears out", strings.Join(t.Bears, ", "))
	}
	p.Blank()
}
