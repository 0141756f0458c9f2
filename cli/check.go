package cli

import (
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

With --since REV, a revision of git, it is about what changed since then, or since this branch left it: everything about recipes that were changed, and of the others what is new because their stock, the shop's rules or its settings were changed. What git does not know yet is new.

With --baseline FILE what the file lists is known, and only what is new or louder fails the check. With --accept REASON besides, the file is first written anew with everything that is found now; what was known keeps its reason, and what is gone is dropped. What must be put right in a recipe made for sale and can be neither conceded nor turned down cannot be accepted either.

Both say what they left out; what must be put right is told even so.

The exit status is 0 where nothing speaks at the level asked for but what was left out, 1 where something does, and 2 where the check could not be made in full: a file that cannot be opened, a flag that does not exist.`,
		setup: func(flags *pflag.FlagSet) action {
			c := &check{flags: flags}
			c.form = oneOf(flags, "report", "how to say it: text for people, markdown for a page, lines for editors, json, sarif and junit for programs", report.Forms...)
			c.level = oneOf(flags, "level", "the level from which the exit status is 1", "must", "should", "consider")
			c.staged = flags.Bool("staged", false, "check what git would commit now, and not what is on disk")
			c.since = flags.String("since", "", "only what changed since `REV`, a revision of git such as main")
			c.known = flags.String("baseline", "", "what `FILE` lists is known and does not fail the check")
			c.accept = flags.String("accept", "", "write the file of --baseline anew with all that is found now, for this `REASON`")
			flags.Var(&c.copies, "write", "put the report into a file as well, in this form: sarif=recipes.sarif, for one; may be repeated")
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
	copies copies
	since  *string
	known  *string
	accept *string
	flags  *pflag.FlagSet
}

func (c *check) run(s *session, args []string) int {
	if trouble := c.trouble(args); trouble != "" {
		s.say("check: %s", trouble)
		return NotWorked
	}
	s.progress.start()
	var doc *report.Document
	switch {
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
	doc.Level, doc.Origin = level, s.origin()
	if err := c.leaveOut(s, doc, args); err != nil {
		s.say("check: %v", err)
		return NotWorked
	}
	s.sayUnread(doc.Unread)
	if err := s.writeReport(doc, c.form.word, c.copies); err != nil {
		s.say("check: %v", err)
		return NotWorked
	}
	if *c.staged && len(doc.Shops) == 0 && doc.Complete() {
		s.say("nothing that is staged changes a recipe, or what recipes rest on")
		return Good
	}
	return status(doc, level)
}

// trouble is what cannot be asked for together; "" for nothing.
func (c *check) trouble(args []string) string {
	switch {
	case *c.as != "" && (len(args) > 0 || *c.staged):
		return fmt.Sprintf("--as checks the one file on standard input: leave out %s, or leave out --as", strings.Join(c.besideAs(args), " "))
	case *c.as != "" && *c.since != "":
		return "--since compares what lies in the repository with a revision: leave out --as"
	case c.flags.Changed("accept") && *c.known == "":
		return "--accept writes the file that --baseline names: say --baseline FILE as well"
	}
	return ""
}

// leaveOut leaves out what is known or as it was, and says so. What is accepted
// is all that was found, whatever --since asks for.
func (c *check) leaveOut(s *session, doc *report.Document, args []string) error {
	var sieves []*sieve
	var known *baseline
	var before *past
	if *c.known != "" {
		accepting := c.flags.Changed("accept")
		var err error
		if known, err = s.openBaseline(*c.known, doc, accepting); err == nil && accepting {
			var said []string
			said, err = known.accept(doc, *c.accept)
			doc.LeftOut = append(doc.LeftOut, said...)
		}
		if err != nil {
			return fmt.Errorf("--baseline %s: %w", *c.known, err)
		}
		sieves = append(sieves, known.sieve())
	}
	if *c.since != "" {
		var err error
		if before, err = s.pastOf(doc, *c.since, args); err != nil {
			return fmt.Errorf("--since %s: %w", *c.since, err)
		}
		sieves = append(sieves, before.sieve())
	}
	if len(sieves) == 0 {
		return nil
	}
	leaveOut(doc, sieves...)
	if known != nil {
		doc.LeftOut = append(doc.LeftOut, known.sentences(&sieves[0].left)...)
	}
	if before != nil {
		doc.LeftOut = append(doc.LeftOut, before.sentences(doc, &sieves[len(sieves)-1].left)...)
	}
	return nil
}

// besideAs is what cannot stand beside --as.
func (c *check) besideAs(args []string) []string {
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
func (c *check) standardInput(s *session) *report.Document {
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
