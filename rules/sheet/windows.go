package sheet

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/cooling"
	"wickrule/schema/quantity"
)

// Window is from when to when a step makes sense, as modeled for one pour.
// Times count from that pour.
type Window struct {
	Pour string `json:"pour"` // "after the pour into Round pillar 3 × 6 in"
	What string `json:"what"` // "relief holes"
	From string `json:"from"`
	To   string `json:"to"` // "" where it is from then on
	Note string `json:"note,omitempty"`
}

// Curve is how one pour cools.
type Curve struct {
	Pour   string  `json:"pour"`
	Points []Point `json:"points"`
	Bands  []Band  `json:"bands"` // its windows
}

// Band is from when to when a step makes sense, in hours after the pour.
type Band struct {
	What string  `json:"what"`
	From float64 `json:"from"`
	To   float64 `json:"to"`
}

// Point is one moment of a curve.
type Point struct {
	Hours float64 `json:"hours"`
	Core  float64 `json:"core_celsius"`
	Wall  float64 `json:"wall_celsius"`
}

// Section is a vessel cut open, in mm, for drawing.
type Section struct {
	Title    string  `json:"title"`
	Across   float64 `json:"across_mm"`
	High     float64 `json:"high_mm"`
	First    float64 `json:"first_pour_mm"` // how high the first pour stands as it is poured; 0: not said
	Finished float64 `json:"finished_mm"`   // how high the finished wax stands
	Lines    string  `json:"lines"`         // the fill lines in words
}

// windows takes over the modeled times of the first pours, and their curves.
func (s *Sheet) windows(view *lint.View, b *batch.Batch) {
	c := cooling.Of.In(view)
	said := "" // a note that the pour before has too is not said again
	for i := range c.Pours {
		p := &c.Pours[i]
		w := p.Windows(view)
		if p.Second || w == nil {
			continue
		}
		pour := "after the pour into " + b.Vessels[p.Vessel].Stock.Title()
		if firstPours(b, p.Vessel) > 1 { // layers
			pour = fmt.Sprintf("after step %d, the pour into %s", p.Step.Index+1, b.Vessels[p.Vessel].Stock.Title())
		}
		bands := []Band{}
		note := "±40 %, " + cooling.Because
		if basis := p.Basis(); basis != "" {
			note += ". " + basis
		}
		add := func(what string, from, to cooling.Estimate, open bool) {
			if from.Never() {
				return
			}
			x := Window{Pour: pour, What: what, From: from.String(), Note: note}
			if note != "" && note == said {
				x.Note = ""
			}
			if note != "" {
				said = note
			}
			if !open {
				x.To = to.String()
			}
			s.Windows = append(s.Windows, x)
			note = "" // once for each pour
			if !open && !to.Never() {
				bands = append(bands, Band{what, round(float64(from)/3600, 100), round(float64(to)/3600, 100)})
			}
		}
		second := toppedAfter(b, p.Step, p.Vessel)
		if second {
			note = join(". ", thumb, note)
			add("relief holes", w.ReliefHoles.From, w.ReliefHoles.To, false)
			add("second pour", w.SecondPour.From, w.SecondPour.To, false)
		}
		add("set to the core", w.CoreSet, 0, true)
		if b.Vessels[p.Vessel].Kind == "mold" && lastPour(b, p.Step, p.Vessel) {
			add("unmold", w.Unmold, 0, true)
		}
		curve := Curve{Pour: pour, Points: []Point{}, Bands: bands}
		for _, at := range thinned(w.Curve) {
			curve.Points = append(curve.Points, Point{Hours: round(at.Seconds/3600, 100), Core: round(at.Core, 10), Wall: round(at.Wall, 10)})
		}
		if len(curve.Points) > 1 {
			s.Curves = append(s.Curves, curve)
		}
	}
}

// thumb is the rule of thumb that stands beside the modeled relief holes.
const thumb = "Rule of thumb: 2 to 3 h after the pour (common practice)"

// toppedAfter says whether a second pour goes onto a pour. Where it does not say
// which, it is the last before it.
func toppedAfter(b *batch.Batch, pour *batch.Step, vessel int) bool {
	for i := range b.Pours {
		if p := &b.Pours[i]; p.Second && p.First == pour && p.Step.Is(vessel) {
			return true
		}
	}
	return false
}

// lastPour says whether no further pour but second ones goes into a vessel.
func lastPour(b *batch.Batch, pour *batch.Step, vessel int) bool {
	for i := range b.Pours {
		if p := &b.Pours[i]; !p.Second && p.Step.Index > pour.Index && p.Step.Is(vessel) {
			return false
		}
	}
	return true
}

// firstPours is how many pours into a vessel are no second pour.
func firstPours(b *batch.Batch, vessel int) int {
	n := 0
	for i := range b.Pours {
		if !b.Pours[i].Second && b.Pours[i].Step.Is(vessel) {
			n++
		}
	}
	return n
}

// shown is how many points of a curve are drawn.
const shown = 60

func thinned(all []cooling.Point) []cooling.Point {
	if len(all) <= shown {
		return all
	}
	some := make([]cooling.Point, 0, shown)
	for i := range shown {
		some = append(some, all[i*(len(all)-1)/(shown-1)])
	}
	return some
}

func round(x, per float64) float64 {
	if x < 0 {
		return -round(-x, per)
	}
	return float64(int64(x*per+0.5)) / per
}

// sections draws the vessels whose measures are known.
func (s *Sheet) sections(view *lint.View, b *batch.Batch) {
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Kind == "taper" || !v.Diameter.Known() || !v.Height.Known() || !v.Headspace.Known() || v.Stock == nil {
			continue
		}
		out := Section{Title: v.Stock.Title(), Across: v.Diameter.Value.Float64(), High: v.Height.Value.Float64()}
		finished := v.Height.Value.Sub(v.Headspace.Value)
		if finished.Sign() <= 0 {
			continue
		}
		out.Finished = finished.Float64()
		mm := func(r quantity.Rat) string {
			return quantity.FromBase(r, quantity.Millimeter).Both(view.Units())
		}
		out.Lines = "finished " + mm(finished) + " high"
		if leave, ok := leaves(b, i); ok {
			first := v.Height.Value.Sub(leave)
			out.First = first.Float64()
			out.Lines = "first pour to " + mm(leave) + " below the rim, " + out.Lines
		}
		s.Sections = append(s.Sections, out)
	}
}

// leaves is what the only first pour into a vessel leaves below the rim, in mm.
func leaves(b *batch.Batch, vessel int) (quantity.Rat, bool) {
	var leave quantity.Rat
	found, pours := false, 0
	for i := range b.Pours {
		p := &b.Pours[i]
		if p.Second || !p.Step.Is(vessel) {
			continue
		}
		pours++
		if said := p.Step.Block.Get("leave"); said.IsAmount() {
			leave, found = said.Amount().High().Base(), true
		}
	}
	return leave, found && pours == 1
}
