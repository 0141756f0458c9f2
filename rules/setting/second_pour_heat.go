package setting

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// SecondPourTooCool is a second pour that does not melt into the first.
var SecondPourTooCool = &lint.Rule{
	Name:   "second-pour-too-cool",
	Group:  group,
	Title:  "a second pour no hotter than the first, in a mold",
	Levels: lint.Every(lint.Should),
	Why: "The second pour has to melt a little of the first to become one with it. Cooler wax only lies on top: " +
		"a seam shows, and the plug can lift out when the candle burns down to it or is dropped.",
	Remedy: "Pour the second 5 to 10 °F (3 to 6 °C) hotter than the first, and never above what the wax, the seal and the mold bear. " +
		"Raising it is for you to decide; nothing here raises heat.",
	Cautions: "Before making the second pour hotter, look at the wax's ceiling, at what the seal holds to, and at where the mold softens.",
	Card: lint.Card{
		Question: "How hot is the second pour?",
		Answer: "In a mold 5 to 10 °F (3 to 6 °C) hotter than the first, so that it melts into it, and never more than the wax, the seal and the " +
			"mold bear.",
		AllRight: "In a jar a second pour only levels the top and need not be hotter.",
		Do:       "Keep a part of the batch warm for it. Before you go hotter than the first pour, look up the wax's ceiling and what the seal holds to.",
	},
	Source: "common practice",
	Bad: []lint.Example{
		{
			About:   "cooler than the first",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `at    = "182 °F"`, To: `at    = "170 °F"`}},
			Flags:   []string{`"170 °F"`},
		},
		{
			About:   "just as hot, in the other scale",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `at    = "182 °F"`, To: `at    = "80 °C"`}},
			Flags:   []string{`"80 °C"`},
			Level:   lint.Consider,
		},
	},
	Good: []lint.Example{
		{About: "one degree hotter", Recipe: "tide-pillar", Changes: []lint.Change{{From: `at    = "182 °F"`, To: `at    = "177 °F"`}}},
		{About: "a thin, cooler top in a jar", Recipe: "harbor-jar", Changes: []lint.Change{{From: `at    = "170 °F"`, To: `at    = "160 °F"`}}},
	},
	Check: checkSecondPourTooCool,
}

// SecondPourOutOfStep is a second pour far hotter than the first.
var SecondPourOutOfStep = &lint.Rule{
	Name:   "second-pour-out-of-step",
	Group:  group,
	Title:  "a second pour over 15 °F (8.3 °C) hotter than the first",
	Levels: lint.Every(lint.Should),
	Why: "Five to ten degrees Fahrenheit above the first pour is enough to melt the two together. Much hotter wax melts its way down between the wall and the candle, " +
		"which has shrunk from it, leaves a ridge that cannot be polished off, and starts the shrinking all over again.",
	Remedy: "Let the second pour cool to 5 to 10 °F (3 to 6 °C) above the first.",
	Source: "common practice",
	Bad: []lint.Example{
		{
			About:   "21 °F hotter",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `at    = "182 °F"`, To: `at    = "197 °F"`}},
			Flags:   []string{`"197 °F"`},
		},
		{
			About:   "just 20 °F hotter: worth knowing",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `at    = "182 °F"`, To: `at    = "196 °F"`}},
			Flags:   []string{`"196 °F"`},
			Level:   lint.Consider,
		},
	},
	Good: []lint.Example{
		{About: "just 15 °F hotter", Recipe: "tide-pillar", Changes: []lint.Change{{From: `at    = "182 °F"`, To: `at    = "191 °F"`}}},
		{About: "6 °F hotter", Recipe: "tide-pillar"},
	},
	Check: checkSecondPourOutOfStep,
}

// How much hotter than the first a second pour may be, in K: 10 °F is the
// upper end of what is usual, above 15 °F is worth knowing, above 20 °F too
// much. Common practice.
var (
	usualAbove = quantity.NewRat(50, 9)
	farAbove   = quantity.NewRat(25, 3)
	tooFar     = quantity.NewRat(100, 9)
)

