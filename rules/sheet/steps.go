package sheet

import (
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// Step is one thing that is done.
type Step struct {
	Number int      `json:"number"`
	Kind   string   `json:"kind"`
	Do     string   `json:"do"`               // "Pour at 176 °F (80 °C), up to 3/8 in (9.5 mm) below the rim"
	When   string   `json:"when,omitempty"`   // "after 2 h"
	Since  string   `json:"since,omitempty"`  // "3 h 15 min from the first pour"
	Within []string `json:"within,omitempty"` // the ranges and ceilings it lies in
	Say    string   `json:"say,omitempty"`    // the recipe's own words
	Watch  string   `json:"watch,omitempty"`  // what to watch for
}

// steps writes down what is done.
func (s *Sheet) steps(view *lint.View, b *batch.Batch) {
	s.Steps = []Step{}
	poured := false
	for i := range b.Steps {
		step := &b.Steps[i]
		out := Step{Number: i + 1, Kind: step.Kind, Do: do(view, b, step), Say: oneLine(step.Block.Get("say").Text()), Watch: watched(b, step)}
		out.When = when(view, step)
		if poured && step.FromPour.Known() && step.FromPour.Value.Sign() > 0 && step.FromPour.Value.Less(quantity.Int(72*3600)) {
			out.Since = batch.Time(step.FromPour.Value) + " from the first pour"
			if late := step.FromPourLatest; late.Known() && step.FromPour.Value.Less(late.Value) {
				out.Since = batch.Time(step.FromPour.Value) + " to " + batch.Time(late.Value) + " from the first pour"
			}
		}
		out.Within = within(view, b, step)
		poured = poured || step.Kind == "pour"
		s.Steps = append(s.Steps, out)
	}
}

// oneLine is prose as one line.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

func when(view *lint.View, step *batch.Step) string {
	if v := step.Block.Get("from_pour"); v.IsAmount() {
		return v.Amount().String() + " after the first pour"
	}
	if v := step.Block.Get("after"); v.IsAmount() {
		return "after " + v.Amount().String()
	}
	return ""
}

// sentence puts a step together of parts, leaving out what is not known.
type sentence struct {
	view *lint.View
	step *schema.Block
	b    strings.Builder
}

// say adds words.
func (s *sentence) say(words string) *sentence { s.b.WriteString(words); return s }

// with adds an amount of the step in both systems, with words before it.
func (s *sentence) with(before, attr string) *sentence {
	if v := s.step.Get(attr); v.IsAmount() {
		s.b.WriteString(before + v.Amount().Both(s.view.Units()))
	}
	return s
}

// stock adds the titles of what the step names.
func (s *sentence) stock(before, attr string, kinds ...string) *sentence {
	var titles []string
	for _, item := range s.step.Get(attr).Items() {
		title := item.Text
		for _, kind := range kinds {
			if block, ok := s.view.Stock(kind, item.Text); ok {
				title = block.Title()
			}
		}
		titles = append(titles, title)
	}
	if len(titles) > 0 {
		s.b.WriteString(before + strings.Join(titles, " and "))
	}
	return s
}

// do says what is done.
func do(view *lint.View, b *batch.Batch, step *batch.Step) string {
	s := &sentence{view: view, step: step.Block}
	switch step.Kind {
	case "release":
		s.say("Treat the mold")
		if with := step.Block.Get("with"); with.Known() {
			s.say(" with " + with.Text())
		}
	case "warm mold":
		s.say("Warm the mold").with(" to ", "to").with(" for ", "for")
	case "warm container":
		s.say("Warm the containers").with(" to ", "to").with(" for ", "for")
	case "prime wick":
		s.say("Soak the wick in wax").with(" at ", "at").with(" for ", "for")
	case "seal wick hole":
		s.say("Thread the wick and seal its hole").stock(" with ", "with", "seal")
	case "set wick":
		s.say("Set the wick").stock(": ", "wick", "wick").stock(", fixed with ", "with", "seal")
	case "melt":
		s.say("Melt ").say(melted(view, step)).with(" to ", "to")
		if over := step.Block.Get("over"); over.Known() {
			s.say(" " + heatedBy(over.Text()))
		}
		s.with(" and hold it there for ", "hold")
	case "add dye", "add fragrance", "add additive":
		s.say("Stir in ").say(added(view, b, step)).with(" at ", "at").with(", for ", "stir")
	case "pour":
		s.say("Pour").with(" at ", "at").with(", up to ", "leave")
		if step.Block.Get("leave").IsAmount() {
			s.say(" below the rim")
		}
		s.say(into(view, b, step, false))
	case "relief holes":
		s.say("Poke relief holes beside the wick")
		if n := step.Block.Get("count"); n.Known() {
			s.say(", " + count(n.Whole(1), "hole", "holes"))
		}
		s.with(", ", "depth")
		if step.Block.Get("depth").IsAmount() {
			s.say(" deep")
		}
		s.with("; open them again every ", "again")
	case "second pour":
		s.say("Pour the second time").with(" at ", "at").say(into(view, b, step, true))
	case "dip", "overdip":
		s.say(map[string]string{"dip": "Dip", "overdip": "Overdip"}[step.Kind])
		if n := step.Block.Get("times"); n.Known() {
			s.say(" " + count(n.Whole(1), "time", "times"))
		}
		s.with(" at ", "at").with(", and let it hang ", "wait")
		if step.Block.Get("wait").IsAmount() {
			s.say(" between dips")
		}
	case "cool":
		s.say("Let it cool")
		if step.Block.Get("in").Text() == "water" {
			s.say(" in water")
		}
		s.with(" to ", "to").with(" for ", "for").with(", at ", "room")
	case "unmold":
		s.say("Take the candles out of the mold")
	case "trim base":
		s.say("Level the base")
	case "trim wick":
		s.say("Trim the wick").with(" to ", "to")
	case "cure":
		s.say("Let the candles rest").with(" for ", "for")
	case "attach label":
		s.say("Put the label on").stock(": ", "label", "label")
		if on := step.Block.Get("on"); on.Known() && on.Text() != "" {
			s.say(", on the " + on.Text())
		}
	case "note":
		s.say("Note")
	default:
		s.say(step.Kind)
	}
	if v := step.Block.Get("vessel"); v.Known() && len(b.Vessels) > 1 {
		for i := range b.Vessels {
			if b.Vessels[i].Block.Label == v.Text() && b.Vessels[i].Stock != nil {
				s.say(" (" + b.Vessels[i].Stock.Title() + ")")
			}
		}
	}
	return s.b.String()
}

// melted is what a melt melts: the waxes it names, or the wax.
func melted(view *lint.View, step *batch.Step) string {
	s := &sentence{view: view, step: step.Block}
	s.stock("", "wax", "wax")
	if s.b.Len() > 0 {
		return s.b.String()
	}
	return "the wax"
}

func heatedBy(heat string) string {
	switch heat {
	case "water bath":
		return "over a water bath"
	case "direct heat":
		return "over direct heat"
	}
	return "in a " + heat
}

// added is what an adding step stirs in; where one thing was weighed for the
// sheet's first pot, the weighing table has its weight.
func added(view *lint.View, b *batch.Batch, step *batch.Step) string {
	var titles []string
	for _, in := range stirredIn(b, step) {
		titles = append(titles, title(in))
	}
	if len(titles) == 0 {
		return strings.TrimPrefix(step.Kind, "add ")
	}
	return strings.Join(titles, " and ")
}

// into is how much a pour puts into each vessel, where it is about one kind.
func into(view *lint.View, b *batch.Batch, step *batch.Step, second bool) string {
	if len(step.Vessels) != 1 {
		return ""
	}
	v := &b.Vessels[step.Vessels[0]]
	f, pours := v.FirstFill, 0
	if second {
		f = v.TopUp
	}
	for i := range b.Pours {
		if b.Pours[i].Step.Is(step.Vessels[0]) && b.Pours[i].Second == second {
			pours++
		}
	}
	w := known(view, f)
	if w == nil || pours != 1 {
		return ""
	}
	return ", about " + w.Text + " (" + w.Other + ") into each"
}

// within says what limits a step's heat lies in.
func within(view *lint.View, b *batch.Batch, step *batch.Step) []string {
	var list []string
	said := func(what string, s batch.Stated) {
		if s.Known() && !s.Empty {
			text := what + s.Range(view)
			if s.Family != "" {
				text += ", which is usual for " + s.Family + " (" + s.Source() + ")"
			}
			list = append(list, text)
		}
	}
	switch step.Kind {
	case "melt":
		said("the wax is melted to ", b.MeltTo())
	case "add fragrance":
		said("fragrance goes in at ", b.AddFragranceAt())
	case "pour":
		said("the wax is poured at ", b.PourAt())
	}
	if step.Heat.Spec != nil {
		said("never above ", b.NeverAbove())
	}
	return list
}
