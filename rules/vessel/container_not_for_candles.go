package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
)

// ContainerNotForCandles is a container that must not hold a flame. Melts have
// none, so they may lie in what they like.
var ContainerNotForCandles = &lint.Rule{
	Name:   "container-not-for-candles",
	Group:  group,
	Title:  "a container that is not made to hold a flame",
	Levels: lint.Every(lint.Must), Binding: true,
	Why: "A candle heats its container for hours, and most of all in the last half inch. A drinking glass that was never annealed for that cracks and lets the hot wax out; " +
		"wood and shell char and catch; bare concrete soaks up wax like a wick; plastic melts. From outside the right vessel and the wrong one may look the same.",
	Remedy: "Use a container that its maker sells for candles and rates for that heat. Plastic is for tealight cups that are rated for it, and for the clamshells of melts.",
	Card: lint.Card{
		Question: "Can I make a candle in any pretty glass, cup or bowl?",
		Answer: "No. Only in one that its maker sells for candles. Others crack, char or melt, most often in the last half inch, when nobody looks " +
			"any more.",
		AllRight: "In glass, tin or ceramic that is rated for candles. Plastic only as a tealight cup that is rated for it, or for melts, which have " +
			"no wick.",
		Do: "Ask for a candle container. Do not find out at home whether another one holds.",
	},
	Source:   "ASTM F2179 (glass containers for candles: annealing and thermal shock); the rest is common practice",
	Cautions: "Do not try a doubtful vessel out by burning a candle in it in the house.",
	Bad: []lint.Example{
		{
			About:   "a glass for drinking",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `container "tumbler-10"`, To: `container "wine-glass"`}},
			Stock: "container \"wine-glass\" {\n  title            = \"Stemless wine glass\"\n  kind             = \"jar\"\n  diameter         = \"2.9 in\"\n  height           = \"3 1/2 in\"\n" +
				"  holds            = \"300 mL\"\n  material         = \"glass\"\n  made_for_candles = false\n  thermal_shock    = \"90 °F\"\n}\n",
			Flags: []string{`"wine-glass"`},
		},
		{
			About:   "a bowl of wood, whatever it is sold for",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `container "tumbler-10"`, To: `container "dough-bowl"`}},
			Stock: "container \"dough-bowl\" {\n  title            = \"Small dough bowl\"\n  kind             = \"bowl\"\n  diameter         = \"2.9 in\"\n  height           = \"3 1/2 in\"\n" +
				"  holds            = \"300 mL\"\n  material         = \"wood\"\n  made_for_candles = true\n}\n",
			Flags: []string{`"dough-bowl"`},
		},
		{
			About:   "concrete that is not sealed",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `container "tumbler-10"`, To: `container "cast-cup"`}},
			Stock: "container \"cast-cup\" {\n  title            = \"Cast concrete cup\"\n  kind             = \"jar\"\n  diameter         = \"2.9 in\"\n  height           = \"3 1/2 in\"\n" +
				"  holds            = \"300 mL\"\n  material         = \"concrete\"\n  finish           = \"plain\"\n  made_for_candles = true\n  thermal_shock    = \"90 °F\"\n}\n",
			Flags: []string{`"cast-cup"`},
		},
		{
			About:   "a plastic clamshell with a wick in it",
			Recipe:  "gorse-melt",
			Changes: []lint.Change{{From: `makes    = "melt"`, To: `makes    = "jar"`}},
			Flags:   []string{`"clamshell-6"`},
		},
	},
	Good: []lint.Example{
		{About: "a jar made for candles", Recipe: "harbor-jar", Shelf: `container tumbler-10`},
		{About: "a rated tealight cup of polycarbonate", Recipe: "saltmarsh-tealight", Shelf: `container tealight-cup`},
		{About: "melts in a clamshell", Recipe: "gorse-melt", Shelf: `container clamshell-6`},
		{
			About:   "concrete that is sealed",
			Recipe:  "harbor-jar",
			Changes: []lint.Change{{From: `container "tumbler-10"`, To: `container "sealed-cup"`}},
			Stock: "container \"sealed-cup\" {\n  title            = \"Sealed concrete cup\"\n  kind             = \"jar\"\n  diameter         = \"2.9 in\"\n  height           = \"3 1/2 in\"\n" +
				"  holds            = \"300 mL\"\n  material         = \"concrete\"\n  finish           = \"sealed\"\n  made_for_candles = true\n  thermal_shock    = \"90 °F\"\n}\n",
		},
	},
	Also:  []string{"test-burn-missing", "wick-missing", "wick-tab-missing", "warning-label-missing", "caution-missing", "signal-missing", "wax-not-for-container", "wick-untrimmed", "net-weight-overstated"},
	Check: checkContainer,
}

func checkContainer(p *lint.Pass) {
	b := batch.Of.In(p.View)
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Kind != "container" || v.Stock == nil || !burns(b, v) {
			continue
		}
		judgeContainer(p, v)
	}
}

func judgeContainer(p *lint.Pass, v *batch.Vessel) {
	made, material, finish := v.Stock.Get("made_for_candles"), v.Stock.Get("material"), v.Stock.Get("finish")
	name := v.Stock.Title()
	f := lint.Finding{At: lint.AtLabel(v.Block), Notes: batch.NoteAt("its material is stated here", material)}
	switch material.Text() {
	case "wood":
		f.Message = fmt.Sprintf("%s is of wood: wood chars and catches where a flame heats it, whatever it is lined with", name)
	case "shell":
		f.Message = fmt.Sprintf("%s is of shell: it cracks and can burst where a flame heats it, and lets the hot wax out", name)
	case "polycarbonate", "other plastic":
		kind := v.Stock.Get("kind")
		if kind.Text() != "tealight cup" && !kind.Broken() {
			f.Message = fmt.Sprintf("%s is of plastic (%s): it softens beside a flame and lets the hot wax out; of plastic only tealight cups that are rated for it hold a flame", name, material.Text())
		}
	case "concrete":
		switch {
		case finish.Absent():
			p.CannotCheck(v.Stock, "finish")
		case finish.Known() && finish.Text() != "sealed" && finish.Text() != "glazed":
			f.Message = fmt.Sprintf("%s is of concrete with a %s finish: unless it is sealed it soaks up wax, and wall and all can burn like a wick", name, finish.Text())
			f.Notes = append(f.Notes, batch.NoteAt("its finish is stated here", finish)...)
		}
	case "ceramic":
		if finish.Text() == "plain" && !made.No() {
			f.Levels = lint.Every(lint.Should)
			f.Message = fmt.Sprintf("%s is of bare ceramic: unless it is glazed or sealed it soaks up wax, weeps, and can burn at the wall", name)
		}
	}
	if made.No() && f.Message == "" {
		f.Notes = batch.NoteAt("stated here", made)
		f.Message = fmt.Sprintf("%s is not made for candles: nobody has rated it for hours beside a flame, and where it cracks or burns the hot wax runs out alight", name)
	}
	if made.Absent() {
		p.CannotCheck(v.Stock, "made_for_candles")
	}
	if material.Absent() {
		p.CannotCheck(v.Stock, "material")
	}
	if f.Message != "" {
		p.Report(f)
	}
}
