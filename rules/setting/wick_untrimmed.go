package setting

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// WickUntrimmed is a wick that is not cut, or cut to the wrong length.
var WickUntrimmed = &lint.Rule{
	Name:   "wick-untrimmed",
	Group:  group,
	Title:  "a wick that is not trimmed, or not to the length it burns at",
	Levels: lint.Every(lint.Should),
	Why: "The length of the wick sets the height of the flame. A long one burns tall, soots, and can crack a jar; a very short one drowns in the wax it melts. " +
		"Whoever buys the candle lights it as it comes.",
	Remedy: "Trim to what the wick's maker states, else to 6 mm (1/4 in), once the wax is cold.",
	Card: lint.Card{
		Question: "How long should the wick be?",
		Answer:   "6 mm (1/4 in), or what its maker says, each time before you light it. A long wick burns tall and soots; a very short one drowns.",
		AllRight: "Between 3 and 10 mm where its maker states nothing. Tapers and tealights come ready to light.",
		Do:       "Cut it when the wax is cold, and take the cut end out of the candle.",
	},
	Source: "the wick maker's figure; ASTM F2326 burns its test candles at 1/4 in; the range of 3 to 10 mm is common practice",
	Bad: []lint.Example{
		{
			About:   "no trim step",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: trimOfTidePillar, To: ""}},
			Flags:   []string{`mold "pillar-3x6"`},
		},
		{
			About:   "too long",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: trimOfTidePillar, To: "  step \"trim wick\" {\n    to = \"1/2 in\"\n  }\n"}},
			Flags:   []string{`"1/2 in"`},
		},
		{
			About:   "too short",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: trimOfTidePillar, To: "  step \"trim wick\" {\n    to = \"2 mm\"\n  }\n"}},
			Flags:   []string{`"2 mm"`},
		},
	},
	Good: []lint.Example{
		{About: "the same length in millimeters", Recipe: "tide-pillar", Changes: []lint.Change{{From: trimOfTidePillar, To: "  step \"trim wick\" {\n    to = \"6 mm\"\n  }\n"}}},
		{About: "a tealight wick comes cut", Recipe: "saltmarsh-tealight", Shows: `container "`},
		{About: "a votive wick with its tab comes cut", Recipe: "lantern-votive", Changes: []lint.Change{{From: "  step \"trim wick\" {\n    to = \"1/4 in\"\n  }\n", To: ""}}},
		{About: "a melt has no wick", Recipe: "gorse-melt", Shows: `container "`},
	},
	Check: checkWickUntrimmed,
}

const trimOfTidePillar = "  step \"trim wick\" {\n    to = \"1/4 in\"\n  }\n"

// Lengths of a trimmed wick in mm. Common practice; asTrimmed is how near a
// single figure is met, a sixteenth of an inch, so that 6 mm is as good as
// 1/4 in.
var (
	shortest  = quantity.Int(3)
	longest   = quantity.Int(10)
	asTrimmed = quantity.NewRat(254, 160)
)

func checkWickUntrimmed(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Stock == nil || v.Wick == nil {
			continue
		}
		makes := made(b, v)
		if makes == "taper" || makes == "tealight" || makes == "melt" {
			continue
		}
		trim := trimOf(b, i)
		switch {
		case trim != nil:
			checkTrim(p, v, trim)
		case makes == "votive" && !v.Wick.Get("tab").No():
			// A votive's wick that is crimped to its tab was cut to length there.
			p.CannotCheck(v.Wick, "tab")
		default:
			reportUntrimmed(p, b, v)
		}
	}
}

// trimOf is the last step that trims a vessel's wick: the one that counts.
func trimOf(b *batch.Batch, vessel int) *batch.Step {
	for i := len(b.Steps) - 1; i >= 0; i-- {
		if s := &b.Steps[i]; s.Kind == "trim wick" && s.Is(vessel) {
			return s
		}
	}
	return nil
}

// lengths are the ends of what a wick may be trimmed to in mm, by its maker's
// figure, else by common practice.
func lengths(wick *schema.Block) (low, high quantity.Rat, ok bool) {
	said := wick.Get("trim")
	switch {
	case said.Absent():
		return shortest, longest, true
	case !said.IsAmount():
		return low, high, false
	}
	q := said.Amount()
	if q.IsRange() {
		return q.Base(), q.High().Base(), true
	}
	return q.Base().Sub(asTrimmed), q.Base().Add(asTrimmed), true
}

