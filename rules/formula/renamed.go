package formula

import (
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// Renaming gives a stock item another key. It stays the item it was, so what
// was burned of it stays burned of it: the codes in the test burns, and what
// they keep, follow. A key changed by hand says nothing of the kind; then it is
// another item.
type Renaming struct{ Kind, From, To string }

// Follow is what the test burns of a recipe have to say instead, given the
// recipe before and after everything that names the item was changed. The edits
// are of the files before.
func (r Renaming) Follow(before, after *lint.View) []schema.Edit {
	codes := r.codes(before, after)
	var edits []schema.Edit
	for _, burn := range before.TestBurns() {
		formula := burn.Get("formula")
		code := formula.Text()
		if now := codes[code]; now != "" && now != code {
			edits = append(edits, schema.Edit{File: burn.File, Span: formula.Span(), Text: schema.Quote(now)})
		}
		kept := burn.Get("burned_as")
		list, ok := readLines(kept, code)
		if !ok {
			continue
		}
		lines := (&Print{Attributes: r.apply(before, list)}).Lines()
		for i, item := range kept.Items() {
			if item.Text != lines[i] {
				edits = append(edits, schema.Edit{File: burn.File, Span: item.Span, Text: schema.Quote(lines[i])})
			}
		}
	}
	return edits
}

// codes leads from each code in the recipe's burns of which it is known what it
// rests on to the one that it is now.
func (r Renaming) codes(before, after *lint.View) map[string]string {
	codes := map[string]string{}
	was, is := Of.In(before), Of.In(after)
	if was.Known() && is.Known() && len(was.Each) == len(is.Each) {
		codes[was.Code] = is.Code
		for i := range was.Each {
			codes[was.Each[i].Code] = is.Each[i].Code
		}
	}
	for _, burn := range before.TestBurns() {
		code := burn.Get("formula").Text()
		if list, ok := readLines(burn.Get("burned_as"), code); ok {
			codes[code] = codeOf(r.apply(before, list))
		}
	}
	return codes
}

const (
	beforePart   = ", part " // of a house blend: "wax house-pillar, part stearin"
	beforeVessel = ", on "   // of a topping: "within reach of the flame, on pillar-3x6"
)

// apply is what a list says with the item's new key, in the order in which it
// would be collected.
func (r Renaming) apply(view *lint.View, list []Attribute) []Attribute {
	list = slices.Clone(list)
	for i := range list {
		a := &list[i]
		word, key, _ := strings.Cut(a.Name, " ")
		key, part, ofBlend := strings.Cut(key, beforePart)
		if word == r.Kind && key == r.From {
			key = r.To
		}
		a.Name = word + " " + key
		if ofBlend {
			if part == r.From && r.isPart(view) {
				part = r.To
			}
			a.Name += beforePart + part
		}
		if what, vessel, named := strings.Cut(a.Value, beforeVessel); named && a.Part == Topping && kinds[r.Kind] == Vessel && vessel == r.From {
			a.Value = what + beforeVessel + r.To
		}
	}
	inOrder(list)
	return list
}

// isPart says whether a part of a blend of that key is the item: it may be a wax,
// or where no wax has the key an additive.
func (r Renaming) isPart(view *lint.View) bool {
	return r.Kind == "wax" || r.Kind == "additive" && view.Shop().Find("wax", r.From) == nil
}

// inOrder puts a list into the order in which the collector would have made it:
// ingredients and toppings by name, the parts of each blend by name behind the
// waxes; vessels and wicks stay as they stand in the recipe.
func inOrder(list []Attribute) {
	since := 0
	for i := 1; i <= len(list); i++ {
		if i < len(list) && group(&list[i]) == group(&list[since]) {
			continue
		}
		if part := list[since].Part; part != Vessel && part != Wick {
			slices.SortFunc(list[since:i], byName)
		}
		since = i
	}
}

// group is what is sorted together: the waxes, the parts of one blend, the
// fragrances, and so on.
func group(a *Attribute) string {
	if blend, _, ofBlend := strings.Cut(a.Name, beforePart); ofBlend {
		return blend
	}
	return a.Part.String()
}
