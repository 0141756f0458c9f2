package handbook

import (
	"wickrule/lint"
	"wickrule/schema"
)

// coverPage is the first page.
type coverPage struct {
	Counts []string
	Levels []levelMeaning
	Tuned  []tunedRule
}

type levelMeaning struct {
	Level lint.Level
	Means string
}

// tunedRule is a rule that speaks otherwise in this shop.
type tunedRule struct{ Title, File, What string }

func (b *book) cover() {
	own := 0
	var list []tunedRule
	for _, r := range b.rules {
		if b.own(r) {
			own++
		}
		if t := b.tunedHere(r); t != nil {
			list = append(list, tunedRule{schema.Capital(r.Title), RulePage(r.Name, b.own(r)), t.What})
		}
	}
	stock := 0
	for _, kind := range schema.StockKinds() {
		stock += len(b.Shop.Shelf(kind))
	}
	p := coverPage{Levels: levelMeanings(), Tuned: list, Counts: []string{
		counted(len(b.rules)-own, "rule of the trade", "rules of the trade"),
		counted(own, "rule of the shop's own", "rules of the shop's own"),
		counted(stock, "item on the shelves", "items on the shelves"),
		counted(len(b.Shop.Trials()), "trial", "trials"),
		counted(len(b.terms.all), "word explained", "words explained"),
	}}
	b.page("index.html", "cover", "", "Handbook", p)
}

// levelMeanings are the levels with what they mean, the loudest first.
func levelMeanings() []levelMeaning {
	spec := schema.Top("rule").Attr("level")
	var all []levelMeaning
	for _, l := range []lint.Level{lint.Must, lint.Should, lint.Consider} {
		all = append(all, levelMeaning{l, schema.WordMeans(spec, l.String())})
	}
	return all
}

// rulesPage lists every rule in force.
type rulesPage struct {
	Groups     []ruleGroup
	Levels     []levelMeaning
	Unreadable []string // own rules that cannot be read, with their places
}

type ruleGroup struct {
	Name, Anchor string
	Rules        []listedRule
}

type listedRule struct {
	Name, Title, File string
	Binding, Tuned    bool
	Levels            lint.Levels // in this shop
}

func (b *book) rulesPage() {
	p := rulesPage{Levels: levelMeanings()}
	known := map[string]bool{}
	for _, r := range b.rules {
		known[r.Name] = known[r.Name] || b.own(r)
		if n := len(p.Groups); n == 0 || p.Groups[n-1].Name != r.Group {
			p.Groups = append(p.Groups, ruleGroup{Name: r.Group, Anchor: groupAnchor(r.Group)})
		}
		g := &p.Groups[len(p.Groups)-1]
		levels := lint.LevelsIn(b.Shop, r)
		g.Rules = append(g.Rules, listedRule{r.Name, schema.Capital(r.Title), RulePage(r.Name, b.own(r)), r.Binding, levels != r.Levels || b.figures(r), levels})
	}
	for _, rule := range b.Shop.Rules() {
		if !known[rule.Label] {
			p.Unreadable = append(p.Unreadable, rule.Title()+" ("+placeOf(rule)+")")
		}
	}
	b.page("rules.html", "rules", "Rules", "The rules", p)
}
