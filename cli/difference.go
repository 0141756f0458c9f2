package cli

import (
	"fmt"
	"strings"

	"github.com/rogpeppe/go-internal/diff"

	"wickrule/lint/report"
)

// showDifference prints what changes in a file, in the unified form that patch
// programs read: byte for byte, save on a terminal, which a file must not
// steer.
func (s *session) showDifference(name, before, after string) {
	text := string(diff.Diff(name, []byte(before), name, []byte(after)))
	_, text, _ = strings.Cut(text, "\n") // a first line of the library's own
	if !s.Terminal {
		fmt.Fprint(s.Out, text)
		return
	}
	for line := range strings.Lines(text) {
		fmt.Fprintln(s.Out, report.Clean(strings.TrimRight(line, "\r\n")))
	}
}
