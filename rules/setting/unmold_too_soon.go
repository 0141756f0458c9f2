package setting

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/cooling"
	"wickrule/schema/quantity"
)

// UnmoldTooSoon is a candle taken out of its mold while its core is liquid,
// or soft. What second pours and layers bring counts from their own time.
//
// Set is where it is loud: a shell with liquid wax in it can break in the hand.
// Here the middle of the estimate counts, and not its early end: the candle may
// be set by then, and nobody can see whether it is.
var UnmoldTooSoon = &lint.Rule{
	Name:   "unmold-too-soon",
	Group:  group,
	Title:  "a candle unmolded before its core is set",
	Levels: lint.Every(lint.Should),
	Why: "The outside is firm hours before the core. A shell with liquid wax in it can break in the hand and spill it hot; one that holds bends, sinks in, " +
		"or keeps the marks of the fingers. Even set wax is soft while it is warm, and does not shrink from the mold until it has cooled.",
	Remedy: "Leave it in the mold until it is at the room's temperature all through; most leave a pillar overnight, many for 24 h.",
	Card: lint.Card{
		Question: "When can I take it out of the mold?",
		Answer:   "When it is at the room's temperature all through. The outside is firm hours before the core: most leave a pillar overnight.",
		AllRight: "Small candles are done sooner: by our cooling model one 2 in wide takes four to five hours, one 4 in wide about twelve, give or " +
			"take 40 %.",
		Do: "Feel the whole mold: if any of it is still warm, wait. A candle that is ready has shrunk from the wall and slides out.",
	},
	Source: "a cooling model of the vessel (enthalpy method, convection and radiation), good to ±40 %; a core at 30 °C (86 °F) at most: common practice",
	Bad: []lint.Example{
		{
			About:   "an hour after the second pour",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `after = "14 h"`, To: `after = "1 h"`}},
			Flags:   []string{`"1 h"`},
		},
		{
			About:   "set, and still warm: worth knowing",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: `after = "14 h"`, To: `after = "4 h"`}},
			Flags:   []string{`"4 h"`},
			Level:   lint.Consider,
		},
	},
	Good: []lint.Example{
		{About: "overnight", Recipe: "tide-pillar"},
		{About: "a votive after 3 h", Recipe: "lantern-votive", Changes: []lint.Change{{From: `after = "6 h"`, To: `after = "3 h"`}}},
	},
	Check: checkUnmoldTooSoon,
}

func checkUnmoldTooSoon(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Steps {
		s := &b.Steps[i]
		if s.Kind != "unmold" {
			continue
		}
		var worst *early
		for _, vessel := range s.Vessels {
			if b.Vessels[vessel].Kind == "mold" {
				worst = worst.or(tooSoon(p, b, s, vessel))
			}
		}
		if worst != nil {
			reportTooSoon(p, s, worst)
		}
	}
}

// early is an unmolding that is too soon after a pour.
type early struct {
	pour  *cooling.Pour
	after quantity.Rat // s
	times *cooling.Windows
}

// wait is how long the core still takes to set, in s; negative: it is set.
func (e *early) wait() float64 { return float64(e.times.CoreSet) - e.after.Float64() }

// or is the one whose core takes longer.
func (e *early) or(o *early) *early {
	if e == nil || o != nil && o.wait() > e.wait() {
		return o
	}
	return e
}

// tooSoon looks at every pour into a vessel before it is unmolded. One that is
// surely cool by then is not worked out.
func tooSoon(p *lint.Pass, b *batch.Batch, s *batch.Step, vessel int) *early {
	var worst *early
	c := cooling.Of.In(p.View)
	for i := range c.Pours {
		pour := &c.Pours[i]
		if pour.Vessel != vessel || pour.Step.Index > s.Index || doubted(p, b, pour.Step) {
			continue
		}
		after, _ := since(s, pour.Step)
		if !after.Known() {
			if waited := s.Block.Get("after"); waited.IsAmount() && waited.Amount().Base().Float64() >= pour.SurelyCool() {
				continue // since the step before alone
			}
		}
		if !pour.Ask(p) || !after.Ask(p) || after.Value.Float64() >= pour.SurelyCool() {
			continue
		}
		times := pour.Windows(p.View)
		seconds := after.Value.Float64()
		if seconds < float64(times.CoreSet) || !times.CoreCool.Never() && seconds < float64(times.CoreCool) {
			worst = worst.or(&early{pour, after.Value, times})
		}
	}
	return worst
}

func reportTooSoon(p *lint.Pass, s *batch.Step, e *early) {
	poured := "the pour"
	if e.pour.Second {
		poured = "the second pour"
	}
	f := lint.Finding{At: atWait(s), Notes: []lint.Note{{Place: lint.AtHeader(e.pour.Step.Block), Message: "poured here"}}}
	if wait := e.wait(); wait > 0 {
		f.Message = fmt.Sprintf("unmolded %s after %s, about %s before its core is set: by the cooling model that takes %s. Liquid wax in a shell can spill hot; most leave a candle overnight (common practice)",
			long(e.after), poured, cooling.Estimate(wait), spread(e.times.CoreSet))
	} else {
		f.Levels = lint.Every(lint.Consider)
		wait := float64(e.times.CoreCool) - e.after.Float64()
		f.Message = fmt.Sprintf("unmolded %s after %s, about %s before its core has come down to 30 °C (86 °F): by the cooling model that takes %s. It is set and still soft; most leave a candle overnight (common practice)",
			long(e.after), poured, cooling.Estimate(wait), spread(e.times.CoreCool))
	}
	f.Message = reckoned(f.Message, e.pour)
	p.Report(f)
}
