package cli

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/schema"
)

func checkVerb() verb {
	return verb{
		name:  "check",
		takes: "[PATH...]",
		about: "say what must be put right, what should be, and what is worth knowing",
		help: `Each PATH is a recipe file or a folder. The whole shop around it is read, since a recipe leans on what stands on the shelves; what is said is about the named files, or the files below the named folder. Without a PATH it is about the whole shop around the working folder.

With --staged it is about what git would commit now, as it stands in git's index and whatever is on disk: all shops of the repository in which something is staged, or those of them that a PATH names.

With --since REV, a revision of git, it is about what changed since then: what is found in recipes that were changed, and what is found anew in others because their stock, the shop's rules or its settings were changed. With --baseline FILE what the file lists is known, and only what is new fails the check; --accept writes the file anew with everything that is found now. Both say what they left out, and what must be put right is named there too.

The exit status is 0 where nothing speaks at the level asked for, 1 where something does, and 2 where the check could not be made in full: a file that cannot be opened, a flag that does not exist.`,
		setup: func(flags *pflag.FlagSet) action {
			c := check{}
			c.form = oneOf(flags, "report", "how to say it: text for people, markdown for a page, lines for editors, json, sarif and junit for programs", report.Forms...)
			c.level = oneOf(flags, "level", "the level from which the exit status is 1", "must", "should", "consider")
			c.staged = flags.Bool("staged", false, "check what git would commit now, and not what is on disk")
			c.since = flags.String("since", "", "only what changed since a revision of git: `REV`")
			c.known = flags.String("baseline", "", "what `FILE` lists is known and does not fail the check")
			c.accept = flags.Bool("accept", false, "write the file of --baseline anew with all that is found now")
			c.also = flags.StringArray("write", nil, "besides, write the report to a file: `FORM=FILE`, such as sarif=recipes.sarif; may be given several times")
			c.as = flags.String("as", "", "read one file from standard input, and check it as if it stood at `PATH`")
			return c.run
		},
	}
}

type check struct {
	form   *choice
	level  *choice
	as     *string
	staged *bool
	also   *[]string
	since  *string
	known  *string
	accept *bool
}

func (c check) run(s *session, args []string) int {
	extras, err := c.extras()
	if err != nil {
		s.say("%v", err)
		return NotWorked
	}
	if *c.accept && *c.known == "" {
		s.say("check: --accept writes the file that --baseline names: say --baseline FILE as well")
		return NotWorked
	}
	s.progress.start()
	var doc *report.Document
	switch {
	case *c.since != "" && (*c.as != "" || *c.staged):
		s.say("check: --since compares what is on disk with a revision: leave out %s", map[bool]string{true: "--as", false: "--staged"}[*c.as != ""])
		return NotWorked
	case *c.as != "" && (len(args) > 0 || *c.staged):
		s.say("check: --as checks the one file on standard input: leave out %s, or leave out --as", strings.Join(c.besideAs(args), " "))
		return NotWorked
	case *c.as != "":
		doc = c.standardInput(s)
	case *c.staged:
		doc = s.staged(args)
	default:
		doc = s.check(args)
	}
	s.progress.erase()
	if doc == nil {
		return NotWorked
	}
	level, _ := lint.ParseLevel(c.level.word)
	doc.Version, doc.Level = version(), level
	if *c.since != "" {
		if err := s.leaveOutBefore(doc, *c.since, args); err != nil {
			s.say("check: --since %s: %v", *c.since, err)
			return NotWorked
		}
	}
	if *c.known != "" {
		if err := s.leaveOutKnown(doc, *c.known, *c.accept); err != nil {
			s.say("check: --baseline %s: %v", *c.known, err)
			return NotWorked
		}
	}
	s.sayUnread(doc.Unread)
	if err := c.write(s, doc, extras); err != nil {
		s.say("the report could not be written: %v", err)
		return NotWorked
	}
	if *c.staged && len(doc.Shops) == 0 && doc.Complete() {
		s.say("nothing that is staged changes a recipe, or what recipes rest on")
		return Good
	}
	return status(doc, level)
}

