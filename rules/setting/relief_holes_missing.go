package setting

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/cooling"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// ReliefHolesMissing is a second pour onto a skin that was never opened.
var ReliefHolesMissing = &lint.Rule{
	Name:   "relief-holes-missing",
	Group:  group,
	Title:  "a second pour into a wide mold with no relief holes before it",
	Levels: lint.Levels{OwnUse: lint.Consider, Class: lint.Consider, Sale: lint.Should},
	Why: "The top sets over while the inside is still liquid and shrinking. The hollow that forms is under that skin, and a second pour on top of it " +
		"never gets there. Holes poked beside the wick let air in, so that no vacuum pulls the sides in, and let the second pour down into the hollow.",
	Remedy: "Poke three to five holes beside the wick once a skin has formed, about 2 h after the pour, and open them again until the second pour. " +
		"Stay clear of the bottom.",
	Card: lint.Card{
		Question: "Why are holes poked into the candle?",
		Answer: "The top sets while the inside is still liquid and shrinking. Holes let air into the hollow under the skin, and let the second pour " +
			"get there.",
		AllRight: "Slim candles up to 2 in (50 mm), and those that get no second pour.",
		Do:       "Poke three to five holes beside the wick once a skin has formed, not down to the bottom, and open them again until the second pour.",
	},
	Source: "common practice",
	Bad: []lint.Example{
		{
			About:   "no relief holes",
			Recipe:  "tide-pillar",
			Changes: []lint.Change{{From: reliefHolesOfTidePillar, To: ""}},
			Flags:   []string{`step "second pour"`},
		},
		{
			About:  "opened only after the second pour",
			Recipe: "tide-pillar",
			Changes: []lint.Change{
				{From: `"sale"`, To: `"own use"`},
				{From: reliefHolesOfTidePillar, To: ""},
				{From: secondPourOfTidePillar, To: secondPourOfTidePillar + "  step \"relief holes\" { after = \"30 min\" }\n"},
			},
			Flags: []string{`step "second pour"`},
		},
	},
	Good: []lint.Example{
		{About: "opened before the second pour", Recipe: "tide-pillar"},
		{About: "a votive 1 1/2 in wide", Recipe: "lantern-votive", Changes: []lint.Change{{From: "  step \"relief holes\" {\n    after = \"1 h\"\n    count = 2\n  }\n", To: ""}}},
		{About: "a jar", Recipe: "harbor-jar"},
	},
	Check: checkReliefHolesMissing,
}

const reliefHolesOfTidePillar = "  step \"relief holes\" {\n    after = \"2 h\"\n    count = 4\n    depth = \"4 in\"\n    again = \"40 min\"\n  }\n"

// slimMold is how wide in mm a mold is at most that needs no relief holes.
// Common practice.
var slimMold = quantity.Int(50)

func checkReliefHolesMissing(p *lint.Pass) {
	b := batch.Of.In(p.View)
	var said *batch.Step
	for i := range b.Vessels {
		v := &b.Vessels[i]
		second := secondPour(b, i)
		if v.Kind != "mold" || v.Stock == nil || second == nil || second == said || holesBefore(b, second, i) {
			continue
		}
		first := fills(b, second, i)
		if first == nil || !v.Diameter.Ask(p) || !slimMold.Less(v.Diameter.Value) {
			continue
		}
		said = second
		pour := cooling.Of.In(p.View).Into(i, first)
		p.Missing(lint.Finding{
			At: lint.AtHeader(second.Block),
			Message: fmt.Sprintf("no relief holes are opened before this second pour, and %s is %s wide, over the %s from which they are usual (common practice): the hollow under the skin stays",
				v.Stock.Title(), batch.Millimeters(p.View, v.Diameter.Value), millimeters(slimMold)),
			Fixes: func() []schema.Fix { return addReliefHoles(first, second, timeForHoles(p.View, pour)) },
		})
	}
}

func holesBefore(b *batch.Batch, second *batch.Step, vessel int) bool {
	for i := range b.Steps[:second.Index] {
		if s := &b.Steps[i]; s.Kind == "relief holes" && s.Is(vessel) {
			return true
		}
	}
	return false
}

// usualHoles is when relief holes are opened after the pour: 2 h, common
// practice.
var usualHoles = quantity.Int(2 * 3600)

// timeForHoles is when relief holes are offered: after 2 h, and where the
// cooling model finds that too early or too late for this vessel, in the middle
// of the time in which it has them make sense, to 5 min.
func timeForHoles(view *lint.View, pour *cooling.Pour) quantity.Rat {
	if pour == nil || !pour.Modeled() {
		return usualHoles
	}
	holes, usual := pour.Windows(view).ReliefHoles, cooling.Estimate(usualHoles.Float64())
	if holes.From <= usual && usual <= holes.To || holes.To.Never() {
		return usualHoles
	}
	return quantity.Int(300 * int64((holes.From+holes.To)/2/300))
}

// addReliefHoles offers relief holes some time after the first pour. A second
// pour that waited for longer than that right after the first waits for the
// rest.
func addReliefHoles(first, second *batch.Step, opened quantity.Rat) []schema.Fix {
	attrs := []repair.Attr{repair.Text("after", batch.Time(opened))}
	if vessel := second.Block.Get("vessel"); vessel.Known() {
		attrs = append([]repair.Attr{repair.Text("vessel", vessel.Text())}, attrs...)
	}
	fix := repair.After("open relief holes "+batch.Time(opened)+" after the pour", first.Block, repair.Step("relief holes", attrs...))
	if fixed := second.Block.Get("from_pour"); fixed.IsAmount() && !opened.Less(fixed.Amount().Base()) {
		return nil // the second pour is done before then
	}
	wait := second.Block.Get("after")
	if second.Index != first.Index+1 || !wait.IsAmount() || wait.Amount().IsRange() {
		return []schema.Fix{fix}
	}
	if rest := wait.Amount().Base().Sub(opened); rest.Sign() > 0 {
		fix.Edits = append(fix.Edits, schema.SetValue(wait, schema.Quote(batch.Time(rest))))
	}
	return []schema.Fix{fix}
}
