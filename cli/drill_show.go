package cli

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/rules/drill"
	"wickrule/schema"
)

// told is where the text of an explained slip starts.
const told = 18

// showExercise shows the recipe with its lines numbered.
func showExercise(p *report.Page, e *drill.Exercise, shop string) {
	p.Title(fmt.Sprintf("Exercise %d, %s", e.Number, e.Title), shop)
	p.Blank()
	text := drill.Amiss(len(e.Faults)) + " in this recipe."
	if e.Draft {
		text += " It is for a class, and not test burned yet."
	}
	p.Wrap("", 0, text+" Nothing is poured from an exercise.")
	p.Blank()
	for i, line := range strings.Split(strings.TrimRight(e.Text, "\n"), "\n") {
		p.Written(fmt.Sprintf("%4d  ", i+1), line)
	}
	p.Blank()
}

// showSlip names a slip and explains it.
func showSlip(p *report.Page, slip *drill.Planted, how string) {
	p.Title("  "+slip.Rule.Name+": "+how, slip.Rule.Group)
	line := func(label, text string) {
		if text != "" {
			p.Wrap("    "+label, told, text)
		}
	}
	line("slip", schema.Capital(slip.Slip)+".")
	for _, text := range changeTexts(slip.Changes) {
		line("changed", text)
	}
	for i := range slip.Found {
		line("the checker", schema.Capital(slip.Found[i].Message)+".")
	}
	line("why", paragraphs(slip.Rule.Why))
	line("to mend it", paragraphs(slip.Rule.Remedy))
	line("mind", paragraphs(slip.Rule.Cautions))
	p.Blank()
}

func paragraphs(text string) string { return strings.Join(strings.Fields(text), " ") }

// changeTexts say what stands where something else stood.
func changeTexts(changes []drill.Change) []string {
	if len(changes) == 2 && changes[0].Is == nil && changes[1].Was == nil && joined(changes[0].Was) == joined(changes[1].Is) {
		return []string{fmt.Sprintf("moved to line %d; in the shop it stands before line %d: %s", changes[1].Line, changes[0].Line, joined(changes[1].Is))}
	}
	if len(changes) == 2 && changes[1].Is == nil && changes[0].Was == nil && joined(changes[1].Was) == joined(changes[0].Is) {
		return []string{fmt.Sprintf("moved to line %d; in the shop it stands before line %d: %s", changes[0].Line, changes[1].Line, joined(changes[0].Is))}
	}
	var all []string
	for _, c := range changes {
		was, is := joined(c.Was), joined(c.Is)
		switch {
		case was == "":
			all = append(all, fmt.Sprintf("put in at line %d: %s", c.Line, is))
		case is == "":
			all = append(all, fmt.Sprintf("left out before line %d: %s", c.Line, was))
		default:
			all = append(all, fmt.Sprintf("line %d: %s; the shop has %s", c.Line, is, was))
		}
	}
	return all
}

// joined is lines of a recipe on one line.
func joined(lines []string) string {
	var b strings.Builder
	for _, line := range lines {
		text := strings.Join(strings.Fields(line), " ")
		switch said := b.String(); {
		case text == "":
			continue
		case said == "":
		case strings.HasSuffix(said, "{") || text == "}":
			b.WriteString(" ")
		default:
			b.WriteString("; ")
		}
		b.WriteString(text)
	}
	return b.String()
}

// showHints gives the first hints on a finding.
func showHints(p *report.Page, f *lint.Found, n int) {
	for i, h := range drill.Hints(f) {
		if i < n {
			p.Wrap("    "+h.Label, told, h.Text)
		}
	}
}
