package report

import (
	"cmp"
	"slices"
	"strings"

	"wickrule/lint"
)

// Repairs writes a list of fixes made, or not made, under a heading: by file,
// what was done, where, and why not.
func (p *Page) Repairs(heading, root string, list []lint.Repair) {
	if len(list) == 0 {
		return
	}
	p.Heading(heading)
	list = slices.Clone(list)
	slices.SortStableFunc(list, func(a, b lint.Repair) int {
		return cmp.Or(strings.Compare(a.At.File.Name, b.At.File.Name), cmp.Compare(a.At.Span.Start, b.At.Span.Start))
	})
	file := ""
	for _, r := range list {
		if r.At.File.Name != file {
			file = r.At.File.Name
			p.Blank()
			p.Wrap("", 2, Located(root, file))
		}
		p.Wrap("", 4, r.Title)
		p.place(r.At, file, r.Rule.Name)
		if r.Why != "" {
			p.Wrap("", margin, "not made: "+r.Why)
		}
	}
	p.Blank()
}
