package cli

import (
	"crypto/rand"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"github.com/spf13/pflag"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/schema"
)

func newVerb() verb {
	return verb{
		name:  "new",
		takes: "FOLDER",
		about: "begin a shop: a small stock, one recipe, what to do with them, and a CI file",
		help: `Writes a starter shop into FOLDER, which is made, or holds nothing but what is hidden (a git repository, for instance). Nothing is ever overwritten, and on trouble nothing is left behind. The stock is invented: put your own suppliers' figures in its place before you melt anything.

The CI file has every change checked that is pushed, once it says where the archive of wickrule lies; in a git repository it goes to the top, and one that is there already is left as it is. With --hook every commit here is checked too. Both are what wickrule protect writes.`,
		setup: func(flags *pflag.FlagSet) action {
			n := newShop{}
			n.title = flags.String("title", "", "what the shop is called, in `WORDS`; without it, as the folder is")
			n.market = oneOf(flags, "market", "where candles are sold: it decides the units and what a label says", "US", "EU", "UK")
			n.hook = flags.Bool("hook", false, "check what is staged before every commit (needs a git repository)")
			n.ci = oneOf(flags, "ci", "have every push checked by this host's CI", "github", "gitlab", "none")
			return n.run
		},
	}
}

type newShop struct {
	title  *string
	market *choice
	hook   *bool
	ci     *choice
}

func (n newShop) run(s *session, args []string) int {
	if len(args) != 1 {
		s.say("new needs one folder, which it makes: wickrule new my-candles")
		return NotWorked
	}
	folder := s.locate(args[0]).full()
	setups := n.setups()
	if err := n.ready(s, folder, setups); err != nil {
		s.say("new: %v", err)
		return NotWorked
	}
	files, err := n.files(filepath.Base(folder))
	if err != nil {
		s.say("new: %v", err)
		return NotWorked
	}
	if err := s.fill(folder, files); err != nil {
		s.say("new: %s: %v", s.shown(s.locate(folder)), err)
		return NotWorked
	}
	s.tellNew(folder, files)
	status := Good
	for _, u := range setups {
		if err := s.writeSetup(u, folder); err != nil {
			s.say("new: the shop is there, and not checked by this yet: %v", err)
			status = NotWorked
		}
	}
	return status
}

// setups are the set-ups asked for.
func (n newShop) setups() []setup {
	var asked []setup
	for _, u := range allSetups() {
		if u.word == n.ci.word || u.word == "hook" && *n.hook {
			asked = append(asked, u)
		}
	}
	return asked
}

// ready says what stands in the way before anything is written.
func (n newShop) ready(s *session, folder string, setups []setup) error {
	shown := s.shown(s.locate(folder))
	there := folder // or the nearest folder above it that is there
	for {
		if _, err := os.Stat(there); !missing(err) {
			break
		}
		there = filepath.Dir(there)
	}
	if there == folder {
		entries, err := os.ReadDir(folder)
		if err != nil {
			return fmt.Errorf("%s: this is not a folder that can be read", shown)
		}
		for _, e := range entries {
			if e.Name()[0] != '.' {
				return fmt.Errorf("%s holds something already (%s): name a folder that is not there yet, or an empty one", shown, e.Name())
			}
		}
	}
	for _, u := range setups {
		where, err := s.setupPlace(u, there)
		if err != nil {
			return fmt.Errorf("%w. Make one with git init %s, or leave out --%s", err, shown, u.word)
		}
		if u.word == "hook" && !where.free() {
			return fmt.Errorf("a hook is there already: %s. Leave out --hook, and add this line to it: %s", s.shown(s.locate(where.full())), u.line)
		}
	}
	return nil
}

// starterFile is a file of a new shop: its slash path and its text.
type starterFile struct{ name, text string }

