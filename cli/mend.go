package cli

import (
	"errors"
	"io"

	"github.com/spf13/pflag"

	"wickrule/lint"
	"wickrule/lint/report"
)

func mendVerb() verb {
	return verb{
		name:  "mend",
		takes: "[PATH...]",
		about: "put right what can be put right without changing what is made",
		help: `Spelling, layout, a unit made explicit: such fixes are made, and the files written. With --all the first fix of everything found is made, also where it changes the recipe: a load lowered, a step added, another item from the shelf. No fix ever raises heat, a load, a duration or a limit.

After every round the shop is checked again. A fix that would leave more that must be put right is not made, and what was not made is told. A file that changed on disk meanwhile is left alone.

The exit status is 1 where something that must be put right is left.`,
		setup: func(flags *pflag.FlagSet) action {
			m := mend{}
			m.all = flags.Bool("all", false, "make the first fix of everything found, also where it changes what is made")
			m.show = flags.Bool("show", false, "print the difference in the unified form and write nothing")
			return m.run
		},
	}
}

type mend struct{ all, show *bool }

func (m mend) run(s *session, args []string) int {
	s.progress.start()
	out := s.Out
	if *m.show {
		out = s.Err // the difference alone goes to standard output
	}
	doc := &report.Document{}
	shops, unread := s.find(args)
	doc.Unread = unread
	p := report.NewPage(s.Look)
	failed := false
	for _, f := range shops {
		r, unread, ok := m.shop(s, f, p)
		doc.Unread = append(doc.Unread, unread...)
		failed = failed || !ok
		if r != nil {
			doc.Shops = append(doc.Shops, r)
		}
	}
	s.progress.erase()
	s.sayUnread(doc.Unread)
	if len(doc.Shops) > 0 {
		p.Closing(doc)
		if _, err := io.WriteString(out, p.String()); err != nil {
			s.say("what was done could not be told: %v", err)
			return NotWorked
		}
	}
	if failed {
		return NotWorked
	}
	return status(doc, lint.Must)
}

// shop mends one shop; nil: nothing was done. False: a file could not be
// written.
func (m mend) shop(s *session, f found, p *report.Page) (r *lint.Report, unread []report.Unread, ok bool) {
	o, unread := s.open(f)
	if o.Shop == nil {
		return nil, unread, false
	}
	defer o.root.Close()
	if len(unread) > 0 {
		s.say("%s: nothing is mended, since not all of the shop could be read and a fix may rest on what is missing", o.Root)
		return nil, unread, false
	}
	done := lint.Mend(o.Shop, s.rulesFor, s.today(), lint.MendOptions{All: *m.all, Covers: func(name string) bool { return f.Covers(name) && !lint.IsTaken(name) }})
	ok = true
	for _, c := range done.Changed {
		name := report.Located(o.Root, c.File.Name)
		if *m.show {
			s.showDifference(name, c.File.Text.String(), c.Text)
			continue
		}
		if err := s.rewrite(o.root, c.File.Name, c.File.Text.String(), c.Text); err != nil {
			s.say("%s: %v", name, err)
			ok = false
			if errors.Is(err, errStopped) {
				break
			}
		}
	}
	heading := "Mended"
	if *m.show {
		heading = "Would be mended"
	}
	p.Repairs(heading, o.Root, done.Applied)
	p.Repairs("Left to you, since it changes what is made (mend --all makes these, where it need not guess)", o.Root, done.Withheld)
	p.Repairs("Not mended", o.Root, done.Skipped)
	return done.Report, nil, ok
}
