package formula

import (
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// A code says that something changed and, by its letters, in which part; what
// it was before cannot be read out of it. So the first burn of a formulation
// keeps in burned_as what its code rests on, an attribute a line: "fragrance
// tide-and-thyme: 5 % of wax". The list proves itself, since the code worked out
// from it is the burn's own: where it is not, somebody changed it by hand, and
// nothing is told from it.

const betweenNameAndValue = ": "

// Lines is what a code rests on as a test burn keeps it.
func (p *Print) Lines() []string {
	lines := make([]string, len(p.Attributes))
	for i := range p.Attributes {
		lines[i] = p.Attributes[i].Name + betweenNameAndValue + p.Attributes[i].Value
	}
	return lines
}

// kinds are the words that the names of attributes begin with.
var kinds = map[string]Part{
	"wax": Wax, "fragrance": Fragrance, "additive": Additive, "dye": Dye, "topping": Topping,
	"mold": Vessel, "container": Vessel, "taper": Vessel, "wick": Wick,
}

// readLines reads what a test burn keeps; false where a line is no attribute,
// or they are not what the code rests on.
func readLines(said schema.Value, code string) ([]Attribute, bool) {
	var list []Attribute
	for _, item := range said.Items() {
		name, value, found := strings.Cut(item.Text, betweenNameAndValue)
		kind, _, _ := strings.Cut(name, " ")
		part, known := kinds[kind]
		if !found || !known {
			return nil, false
		}
		list = append(list, Attribute{part, name, value})
	}
	return list, len(list) > 0 && codeOf(list) == code
}

// Kept is what a code rested on, from the first of the recipe's burns that
// keeps it.
func Kept(view *lint.View, code string) ([]Attribute, bool) {
	for _, burn := range view.TestBurns() {
		if burn.Get("formula").Text() != code {
			continue
		}
		if list, ok := readLines(burn.Get("burned_as"), code); ok {
			return list, true
		}
	}
	return nil, false
}

// ToKeep is what a burn recorded now has to keep: nothing where a burn of the
// same formulation keeps it already.
func ToKeep(view *lint.View, vessel int) []string {
	f := Of.In(view)
	now := f.of(vessel)
	if _, kept := Kept(view, now.Code); kept || now.Code == "" {
		return nil
	}
	return now.Lines()
}

// of is the print of one vessel, by its index; where the recipe has none, its
// own.
func (f *Formulation) of(vessel int) *Print {
	if vessel < len(f.Each) {
		return &f.Each[vessel]
	}
	return &f.Print
}

// Change is one attribute that is not as it was: Was is "" for what was added,
// Is for what was left out.
type Change struct {
	Part    Part
	WasName string // "wick flat-braid-24"
	Was     string
	IsName  string
	Is      string
}

// String is the change in a sentence: "fragrance tide-and-thyme was changed (5 %
// of wax then, 5.5 % of wax now)".
func (c Change) String() string {
	switch {
	case c.WasName == "":
		return c.IsName + " was added (" + c.Is + ")"
	case c.IsName == "":
		return c.WasName + " was left out (it was " + c.Was + ")"
	case c.WasName == c.IsName:
		return c.IsName + " was changed (" + c.Was + " then, " + c.Is + " now)"
	}
	return c.IsName + " (" + c.Is + ") took the place of " + c.WasName + " (" + c.Was + ")"
}

// ChangesSince lists attribute by attribute what is not as it was in the candle
// of another code, for one vessel. False: no burn keeps what that was.
func ChangesSince(view *lint.View, was string, vessel int) ([]Change, bool) {
	before, ok := Kept(view, was)
	if !ok {
		return nil, false
	}
	f := Of.In(view)
	now := f.of(vessel)
	if severalVessels(before) { // a burn of the recipe as a whole
		now = &f.Print
	}
	return compared(before, now.Attributes), true
}

func severalVessels(list []Attribute) bool {
	n := 0
	for i := range list {
		if list[i].Part == Vessel {
			n++
		}
	}
	return n > 1
}

// compared goes through the parts in their order. What one thing of a part was
// left out and one came in is one change.
func compared(before, now []Attribute) []Change {
	var changes []Change
	for part := Part(0); part < parts; part++ {
		var gone, come []Attribute
		for i := range before {
			if a := &before[i]; a.Part == part {
				switch is := named(now, a.Name); {
				case is == nil:
					gone = append(gone, *a)
				case is.Value != a.Value:
					changes = append(changes, Change{part, a.Name, a.Value, is.Name, is.Value})
				}
			}
		}
		for i := range now {
			if a := &now[i]; a.Part == part && named(before, a.Name) == nil {
				come = append(come, *a)
			}
		}
		if len(gone) == 1 && len(come) == 1 {
			changes = append(changes, Change{part, gone[0].Name, gone[0].Value, come[0].Name, come[0].Value})
			continue
		}
		for _, a := range gone {
			changes = append(changes, Change{Part: part, WasName: a.Name, Was: a.Value})
		}
		for _, a := range come {
			changes = append(changes, Change{Part: part, IsName: a.Name, Is: a.Value})
		}
	}
	return changes
}

func named(list []Attribute, name string) *Attribute {
	for i := range list {
		if list[i].Name == name {
			return &list[i]
		}
	}
	return nil
}
