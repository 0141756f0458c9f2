package handbook

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/rules/shoprule"
	"wickrule/schema"
)

const ownGroup = shoprule.OwnGroup

// rulePage is one rule, built-in or of the shop's own.
type rulePage struct {
	Name, Title      string
	Group, GroupPage string
	Own              bool
	Loudness         string
	Loud             []loudRow
	Varies           string // where an example is louder or quieter than that
	Tuned            *tuned
	Why, Remedy      []template.HTML
	Mind, Source     []template.HTML
	Rests            bool // Source says what it rests on
	Trials           []trialView
	Options          []shoprule.Option
	Written          string // the place of an own rule
	Text             []codeLine
	Proved           string
	Wrong, Right     []example
	Conceded         []concededIn
	Before, After    *neighbor
}

// loudRow is how loud a rule speaks, as it is and in this shop.
type loudRow struct {
	Which               string
	OwnUse, Class, Sale lint.Level
}

// tuned is what a shop's tune of a rule does.
type tuned struct {
	What, Reason, Where string
}

// concededIn is a recipe that is let off a rule.
type concededIn struct{ Recipe, Reason, Until, Where string }

// neighbor is the page before or after.
type neighbor struct{ Title, File string }

// rulePages makes a page of each rule in force.
func (b *book) rulePages() error {
	for i, r := range b.rules {
		p, err := b.rulePage(r)
		if err != nil {
			return fmt.Errorf("the rule %s: %w", r.Name, err)
		}
		if i > 0 {
			p.Before = b.neighbor(b.rules[i-1])
		}
		if i+1 < len(b.rules) {
			p.After = b.neighbor(b.rules[i+1])
		}
		file := RulePage(r.Name, p.Own)
		b.page(file, "rule", "Rules", p.Title, p)
		kind := "rule"
		if p.Own {
			kind = "own rule"
		}
		b.index.add(kind, r.Name, p.Title, file, r.Card.Question, r.Why, strings.Join([]string{r.Group, r.Remedy, r.Cautions, r.Card.Answer, r.Card.AllRight, r.Card.Do, b.terms.turningOn(r)}, " "))
	}
	return nil
}

func (b *book) neighbor(r *lint.Rule) *neighbor {
	return &neighbor{schema.Capital(r.Title), RulePage(r.Name, b.own(r))}
}

func (b *book) rulePage(r *lint.Rule) (rulePage, error) {
	own := b.own(r)
	words := b.links.prose(RulePage(r.Name, own))
	p := rulePage{
		Name: r.Name, Title: schema.Capital(r.Title), Own: own,
		Group: r.Group, GroupPage: "rules.html#" + groupAnchor(r.Group),
		Why: words.paragraphs(r.Why), Remedy: words.paragraphs(r.Remedy), Mind: words.paragraphs(r.Cautions),
		Source: words.paragraphs(stopped(schema.Capital(r.Source))), Rests: own,
		Tuned: b.tunedHere(r), Conceded: b.concededIn(r),
	}
	p.Loud = []loudRow{{"as the rule is", r.Levels.OwnUse, r.Levels.Class, r.Levels.Sale}}
	if here := lint.LevelsIn(b.Shop, r); here != r.Levels {
		p.Loud = append(p.Loud, loudRow{"in this shop", here.OwnUse, here.Class, here.Sale})
	}
	if r.Binding || r.About == lint.AboutFormat { // else the table says it all
		p.Loudness = schema.Capital(r.Loudness()) + "."
	}
	if own {
		b.ownPage(&p, r)
		return p, nil
	}
	for _, e := range r.Bad {
		shown, err := b.tried(r, e)
		if err != nil {
			return p, err
		}
		p.Wrong = append(p.Wrong, shown)
	}
	for _, e := range r.Good {
		shown, err := b.tried(r, e)
		if err != nil {
			return p, err
		}
		p.Right = append(p.Right, shown)
	}
	p.Varies = varies(r.Levels, p.Wrong)
	return p, nil
}

// figures says whether the shop has other figures for the options of a rule.
func (b *book) figures(r *lint.Rule) bool {
	return b.own(r) && slices.ContainsFunc(shoprule.OptionsOf(b.Shop, b.Shop.Find("rule", r.Name)), func(o shoprule.Option) bool { return o.Here != "" })
}

// varies says that a rule is louder or quieter in some cases than its levels
// are, where its examples show that; "" where they do not.
func varies(levels lint.Levels, wrong []example) string {
	var other []string
	for _, e := range wrong {
		for _, s := range e.Said {
			known := s.Level == levels.OwnUse || s.Level == levels.Class || s.Level == levels.Sale
			if word := s.Level.Word(); !known && !slices.Contains(other, word) {
				other = append(other, word)
			}
		}
	}
	if len(other) == 0 {
		return ""
	}
	return "Some cases speak as \"" + strings.Join(other, "\" or \"") + "\", as the examples below show."
}

// tunedHere says what the shop has changed about how loud a rule speaks, and
// whether it has other figures for its options. Nil: nothing.
func (b *book) tunedHere(r *lint.Rule) *tuned {
	t := b.Shop.Tune(r.Name)
	if t == nil {
		return nil
	}
	level, leveled := lint.ParseLevel(t.Get("level").Text())
	figures := b.figures(r)
	if !leveled && !figures {
		return nil
	}
	n := t.File.Text.Line(t.Span.Start)
	here := lint.LevelsIn(b.Shop, r)
	is := &tuned{Reason: strings.Join(strings.Fields(t.Get("reason").Text()), " "), Where: fmt.Sprintf("%s, line %d", t.File.Name, n)}
	switch {
	case !leveled:
		is.What = "This shop has figures of its own for the rule's options."
	case here == lint.Levels{}:
		is.What = "This shop has silenced the rule: it says nothing here."
	case here == r.Levels:
		is.What = "This shop tunes the rule to " + level.Word() + ", which changes nothing: it cannot be made quieter than it is."
		if level == r.Levels.Sale {
			is.What = "This shop tunes the rule to " + level.Word() + ", as it speaks anyway."
		}
	case level == lint.Silent:
		is.What = "This shop has silenced the rule, save where it cannot be: what is made for sale is still judged."
	default:
		is.What = "This shop has tuned the rule to " + level.Word() + "."
	}
	if leveled && figures {
		is.What += " It has figures of its own for the rule's options too."
	}
	return is
}

// concededIn lists the recipes of the shop that ask to be let off the rule.
func (b *book) concededIn(r *lint.Rule) []concededIn {
	var all []concededIn
	for _, recipe := range b.Shop.Recipes() {
		for c := range recipe.Each("concession") {
			if c.Label == r.Name {
				all = append(all, concededIn{recipe.Title(), strings.Join(strings.Fields(c.Get("reason").Text()), " "), c.Get("until").Text(), placeOf(c)})
			}
		}
	}
	return all
}

// placeOf is where a block stands, for whoever wants to open the file.
func placeOf(b *schema.Block) string {
	return fmt.Sprintf("%s, line %d", b.File.Name, b.File.Text.Line(b.Span.Start))
}

// stopped is a text with a full stop at its end.
func stopped(text string) string {
	if text == "" || strings.HasSuffix(text, ".") {
		return text
	}
	return text + "."
}
