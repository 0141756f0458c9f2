package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// GlassTooCold is wax poured into a container so much colder that it can
// crack. Only the first pour strikes the bare wall.
var GlassTooCold = &lint.Rule{
	Name:   "glass-too-cold-for-pour",
	Group:  group,
	Title:  "hot wax poured into a container too cold for it",
	Levels: lint.Every(lint.Should),
	Why: "Glass that is heated suddenly on the inside grows there before the outside does, and cracks: at once, with hot wax over your hands, or weeks later under a flame. " +
		"Even where it holds, cold glass chills the wax into rings and wet spots.",
	Remedy: "Warm the container before the pour, so that the wax is no hotter than it by more than its maker states; where the maker states nothing, by 50 °C (90 °F).",
	Card: lint.Card{
		Question: "Why are the jars warmed before the pour?",
		Answer: "So that hot wax does not crack them. Between wax and glass there may be as much as the glass's maker states; where that is " +
			"nothing, 50 °C (90 °F).",
		AllRight: "Wax that is poured cool needs no warm glass, as long as the two are closer together than that.",
		Do: "Warm them slowly and dry to 35 to 65 °C (95 to 150 °F), in a low oven or a warm cupboard, and set them on wood or cloth, never on " +
			"cold stone.",
	},
	Source:   "the container maker's figure; 50 °C where there is none: common practice, after the thermal shock test of ASTM F2179 (from memory)",
	Cautions: "Warm glass slowly and dry, in a low oven or a warm cupboard, never over a flame.",
	Bad: []lint.Example{
		{
			About:   "a pour at 172 °F into a glass at room temperature",
			Recipe:  "kitchen-shelf",
			Changes: []lint.Change{{From: "  step \"warm container\" {\n    to = \"120 °F\"\n  }\n", To: ""}},
			Flags:   []string{`"172 °F"`},
		},
		{
			About:   "warmed, but not enough",
			Recipe:  "tidepool-gel",
			Changes: []lint.Change{{From: `to = "125 °F"`, To: `to = "99 °F"`}},
			Flags:   []string{`"190 °F"`},
		},
		{
			About:   "a glass that states nothing",
			Recipe:  "kitchen-shelf",
			Changes: []lint.Change{{From: "  step \"warm container\" {\n    to = \"120 °F\"\n  }\n", To: ""}, {From: `container "tumbler-10"`, To: `container "plain-tumbler"`}},
			Stock: "container \"plain-tumbler\" {\n  title            = \"Plain tumbler\"\n  kind             = \"jar\"\n  diameter         = \"2.9 in\"\n  height           = \"3 1/2 in\"\n  holds            = \"300 mL\"\n" +
				"  material         = \"glass\"\n  made_for_candles = true\n}\n",
			Flags: []string{`"172 °F"`},
		},
	},
	Good: []lint.Example{
		{About: "warmed to just 90 °F below the pour", Recipe: "tidepool-gel", Changes: []lint.Change{{From: `to = "125 °F"`, To: `to = "100 °F"`}}},
		{About: "a cool pour into glass at room temperature", Recipe: "fogbank-soy", Shelf: `container straight-jar-8`},
		{About: "a tin bears more", Recipe: "bosun-tin", Shelf: `container tin-8`},
	},
	Also:  []string{"concession-unused"},
	Check: checkGlassTooCold,
}

// usualShock is the sudden difference that glass is taken to stand where its
// maker states none: 50 °C. Common practice, after ASTM F2179 (from memory).
var usualShock = quantity.Int(50)

func checkGlassTooCold(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Kind != "container" || v.Stock == nil {
			continue
		}
		pour := firstPourInto(b, i)
		if pour == nil || !pour.Heat.IsAmount() || doubted(p, b, pour) {
			continue
		}
		limit, stated, ok := shockOf(p, v)
		if !ok {
			continue
		}
		wall, warmed, ok := wallBefore(p, b, i, pour)
		if !ok {
			continue
		}
		if limit.Less(high(pour).Sub(wall.Base())) {
			reportGlass(p, v, pour, wall, warmed, limit, stated)
		}
	}
}

