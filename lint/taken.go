package lint

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"

	"wickrule/schema"
)

// A shop may take rules, and the trials they rest on, from folders beside it:
// its shop file names them in rules_from. The files of such a folder become
// files of the shop, named from its root on ("../house-rules/putty.candle.hcl").
// They hold rules and trials only, so that no recipe and no stock gets into a
// shop by the back door, and they lie in the same repository, so that a check
// gives the same wherever the repository is.

// Open opens a folder of the disk, by its slash path, with no way out of it.
type Open func(folder string) (fs.FS, io.Closer, error)

// Taken is a folder that a shop takes rules from.
type Taken struct {
	Folder  string // as the shop file says
	Path    string // on the disk; "" where the name leads nowhere
	Problem string // what is wrong with it; "" for nothing
}

// RuleFolders lists the folders that the shop file names.
func (s *Shop) RuleFolders() []schema.Item {
	if s.Config == nil {
		return nil
	}
	return s.Config.Get("rules_from").Items()
}

// Taken lists the folders that the shop takes rules from, in the order of the
// shop file. Nil: nobody has looked for them.
func (s *Shop) Taken() []Taken { return s.taken }

// Beside is what a shop can take rules from.
type Beside struct {
	Disk       fs.FS
	Root       string // of the shop, on the disk
	Repository string // that the shop lies in, on the disk; "" for none
	Open       Open
}

// Take is the shop with the rules of the folders that it names, in the place of
// those it took before. Files that cannot be opened are among the errors.
func (s *Shop) Take(from Beside) (*Shop, []ReadError) {
	taken, files, errs := s.look(from)
	next := s
	if put, out := s.turnover(files); len(put)+len(out) > 0 {
		next = s.Edit(put, out)
	}
	return next.withTaken(taken), errs
}

// turnover is which of the files taken now are new to the shop or differ from
// those it took before, and the names of those that are taken no more.
func (s *Shop) turnover(files []*schema.File) (put []*schema.File, out []string) {
	for _, f := range files {
		if now := s.File(f.Name); now == nil || now.Text.String() != f.Text.String() {
			put = append(put, f)
		}
	}
	for _, f := range s.Files() {
		if IsTaken(f.Name) && !slices.ContainsFunc(files, func(now *schema.File) bool { return now.Name == f.Name }) {
			out = append(out, f.Name)
		}
	}
	return put, out
}

func (s *Shop) withTaken(taken []Taken) *Shop {
	next := *s
	next.taken = taken
	return &next
}

// IsTaken says whether a file of a shop was taken from a folder beside it.
func IsTaken(name string) bool { return strings.HasPrefix(name, "../") }

func (s *Shop) look(from Beside) (taken []Taken, files []*schema.File, errs []ReadError) {
	taken = []Taken{}
	named := map[string]bool{}
	for _, item := range s.RuleFolders() {
		t := Taken{Folder: item.Text}
		t.Path, t.Problem = from.placeOf(item.Text)
		if t.Problem == "" && named[t.Path] {
			t.Problem = "it stands here twice"
		}
		if t.Problem == "" {
			named[t.Path] = true
			var found []*schema.File
			var fails []ReadError
			found, fails, t.Problem = from.readRules(t.Path)
			files, errs = append(files, found...), append(errs, fails...)
		}
		taken = append(taken, t)
	}
	return taken, files, errs
}

