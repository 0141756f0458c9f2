package heat

import (
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

const group = "Heat"

// reached is the end of a written temperature that is spoken of: the whole of
// a single one, of a range the end with a word that it is one.
func reached(view *lint.View, end, whole quantity.Quantity) string {
	if !whole.IsRange() {
		return batch.Both(view, end)
	}
	return whole.String() + " reaches " + batch.Both(view, end) + ", which"
}

const limitHere = "limit stated here"

// silent says which sheet does not state a figure and what stands in for it:
// "Millrace soy states no pour_at, so this is what is usual for soy (common
// practice)".
func silent(s batch.Stated) string {
	return s.Wax.Title() + " states no " + s.Attr + ", so this is what is usual for " + s.Family + " (" + s.Source() + ")"
}

// whose is the wax of a figure, or the family that the figure is usual for.
func whose(s batch.Stated) string {
	if s.Family != "" {
		return s.Family
	}
	return s.Wax.Title()
}

// titles are the names of the waxes: "Northlight paraffin and Frostfield stearin".
func titles(waxes []waxLimits) string {
	names := make([]string, 0, len(waxes))
	for i := range waxes {
		if w := waxes[i].flash.Wax; w != nil {
			names = append(names, w.Title())
		}
	}
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
	return strings.Join(names, "")
}