func checkSecondPourTooCool(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Pours {
		second := b.Pours[i].Step
		if !b.Pours[i].Second || !second.Heat.IsAmount() {
			continue
		}
		first := toppedUp(b, second, true, func(a, b quantity.Quantity) bool { return b.High().Base().Less(a.High().Base()) })
		if first == nil {
			continue
		}
		one, two := first.Heat.Amount(), second.Heat.Amount()
		if one.High().Base().Less(two.Base()) || doubted(p, b, first) || doubted(p, b, second) {
			continue
		}
		f := lint.Finding{
			At:    lint.AtValue(second.Heat),
			Notes: []lint.Note{{Place: lint.AtValue(first.Heat), Message: "the first pour"}},
		}
		low := two.Low()
		how := "just as hot as"
		if short := one.High().Base().Sub(low.Base()); short.Sign() > 0 {
			how = batch.ApartLike(short, low) + " cooler than"
		}
		// A range that only overlaps that of the first can be poured hotter.
		if !low.Base().Less(one.Base()) {
			f.Levels = lint.Every(lint.Consider)
		}
		f.Message = fmt.Sprintf("the second pour at %s is %s the first at %s: it does not melt into it, and a seam stays. Common practice is 5 to 10 °F (3 to 6 °C) hotter, "+
			"within what the wax, the seal and the mold bear", at(p.View, low, two), how, at(p.View, one.High(), one))
		p.Report(f)
	}
}

func checkSecondPourOutOfStep(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Pours {
		second := b.Pours[i].Step
		if !b.Pours[i].Second || !second.Heat.IsAmount() {
			continue
		}
		first := toppedUp(b, second, false, func(a, b quantity.Quantity) bool { return a.High().Base().Less(b.High().Base()) })
		if first == nil {
			continue
		}
		one, two := first.Heat.Amount(), second.Heat.Amount()
		hot := two.High()
		above := hot.Base().Sub(one.High().Base())
		atWorst := hot.Base().Sub(one.Base())
		if !farAbove.Less(above) && !tooFar.Less(atWorst) || doubted(p, b, first) || doubted(p, b, second) {
			continue
		}
		f := lint.Finding{
			At:    lint.AtValue(second.Heat),
			Notes: []lint.Note{{Place: lint.AtValue(first.Heat), Message: "the first pour"}},
			Fixes: func() []schema.Fix { return lowerSecondPour(b, first, second) },
		}
		if !tooFar.Less(above) {
			f.Levels = lint.Every(lint.Consider)
		}
		f.Message = fmt.Sprintf("the second pour at %s is %s hotter than the first at %s; common practice is 5 to 10 °F (3 to 6 °C): it runs down beside the candle and leaves a ridge",
			at(p.View, hot, two), batch.ApartLike(atWorst, hot), at(p.View, one.Low(), one))
		p.Report(f)
	}
}

// toppedUp is the pour that a second one is held against: of the pours it tops
// up, in molds only or in any vessel, the one that better puts first. Nil:
// none that says how hot.
func toppedUp(b *batch.Batch, second *batch.Step, molds bool, better func(a, b quantity.Quantity) bool) *batch.Step {
	var best *batch.Step
	for _, v := range second.Vessels {
		if molds && b.Vessels[v].Kind != "mold" {
			continue
		}
		first := fills(b, second, v)
		if first == nil || !first.Heat.IsAmount() {
			continue
		}
		if best == nil || better(first.Heat.Amount(), best.Heat.Amount()) {
			best = first
		}
	}
	return best
}

// lowerSecondPour brings a second pour down to 10 °F above the first, in whole
// degrees of its own scale, and not above the wax's ceiling.
func lowerSecondPour(b *batch.Batch, first, second *batch.Step) []schema.Fix {
	one, two := first.Heat.Amount(), second.Heat.Amount()
	top := one.Base().Add(usualAbove)
	if ceiling := b.NeverAbove(); ceiling.Known() {
		top = quantity.Min(top, ceiling.High())
	}
	to := repair.Lowered(two.High(), top)
	if !to.Base().Less(two.High().Base()) || to.Base().Less(one.High().Base()) {
		return nil
	}
	text := to.String()
	if low := two.Low(); two.IsRange() && low.Base().Less(to.Base()) {
		from := low.String()
		if low.Unit() == to.Unit() {
			from = low.Number().Decimal(6)
		}
		text = from + " to " + text
	}
	return []schema.Fix{repair.Rewrite("make the second pour at "+text, second.Heat, schema.Quote(text))}
}
