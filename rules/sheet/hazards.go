package sheet

import (
	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/hazard"
	"wickrule/schema"
)

// Hazards is what a label carries in a market that classifies candles as
// mixtures, worked out from the stock, with the arithmetic that decides it.
type Hazards struct {
	Market string   `json:"market"`          // "EU"
	Candle string   `json:"candle"`          // "" where the recipe makes one kind
	Text   string   `json:"text"`            // the label text to offer
	Due    string   `json:"due,omitempty"`   // what is to be known and done beside it
	Least  string   `json:"least,omitempty"` // why it is the least that applies
	Steps  []string `json:"steps"`
	Decide string   `json:"decides"` // who has the last word
}

// hazards offers the label text of each market that asks for one, and of each
// kind of candle where what it holds makes a difference.
func (s *Sheet) hazards(view *lint.View, b *batch.Batch) {
	for _, market := range view.Markets() {
		if market.Text != "EU" && market.Text != "UK" {
			continue
		}
		c := hazard.Of.In(view)
		var last string
		for i := range max(1, len(b.Vessels)) {
			out := Hazards{Market: market.Text, Least: c.Least(), Steps: []string{}, Decide: schema.Capital(hazard.Decides)}
			fill := batch.Figure{State: schema.Absent}
			if i < len(b.Vessels) {
				fill = b.Vessels[i].Fill
				if len(b.Vessels) > 1 && b.Vessels[i].Stock != nil {
					out.Candle = b.Vessels[i].Stock.Title()
				}
			}
			e := c.Label(market.Text, fill)
			out.Text, out.Due = e.String(), e.Due()
			if e.None() {
				out.Text = "Not classified, and no substance must be named"
			}
			if out.Text+out.Due == last {
				continue // the vessel before it has the same
			}
			last = out.Text + out.Due
			for _, step := range c.Deciding() {
				out.Steps = append(out.Steps, step.String())
			}
			s.Hazards = append(s.Hazards, out)
		}
	}
}

// hazardLines are the lines of one market under its heading.
func hazardLines(h Hazards) []string {
	var lines []string
	if h.Least != "" {
		lines = append(lines, "At least, since "+h.Least+":")
	}
	lines = append(lines, stopped(h.Text))
	if h.Due != "" {
		lines = append(lines, h.Due)
	}
	for _, step := range h.Steps {
		lines = append(lines, stopped(step))
	}
	return append(lines, stopped(h.Decide))
}

func hazardHeading(h Hazards) string {
	return join(", ", "Hazards, for the "+h.Market, h.Candle)
}
