package formula

import (
	"strings"

	"wickrule/lint"
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
