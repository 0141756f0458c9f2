package setting

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// CureTooShort is a scented candle that rests too little.
var CureTooShort = &lint.Rule{
	Name:   "cure-too-short",
	Group:  group,
	Title:  "a scented candle cured for less than its wax takes",
	Levels: lint.Levels{OwnUse: lint.Consider, Class: lint.Consider, Sale: lint.Should},
	Why: "Wax goes on setting for days after it feels firm, and the scent settles into it as it does. A candle burned or tested too soon smells of little " +
		"and burns differently from the one the customer lights, so that its test burn tells nothing about theirs.",
	Remedy: "Let it rest for as long as the wax's sheet says, or as is usual for its family, before the test burn and the sale.",
	Card: lint.Card{
		Question: "Can I burn my candle tonight?",
		Answer: "If it is scented, let it rest first: paraffin 1 to 3 days, soy, coconut and rapeseed wax 7 to 14. It smells of more and burns as " +
			"it will go on burning.",
		AllRight: "An unscented candle needs only to be cold all through.",
		Do:       "Put the lid on or wrap it, write the date on it, and leave it at room temperature, out of the sun.",
	},
	Source: "the supplier's sheet of the wax; for its family: common practice",
	Bad: []lint.Example{
		{
			About:   "soy after five days",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: `for = "10 days"`, To: `for = "5 days"`}},
			Flags:   []string{`"5 days"`},
		},
		{
			About:   "no cure at all",
			Recipe:  "fogbank-soy",
			Changes: []lint.Change{{From: "  step \"cure\" {\n    for = \"10 days\"\n  }\n", To: ""}},
			Flags:   []string{`container "straight-jar-8"`},
		},
		{
			About:   "for a class",
			Recipe:  "first-lesson",
			Changes: []lint.Change{{From: `for = "7 days"`, To: `for = "6 days"`}},
			Flags:   []string{`"6 days"`},
		},
	},
	Good: []lint.Example{
		{About: "just the low end", Recipe: "fogbank-soy", Changes: []lint.Change{{From: `for = "10 days"`, To: `for = "1 week"`}}},
		{About: "unscented: nothing to settle", Recipe: "clover-jar", Shows: `step "cool"`},
	},
	Check: checkCureTooShort,
}

func checkCureTooShort(p *lint.Pass) {
	b := batch.Of.In(p.View)
	if len(b.Fragrances) == 0 || len(b.Vessels) == 0 {
		return
	}
	var said schema.Value
	for i := range b.Vessels {
		total, last, ok := cureOf(p, b, i)
		if !ok {
			continue
		}
		least := b.Cure()
		if !least.Ask(p) || !total.Less(least.Low()) {
			continue
		}
		if last == nil {
			reportNoCure(p, &b.Vessels[i], least)
			continue
		}
		if v := last.Block.Get("for"); v != said {
			said = v
			reportShortCure(p, v, total, least)
		}
	}
}

// cureOf is how long a vessel's candle cures at least, in s, and the last step
// that says so; nil: none. False: it cannot be said.
func cureOf(p *lint.Pass, b *batch.Batch, vessel int) (total quantity.Rat, last *batch.Step, ok bool) {
	ok = true
	for i := range b.Steps {
		s := &b.Steps[i]
		if s.Kind != "cure" || !s.Is(vessel) {
			continue
		}
		rests := s.Block.Get("for")
		if rests.Absent() {
			p.CannotCheck(s.Block, "for")
		}
		if !rests.IsAmount() {
			ok = false
			continue
		}
		total = total.Add(rests.Amount().Base())
		last = s
	}
	return total, last, ok
}

func reportNoCure(p *lint.Pass, v *batch.Vessel, least batch.Stated) {
	p.Missing(lint.Finding{
		At: lint.AtHeader(v.Block),
		Message: fmt.Sprintf("no step lets this scented candle cure, and %s: without it the scent is weak and a test burn tells little",
			cureWanted(least)),
		Notes: batch.NoteAt(limitHere, least.Value),
	})
}

func reportShortCure(p *lint.Pass, v schema.Value, total quantity.Rat, least batch.Stated) {
	said := v.Amount().Low().String()
	if !total.Equal(v.Amount().Base()) {
		said = batch.Time(total) + " in all"
	}
	p.Report(lint.Finding{
		At: lint.AtValue(v),
		Message: fmt.Sprintf("a cure of %s is %s short: %s",
			said, daysOf(least.Low().Sub(total)), cureWanted(least)),
		Notes: batch.NoteAt(limitHere, least.Value),
	})
}

// daysOf is a time in days, from one day on.
func daysOf(seconds quantity.Rat) string {
	days := quantity.FromBase(seconds, quantity.Day)
	if days.Number().Less(quantity.Int(1)) {
		return batch.Time(seconds)
	}
	return days.String()
}

func cureWanted(least batch.Stated) string {
	if least.Family != "" {
		return fmt.Sprintf("%s states none, so the usual %s for %s counts (%s)", least.Wax.Title(), least.Amount, least.Family, least.Source())
	}
	return fmt.Sprintf("%s takes %s", least.Wax.Title(), least.Amount)
}