// write writes the report in the form asked for, and the further ones to their
// files. Where there was nothing to check, programs are told and people were.
func (c check) write(s *session, doc *report.Document, extras []extra) error {
	for _, e := range extras {
		var out bytes.Buffer
		if err := report.Write(&out, e.form, doc, report.Look{}); err != nil {
			return err
		}
		if err := s.replace(e.file, out.String()); err != nil {
			return fmt.Errorf("%s: %w", e.file, err)
		}
	}
	if form := c.form.word; len(doc.Shops) == 0 && (form == "text" || form == "lines" || form == "markdown") {
		return nil
	}
	if form := c.form.word; form != "text" && form != "markdown" {
		for _, sentence := range doc.LeftOut {
			s.say("%s", sentence)
		}
	}
	return report.Write(s.Out, c.form.word, doc, s.Look)
}

// besideAs is what cannot stand beside --as.
func (c check) besideAs(args []string) []string {
	if *c.staged {
		return append([]string{"--staged"}, args...)
	}
	return args
}

// status is the exit status for what was found.
func status(doc *report.Document, level lint.Level) int {
	switch {
	case !doc.Complete() || len(doc.Shops) == 0:
		return NotWorked
	case doc.Loudest() >= level:
		return Found
	}
	return Good
}

// extra is a report that goes to a file.
type extra struct{ form, file string }

// extras reads what --write asks for.
func (c check) extras() (list []extra, err error) {
	for _, said := range *c.also {
		form, file, _ := strings.Cut(said, "=")
		switch {
		case !slices.Contains(report.Forms, form):
			return nil, fmt.Errorf("check: --write %s: there is no report %q, %s", said, form, schema.NearestOrKnown(form, report.Forms, ""))
		case file == "":
			return nil, fmt.Errorf("check: --write %s: say the file as well: --write %s=FILE", said, form)
		}
		list = append(list, extra{form, file})
	}
	return list, nil
}

// check checks every shop that the arguments name.
func (s *session) check(args []string) *report.Document {
	doc := &report.Document{}
	shops, unread := s.find(args)
	doc.Unread = unread
	reports := make([]*lint.Report, len(shops))
	taken := takenFolders{}
	// Folders that are no shop come last: of rules that a shop takes there is
	// nothing to say without it.
	for _, last := range []bool{false, true} {
		for i, f := range shops {
			if last != f.loose() || taken.holds(f.place()) {
				continue
			}
			shop, unread := s.open(f)
			doc.Unread = append(doc.Unread, unread...)
			if shop.Shop == nil {
				continue
			}
			shop.root.Close()
			taken.add(f.volume, shop.Taken())
			reports[i] = lint.RunFor(shop.Shop, s.rulesFor(shop.Shop), s.today(), f.Covers)
		}
	}
	doc.Shops = slices.DeleteFunc(reports, func(r *lint.Report) bool { return r == nil })
	sayTakenOnce(doc.Shops)
	return doc
}

// standardInput checks one file from standard input in the shop around the
// path it is to stand at, which need not be there yet. Nil: it was said why
// not.
func (c check) standardInput(s *session) *report.Document {
	at := s.locate(*c.as)
	if !strings.HasSuffix(at.path, lint.FileSuffix) {
		s.say("check: --as needs the name of a recipe file, which ends in %s", lint.FileSuffix)
		return nil
	}
	src, err := io.ReadAll(s.In)
	if err != nil {
		s.say("standard input could not be read: %v", err)
		return nil
	}
	home := lint.Home(os.DirFS(at.volume), at.path)
	name := lint.Below(home, at.path)
	f := found{at.volume, lint.Asked{Root: home, Only: []string{name}}}
	file := schema.Read(name, src)

	var shop *lint.Shop
	var unread []report.Unread
	if _, err := os.Stat(f.place().full()); missing(err) {
		shop = lint.NewShop(s.shown(f.place()), []*schema.File{file})
	} else {
		var o opened
		if o, unread = s.open(f); o.Shop == nil {
			return &report.Document{Unread: unread}
		}
		o.root.Close()
		shop = o.With(file)
		// The file on disk gives way to standard input, readable or not.
		unread = slices.DeleteFunc(unread, func(u report.Unread) bool { return u.Name == name })
	}
	r := lint.RunFor(shop, s.rulesFor(shop), s.today(), f.Covers)
	return &report.Document{Shops: []*lint.Report{r}, Unread: unread}
}

func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
