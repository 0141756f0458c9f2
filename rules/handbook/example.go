package handbook

import (
	"cmp"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/rules/explained"
	"wickrule/schema"
)

// example is a text and what the checker says of it.
type example struct {
	About   string
	Code    []codeLine
	Stock   []codeLine // what it puts on the shelves
	Said    []said     // by the rule
	Others  []said     // by other rules, of the same text
	Trouble string     // of an own rule's example: why it does not come out as it must
}

// said is one finding in the words of the checker.
type said struct {
	Level    lint.Level
	Message  html
	Where    string
	Notes    []string
	Fixes    []string // the preferred first
	More     int      // further fixes
	Rule     string
	RulePage string // "" where the rule has no page here
}

// shownFixes is how many ways to put a thing right are written out, and one
// more where that is the last.
const shownFixes = 3

// tried lays an example of a built-in rule over the demo shop, and checks it.
func (b *book) tried(r *lint.Rule, e lint.Example) (example, error) {
	t, err := explained.Try(b.Demo, b.Rules, r, e, b.Today)
	if err != nil {
		return example{}, err
	}
	var marks []schema.Span
	home := ""
	if len(t.Said) > 0 {
		home = t.Said[0].At.File.Name
	}
	x := example{About: schema.Capital(e.About)}
	for i := range t.Said {
		if t.Said[i].At.File.Name == home {
			marks = append(marks, t.Said[i].At.Span)
		}
		x.Said = append(x.Said, b.said(&t.Said[i], home))
	}
	for i := range t.Others {
		x.Others = append(x.Others, b.said(&t.Others[i], home))
	}
	x.Code, x.Stock = code(t.Excerpt, marks), code(t.Stock, nil)
	return x, nil
}

func (b *book) said(f *lint.Found, home string) said {
	s := said{Level: f.Level, Message: html(inlineCode(report.Clean(f.Message))), Where: report.Clean(report.Whereabouts(f.At, home)), Rule: f.Rule.Name, RulePage: b.links.rules[f.Rule.Name]}
	for _, n := range f.Notes {
		s.Notes = append(s.Notes, report.Clean(report.NoteText(n, f.At.File.Name)))
	}
	fixes := f.Repairs()
	for i, fix := range fixes {
		if i < shownFixes || len(fixes) == shownFixes+1 {
			s.Fixes = append(s.Fixes, report.Clean(fix.Title))
		} else {
			s.More++
		}
	}
	return s
}

// codeLine is a line of a recipe, with what is marked in it. Number 0: lines
// are left out here.
type codeLine struct {
	Number int
	Parts  []codePart
}

type codePart struct {
	Text   string
	Marked bool
}

// code is an excerpt with the places marked that findings point at.
func code(lines []explained.Line, marks []schema.Span) []codeLine {
	slices.SortFunc(marks, func(a, b schema.Span) int { return cmp.Compare(a.Start, b.Start) })
	var all []codeLine
	for _, l := range lines {
		c := codeLine{Number: l.Number}
		text := strings.TrimRight(l.Text, "\r\n")
		at := 0
		for _, m := range marks {
			from, to := max(int(m.Start-l.Start), at), min(int(m.End-l.Start), len(text))
			if l.Number == 0 || from >= to {
				continue
			}
			c.Parts = append(c.Parts, codePart{report.Clean(text[at:from]), false}, codePart{report.Clean(text[from:to]), true})
			at = to
		}
		c.Parts = append(c.Parts, codePart{report.Clean(text[at:]), false})
		all = append(all, c)
	}
	return all
}