// files are the starter shop's, in the name and for the market asked for.
func (n newShop) files(folder string) ([]starterFile, error) {
	units := "metric"
	if n.market.word == "US" {
		units = "us"
	}
	title := strings.TrimSpace(*n.title)
	if title == "" {
		title = schema.Capital(strings.Join(strings.FieldsFunc(folder, between), " "))
	}
	if title == "" {
		title = "My candle shop"
	}
	key := schema.AsKey(title)
	if key == "" {
		key = "my-shop"
	}
	put := strings.NewReplacer(`"my-shop"`, schema.Quote(key), `"My candle shop"`, schema.Quote(title), `["EU"]`, `["`+n.market.word+`"]`)
	starter := examples.Starter(units)
	files := []starterFile{{"README.md", strings.Replace(examples.StarterReadme, "My candle shop", report.Clean(title), 1)}}
	err := fs.WalkDir(starter, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(starter, name)
		files = append(files, starterFile{name, put.Replace(string(text))})
		return err
	})
	return files, err
}

// between says whether a sign stands between the words of a folder's name.
func between(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }

// fill writes files into a folder that is new or holds nothing of these
// names, all or none. They are written apart first: a new folder appears whole.
// Whoever stops the program meanwhile waits these few milliseconds.
func (s *session) fill(folder string, files []starterFile) error {
	s.writing.Lock()
	defer s.writing.Unlock()
	if s.ctx.Err() != nil {
		return errStopped
	}
	above := filepath.Dir(folder)
	if err := os.MkdirAll(above, 0o777); err != nil {
		return fmt.Errorf("not written: %w", cause(err))
	}
	apart := filepath.Join(above, ".wickrule-"+rand.Text())
	if err := os.Mkdir(apart, 0o777); err != nil {
		return fmt.Errorf("not written: %w", cause(err))
	}
	defer os.RemoveAll(apart)
	if err := createAll(apart, files); err != nil {
		return err
	}
	if _, err := os.Lstat(folder); missing(err) {
		return os.Rename(apart, folder)
	}
	return moveInto(folder, apart, files)
}

func createAll(folder string, files []starterFile) error {
	root, err := os.OpenRoot(folder)
	if err != nil {
		return fmt.Errorf("not written: %w", cause(err))
	}
	defer root.Close()
	for _, f := range files {
		if err := createFile(root, f.name, f.text, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// moveInto moves what lies apart into a folder that is there. The shop file
// goes last: until then the folder is no shop.
func moveInto(folder, apart string, files []starterFile) (err error) {
	var names, moved []string
	for _, f := range files {
		names = append(names, strings.SplitN(f.name, "/", 2)[0])
	}
	slices.SortFunc(names, func(a, b string) int {
		if a == lint.ShopFileName {
			return 1
		}
		if b == lint.ShopFileName {
			return -1
		}
		return strings.Compare(a, b)
	})
	defer func() {
		if err != nil {
			for _, name := range moved {
				os.RemoveAll(filepath.Join(folder, name))
			}
		}
	}()
	for _, name := range slices.Compact(names) {
		to := filepath.Join(folder, name)
		if _, err := os.Lstat(to); !missing(err) {
			return fmt.Errorf("not written: %s is there already", name)
		}
		if err := os.Rename(filepath.Join(apart, name), to); err != nil {
			return fmt.Errorf("not written: %w", cause(err))
		}
		moved = append(moved, name)
	}
	return nil
}

// tellNew says what was written and what to do with it.
func (s *session) tellNew(folder string, files []starterFile) {
	shown := s.shown(s.locate(folder))
	p := report.NewPage(s.Look)
	p.Line("A new shop: " + report.Clean(shown))
	p.Blank()
	for _, f := range files {
		p.Line("  " + report.Clean(path.Join(shown, f.name)))
	}
	p.Blank()
	p.Wrap("", 0, "Its stock is invented: put your own suppliers' figures in its place before you melt anything. Then, in this folder, wickrule check says whether the recipe can be made, and wickrule sheet first-jar what to weigh and do.")
	p.Blank()
	p.Wrap("", 0, report.Caution)
	fmt.Fprint(s.Out, p.String())
}
