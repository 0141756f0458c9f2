package hazard

import (
	"fmt"
	"strings"

	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

// Step is one comparison with a limit, kept so that it can be shown.
type Step struct {
	Into      Hazard // what the candle falls into where the limit is reached; none where it only has to be named
	Terms     []Term
	Sum       quantity.Rat // ratio of the candle; of acute toxicity the estimate for the candle, in Unit
	Limit     quantity.Rat
	Own       bool // the limit is the substance's own
	Reached   bool
	Provision string // "Annex I, Table 3.4.5"
	Unit      string // mg/kg or mg/L, of acute toxicity; else ""
	Memory    bool   // what decides it is from memory, and was not held against the text of the regulation
}

// Term is one substance in a step.
type Term struct {
	Substance *Substance
	Factor    int64        // what its share is multiplied by: 1, 10, 100, an M-factor
	Counted   bool         // false: it is under CutOff and left out
	CutOff    quantity.Rat // ratio from which it is counted at all
	ATE       quantity.Rat // of acute toxicity: its estimate, in the step's unit
	Converted bool         // the estimate stands for its category (Table 3.1.2)
}

// provision is where the step is laid down, and whether that is from memory.
// Of an estimate each converted figure says it of itself.
func (s *Step) provision() string {
	if s.Memory && s.Unit == "" {
		return s.Provision + ", from memory"
	}
	return s.Provision
}

// For is what the limit decides: "Skin Sens. 1 H317".
func (s *Step) For() string {
	switch {
	case s.Into.Class == NoClass:
		return "naming it on the label"
	case s.Into.Class == AcuteTox:
		return s.Into.String() + " " + howTaken(s.Into.Route)
	}
	return s.Into.String()
}

// add puts a term in and counts it where it reaches the cut-off.
func (s *Step) add(sub *Substance, factor int64, cutOff quantity.Rat) {
	t := Term{Substance: sub, Factor: factor, CutOff: cutOff, Counted: !sub.InCandle.Less(cutOff)}
	s.Terms = append(s.Terms, t)
	if t.Counted {
		s.Sum = s.Sum.Add(sub.InCandle.Mul(quantity.Int(factor)))
	}
}

// decide compares the sum with the limit, which counts as reached.
func (s *Step) decide(limit quantity.Rat) bool {
	s.Limit = limit
	s.Reached = !s.Sum.Less(limit)
	return s.Reached
}

// Counted are the substances that are counted in the step.
func (s *Step) Counted() []*Substance {
	var counted []*Substance
	for _, t := range s.Terms {
		if t.Counted {
			counted = append(counted, t.Substance)
		}
	}
	return counted
}

// keep notes a step that has anything to show, with its result where its
// limit is reached.
func (c *Classification) keep(s Step) bool {
	if len(s.Terms) == 0 {
		return false
	}
	c.Steps = append(c.Steps, s)
	if s.Reached && s.Into.Class != NoClass {
		c.Results = append(c.Results, Result{s.Into, len(c.Steps) - 1})
	}
	return s.Reached
}

// String shows the arithmetic of a step in one line.
func (s *Step) String() string {
	if s.Unit != "" {
		return s.estimate()
	}
	var b strings.Builder
	switch {
	case len(s.Terms) == 1 && s.Terms[0].Factor == 1 && s.Terms[0].Counted:
		b.WriteString(s.Terms[0].Substance.share(s.Limit))
	default:
		s.sum(&b)
	}
	verdict := "under"
	if s.Reached {
		verdict = "at or over"
	}
	limit := "the limit"
	if s.Own {
		limit = "its own limit"
	}
	fmt.Fprintf(&b, ", %s %s of %s for %s (%s)", verdict, limit, show(s.Limit), s.For(), s.provision())
	return b.String()
}

// sum shows a sum: "d-limonene 1.13 % + 10 × citral 0.2 % = 3.13 % of the
// candle".
func (s *Step) sum(b *strings.Builder) {
	first := true
	var left []string
	for _, t := range s.Terms {
		if !t.Counted {
			left = append(left, fmt.Sprintf("%s %s (counts from %s)", t.Substance.Name, beside(t.Substance.InCandle, t.CutOff), show(t.CutOff)))
			continue
		}
		if !first {
			b.WriteString(" + ")
		}
		first = false
		if t.Factor != 1 {
			fmt.Fprintf(b, "%d × ", t.Factor)
		}
		b.WriteString(t.Substance.Name + " " + show(t.Substance.InCandle))
	}
	if first {
		b.WriteString("nothing that counts")
	}
	b.WriteString(" = " + beside(s.Sum, s.Limit) + " of the candle")
	if len(left) > 0 {
		b.WriteString("; left out: " + strings.Join(left, ", "))
	}
}

// estimate shows the estimate for the candle: "100 / (1.5 / 500) =
// 33333 mg/kg".
func (s *Step) estimate() string {
	var b, left strings.Builder
	for _, t := range s.Terms {
		if !t.Counted {
			fmt.Fprintf(&left, "; left out: %s %s (counts from %s)", t.Substance.Name, beside(t.Substance.InCandle, t.CutOff), show(t.CutOff))
			continue
		}
		if b.Len() > 0 {
			b.WriteString(" + ")
		}
		fmt.Fprintf(&b, "%s %s / %s", t.Substance.Name, show(t.Substance.InCandle), t.ATE.Decimal(3))
		if t.Converted {
			b.WriteString(" (its category's figure, Table 3.1.2, from memory)")
		}
	}
	if b.Len() == 0 {
		return fmt.Sprintf("nothing that counts for %s (%s)%s", s.For(), s.Provision, left.String())
	}
	verdict := "over"
	if s.Reached {
		verdict = "at or under"
	}
	return fmt.Sprintf("100 %% / (%s) = %s %s%s, %s the limit of %s %s for %s (%s)", b.String(), s.Sum.Decimal(2), s.Unit, left.String(),
		verdict, s.Limit.Decimal(2), s.Unit, s.For(), s.Provision)
}

// share shows how a substance gets to its share of the candle: "d-limonene:
// 20 % of Kelp and lime, which is 5.66 % of total, makes 1.13 % of the candle".
func (s *Substance) share(limit quantity.Rat) string {
	var parts []string
	for _, p := range s.Parts {
		most := ""
		if p.Range {
			most = "up to "
		}
		parts = append(parts, fmt.Sprintf("%s%s of %s, which is %s", most, show(p.InOil), p.Ingredient.Stock.Title(),
			batch.Percent(p.Ingredient.OfTotal.Value, quantity.OfTotal)))
	}
	return s.Name + ": " + strings.Join(parts, ", and ") + ", makes " + beside(s.InCandle, limit) + " of the candle"
}

func show(ratio quantity.Rat) string { return beside(ratio, ratio) }

// beside shows a ratio in per cent with two places, more of a small one, and
// as many as it takes not to read as the limit beside it: "0.998 %" beside
// "1 %", "0.009 %".
func beside(ratio, limit quantity.Rat) string {
	hundred := quantity.Int(100)
	n, l := ratio.Mul(hundred), limit.Mul(hundred)
	places := 2
	for small := quantity.Int(1); places < 7 && n.Less(small) && n.Sign() > 0; places++ {
		small = small.Mul(quantity.NewRat(1, 10))
	}
	for places < 12 && !n.Equal(l) && n.Decimal(places) == l.Decimal(places) {
		places++
	}
	return n.Decimal(places) + " %"
}
