package lint

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
)

// ReadError is a file or folder that could not be read; the others went on.
type ReadError struct {
	Name string // slash path, as it was asked for
	Err  error
}

func (e ReadError) Error() string { return e.Name + ": " + e.Err.Error() }

func (e ReadError) Unwrap() error { return e.Err }

// Asked is a shop that was found, and what of it was asked for.
type Asked struct {
	Root string   // the shop's folder, a slash path in the file system searched
	Only []string // files and folders asked for, relative to Root; none: the whole shop
}

// Covers says whether a file of the shop, named relative to its root, is part
// of what was asked for.
func (a Asked) Covers(name string) bool {
	if len(a.Only) == 0 {
		return true
	}
	return slices.ContainsFunc(a.Only, func(only string) bool {
		return name == only || strings.HasPrefix(name, only+"/")
	})
}

// ErrNoRecipeFile says that a folder holds nothing to check.
var ErrNoRecipeFile = errors.New("there is no recipe file (*" + FileSuffix + ") in this folder or below it")

// Discover finds the shops that the named files and folders belong to, and
// those below a named folder, sorted by root. The nearest shop file at or
// above makes the shop; where there is none, each folder that holds recipe
// files is a shop of its own. Names are slash paths in fsys. A name with
// nothing to check is among the errors; the other names go on.
func Discover(fsys fs.FS, named []string) ([]Asked, []ReadError) {
	d := discovery{fsys: fsys, asked: map[string]*Asked{}}
	for _, name := range named {
		if err := d.look(name); err != nil {
			d.errs = append(d.errs, ReadError{name, err})
		}
	}
	shops := make([]Asked, 0, len(d.asked))
	for _, a := range d.asked {
		slices.Sort(a.Only)
		a.Only = slices.Compact(a.Only)
		if slices.Contains(a.Only, ".") {
			a.Only = nil
		}
		shops = append(shops, *a)
	}
	slices.SortFunc(shops, func(a, b Asked) int { return cmp.Compare(a.Root, b.Root) })
	return shops, d.errs
}

// Home is the folder of the shop that a file belongs to, whether or not the
// file is there yet.
func Home(fsys fs.FS, file string) string {
	if root, ok := ShopAbove(fsys, path.Dir(file)); ok {
		return root
	}
	return path.Dir(file)
}

// ShopAbove is the nearest folder at or above that holds a shop file. The
// search stops at a hidden folder: a shop leaves out what lies in one.
func ShopAbove(fsys fs.FS, folder string) (root string, ok bool) {
	for {
		if hasShopFile(fsys, folder) {
			return folder, true
		}
		if folder == "." || hidden(path.Base(folder)) {
			return "", false
		}
		folder = path.Dir(folder)
	}
}

func hasShopFile(fsys fs.FS, folder string) bool {
	info, err := fs.Stat(fsys, path.Join(folder, ShopFileName))
	return err == nil && !info.IsDir()
}

func hidden(base string) bool { return len(base) > 1 && base[0] == '.' }

type discovery struct {
	fsys  fs.FS
	asked map[string]*Asked // by root
	errs  []ReadError
}

func (d *discovery) ask(root, only string) {
	a := d.asked[root]
	if a == nil {
		a = &Asked{Root: root}
		d.asked[root] = a
	}
	a.Only = append(a.Only, only)
}

func (d *discovery) look(name string) error {
	info, err := fs.Stat(d.fsys, name)
	if err != nil {
		return plain(err)
	}
	if !info.IsDir() {
		if !strings.HasSuffix(name, FileSuffix) {
			return fmt.Errorf("this is not a recipe file: their names end in %s", FileSuffix)
		}
		root := Home(d.fsys, name)
		d.ask(root, Below(root, name))
		return nil
	}
	root, inShop := ShopAbove(d.fsys, name)
	if !d.walk(name, root, inShop) {
		return ErrNoRecipeFile
	}
	if inShop {
		d.ask(root, Below(root, name))
	}
	return nil
}

// walk looks for shops in a folder and below it, inside the shop at root or in
// none. It says whether there is anything to read.
func (d *discovery) walk(folder, root string, inShop bool) (any bool) {
	entries, err := fs.ReadDir(d.fsys, folder)
	if err != nil {
		if !inShop { // inside a shop, loading it says so
			d.errs = append(d.errs, ReadError{folder, plain(err)})
		}
		return true
	}
	holds := slices.ContainsFunc(entries, func(e fs.DirEntry) bool {
		return !e.IsDir() && strings.HasSuffix(e.Name(), FileSuffix)
	})
	switch {
	case folder != root && hasShopFile(d.fsys, folder):
		root, inShop = folder, true
		d.ask(folder, ".")
	case holds && !inShop:
		d.ask(folder, ".")
	}
	any = holds
	for _, e := range entries {
		if e.IsDir() && !hidden(e.Name()) {
			any = d.walk(path.Join(folder, e.Name()), root, inShop) || any
		}
	}
	return any
}

// Below is the name relative to the root that stands above it.
func Below(root, name string) string {
	if root == name {
		return "."
	}
	if root == "." {
		return name
	}
	return strings.TrimPrefix(name, root+"/")
}

// plain says in plain words why a file or folder could not be read.
func plain(err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return errors.New("there is nothing at this path")
	case errors.Is(err, fs.ErrPermission):
		return errors.New("it may not be read: its permissions do not let you")
	}
	var inPath *fs.PathError
	if errors.As(err, &inPath) {
		return inPath.Err
	}
	return err
}
