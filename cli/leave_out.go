package cli

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/lint/report"
	"wickrule/schema"
)

// sieve leaves out of a check what is known, or is as it was. What must be put
// right is told all the same: nobody is to learn from a fire that a file knew
// of it.
type sieve struct {
	of   func(*lint.Report) shopSieve
	left leftOut
}

// shopSieve says of what was found in one shop whether it is left out, and
// why.
type shopSieve struct {
	found     func(f *lint.Found, print string) (why string, out bool)
	conceded  func(c *lint.Conceded, print string) bool
	unchecked func(u *lint.Unchecked, print string) bool
}

// leaveOut takes out of a document what one of the sieves holds back.
func leaveOut(doc *report.Document, sieves ...*sieve) {
	doc.Prints = report.Prints{}
	for _, r := range doc.Shops {
		ofShop := make([]shopSieve, len(sieves))
		for i, one := range sieves {
			ofShop[i] = one.of(r)
		}
		sift(doc, r, sieves, ofShop)
	}
}

// sift takes out of one shop's report. The prints are those of all findings:
// those of a part would be numbered otherwise.
func sift(doc *report.Document, r *lint.Report, sieves []*sieve, ofShop []shopSieve) {
	var kept []lint.Found
	var prints []string
	for i, print := range lint.Prints(r.Findings) {
		f := &r.Findings[i]
		out := false
		for j, one := range ofShop {
			var why string
			if why, out = one.found(f, print); !out {
				continue
			}
			sieves[j].left.add(f)
			if f.Level == lint.Must {
				doc.Standing = append(doc.Standing, report.Standing{Shop: r.Shop, Found: *f, Print: print, Why: why})
			}
			break
		}
		if !out {
			kept, prints = append(kept, *f), append(prints, print)
		}
	}
	r.Findings, doc.Prints[r] = kept, prints

	var conceded []lint.Conceded
	for i, print := range lint.Prints(lint.FoundIn(r.Conceded)) {
		if j := first(ofShop, func(one shopSieve) bool { return one.conceded != nil && one.conceded(&r.Conceded[i], print) }); j >= 0 {
			sieves[j].left.conceded++
			continue
		}
		conceded = append(conceded, r.Conceded[i])
	}
	r.Conceded = conceded

	var unchecked []lint.Unchecked
	for i, print := range lint.UncheckedPrints(r.Unchecked) {
		if j := first(ofShop, func(one shopSieve) bool { return one.unchecked(&r.Unchecked[i], print) }); j >= 0 {
			sieves[j].left.unchecked++
			continue
		}
		unchecked = append(unchecked, r.Unchecked[i])
	}
	r.Unchecked = unchecked
}

// first is the place of the first of which it holds; -1 for none.
func first(list []shopSieve, holds func(shopSieve) bool) int {
	for i, one := range list {
		if holds(one) {
			return i
		}
	}
	return -1
}

// leftOut counts what is left out of a report.
type leftOut struct {
	levels    [lint.Must + 1]int
	recipes   map[*schema.Block]bool
	conceded  int
	unchecked int
}

func (l *leftOut) add(f *lint.Found) {
	l.levels[f.Level]++
	if f.Recipe != nil {
		if l.recipes == nil {
			l.recipes = map[*schema.Block]bool{}
		}
		l.recipes[f.Recipe] = true
	}
}

// String is the counts in words: "3 findings in 2 recipes (1 must, 2 should)
// and 1 missing figure"; "" for nothing.
func (l *leftOut) String() string {
	var parts []string
	total := 0
	for _, level := range []lint.Level{lint.Must, lint.Should, lint.Consider} {
		if n := l.levels[level]; n > 0 {
			total += n
			parts = append(parts, fmt.Sprintf("%d %s", n, level))
		}
	}
	var said []string
	if total > 0 {
		text := plural(total, "finding", "findings")
		if n := len(l.recipes); n > 0 {
			text += " in " + plural(n, "recipe", "recipes")
		}
		said = append(said, text+" ("+strings.Join(parts, ", ")+")")
	}
	if l.conceded > 0 {
		said = append(said, plural(l.conceded, "concession", "concessions"))
	}
	if l.unchecked > 0 {
		said = append(said, plural(l.unchecked, "missing figure", "missing figures"))
	}
	return strings.Join(said, " and ")
}
