package formula

import "wickrule/lint"

// ToldChange says what is not as it was in a candle of another code, for one
// vessel by its index, to stand after "since 2026-09-28": "the fragrance was
// changed (it is 6 % of wax now)".
func ToldChange(view *lint.View, was string, vessel int) string {
	f := Of.In(view)
	now := f.Print
	if vessel < len(f.Each) {
		now = f.Each[vessel]
	}
	changed := Changed(was, now.Code)
	if len(changed) == 0 {
		return "the recipe was changed"
	}
	text := ""
	for i, part := range changed {
		switch {
		case i == 0:
		case i == len(changed)-1:
			text += " and "
		default:
			text += ", "
		}
		text += now.told(part, was)
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
