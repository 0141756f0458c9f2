package formula

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// ToldChange says what is not as it was in a candle of another code, for one
// vessel by its index, to stand after "since 2026-09-28": attribute by
// attribute, then and now, where a burn keeps what it was made of; else the
// parts that changed, as they are now.
func ToldChange(view *lint.View, was string, vessel int) string {
	if changes, ok := ChangesSince(view, was, vessel); ok && len(changes) > 0 {
		told := make([]string, len(changes))
		for i, c := range changes {
			told[i] = c.String()
		}
		return strings.Join(told, "; ")
	}
	now := Of.In(view).of(vessel)
	changed := Changed(was, now.Code)
	if len(changed) == 0 {
		return "the recipe was changed; what it was before is not written down"
	}
	told := make([]string, len(changed))
	for i, part := range changed {
		told[i] = now.told(part, was)
	}
	return inSentence(told) + "; what it was before is not written down"
}

// WhyNot says why an older burn does not count for one vessel, by its index:
// what was changed after it.
func WhyNot(view *lint.View, old *schema.Block, vessel int) string {
	f := Of.In(view)
	said := old.Get("formula")
	is := f.CodeOf(vessel)
	switch {
	case !f.Known():
		return "what goes in now is not all written down, so that no burn can be held against it"
	case said.Absent():
		return "the burn of " + old.Label + " does not say which formulation was burned (this one is " + is + ")"
	case !IsCode(said.Text()):
		return fmt.Sprintf("%q, which the burn of %s names, is no fingerprint of a formulation (this one is %s)", said.Text(), old.Label, is)
	}
	return "since " + old.Label + " " + ToldChange(view, said.Text(), vessel)
}

// Latest is the burn with the latest date, the last written where several have
// it; nil of none.
func Latest(burns []*schema.Block) *schema.Block {
	var last *schema.Block
	for _, burn := range burns {
		if last == nil || burn.Label >= last.Label {
			last = burn
		}
	}
	return last
}

func inSentence(parts []string) string {
	text := ""
	for i, part := range parts {
		switch {
		case i == 0:
		case i == len(parts)-1:
			text += " and "
		default:
			text += ", "
		}
		text += part
	}
	return text
}

// told is one part that changed, as it is now.
func (p *Print) told(part Part, was string) string {
	is := ""
	for i := range p.Attributes {
		if a := &p.Attributes[i]; a.Part == part {
			if is != "" {
				is += "; "
			}
			is += a.Name + ", " + a.Value
		}
	}
	switch {
	case is == "":
		return part.String() + " " + part.was() + " left out"
	case was[part] == letters[0]:
		return part.String() + " " + part.was() + " added (" + is + ")"
	}
	return part.String() + " " + part.was() + " changed (now " + is + ")"
}

func (p Part) was() string {
	if p == Additive || p == Topping {
		return "were"
	}
	return "was"
}
