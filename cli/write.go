package cli

import (
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
)

var errStopped = errors.New("not written: stopped before it")

// rewrite puts a new text in the place of a file of the shop, whole or not at
// all: written beside it, brought to disk, and given its name. The file keeps
// its mode. It is left alone when it is not what was read any more.
func (s *session) rewrite(root *os.Root, name, was, text string) error {
	s.writing.Lock()
	defer s.writing.Unlock()
	if s.ctx.Err() != nil {
		return errStopped
	}
	info, err := root.Lstat(name)
	if err != nil {
		return fmt.Errorf("not written: %w", err)
	}
	if info.Mode()&fs.ModeSymlink != 0 {
		return errors.New("not written: it is a link. Name the file it leads to")
	}
	beside := path.Join(path.Dir(name), ".wickrule-"+rand.Text())
	if err := writeNew(root, beside, text, info.Mode().Perm()); err != nil {
		root.Remove(beside)
		return fmt.Errorf("not written: %w", err)
	}
	if now, err := root.ReadFile(name); err != nil || string(now) != was {
		root.Remove(beside)
		return errors.New("not written: it changed on disk meanwhile. Run wickrule again")
	}
	if err := root.Rename(beside, name); err != nil {
		root.Remove(beside)
		return fmt.Errorf("not written: %w", err)
	}
	// Bring the new name to disk too. Not every system can; the text is safe.
	if folder, err := root.Open(path.Dir(name)); err == nil {
		folder.Sync()
		folder.Close()
	}
	return nil
}

// create writes a file that is not there yet, and the folders above it, whole
// or not at all. What has its name is left alone.
func (s *session) create(root *os.Root, name, text string, mode fs.FileMode) error {
	s.writing.Lock()
	defer s.writing.Unlock()
	if s.ctx.Err() != nil {
		return errStopped
	}
	return createFile(root, name, text, mode)
}

// createFile is create for one who has the word to write.
func createFile(root *os.Root, name, text string, mode fs.FileMode) error {
	if err := root.MkdirAll(path.Dir(name), 0o777); err != nil {
		return fmt.Errorf("not written: %w", cause(err))
	}
	beside := path.Join(path.Dir(name), ".wickrule-"+rand.Text())
	defer root.Remove(beside)
	if err := writeNew(root, beside, text, mode); err != nil {
		return fmt.Errorf("not written: %w", cause(err))
	}
	if _, err := root.Lstat(name); !missing(err) {
		return errors.New("not written: something of this name is there already")
	}
	if err := root.Rename(beside, name); err != nil {
		return fmt.Errorf("not written: %w", cause(err))
	}
	return nil
}

// cause is an error without the path it is about, which is known.
func cause(err error) error {
	var inPath *fs.PathError
	if errors.As(err, &inPath) {
		return inPath.Err
	}
	return err
}

func writeNew(root *os.Root, name, text string, mode fs.FileMode) error {
	f, err := root.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	_, err = f.WriteString(text)
	if err == nil {
		err = f.Chmod(mode)
	}
	if err == nil {
		err = f.Sync()
	}
	return errors.Join(err, f.Close())
}
