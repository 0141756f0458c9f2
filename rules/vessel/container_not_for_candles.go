package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// ContainerNotForCandles is a vessel that may burn, crack or melt.
var ContainerNotForCandles = &lint.Rule{
	Name:   "container-not-for-candles",
	Group:  group,
	Title:  "a container that is not made to have a flame in it",
	Levels: lint.Every(lint.Must), Binding: true,
	Why: "At the end of its life the flame stands on the bottom of the vessel, and the wax around it is as hot as a frying pan. Drinking glasses crack, wood and shells catch fire, " +
		"bare concrete soaks up wax and becomes a wick itself, plastic melts. A vessel made for candles has been tested for just that.",
	Remedy:   "Use a vessel whose maker sells it for candles. Concrete must be sealed with a sealer made for heat.",
	Source:   "common practice; the ideas of ASTM F2179 on glass for candles (from memory)",
	Cautions: "There is no safe way to test this by eye: glass that has held before cracks the next time.",
	Bad: []lint.Example{
		{
			About:   "a drinking glass",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `container "tumbler-10"`, To: `container "drinking-glass"`}},
			Stock:   otherVessel("drinking-glass", `material = "glass"`, `made_for_candles = false`),
			Flags:   []string{`"drinking-glass"`},
		},
		{
			About:   "a wooden bowl",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `container "tumbler-10"`, To: `container "wooden-bowl"`}},
			Stock:   otherVessel("wooden-bowl", `material = "wood"`, `made_for_candles = true`),
			Flags:   []string{`"wooden-bowl"`},
		},
	},
	Also:  []string{"test-burn-missing", "container-overfilled"},
	Good:  []lint.Example{{About: "a tumbler made for candles", Recipe: "harbor-jar"}, {About: "nothing burns in a clamshell of melts", Recipe: "gorse-melt"}},
	Check: checkContainerMaterial,
}

func otherVessel(key, material, made string) string {
	return "container \"" + key + "\" {\n  kind     = \"jar\"\n  diameter = \"2.9 in\"\n  opening  = \"2.9 in\"\n  height   = \"3.75 in\"\n  holds    = \"300 mL\"\n  " + material + "\n  " + made +
		"\n  thermal_shock = \"90 °F\"\n  finish = \"plain\"\n}\n"
}

func checkContainerMaterial(p *lint.Pass) {
	eachVessel(p, func(b *batch.Batch, _ int, v *batch.Vessel) {
		if v.Kind != "container" || b.Makes == "melt" {
			return
		}
		made, material, finish := v.Stock.Get("made_for_candles"), v.Stock.Get("material"), v.Stock.Get("finish")
		p.CannotCheck(v.Stock, "made_for_candles")
		p.CannotCheck(v.Stock, "material")
		f := lint.Finding{At: lint.AtLabel(v.Block)}
		if material.Known() {
			f.Notes = []lint.Note{{Place: lint.AtValue(material), Message: "what it is made of is stated here"}}
		}
		name := v.Stock.Title()
		switch material.Text() {
		case "wood", "shell":
			f.Message = fmt.Sprintf("%s is made of %s: it can catch fire or crack when the flame comes down to it", name, material.Text())
		case "concrete":
			if finish.Broken() || finish.Text() == "sealed" || finish.Text() == "glazed" {
				break
			}
			f.Message = fmt.Sprintf("%s is of concrete and nothing says that it is sealed: it soaks up wax and can burn like a wick itself", name)
		case "other plastic":
			f.Message = fmt.Sprintf("%s is made of plastic: it melts when the flame comes down to it", name)
		case "polycarbonate":
			if v.Stock.Get("kind").Text() != "tealight cup" || made.No() {
				f.Message = fmt.Sprintf("%s is made of polycarbonate: only tealight cups that are rated for it may be, for they hold little wax and burn out soon", name)
			}
		}
		if f.Message == "" && made.No() {
			f.Message = fmt.Sprintf("%s is not made for candles: nobody has tested that it stands a flame to the last of the wax", name)
			f.Notes = []lint.Note{{Place: lint.AtValue(made), Message: "that it is not is stated here"}}
		}
		if f.Message != "" {
			p.Report(f)
		}
	})
}
