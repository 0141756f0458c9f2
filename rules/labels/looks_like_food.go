package labels

import (
	"fmt"

	"wickrule/lint"
)

// LooksLikeFood is a candle that is declared to look like food, sold where that
// is restricted.
var LooksLikeFood = &lint.Rule{
	Name:   "looks-like-food",
	Group:  Group,
	Title:  "a candle that looks like food, for the EU or the UK",
	Levels: lint.Levels{Class: lint.Consider, Sale: lint.Should},
	Why: "A child bites into what looks like a cupcake or a berry, and wax with fragrance oil in it chokes and poisons. In the EU a product that is no food but looks like it counts against its safety, " +
		"and in the UK such things may not be supplied where they can be mistaken so. The recipe says that it looks like food (looks_like); by its shape the program would not know.",
	Remedy: "Choose another shape, or ask the authority for product safety before you sell it.",
	Card: lint.Card{
		Question: "Can I make candles that look like cupcakes or fruit?",
		Answer:   "In the EU and the UK that counts against them: a child may bite into one. Ask the authority for product safety before you sell any.",
		AllRight: "Shapes that nobody takes for something to eat.",
		Do:       "Choose another shape, and keep the ones you have out of the reach of children.",
	},
	Source:   "from memory: EU: Regulation (EU) 2023/988, Article 6(1)(f), formerly Directive 87/357/EEC. UK: Food Imitations (Safety) Regulations 1989",
	Cautions: deferral + " Keep such candles out of the reach of children, at the workshop too.",
	Bad: []lint.Example{{
		About:   "a cupcake in a jar",
		Recipe:  "skerry-eu",
		Changes: []lint.Change{{From: `made_for = "sale"`, To: "made_for = \"sale\"\n  looks_like = \"food\""}},
		Flags:   []string{`"food"`},
	}, {
		About:   "taught in a class",
		Recipe:  "skerry-eu",
		Changes: []lint.Change{{From: `made_for = "sale"`, To: "made_for = \"class\"\n  looks_like = \"food\""}},
		Flags:   []string{`"food"`},
	}},
	Good: []lint.Example{
		{About: "it looks like a candle", Recipe: "skerry-eu", Shows: `made_for = "sale"`},
		{About: "for the shop's own table", Recipe: "skerry-eu", Changes: []lint.Change{{From: `made_for = "sale"`, To: "made_for = \"own use\"\n  looks_like = \"food\""}}},
		{About: "the US has no such rule for candles that is known here", Recipe: "tide-pillar", Changes: []lint.Change{{From: `made_for = "sale"`, To: "made_for = \"sale\"\n  looks_like = \"food\""}}},
	},
	Check: checkFood,
}

func checkFood(p *lint.Pass) {
	said := p.Recipe.Get("looks_like")
	if said.Text() != "food" || !p.SoldIn("EU") && !p.SoldIn("UK") {
		return
	}
	p.Report(lint.Finding{At: lint.AtValue(said), Message: fmt.Sprintf("%s looks like food, and a child may bite it: %s restricts the sale of what can be mistaken for food (from memory)",
		p.Recipe.Title(), theMarkets(classified(p)))})
}