func firstPourInto(b *batch.Batch, vessel int) *batch.Step {
	for i := range b.Pours {
		if s := b.Pours[i].Step; s.Is(vessel) {
			return s
		}
	}
	return nil
}

// shockOf is the sudden difference in K that a container stands. False: no
// figure is stated or usual.
func shockOf(p *lint.Pass, v *batch.Vessel) (limit quantity.Rat, said schema.Value, ok bool) {
	said = v.Stock.Get("thermal_shock")
	if said.IsAmount() {
		return said.Amount().Base(), said, true
	}
	material := v.Stock.Get("material")
	if said.Broken() {
		return limit, said, false
	}
	switch material.Text() {
	case "glass", "ceramic", "concrete":
		return usualShock, said, true
	}
	if material.Absent() {
		p.CannotCheck(v.Stock, "material")
	}
	return limit, said, false
}

// wallBefore is how warm a container is at a pour: as it was warmed last, at
// the low end of a range, else as the room is. False: it was warmed, and
// nothing says how far.
func wallBefore(p *lint.Pass, b *batch.Batch, vessel int, pour *batch.Step) (wall quantity.Quantity, warmed *batch.Step, ok bool) {
	for i := range b.Steps[:pour.Index] {
		if s := &b.Steps[i]; s.Kind == "warm container" && s.Is(vessel) {
			warmed = s
		}
	}
	if warmed != nil {
		to := warmed.Block.Get("to")
		if to.Absent() {
			p.CannotCheck(warmed.Block, "to")
		}
		if !to.IsAmount() {
			return wall, warmed, false
		}
		return to.Amount().Low(), warmed, true
	}
	room := p.Recipe.Get("room")
	switch {
	case room.IsAmount():
		return room.Amount().Low(), nil, true
	case room.Broken():
		return wall, nil, false
	}
	return p.Room().Low(), nil, true
}

func reportGlass(p *lint.Pass, v *batch.Vessel, pour *batch.Step, wall quantity.Quantity, warmed *batch.Step, limit quantity.Rat, said schema.Value) {
	heat := pour.Heat.Amount()
	hot := heat.High()
	apartBy := high(pour).Sub(wall.Base())
	state := "at the room's " + wallText(wall, hot)
	f := lint.Finding{At: lint.AtValue(pour.Heat), Notes: batch.NoteAt(limitHere, said)}
	if warmed != nil {
		state = "warmed to " + wallText(wall, hot)
		f.Notes = append(f.Notes, batch.NoteAt("warmed here", warmed.Block.Get("to"))...)
	}
	bears := fmt.Sprintf("the %s it stands", apart(limit, hot))
	if !said.Known() {
		bears = fmt.Sprintf("the %s that such a wall is taken to stand (it states no thermal_shock; common practice)", apart(limit, hot))
	}
	f.Message = fmt.Sprintf("the pour at %s strikes %s %s: %s apart, %s over %s. It can crack; warm it to at least %s first",
		reaching(p.View, heat), v.Stock.Title(), state, apart(apartBy, hot), apart(apartBy.Sub(limit), hot), bears, warmTo(high(pour).Sub(limit), hot))
	if warmed != nil {
		p.Report(f)
		return
	}
	p.Missing(f)
}

// wallText is how warm a wall is, as it is written, else in the pour's scale.
func wallText(wall, hot quantity.Quantity) string {
	if wall.Written() == "" {
		return inScale(wall.Base(), hot)
	}
	return wall.Both(hot.Unit().System)
}

// warmTo is the least a container is warmed to, in °C, in whole degrees of the
// pour's scale.
func warmTo(celsius quantity.Rat, hot quantity.Quantity) string {
	number := quantity.FromBase(celsius, hot.Unit()).Number().Ceil(quantity.Int(1))
	return quantity.Of(number, hot.Unit()).Both(hot.Unit().System)
}