// FolderForm is what is wrong with the way a folder of rules is written; "" for
// nothing.
func FolderForm(folder string) (problem string) {
	switch {
	case folder == "":
		return "write the folder from the shop file on, such as \"../house-rules\""
	case strings.Contains(folder, `\`):
		return "write the folder with /, which every computer reads: \"" + strings.ReplaceAll(folder, `\`, "/") + "\""
	case strings.HasPrefix(folder, "/") || strings.Contains(folder, ":"):
		return "write the folder from the shop file on, such as \"../house-rules\": this one lies elsewhere on every computer"
	}
	return ""
}

// placeOf is where on the disk a folder lies that a shop file names, or what is
// wrong with the name.
func (from Beside) placeOf(folder string) (place, problem string) {
	root, repository := from.Root, from.Repository
	if problem = FolderForm(folder); problem != "" {
		return "", problem
	}
	place = path.Join(root, folder)
	switch {
	case Below(root, place) != place || place == root || root == ".":
		return "", "it lies in the shop, of which every file is read anyway: take it out of rules_from"
	case repository == "":
		return "", "rules are taken from within the repository that the shop lies in, and it lies in none: begin one with git init"
	case place == ".." || strings.HasPrefix(place, "../") || repository != "." && Below(repository, place) == place:
		return "", "it lies outside of the repository " + path.Base("/"+repository) + ", and would be missing wherever the repository is copied to"
	}
	info, err := fs.Stat(from.Disk, place)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return place, "there is no such folder"
	case err != nil:
		return place, fmt.Sprintf("it cannot be opened: %v", plain(err))
	case !info.IsDir():
		return place, "it is a file: name the folder that it lies in"
	}
	return place, ""
}

// Repository is the nearest folder at or above that git keeps its records in; ""
// for none.
func Repository(disk fs.FS, folder string) string {
	for {
		if _, err := fs.Stat(disk, path.Join(folder, ".git")); err == nil {
			return folder
		}
		if folder == "." || !fs.ValidPath(folder) {
			return ""
		}
		folder = path.Dir(folder)
	}
}

// readRules reads the files of rules in a folder and below it.
func (from Beside) readRules(folder string) (files []*schema.File, errs []ReadError, problem string) {
	root, repository := from.Root, from.Repository
	within, closer, err := from.Open(repository)
	if err != nil {
		return nil, nil, fmt.Sprintf("it cannot be opened: %v", plain(err))
	}
	defer closer.Close()
	inside := Below(repository, folder)
	if repository == "." {
		inside = folder
	}
	var mixed []string
	for _, name := range ruleFileNames(within, inside) {
		here := FromRoot(root, path.Join(repository, name))
		f, err := readAs(within, name, here)
		if err != nil {
			errs = append(errs, ReadError{here, err})
			continue
		}
		switch rules, others := holdsRules(f); {
		case others && rules:
			mixed = append(mixed, here)
		case rules:
			files = append(files, f)
		}
	}
	switch {
	case len(mixed) > 0:
		problem = strings.Join(mixed, ", ") + " holds other things beside rules and trials, and is left out: give the rules files of their own"
	case len(files) == 0:
		problem = "there is no rule in it"
	}
	return files, errs, problem
}

// ruleFileNames lists the files of the house format in a folder and below it,
// but for hidden folders.
func ruleFileNames(fsys fs.FS, folder string) (names []string) {
	fs.WalkDir(fsys, folder, func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return nil
		case d.IsDir() && name != folder && hidden(d.Name()):
			return fs.SkipDir
		case !d.IsDir() && strings.HasSuffix(name, FileSuffix) && d.Name() != ShopFileName:
			names = append(names, name)
		}
		return nil
	})
	slices.Sort(names)
	return names
}

// holdsRules says whether a file holds rules or trials, and whether it holds
// anything else.
func holdsRules(f *schema.File) (rules, others bool) {
	for _, b := range f.Blocks {
		if b.Is("rule") || b.Is("trial") {
			rules = true
		} else {
			others = true
		}
	}
	return rules, others
}

// FromRoot is a path on the disk as it is named from a shop's root on.
func FromRoot(root, name string) string {
	if root == "." {
		return name
	}
	up := ""
	for root != "." && Below(root, name) == name {
		up += "../"
		root = path.Dir(root)
	}
	if root != "." {
		name = Below(root, name)
	}
	return up + name
}

// Taken lists the folders that the shop takes rules from.
func (v *View) Taken() []Taken { return v.shop.taken }

// Take takes the rules of the folders anew that the shop names.
func (l *Live) Take(from Beside) []ReadError {
	taken, files, errs := l.shop.look(from)
	if put, out := l.shop.turnover(files); len(put)+len(out) > 0 {
		l.Edit(put, out)
	}
	if !slices.Equal(l.shop.taken, taken) {
		l.shop = l.shop.withTaken(taken)
		if l.shop.Config != nil {
			for _, u := range l.files[l.shop.Config.File.Name].units {
				l.mark(u)
			}
		}
	}
	return errs
}
