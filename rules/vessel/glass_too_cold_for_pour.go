package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// GlassTooColdForPour is hot wax into glass that is not warm enough.
var GlassTooColdForPour = &lint.Rule{
	Name:   "glass-too-cold-for-pour",
	Group:  group,
	Title:  "a pour into glass that is too cold for it",
	Levels: lint.Every(lint.Should),
	Why: "Hot wax heats the inside of the glass at once while the outside is still cold, and the strain can crack it: now, or weeks later with a flame in it. " +
		"Warm glass also gives a smoother wall.",
	Remedy:   "Warm the glass before the pour, or pour cooler if the wax allows it.",
	Source:   "the container's own figure; where none is stated, 50 °C (90 °F): common practice, as in thermal shock tests of candle glass (ASTM F2179, from memory)",
	Cautions: "Never stand hot glass on a cold stone, and never cool it in water or a freezer.",
	Bad: []lint.Example{{
		About:   "166 °F into a cold tumbler",
		Recipe:  "harbor-jar",
		Changes: []lint.Change{{From: "  step \"warm container\" {\n    to = \"110 °F\"\n  }\n", To: ""}},
		Flags:   []string{`"166 °F"`},
	}},
	Good:  []lint.Example{{About: "a warm tumbler", Recipe: "harbor-jar"}, {About: "soy is poured cool", Recipe: "fogbank-soy"}},
	Check: checkCold,
}

// usualShock is 50 K.
var usualShock = quantity.Int(50)

func checkCold(p *lint.Pass) {
	eachVessel(p, func(b *batch.Batch, index int, v *batch.Vessel) {
		if v.Kind != "container" {
			return
		}
		if material := v.Stock.Get("material").Text(); material != "glass" && material != "ceramic" {
			return
		}
		pour := firstPour(b, index)
		if pour == nil || !pour.Heat.IsAmount() {
			return
		}
		glass, how, ok := warmth(p, b, index, pour)
		shock := v.Stock.Get("thermal_shock")
		if !ok || shock.Broken() {
			return
		}
		limit := usualShock
		if shock.Known() {
			limit = shock.Amount().Low().Base()
		}
		heat := pour.Heat.Amount().High()
		gap := heat.Base().Sub(glass)
		if !limit.Less(gap) {
			return
		}
		f := lint.Finding{At: lint.AtValue(pour.Heat)}
		bears := fmt.Sprintf("%s bears %s", v.Stock.Title(), batch.Apart(p.View, limit))
		if shock.Known() {
			f.Notes = []lint.Note{{Place: lint.AtValue(shock), Message: "what it bears is stated here"}}
		} else {
			bears = fmt.Sprintf("%s does not state what it bears, and %s is usual (common practice)", v.Stock.Title(), batch.Apart(p.View, limit))
		}
		f.Message = fmt.Sprintf("%s into glass at %s is a shock of %s; %s: %s too much. Glass at %s or warmer would do", batch.Both(p.View, heat), how, batch.Apart(p.View, gap), bears,
			batch.Apart(p.View, gap.Sub(limit)), batch.Degrees(p.View, heat.Base().Sub(limit)))
		p.Report(f)
	})
}

// warmth is how warm the glass is at the pour, in °C: as the last step that
// warms it says, at the low end, else the room. False: not known.
func warmth(p *lint.Pass, b *batch.Batch, vessel int, pour *batch.Step) (glass quantity.Rat, how string, ok bool) {
	for i := pour.Index - 1; i >= 0; i-- {
		s := &b.Steps[i]
		if s.Kind != "warm container" || !s.Is(vessel) {
			continue
		}
		to := s.Block.Get("to")
		if !to.IsAmount() {
			p.CannotCheck(s.Block, "to")
			return glass, "", false
		}
		return to.Amount().Low().Base(), batch.Both(p.View, to.Amount().Low()), true
	}
	room := p.Room()
	if own := b.Recipe.Get("room"); own.Known() {
		room = own.Amount()
	} else if own.State() == schema.Broken {
		return glass, "", false
	}
	return room.Base(), "room temperature, " + batch.Both(p.View, room) + ",", true
}
