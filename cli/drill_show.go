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
	p.Wrap("", 0, text)
	p.Blank()
	for i, line := range strings.Split(strings.TrimRight(e.Text, "\n"), "\n") {
		p.Line(fmt.Sprintf("%4d  %s", i+1, report.Clean(line)))
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
	for _, c := range slip.Changes {
		line("changed", changeText(c))
	}
	for i := range slip.Found {
		line("the checker", slip.Found[i].Message)
	}
	line("why", paragraphs(slip.Rule.Why))
	line("to mend it", paragraphs(slip.Rule.Remedy))
	line("mind", paragraphs(slip.Rule.Cautions))
	p.Blank()
}

func paragraphs(text string) string { return strings.Join(strings.Fields(text), " ") }

// changeText says what stands where something else stood.
func changeText(c drill.Change) string {
	was, is := joined(c.Was), joined(c.Is)
	switch {
	case was == "":
		return fmt.Sprintf("line %d was put there: %s", c.Line, is)
	case is == "":
		return fmt.Sprintf("before line %d was left out: %s", c.Line, was)
	}
	return fmt.Sprintf("line %d: %s; the shop has %s", c.Line, is, was)
}

func joined(lines []string) string {
	var parts []string
	for _, line := range lines {
		if text := strings.Join(strings.Fields(line), " "); text != "" {
			parts = append(parts, text)
		}
	}
	return strings.Join(parts, " ")
}

// showHints gives the first hints on a finding.
func showHints(p *report.Page, f *lint.Found, n int) {
	for i, h := range drill.Hints(f) {
		if i < n {
			p.Wrap("    "+h.Label, told, h.Text)
		}
	}
}
