package lint

import (
	"fmt"

	"wickrule/schema"
)

// Names of the rules about concessions; their values live with the other
// rules about the format itself.
const (
	ConcessionExpired       = "concession-expired"
	ConcessionUnused        = "concession-unused"
	ConcessionWithoutReason = "concession-without-reason"
	ConcessionNotAllowed    = "concession-not-allowed"
)

// concede takes the findings that a valid concession of the recipe covers out
// of what was found, and says what is wrong with concessions that cover
// nothing or may not.
func concede(book *book, pass *Pass) {
	out := pass.out
	for c := range pass.Recipe.Each("concession") {
		rule := book.named[c.Label]
		if rule == nil {
			continue // a rule that does not exist: unknown-key says so
		}
		say := func(name string, at Place, message string, fixes func() []schema.Fix) {
			if pass.rule = book.named[name]; pass.rule != nil {
				pass.Report(Finding{At: at, Message: message, Fixes: fixes})
			}
		}
		drop := func() []schema.Fix {
			return []schema.Fix{{Title: fmt.Sprintf("remove the concession for %s", c.Label), Edits: []schema.Edit{schema.RemoveBlock(c)}}}
		}
		reason, until := c.Get("reason"), c.Get("until")
		switch {
		case rule.About == AboutFormat:
			say(ConcessionNotAllowed, AtLabel(c), fmt.Sprintf("%s is about how the recipe is written and cannot be conceded: put the text right", c.Label), drop)
			continue
		case rule.Binding && pass.MadeFor == Sale:
			say(ConcessionNotAllowed, AtLabel(c), fmt.Sprintf("%s cannot be conceded in a recipe made for sale: somebody else lights this candle", c.Label), drop)
			continue
		case reason.Absent() || reason.Known() && reason.Text() == "":
			if c.File.Whole {
				say(ConcessionWithoutReason, AtHeader(c), fmt.Sprintf("the concession for %s gives no reason: write why this departure is all right here, reason = \"…\"", c.Label), nil)
			}
			continue
		case reason.Broken() || until.Broken():
			continue
		case until.Known() && until.Text() < pass.Today():
			say(ConcessionExpired, AtValue(until), fmt.Sprintf("the concession for %s ended on %s: put the matter right, or decide again and write a new date", c.Label, until.Text()), nil)
			continue
		}
		kept := out.found[:0:0]
		used := false
		for _, f := range out.found {
			if f.Rule == rule {
				used = true
				f.Fixes = nil // nobody is asked to put right what is conceded
				out.conceded = append(out.conceded, Conceded{Found: f, Concession: c})
				continue
			}
			kept = append(kept, f)
		}
		out.found = kept
		if !used && c.File.Whole {
			say(ConcessionUnused, AtLabel(c), fmt.Sprintf("nothing in this recipe needs the concession for %s any more", c.Label), drop)
		}
	}
}
