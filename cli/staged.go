package cli

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/lint/report"
)

// staged checks what git would commit now: the shops in which something is
// staged, read from git's index and not from the disk. Nil: it was said why
// not. Nothing in it and nothing unread: nothing staged concerns a recipe.
func (s *session) staged(args []string) *report.Document {
	doc, err := s.checkStaged(args)
	if err != nil {
		s.say("what is staged cannot be checked: %v", err)
		return nil
	}
	s.sayNotStaged()
	return doc
}

func (s *session) checkStaged(args []string) (*report.Document, error) {
	here, named, err := s.inRepository(args)
	if err != nil {
		return nil, err
	}
	tree, changed, err := s.indexTree()
	if err != nil {
		return nil, err
	}
	doc := &report.Document{}
	if len(changed) == 0 {
		return doc, nil
	}
	files, err := s.recipeFiles(tree)
	if err != nil {
		return nil, err
	}
	fsys, astray, err := s.fileSystem(files)
	if err != nil {
		return nil, err
	}
	shown := func(name string) string { return shownBelow(here, name) }
	for _, name := range astray {
		doc.Unread = append(doc.Unread, report.Unread{ReadError: lint.ReadError{Name: shown(name), Err: errors.New("this is a link that leads to no staged recipe file")}})
	}
	touched := touchedBy(fsys, changed)
	if len(files) == len(astray) && len(args) == 0 {
		return doc, nil // all that was there is taken away
	}
	asked, errs := lint.Discover(fsys, named)
	for _, e := range errs {
		e.Name, e.Err = shown(e.Name), fmt.Errorf("as staged: %w", e.Err)
		doc.Unread = append(doc.Unread, report.Unread{ReadError: e})
	}
	doc.Shops, errs = s.checkTree(fsys, asked, shown, func(a lint.Asked, shop *lint.Shop) bool {
		return touched(a.Root) || slices.ContainsFunc(shop.Taken(), func(t lint.Taken) bool {
			return t.Path != "" && slices.ContainsFunc(changed, func(name string) bool { return strings.HasPrefix(name, t.Path+"/") })
		})
	})
	for _, e := range errs {
		doc.Unread = append(doc.Unread, report.Unread{ReadError: e})
	}
	return doc, nil
}

// checkTree checks the shops of a tree of git that keep accepts. Names are shown
// as they are typed in the working folder.
func (s *session) checkTree(fsys fs.FS, asked []lint.Asked, shown func(string) string, keep func(lint.Asked, *lint.Shop) bool) (list []*lint.Report, errs []lint.ReadError) {
	taken := takenFolders{}
	for _, last := range []bool{false, true} {
		for _, a := range asked {
			if _, shopFile := lint.ShopAbove(fsys, a.Root); last == shopFile || taken.holds(place{path: a.Root}) {
				continue
			}
			below, err := fs.Sub(fsys, a.Root)
			if err != nil {
				errs = append(errs, lint.ReadError{Name: shown(a.Root), Err: err})
				continue
			}
			shop, fails := lint.Load(below, shown(a.Root), s.progress.files)
			shop, more := shop.Take(lint.Beside{Disk: fsys, Root: a.Root, Repository: ".", Open: func(folder string) (fs.FS, io.Closer, error) {
				within, err := fs.Sub(fsys, folder)
				return within, io.NopCloser(nil), err
			}})
			taken.add("", shop.Taken())
			if keep(a, shop) {
				for _, e := range append(fails, more...) {
					errs = append(errs, lint.ReadError{Name: report.Located(shop.Root, e.Name), Err: e.Err})
				}
				list = append(list, lint.RunFor(shop, s.rulesFor(shop), s.today(), a.Covers))
			}
		}
	}
	slices.SortFunc(list, func(a, b *lint.Report) int { return strings.Compare(a.Shop.Root, b.Shop.Root) })
	sayTakenOnce(list)
	return list, errs
}

