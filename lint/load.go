package lint

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"wickrule/schema"
)

// Load reads the shop that fsys is rooted in, so that nothing outside it can
// be reached, on all processors. Root is the folder as the user knows it.
// Files that cannot be opened are among the errors, sorted by name; the others
// are read. Progress, where it is not nil, is told how many files are done.
func Load(fsys fs.FS, root string, progress func(done, total int)) (*Shop, []ReadError) {
	names, errs := FileNames(fsys)
	files := make([]*schema.File, len(names))
	fails := make([]error, len(names))
	finished := make(chan struct{}, 64)
	var next atomic.Int64
	var wg sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), max(1, len(names))) {
		wg.Go(func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= len(names) {
					return
				}
				files[i], fails[i] = ReadFile(fsys, names[i])
				finished <- struct{}{}
			}
		})
	}
	for done := range names {
		<-finished
		if progress != nil {
			progress(done+1, len(names))
		}
	}
	wg.Wait()

	read := files[:0]
	for i, f := range files {
		if fails[i] != nil {
			errs = append(errs, ReadError{names[i], fails[i]})
			continue
		}
		read = append(read, f)
	}
	slices.SortFunc(errs, func(a, b ReadError) int { return strings.Compare(a.Name, b.Name) })
	return NewShop(root, read), errs
}

// FileNames lists the files of the shop: of the whole tree where a shop file
// stands in its root, without hidden folders and the shops nested in it; else
// of the root folder alone.
func FileNames(fsys fs.FS) (names []string, errs []ReadError) {
	deep := hasShopFile(fsys, ".")
	var list func(folder string)
	list = func(folder string) {
		entries, err := fs.ReadDir(fsys, folder)
		if err != nil {
			errs = append(errs, ReadError{folder, plain(err)})
			return
		}
		for _, e := range entries {
			name := path.Join(folder, e.Name())
			switch {
			case !e.IsDir() && strings.HasSuffix(e.Name(), FileSuffix):
				names = append(names, name)
			case e.IsDir() && deep && !hidden(e.Name()) && !hasShopFile(fsys, name):
				list(name)
			}
		}
	}
	list(".")
	return names, errs
}

// ReadFile reads one file of the shop. A fault of the reader spoils this file
// only.
func ReadFile(fsys fs.FS, name string) (*schema.File, error) { return readAs(fsys, name, name) }

// readAs is ReadFile for a file that the shop knows by another name.
func readAs(fsys fs.FS, name, known string) (f *schema.File, err error) {
	defer func() {
		if reason := recover(); reason != nil {
			err = fmt.Errorf("reading it met a fault in wickrule itself: %v", reason)
		}
	}()
	// Looked at before it is opened: opening a pipe would wait for a writer.
	info, err := fs.Stat(fsys, name)
	if err != nil {
		return nil, unreadable(fsys, name, err)
	}
	if !info.Mode().IsRegular() {
		return nil, errors.New("this is not an ordinary file")
	}
	src, err := fs.ReadFile(fsys, name)
	if err != nil {
		return nil, unreadable(fsys, name, err)
	}
	f = schema.Read(known, src)
	return f, nil
}

func unreadable(fsys fs.FS, name string, err error) error {
	if info, lerr := fs.Lstat(fsys, name); lerr == nil && info.Mode()&fs.ModeSymlink != 0 {
		return errors.New("this is a link that leads nowhere or out of the shop; links are not followed out of it")
	}
	return plain(err)
}