func checkTrim(p *lint.Pass, v *batch.Vessel, trim *batch.Step) {
	to := trim.Block.Get("to")
	if to.Absent() {
		p.CannotCheck(trim.Block, "to")
	}
	low, high, ok := lengths(v.Wick)
	if !ok || !to.IsAmount() {
		return
	}
	written := to.Amount()
	f := lint.Finding{At: lint.AtValue(to)}
	switch {
	case high.Less(written.High().Base()):
		end := written.High()
		f.Message = fmt.Sprintf("a wick of %s is %s longer than %s: it burns with a tall, sooty flame",
			reaches(written, end), lengthApart(end.Base().Sub(nominal(v.Wick, high, false)), end), trimWanted(p, v.Wick))
		f.Fixes = shorten(p, v.Wick, to)
	case written.Base().Less(low):
		end := written.Low()
		f.Message = fmt.Sprintf("a wick of %s is %s shorter than %s: it drowns in the wax it melts",
			reaches(written, end), lengthApart(nominal(v.Wick, low, true).Sub(end.Base()), end), trimWanted(p, v.Wick))
	default:
		return
	}
	f.Notes = batch.NoteAt(limitHere, v.Wick.Get("trim"))
	p.Report(f)
}

// shorten offers to cut the wick to its maker's length.
func shorten(p *lint.Pass, wick *schema.Block, to schema.Value) func() []schema.Fix {
	return func() []schema.Fix {
		text := trimText(p, wick)
		return []schema.Fix{repair.Rewrite("trim the wick to "+text, to, schema.Quote(text))}
	}
}

// nominal is the figure that a difference is counted from: the maker's own,
// not the end of what counts as met.
func nominal(wick *schema.Block, end quantity.Rat, low bool) quantity.Rat {
	said := wick.Get("trim")
	switch {
	case !said.IsAmount():
		return end
	case low:
		return said.Amount().Base()
	}
	return said.Amount().High().Base()
}

func reaches(whole, end quantity.Quantity) string {
	if !whole.IsRange() {
		return end.String()
	}
	return whole.String() + " may be " + end.String() + ", which"
}

func lengthApart(mm quantity.Rat, written quantity.Quantity) string {
	return quantity.FromBase(mm, quantity.Millimeter).Show(written.Unit().System)
}

func trimWanted(p *lint.Pass, wick *schema.Block) string {
	if said := wick.Get("trim"); said.IsAmount() {
		return fmt.Sprintf("the %s that %s is trimmed to", batch.Both(p.View, said.Amount()), wick.Title())
	}
	return "the 3 to 10 mm (1/8 to 3/8 in) that wicks are trimmed to (common practice; " + wick.Title() + " states no trim)"
}

// trimText is the length to write: the wick maker's, else the quarter inch of
// the standard's test burns, in the shop's units.
func trimText(p *lint.Pass, wick *schema.Block) string {
	if said := wick.Get("trim"); said.IsAmount() {
		return said.Amount().String()
	}
	if p.Units() == quantity.Metric {
		return "6 mm"
	}
	return "1/4 in"
}

func reportUntrimmed(p *lint.Pass, b *batch.Batch, v *batch.Vessel) {
	p.Missing(lint.Finding{
		At: lint.AtHeader(v.Block),
		Message: fmt.Sprintf("no step trims the wick of %s: it is lit as long as it is left, and burns with a tall, sooty flame. It should be %s",
			v.Stock.Title(), trimText(p, v.Wick)),
		Notes: batch.NoteAt("its maker's length is stated here", v.Wick.Get("trim")),
		Fixes: func() []schema.Fix {
			text := trimText(p, v.Wick)
			step := repair.Step("trim wick", forVessel(b, v, repair.Text("to", text))...)
			title := "trim the wick to " + text
			if label := firstLabel(b); label != nil {
				return []schema.Fix{repair.Before(title, label.Block, step)}
			}
			return []schema.Fix{repair.LastStep(title, p.Recipe, step)}
		},
	})
}

// firstLabel is the first step that puts a label on after everything is
// poured; nil: none.
func firstLabel(b *batch.Batch) *batch.Step {
	var label *batch.Step
	for i := range b.Steps {
		switch s := &b.Steps[i]; s.Kind {
		case "pour", "second pour", "unmold", "cool", "set wick":
			label = nil
		case "attach label":
			if label == nil {
				label = s
			}
		}
	}
	return label
}