// touchedBy says of a shop's folder whether one of the changed files belongs
// to the shop. A shop file that comes or goes makes other shops of all the
// folders below it, and of the shop around it.
func touchedBy(fsys fs.FS, changed []string) func(root string) bool {
	homes := map[string]bool{}
	var founded []string
	for _, name := range changed {
		homes[lint.Home(fsys, name)] = true
		if path.Base(name) == lint.ShopFileName {
			folder := path.Dir(name)
			founded = append(founded, folder)
			homes[lint.Home(fsys, folder)] = true
		}
	}
	return func(root string) bool {
		return homes[root] || slices.ContainsFunc(founded, func(folder string) bool {
			return folder == "." || strings.HasPrefix(root, folder+"/")
		})
	}
}

// inRepository is the working folder as git's trees know it, and the named
// paths likewise; without any, the whole tree.
func (s *session) inRepository(args []string) (here string, named []string, err error) {
	prefix, err := s.git("", "rev-parse", "--show-prefix")
	if err != nil {
		return "", nil, err
	}
	here = path.Clean(strings.TrimSuffix(prefix, "\n"))
	for _, arg := range args {
		full := s.locate(arg).full()
		short, err := filepath.Rel(s.Folder, full)
		name := path.Join(here, filepath.ToSlash(short))
		if err != nil || !fs.ValidPath(name) {
			return "", nil, fmt.Errorf("%s does not lie in this repository", arg)
		}
		named = append(named, name)
	}
	if len(args) == 0 {
		named = []string{"."}
	}
	return here, named, nil
}

// indexTree is the tree that git would commit now, and the recipe files that
// differ in it from the last commit: new ones, changed ones and those taken
// away.
func (s *session) indexTree() (tree string, changed []string, err error) {
	tree, err = s.git("", "write-tree")
	if err != nil {
		if conflicts, cerr := s.git("", "ls-files", "--unmerged"); cerr == nil && conflicts != "" {
			err = errors.New("a merge has left conflicts: resolve them and stage the files")
		}
		return "", nil, err
	}
	tree = strings.TrimSpace(tree)
	before, err := s.git("", "rev-parse", "--verify", "--quiet", "HEAD^{tree}")
	if err != nil { // nothing was committed yet
		if before, err = s.git("", "hash-object", "-t", "tree", "--stdin"); err != nil {
			return "", nil, err
		}
	}
	list, err := s.git("", "diff-tree", "-r", "-z", "--no-renames", "--name-only", strings.TrimSpace(before), tree)
	if err != nil {
		return "", nil, err
	}
	for name := range strings.SplitSeq(list, "\x00") {
		if strings.HasSuffix(name, lint.FileSuffix) {
			changed = append(changed, name)
		}
	}
	return tree, changed, nil
}

// sayNotStaged names the recipe files whose text on disk is not what is
// staged: they are not what was checked. Where git cannot tell, nothing is
// said.
func (s *session) sayNotStaged() {
	list, err := s.git("", "--no-optional-locks", "status", "--porcelain", "-z", "--untracked-files=all", "--no-renames")
	if err != nil {
		return
	}
	prefix, _ := s.git("", "rev-parse", "--show-prefix")
	here := path.Clean(strings.TrimSuffix(prefix, "\n"))
	var names []string
	for entry := range strings.SplitSeq(list, "\x00") {
		if len(entry) < 4 || entry[1] == ' ' || !strings.HasSuffix(entry, lint.FileSuffix) {
			continue
		}
		names = append(names, shownBelow(here, entry[3:]))
	}
	if len(names) == 0 {
		return
	}
	slices.Sort(names)
	more := ""
	if n := len(names) - 5; n > 0 {
		names, more = names[:5], fmt.Sprintf(" and %d more", n)
	}
	s.say("checked as staged. What differs on disk was not looked at, and is not committed before git add: %s%s", strings.Join(names, ", "), more)
}

// shownBelow is a path of git's tree as it is typed in the folder here of it.
func shownBelow(here, name string) string {
	short, err := filepath.Rel(filepath.FromSlash(here), filepath.FromSlash(name))
	if err != nil {
		return name
	}
	return filepath.ToSlash(short)
}
