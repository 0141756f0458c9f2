package cli

import (
	"errors"
	"fmt"

	"github.com/spf13/pflag"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/schema"
)

func formatVerb() verb {
	return verb{
		name:  "format",
		takes: "[PATH...]",
		about: "lay files out in the usual way: indents, spaces, aligned values",
		help: `Only the layout changes, never a word. A file that does not read cleanly is left as it is: check says why.

The exit status is 0 where every file is in the usual layout afterwards, 1 where one is not (with --show: where one would change), and 2 where a file could not be read or written.`,
		setup: func(flags *pflag.FlagSet) action {
			f := format{}
			f.show = flags.Bool("show", false, "print the difference in the unified form and write nothing")
			return f.run
		},
	}
}

type format struct{ show *bool }

// formatted is what became of the files.
type formatted struct {
	files, changed, left int
	failed               bool
}

func (f format) run(s *session, args []string) int {
	s.progress.start()
	shops, unread := s.find(args)
	var done formatted
	for _, shop := range shops {
		o, more := s.open(shop)
		unread = append(unread, more...)
		if o.Shop == nil {
			continue
		}
		stopped := f.shop(s, o, &done)
		o.root.Close()
		if stopped {
			break
		}
	}
	s.progress.erase()
	s.sayUnread(unread)
	if !*f.show {
		fmt.Fprintf(s.Out, "%s, %d laid out anew, %d left as they are.\n", plural(done.files, "file", "files"), done.changed, done.left)
	}
	switch {
	case done.failed || len(unread) > 0:
		return NotWorked
	case done.left > 0, *f.show && done.changed > 0:
		return Found
	}
	return Good
}

// shop lays out the files of one shop that were asked for. True: stopped
// before the end.
func (f format) shop(s *session, o opened, done *formatted) (stopped bool) {
	for _, file := range o.Files() {
		if !o.asked.Covers(file.Name) || lint.IsTaken(file.Name) {
			continue
		}
		done.files++
		name := report.Located(o.Root, file.Name)
		before := file.Text.String()
		edits, err := schema.Format(file)
		after := before
		if err == nil && len(edits) > 0 {
			after, err = schema.Apply(before, edits)
		}
		if err != nil {
			s.say("%s: left as it is: %v", name, err)
			done.left++
			continue
		}
		if after == before {
			continue
		}
		done.changed++
		if *f.show {
			s.showDifference(name, before, after)
			continue
		}
		if err := s.rewrite(o.root, file.Name, before, after); err != nil {
			s.say("%s: %v", name, err)
			done.failed = true
			if errors.Is(err, errStopped) {
				return true
			}
			continue
		}
		fmt.Fprintf(s.Out, "%s\n", report.Clean(name))
	}
	return false
}
