package drill

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// Hint is one step of the help with a slip.
type Hint struct{ Label, Text string }

// HintWords name the steps of help in their order: what it is about, where it
// is, why it matters, how to put it right.
var HintWords = []string{"group", "line", "why", "fix"}

// Hints are the steps of help with a slip, by what is found of it.
func Hints(f *lint.Found) []Hint {
	line := f.At.File.Text.Line(f.At.Span.Start)
	typed := strings.TrimSpace(f.At.File.Text.Slice(f.At.File.Text.LineSpan(line)))
	fix := schema.Capital(f.Message) + ". " + schema.Capital(strings.TrimSpace(f.Rule.Remedy))
	if fixes := f.Repairs(); len(fixes) > 0 {
		fix += " For instance: " + fixes[0].Title + "."
	}
	return []Hint{
		{"It is about", f.Rule.Group},
		{"Look at", fmt.Sprintf("line %d: %s", line, typed)},
		{"Why", strings.TrimSpace(f.Rule.Why)},
		{"To mend it", fix},
	}
}
