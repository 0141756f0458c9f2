package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"wickrule/rules/drill"
)

// diary is a learner's progress and the file it is kept in.
type diary struct {
	name string // "" nowhere
	*drill.Progress
}

// openDiary reads a learner's file. It is an error where there is one that
// cannot be read: it is then left as it is.
func openDiary(name string) (*diary, error) {
	d := &diary{name, &drill.Progress{}}
	if name == "" {
		return d, nil
	}
	data, err := os.ReadFile(name)
	if errors.Is(err, fs.ErrNotExist) {
		return d, nil
	}
	if err == nil {
		d.Progress, err = drill.ReadProgress(data)
	}
	if err != nil {
		return nil, fmt.Errorf("the progress in %s cannot be read: %w. It is left as it is: name another with --progress, or move it away", name, err)
	}
	return d, nil
}

// put keeps a record. What others wrote meanwhile stays.
func (d *diary) put(s *session, r drill.Record) error {
	now, err := openDiary(d.name)
	if err != nil {
		return err
	}
	if d.name != "" {
		d.Progress = now.Progress
	}
	d.Put(r)
	if d.name == "" {
		return nil
	}
	if err := s.keep(d.name, d.Bytes()); err != nil {
		return fmt.Errorf("%s: %w", d.name, err)
	}
	return nil
}

// diaryFile is where progress is kept: as asked for, else in the folder for
// the user's own settings; "" where there is none.
func (v drillCommand) diaryFile(s *session) string {
	switch {
	case *v.progress != "":
		return s.locate(*v.progress).full()
	case s.Own != "":
		return filepath.Join(s.Own, "drill-progress.json")
	}
	return ""
}
