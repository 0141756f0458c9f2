package vessel

import (
	"fmt"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// BurnableTopping is something that can burn within the flame's reach.
var BurnableTopping = &lint.Rule{
	Name:   "burnable-topping",
	Group:  group,
	Title:  "flowers, paper, glitter or the like within the flame's reach",
	Levels: lint.Levels{OwnUse: lint.Should, Class: lint.Must, Sale: lint.Must}, Binding: true,
	Why: "What lies in the pool soaks up wax and lights from the flame: a second wick that nobody chose, with a flame nobody sized. Candles with dried flowers have set homes on fire " +
		"and been called back for it. Glitter and crystals drift to the wick and clog it, or carry the flame about.",
	Remedy:   "Leave it off, or put it where the pool never comes: in an outer shell, on the lid, on the box. Then write in_reach = false.",
	Source:   "common practice; recalls of candles with botanicals (consumer safety authorities, from memory)",
	Cautions: "Do not light a candle with dried flowers on it.",
	Bad: []lint.Example{{
		About:   "dried flowers on a jar",
		Recipe:  "harbor-jar",
		Changes: []lint.Change{{From: "  step \"set wick\" {", To: "  topping \"dried-flowers\" {\n    weight = \"2 g\"\n  }\n\n  step \"set wick\" {"}},
		Stock:   "topping \"dried-flowers\" {\n  title = \"Dried flowers\"\n  kind  = \"botanical\"\n}\n",
		Flags:   []string{`"dried-flowers"`},
	}},
	Good: []lint.Example{{
		About:   "in the lid's rim, out of reach",
		Recipe:  "harbor-jar",
		Changes: []lint.Change{{From: "  step \"set wick\" {", To: "  topping \"dried-flowers\" {\n    in_reach = false\n  }\n\n  step \"set wick\" {"}},
		Stock:   "topping \"dried-flowers\" {\n  title = \"Dried flowers\"\n  kind  = \"botanical\"\n}\n",
	}},
	Check: func(p *lint.Pass) {
		b := batch.Of.In(p.View)
		if b.Makes == "melt" {
			return
		}
		for _, topping := range b.Toppings {
			stock, ok := p.Stock("topping", topping.Label)
			reach := topping.Get("in_reach")
			if !ok || reach.Broken() || reach.No() {
				continue
			}
			p.CannotCheck(stock, "kind")
			if why := danger(stock); why != "" {
				p.Report(lint.Finding{At: lint.AtLabel(topping), Message: fmt.Sprintf("%s lies within the flame's reach: %s", stock.Title(), why)})
			}
		}
	},
}

func danger(topping *schema.Block) string {
	switch topping.Get("kind").Text() {
	case "botanical", "paper", "ribbon":
		return "it soaks up wax, lights, and burns as a second wick"
	case "glitter", "mica", "crystal":
		return "loose in the pool it drifts to the wick and clogs it, or carries the flame about"
	}
	return ""
}
