package report

import (
	"bufio"
	"fmt"
	"io"

	"wickrule/lint"
)

// Lines writes one finding a line, `path:line:column: message`, for editors
// and scripts. Lines and columns count from 1, columns in Unicode code points.
// Paths begin where the program was started: an editor opens what they name.
func Lines(w io.Writer, d *Document) error {
	out := bufio.NewWriter(w)
	for _, shop := range d.Shops {
		root := shop.Shop.Root
		for i := range shop.Findings {
			f := &shop.Findings[i]
			writeLine(out, root, f.At, fmt.Sprintf("%s (%s, %s)", f.Message, f.Level, f.Rule.Name))
		}
		for _, f := range d.standingIn(shop) {
			writeLine(out, root, f.At, fmt.Sprintf("%s (%s, %s; %s)", f.Message, f.Level, f.Rule.Name, f.Why))
		}
		for _, u := range shop.Unchecked {
			writeLine(out, root, u.At, fmt.Sprintf("%s (%s)", u.Message, u.Level))
		}
	}
	return out.Flush()
}

func writeLine(out *bufio.Writer, root string, at lint.Place, message string) {
	line, column := at.File.Text.Position(at.Span.Start)
	fmt.Fprintf(out, "%s:%d:%d: %s\n", Clean(Located(root, at.File.Name)), line, column, Clean(message))
}
