package setting

import (
	"fmt"
	"slices"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// StepsOutOfOrder is a step that cannot be done where it stands. A wick hole
// sealed after the pour is wick-hole-sealed-late, and relief holes opened after
// the second pour are relief-holes-missing.
//
// A recipe may melt and pour several times, so that each step is held against
// the pours into its own vessels. Wicks may be set at any time: tealights take
// theirs after the pour, votives after they leave the mold.
var StepsOutOfOrder = &lint.Rule{
	Name:   "steps-out-of-order",
	Group:  group,
	Title:  "a step that stands before what it needs, or after what needs it",
	Levels: lint.Every(lint.Must),
	Why: "Steps are done in the order they are written, with hot wax in hand and no time to think. Fragrance that stands after the pour ends up in the little " +
		"that is left for the second pour, far above what it holds, or is forgotten. A second pour after the candle has left its mold runs over the bench.",
	Remedy: "Move the step to where it is done.",
	Source: "common practice",
	Bad: []lint.Example{
		{
			About:  "fragrance after the pour",
			Recipe: "tide-pillar",
			Changes: []lint.Change{
				{From: fragranceOfTidePillar, To: ""},
				{From: reliefHolesOfTidePillar, To: fragranceOfTidePillar + reliefHolesOfTidePillar},
			},
			Flags: []string{`step "add fragrance"`},
		},
		{
			About:  "dye after everything is poured",
			Recipe: "tideline-layers",
			Changes: []lint.Change{
				{From: "  step \"add dye\" {\n    dye = \"deep-water\"\n  }\n", To: ""},
				{From: "  step \"relief holes\" {\n", To: "  step \"add dye\" {\n    dye = \"deep-water\"\n  }\n  step \"relief holes\" {\n"},
			},
			Flags: []string{`step "add dye"`},
		},
		{
			About:  "poured before it is melted",
			Recipe: "clover-jar",
			Changes: []lint.Change{
				{From: "  step \"pour\" {\n    at = \"161 °F\"\n  }\n", To: ""},
				{From: "  step \"melt\" {\n", To: "  step \"pour\" {\n    at = \"161 °F\"\n  }\n  step \"melt\" {\n"},
			},
			Flags: []string{`step "pour"`},
		},
		{
			About:  "unmolded before the pour",
			Recipe: "tide-pillar",
			Changes: []lint.Change{
				{From: "  step \"unmold\" {\n    after = \"14 h\"\n  }\n", To: ""},
				{From: "  step \"warm mold\" {\n", To: "  step \"unmold\" {\n    after = \"14 h\"\n  }\n  step \"warm mold\" {\n"},
			},
			Flags: []string{`step "unmold"`},
		},
		{
			About:  "cured before the pour",
			Recipe: "tide-pillar",
			Changes: []lint.Change{
				{From: "  step \"cure\" {\n    for = \"3 days\"\n  }\n", To: ""},
				{From: "  step \"warm mold\" {\n", To: "  step \"cure\" {\n    for = \"3 days\"\n  }\n  step \"warm mold\" {\n"},
			},
			Flags: []string{`step "cure"`},
		},
		{
			About:  "a second pour into a candle that has left its mold",
			Recipe: "tide-pillar",
			Changes: []lint.Change{
				{From: secondPourOfTidePillar, To: ""},
				{From: "  step \"trim base\" {}\n", To: secondPourOfTidePillar + "  step \"trim base\" {}\n"},
			},
			Flags: []string{`step "second pour"`},
		},
	},
	Good: []lint.Example{
		{About: "two melts and two pours: layers", Recipe: "tideline-layers", Shows: `step "melt" {
    to   = "186 °F"
    over = "water bath"
  }
  step "add fragrance" {
    at   = "182 °F"
    stir = "2 min"
    say  = "Into the whole batch; half of it stays in the pot."
  }
  step "pour" {
    at    = "176 °F"
    leave = "2 in"
  }

  # The sea: once the sand gives like firm rubber.
  step "melt" {
    after = "45 min"
    to    = "184 °F"
    over  = "water bath"
  }
  step "add dye" {
    dye = "deep-water"
  }
  step "pour" {
    at    = "177 °F"`},
		{About: "one melt and two pours, the second dyed in the pot", Recipe: "tideline-layers", Changes: []lint.Change{
			{From: "  step \"melt\" {\n    after = \"45 min\"\n    to    = \"184 °F\"\n    over  = \"water bath\"\n  }\n", To: ""},
		}},
		{About: "a votive gets its wick after it leaves the mold", Recipe: "lantern-votive", Shows: `step "unmold" {
    after = "6 h"
  }
  step "set wick" {
    say = "Draw the pin`},
		{About: "a tealight gets its wick after the pour", Recipe: "shingle-tealight", Shows: `step "pour" {
    at = "166 °F"
  }
  step "set wick" {
    with = "tab-sticker"
    say  = "Straight after`},
		{About: "dipped, with no pour at all", Recipe: "quayside-taper", Shows: `step "prime wick" {
    say = "Hold the wick under until the bubbles stop, then pull it straight."
  }
  step "dip" {
    at    = "160 °F"
    times = 26
    wait  = "3 min"`},
	},
	Check: checkStepsOutOfOrder,
}

const fragranceOfTidePillar = "  step \"add fragrance\" {\n    at   = \"183 °F\"\n    stir = \"2 min\"\n  }\n"

func checkStepsOutOfOrder(p *lint.Pass) {
	b := batch.Of.In(p.View)
	melted := false
	for i := range b.Steps {
		s := &b.Steps[i]
		switch s.Kind {
		case "melt":
			melted = true
		case "pour", "dip", "overdip":
			if !melted {
				checkUnmelted(p, b, s)
				melted = true // said once
			}
		case "second pour", "relief holes", "unmold", "cure":
			checkUnpoured(p, b, s)
		case "add fragrance", "add dye", "add additive":
			checkAdded(p, b, s)
		case "warm container", "release":
			checkPrepared(p, b, s)
		}
	}
}

// takesWax says whether a step puts wax where it stays: it pours or dips.
// Second pours only fill up.
func takesWax(kind string) bool { return kind == "pour" || kind == "dip" || kind == "overdip" }

func checkUnmelted(p *lint.Pass, b *batch.Batch, s *batch.Step) {
	melt := next(b, s, func(o *batch.Step) bool { return o.Kind == "melt" })
	if melt == nil {
		p.Missing(lint.Finding{
			At:      lint.AtHeader(s.Block),
			Levels:  lint.Every(lint.Should),
			Message: fmt.Sprintf("no step melts the wax for this %s, so that nothing can be said of how hot it was made: add a melt step with its temperature", s.Kind),
		})
		return
	}
	p.Report(lint.Finding{
		At:      lint.AtHeader(s.Block),
		Message: fmt.Sprintf("the %s in %s stands before the melt in %s: there is no liquid wax yet", s.Kind, place(s), place(melt)),
		Notes:   []lint.Note{{Place: lint.AtHeader(melt.Block), Message: "melted here"}},
		Fixes:   func() []schema.Fix { return move("melt before the "+s.Kind, melt, s) },
	})
}

// checkUnpoured is about what is done to a candle that has been poured.
func checkUnpoured(p *lint.Pass, b *batch.Batch, s *batch.Step) {
	if len(s.Vessels) == 0 {
		return
	}
	for i := range b.Steps[:s.Index] {
		if o := &b.Steps[i]; takesWax(o.Kind) && share(o, s) {
			if s.Kind == "second pour" || s.Kind == "relief holes" {
				checkUnmolded(p, b, s)
			}
			return
		}
	}
	pour := next(b, s, func(o *batch.Step) bool { return takesWax(o.Kind) && share(o, s) })
	if pour == nil {
		if s.Kind == "second pour" {
			p.Missing(lint.Finding{
				At:      lint.AtHeader(s.Block),
				Message: "a second pour with no pour before it: there is nothing for it to fill up. Call the first one pour",
			})
		}
		return
	}
	p.Report(lint.Finding{
		At:      lint.AtHeader(s.Block),
		Message: fmt.Sprintf("%s in %s stands before the %s in %s: there is no candle yet", named(s), place(s), pour.Kind, place(pour)),
		Notes:   []lint.Note{{Place: lint.AtHeader(pour.Block), Message: "poured here"}},
		Fixes:   func() []schema.Fix { return afterPour(b, s, pour) },
	})
}

func named(s *batch.Step) string {
	switch s.Kind {
	case "relief holes":
		return "the opening of relief holes"
	case "unmold":
		return "the unmolding"
	case "cool":
		return "the cooling"
	}
	return "the " + s.Kind
}

// afterPour moves a step behind the pour it needs, and behind what is done to
// the candle before it.
func afterPour(b *batch.Batch, s, pour *batch.Step) []schema.Fix {
	var done []string
	switch s.Kind {
	case "unmold":
		done = []string{"relief holes", "second pour"}
	case "cure":
		done = []string{"relief holes", "second pour", "unmold", "cool"}
	}
	last := pour
	for i := pour.Index + 1; i < len(b.Steps); i++ {
		if o := &b.Steps[i]; share(o, s) && (takesWax(o.Kind) || slices.Contains(done, o.Kind)) {
			last = o
		}
	}
	if last.Index+1 >= len(b.Steps) {
		return nil
	}
	return move("move "+named(s)+" after "+named(last), s, &b.Steps[last.Index+1])
}

// checkUnmolded is a second pour, or relief holes, after the candle has left
// its mold: all of the molds that the step is about.
func checkUnmolded(p *lint.Pass, b *batch.Batch, s *batch.Step) {
	var unmold *batch.Step
	for _, v := range s.Vessels {
		if b.Vessels[v].Kind != "mold" {
			return
		}
		out := unmoldedBefore(b, s, v)
		if out == nil {
			return
		}
		if unmold == nil || out.Index < unmold.Index {
			unmold = out
		}
	}
	p.Report(lint.Finding{
		At:      lint.AtHeader(s.Block),
		Message: fmt.Sprintf("%s in %s stands after the candle has left its mold in %s", named(s), place(s), place(unmold)),
		Notes:   []lint.Note{{Place: lint.AtHeader(unmold.Block), Message: "unmolded here"}},
		Fixes:   func() []schema.Fix { return move("move "+named(s)+" before the unmolding", s, unmold) },
	})
}

// unmoldedBefore is the step that took a vessel's candle out, since the last
// pour into it; nil: none.
func unmoldedBefore(b *batch.Batch, s *batch.Step, vessel int) *batch.Step {
	var out *batch.Step
	for i := range b.Steps[:s.Index] {
		o := &b.Steps[i]
		switch {
		case !o.Is(vessel):
		case o.Kind == "unmold":
			if out == nil {
				out = o
			}
		case takesWax(o.Kind):
			out = nil
		}
	}
	return out
}

// checkAdded is about what is stirred into the wax: it has to be in the pot
// before the wax leaves it.
func checkAdded(p *lint.Pass, b *batch.Batch, s *batch.Step) {
	if next(b, s, func(o *batch.Step) bool { return takesWax(o.Kind) }) != nil {
		if s.Kind == "add fragrance" {
			checkUnmeltedFragrance(p, b, s)
		}
		return
	}
	last, melts := poured(b, s)
	if last == nil {
		return // nothing is poured at all yet
	}
	// What goes only into a second pour is out of order where none of it went
	// into the candle before. Another dye, or an additive, may be meant for
	// wax that is melted again for it.
	if next(b, s, func(o *batch.Step) bool { return o.Kind == "second pour" }) != nil &&
		(addedBefore(b, s) || melts && s.Kind != "add fragrance") {
		return
	}
	// The pour it is meant for may still be being typed.
	into := firstSinceMelt(b, last)
	p.Missing(lint.Finding{
		At:      lint.AtHeader(s.Block),
		Message: fmt.Sprintf("%s in %s stands after the %s in %s, so that wax gets none of it", adding(s), place(s), into.Kind, place(into)),
		Notes:   []lint.Note{{Place: lint.AtHeader(into.Block), Message: "poured here"}},
		Fixes:   func() []schema.Fix { return move("add the "+s.Kind[len("add "):]+" before the "+into.Kind, s, into) },
	})
}

func adding(s *batch.Step) string { return "adding " + s.Kind[len("add "):] }

// poured is the last step before another that pours or dips, and whether wax
// is melted again between the two.
func poured(b *batch.Batch, s *batch.Step) (last *batch.Step, melts bool) {
	for i := range b.Steps[:s.Index] {
		switch o := &b.Steps[i]; {
		case takesWax(o.Kind):
			last, melts = o, false
		case o.Kind == "melt":
			melts = true
		}
	}
	return last, melts
}

// firstSinceMelt is the first pour of those made from the same melt as the
// last.
func firstSinceMelt(b *batch.Batch, last *batch.Step) *batch.Step {
	first := last
	for i := last.Index - 1; i >= 0 && b.Steps[i].Kind != "melt"; i-- {
		if takesWax(b.Steps[i].Kind) {
			first = &b.Steps[i]
		}
	}
	return first
}

// addedBefore says whether some of what a step adds has gone in before.
func addedBefore(b *batch.Batch, s *batch.Step) bool {
	what := s.Kind[len("add "):]
	adds := s.Block.Get(what)
	for i := range b.Steps[:s.Index] {
		o := &b.Steps[i]
		if o.Kind != s.Kind {
			continue
		}
		earlier := o.Block.Get(what)
		if earlier.Absent() {
			return true
		}
		for _, item := range adds.Items() {
			if lists(earlier, item.Text) {
				return true
			}
		}
	}
	return false
}

// checkUnmeltedFragrance is fragrance that goes in before the wax is melted,
// and is heated along with it.
func checkUnmeltedFragrance(p *lint.Pass, b *batch.Batch, s *batch.Step) {
	for i := range b.Steps[:s.Index] {
		if b.Steps[i].Kind == "melt" {
			return
		}
	}
	melt := next(b, s, func(o *batch.Step) bool { return o.Kind == "melt" })
	if melt == nil {
		return
	}
	p.Report(lint.Finding{
		At:      lint.AtHeader(s.Block),
		Levels:  lint.Every(lint.Should),
		Message: fmt.Sprintf("adding fragrance in %s stands before the melt in %s: it is heated all the way up with the wax", place(s), place(melt)),
		Notes:   []lint.Note{{Place: lint.AtHeader(melt.Block), Message: "melted here"}},
		Fixes: func() []schema.Fix {
			if melt.Index+1 >= len(b.Steps) {
				return nil
			}
			return move("add the fragrance after the melt", s, &b.Steps[melt.Index+1])
		},
	})
}

// checkPrepared is about what readies a vessel: it does nothing once the wax
// is in. Where more is poured into it later it may be meant for that.
func checkPrepared(p *lint.Pass, b *batch.Batch, s *batch.Step) {
	if len(s.Vessels) == 0 || next(b, s, func(o *batch.Step) bool {
		return (takesWax(o.Kind) || o.Kind == "second pour") && share(o, s)
	}) != nil {
		return
	}
	var pour *batch.Step
	for i := range b.Steps[:s.Index] {
		if o := &b.Steps[i]; o.Kind == "pour" && share(o, s) {
			pour = o
			break
		}
	}
	if pour == nil {
		return
	}
	what := "warming the container"
	if s.Kind == "release" {
		what = "treating the mold so that it lets go"
	}
	p.Report(lint.Finding{
		At:      lint.AtHeader(s.Block),
		Levels:  lint.Every(lint.Should),
		Message: fmt.Sprintf("%s in %s stands after the pour in %s, too late to do anything", what, place(s), place(pour)),
		Notes:   []lint.Note{{Place: lint.AtHeader(pour.Block), Message: "poured here"}},
		Fixes:   func() []schema.Fix { return move("move it before the pour", s, pour) },
	})
}

// next is the first step after another that is as wanted; nil: none.
func next(b *batch.Batch, s *batch.Step, wanted func(*batch.Step) bool) *batch.Step {
	for i := s.Index + 1; i < len(b.Steps); i++ {
		if wanted(&b.Steps[i]) {
			return &b.Steps[i]
		}
	}
	return nil
}

// share says whether two steps are about a vessel in common.
func share(a, b *batch.Step) bool {
	for _, v := range a.Vessels {
		if b.Is(v) {
			return true
		}
	}
	return false
}

func lists(v schema.Value, key string) bool {
	for _, item := range v.Items() {
		if item.Text == key {
			return true
		}
	}
	return false
}
