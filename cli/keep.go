package cli

import (
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// keep writes a file of the user's own, whole or not at all, in the place of
// what was there.
func (s *session) keep(name string, data []byte) error {
	s.writing.Lock()
	defer s.writing.Unlock()
	if s.ctx.Err() != nil {
		return errStopped
	}
	if real, err := filepath.EvalSymlinks(name); err == nil {
		name = real // what a link leads to is what is kept
	}
	folder := filepath.Dir(name)
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return fmt.Errorf("not written: %w", err)
	}
	root, err := os.OpenRoot(folder)
	if err != nil {
		return fmt.Errorf("not written: %w", err)
	}
	defer root.Close()
	beside := ".wickrule-" + rand.Text()
	err = writeNew(root, beside, string(data), 0o644)
	if err == nil {
		err = root.Rename(beside, filepath.Base(name))
	}
	if err != nil {
		root.Remove(beside)
		return fmt.Errorf("not written: %w", err)
	}
	return nil
}

// newFolder makes a folder with these files, by name with "/", whole or not at
// all. One that holds anything is left alone.
func (s *session) newFolder(folder string, files map[string]string) error {
	s.writing.Lock()
	defer s.writing.Unlock()
	if s.ctx.Err() != nil {
		return errStopped
	}
	there, err := os.ReadDir(folder)
	switch {
	case err == nil && len(there) > 0:
		return errors.New("there is something in it already: name a new folder")
	case err != nil && !errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("cannot be used: %w", err)
	}
	above := filepath.Dir(folder)
	if err := os.MkdirAll(above, 0o755); err != nil {
		return fmt.Errorf("not made: %w", err)
	}
	beside := filepath.Join(above, ".wickrule-"+rand.Text())
	defer os.RemoveAll(beside) // nothing is there where it was given its name
	if err := fill(beside, files); err != nil {
		return fmt.Errorf("not made: %w", err)
	}
	if err := os.Remove(folder); err != nil && !errors.Is(err, fs.ErrNotExist) { // it is empty
		return fmt.Errorf("not made: %w", err)
	}
	if err := os.Rename(beside, folder); err != nil {
		return fmt.Errorf("not made: %w", err)
	}
	return nil
}

// fill writes files into a folder of ours.
func fill(folder string, files map[string]string) error {
	if err := os.Mkdir(folder, 0o755); err != nil {
		return err
	}
	root, err := os.OpenRoot(folder)
	if err != nil {
		return err
	}
	defer root.Close()
	var names []string
	for name := range files {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		local := filepath.FromSlash(name)
		if err := root.MkdirAll(filepath.Dir(local), 0o755); err != nil {
			return err
		}
		if err := writeNew(root, local, files[name], 0o644); err != nil {
			return err
		}
	}
	return nil
}
