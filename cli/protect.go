package cli

import (
	"embed"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"wickrule/lint/report"
	"wickrule/schema"
)

func protectVerb() verb {
	return verb{
		name:  "protect",
		takes: "[hook|github|gitlab|make]",
		about: "have recipes checked before every commit, and in CI",
		help: `Writes a ready set-up into the git repository around the working folder. Without a word it lists them, and which of them are there. A file that is there already is never touched: add to it what the set-up does.

hook checks what is staged before each commit, and stops a commit with something that must be put right. github and gitlab are CI files for these two hosts: every push and every proposed change is checked, and stopped by what should be put right too, unless a concession says why not. Say in them where the archive of wickrule lies. make adds a Makefile whose target recipes checks the same.

Each comes down to one line, wickrule check --level should, which does its work in any other CI.`,
		offers: func(*session) []string { return setupWords() },
		setup: func(flags *pflag.FlagSet) action {
			show := flags.Bool("show", false, "print the set-up and write nothing")
			return func(s *session, args []string) int { return s.protect(*show, args) }
		},
	}
}

// setups are the files of the set-ups, as they are written.
//
//go:embed setups
var setups embed.FS

// setup is a file that has recipes checked where changes come in.
type setup struct {
	word  string
	about string
	text  string // its file in setups
	name  string // where it goes, below the top of the repository; of a hook, below the folder of hooks
	line  string // what does the work, for a file that is there already
	next  string // what is left to do once it is written
	mode  fs.FileMode
}

const checkLine = "wickrule check --level should"

func allSetups() []setup {
	const archive = "say in it where the archive of wickrule lies and what its SHA-256 is, and commit it"
	return []setup{
		{"hook", "before every commit here: nothing that is staged must be put right", "pre-commit", "pre-commit", "wickrule check --staged || exit 1", "from now on every commit here is checked; commits made elsewhere are not, which is what CI is for", 0o755},
		{"github", "every push and proposed change, by GitHub's CI", "github.yml", ".github/workflows/recipes.yml", checkLine, archive, 0o644},
		{"gitlab", "every push and proposed change, by GitLab's CI", "gitlab.yml", ".gitlab-ci.yml", checkLine, archive, 0o644},
		{"make", "make recipes: everything in order, or make stops", "Makefile", "Makefile", checkLine, "make recipes checks from now on", 0o644},
	}
}

func setupWords() []string {
	var words []string
	for _, u := range allSetups() {
		words = append(words, u.word)
	}
	return words
}

func findSetup(word string) (setup, bool) {
	for _, u := range allSetups() {
		if u.word == word {
			return u, true
		}
	}
	return setup{}, false
}

// content is the set-up's text. Every file named in the list above is built in.
func (u setup) content() string {
	text, err := setups.ReadFile("setups/" + u.text)
	if err != nil {
		panic(err)
	}
	return string(text)
}

func (s *session) protect(show bool, args []string) int {
	if len(args) > 1 {
		s.say("protect writes one set-up at a time: leave out %s", strings.Join(args[1:], " "))
		return NotWorked
	}
	if len(args) == 0 {
		fmt.Fprint(s.Out, s.setupsPage())
		return Good
	}
	u, ok := findSetup(args[0])
	if !ok {
		s.say("there is no set-up %q: %s", args[0], schema.NearestOrKnown(args[0], setupWords(), ""))
		return NotWorked
	}
	if show {
		fmt.Fprint(s.Out, u.content())
		return Good
	}
	if err := s.writeSetup(u, s.Folder); err != nil {
		s.say("protect: %v", err)
		return NotWorked
	}
	return Good
}

// setupsPage lists the set-ups and which of them are there.
func (s *session) setupsPage() string {
	p := report.NewPage(s.Look)
	p.Wrap("", 0, "Ready set-ups, each written by wickrule protect and its word:")
	p.Blank()
	for _, u := range allSetups() {
		p.Wrap("  "+u.word, 10, u.about)
		switch where, err := s.setupPlace(u, s.Folder); {
		case err != nil:
			p.Wrap("", 10, "cannot be written here: "+err.Error())
		case !where.free():
			p.Wrap("", 10, "there already: "+s.shown(s.locate(where.full())))
		}
	}
	p.Blank()
	p.Wrap("", 0, "Each comes down to one line: "+checkLine)
	return p.String()
}

// setupPlace is where a set-up goes: a folder, and a slash path below it.
type setupPlace struct{ folder, name string }

func (p setupPlace) full() string { return filepath.Join(p.folder, filepath.FromSlash(p.name)) }

func (p setupPlace) free() bool {
	_, err := os.Lstat(p.full())
	return missing(err)
}

// setupPlace finds where a set-up goes that is asked for in a folder. Where no
// repository is around it, CI files go into the folder itself: it may become
// the top of one.
func (s *session) setupPlace(u setup, folder string) (setupPlace, error) {
	if u.word == "hook" {
		hooks, err := s.git("", "-C", folder, "rev-parse", "--path-format=absolute", "--git-path", "hooks")
		if err != nil {
			return setupPlace{}, fmt.Errorf("a hook needs a git repository: %w", err)
		}
		return setupPlace{filepath.FromSlash(strings.TrimSuffix(hooks, "\n")), u.name}, nil
	}
	if top, err := s.git("", "-C", folder, "rev-parse", "--show-toplevel"); err == nil {
		folder = filepath.FromSlash(strings.TrimSuffix(top, "\n"))
	}
	return setupPlace{folder, u.name}, nil
}

// writeSetup writes a set-up and says what is left to do.
func (s *session) writeSetup(u setup, folder string) error {
	where, err := s.setupPlace(u, folder)
	if err != nil {
		return err
	}
	shown := s.shown(s.locate(where.full()))
	if held, err := os.ReadFile(where.full()); err == nil && string(held) == u.content() {
		fmt.Fprintf(s.Out, "%s is there already, as it is to be.\n", report.Clean(shown))
		return nil
	}
	if !where.free() {
		return fmt.Errorf("%s is there already and is left as it is. Add this line to it: %s. wickrule protect --show %s prints a whole one", shown, u.line, u.word)
	}
	if err := os.MkdirAll(where.folder, 0o777); err != nil {
		return fmt.Errorf("%s: not written: %w", shown, err)
	}
	root, err := os.OpenRoot(where.folder)
	if err != nil {
		return fmt.Errorf("%s: not written: %w", shown, err)
	}
	defer root.Close()
	if err := s.create(root, where.name, u.content(), u.mode); err != nil {
		return fmt.Errorf("%s: %w", shown, err)
	}
	fmt.Fprintf(s.Out, "%s is written: %s.\n", report.Clean(shown), u.next)
	return nil
}
