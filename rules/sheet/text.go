package sheet

import (
	"fmt"
	"io"

	"wickrule/lint/report"
	"wickrule/schema"
)

// Text writes the sheet for a terminal.
func (s *Sheet) Text(w io.Writer, look report.Look) error {
	p := report.NewPage(look)
	p.Title(s.Title, s.Date)
	p.Wrap("", 0, join(". ", s.Shop, facts(s)))
	p.Blank()
	p.Wrap("", 0, schema.Capital(stopped(s.Verdict)))
	for _, f := range s.Findings {
		text := f.Message + " (" + f.Rule + ")"
		if f.Conceded != "" {
			text += ". Conceded: " + f.Conceded
		}
		p.Wrap("  "+f.Level, 12, text)
	}
	for _, r := range s.Remarks {
		p.Wrap("", 2, r)
	}
	for _, pot := range s.Pots {
		s.textWeigh(p, pot)
	}
	if len(s.Vessels) > 0 {
		p.Blank()
		p.Heading("Fill")
		for _, v := range s.Vessels {
			p.Wrap("", 2, vesselText(v))
		}
	}
	p.Blank()
	p.Heading("Do")
	for _, st := range s.Steps {
		p.Wrap(fmt.Sprintf("%4d  ", st.Number), 6, st.Do+bracketed(join("; ", st.When, st.Since)))
		for _, more := range []string{st.Say, join("; ", st.Within...), st.Watch} {
			if more != "" {
				p.Wrap("", 10, schema.Capital(stopped(more)))
			}
		}
	}
	if len(s.Windows) > 0 {
		p.Blank()
		p.Heading("When it sets")
		for _, x := range s.Windows {
			p.Wrap("  "+x.What, 20, windowText(x)+", "+stopped(join(". ", x.Pour, x.Note)))
		}
	}
	if len(s.Burns) > 0 {
		p.Blank()
		p.Heading("Burned")
		for _, t := range s.Burns {
			p.Wrap("", 2, t.Candle+" ("+t.Formula+"): "+join(" ", t.Status, burnFigures(t)))
		}
	}
	for _, l := range s.Labels {
		p.Blank()
		p.Heading(l.Title + onText(l))
		for _, text := range l.Lines {
			p.Wrap("", 2, text)
		}
	}
	for _, h := range s.Hazards {
		p.Blank()
		p.Heading(hazardHeading(h))
		for _, text := range hazardLines(h) {
			p.Wrap("", 2, text)
		}
	}
	list := func(heading string, lines []string) {
		if len(lines) > 0 {
			p.Blank()
			p.Heading(heading)
		}
		for _, text := range lines {
			p.Wrap("", 2, text)
		}
	}
	list("Could not be checked", s.Unchecked)
	list("At the bench", s.Bench)
	list("When it is burned", s.Burning)
	p.Blank()
	p.Wrap("", 0, s.Deferral)
	_, err := io.WriteString(w, p.String())
	return err
}

func (s *Sheet) textWeigh(p *report.Page, pot Pot) {
	p.Blank()
	p.Heading("Weigh" + potTimes(s, pot))
	for _, l := range pot.Weigh {
		text, other := weights(l.Weight)
		p.Wrap(fmt.Sprintf("  %-14s%-11s ", text, other), 28, join(", ", l.Title, l.Said, l.Share, l.Note))
	}
	if pot.Total != nil {
		p.Wrap(fmt.Sprintf("  %-14s%-11s ", pot.Total.Text, pot.Total.Other), 28, join(", ", "together", spare(pot)))
	}
	if pot.Pot != "" {
		p.Wrap("", 2, join(": ", pot.Pot, pot.Full))
	}
}
