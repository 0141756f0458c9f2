package cli

import (
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"wickrule/rules/handbook"
)

// madeFile stands in each folder of pages that was made here, and lists what
// was: such a folder, and no other, is made anew.
const madeFile = "made-by-wickrule.txt"

const madeHead = "These pages were made by wickrule handbook. When they are made again, this whole folder is replaced."

// writePages makes a folder of pages, whole or not at all: they are written
// into a new folder beside it, which then takes its place. They are not
// brought to disk one by one as recipes are: they can be made again.
func (s *session) writePages(into string, files []handbook.File) error {
	full := s.locate(into).full()
	name := filepath.Base(full)
	above, err := os.OpenRoot(filepath.Dir(full))
	if err != nil {
		return fmt.Errorf("there is no folder to put %s in", into)
	}
	defer above.Close()

	s.writing.Lock()
	defer s.writing.Unlock()
	if s.ctx.Err() != nil {
		return errStopped
	}
	there, err := replaceable(above, name)
	if err != nil {
		return fmt.Errorf("%s %w", into, err)
	}
	fresh := ".wickrule-" + rand.Text()
	if err := fillFolder(above, fresh, files); err != nil {
		return errors.Join(err, above.RemoveAll(fresh))
	}
	if !there {
		if err := above.Rename(fresh, name); err != nil {
			return errors.Join(err, above.RemoveAll(fresh))
		}
		return nil
	}
	old := fresh + "-old"
	if err := above.Rename(name, old); err != nil {
		return errors.Join(err, above.RemoveAll(fresh))
	}
	if err := above.Rename(fresh, name); err != nil {
		return errors.Join(err, above.Rename(old, name), above.RemoveAll(fresh))
	}
	return above.RemoveAll(old)
}

// replaceable says whether there is a folder of that name, and that it may be
// replaced: it is empty, or holds nothing but what was made here. The error
// ends a sentence about the folder.
func replaceable(above *os.Root, name string) (there bool, err error) {
	info, err := above.Lstat(name)
	switch {
	case missing(err):
		return false, nil
	case err != nil:
		return false, err
	case info.Mode()&fs.ModeSymlink != 0:
		return false, errors.New("is a link: name the folder it leads to")
	case !info.IsDir():
		return false, errors.New("is a file, not a folder")
	}
	entries, err := fs.ReadDir(above.FS(), name)
	if err != nil || len(entries) == 0 {
		return true, err
	}
	list, err := above.ReadFile(path.Join(name, madeFile))
	head, made, _ := strings.Cut(strings.ReplaceAll(string(list), "\r\n", "\n"), "\n")
	if err != nil || head != madeHead {
		return false, errors.New("was not made by this verb, and is left as it is: name another folder, or an empty one")
	}
	names := strings.Fields(made)
	for _, e := range entries {
		if e.Name() != madeFile && !slices.Contains(names, e.Name()) || !e.Type().IsRegular() {
			return false, fmt.Errorf("holds %q, which was not made with the pages, and is left as it is: move that elsewhere first", e.Name())
		}
	}
	return true, nil
}

// fillFolder writes files into a new folder, and the list of them.
func fillFolder(above *os.Root, folder string, files []handbook.File) error {
	if err := above.Mkdir(folder, 0o755); err != nil {
		return err
	}
	list := madeHead + "\n\n"
	for _, f := range files {
		if err := above.WriteFile(path.Join(folder, f.Name), f.Bytes, 0o644); err != nil {
			return err
		}
		list += f.Name + "\n"
	}
	return above.WriteFile(path.Join(folder, madeFile), []byte(list), 0o644)
}
