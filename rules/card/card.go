// Package card makes of a rule a card to hand to a customer: the question that
// people ask, the short answer, why, when it is still all right, what to do.
package card

import (
	"strings"

	"wickrule/lint"
	"wickrule/rules/explained"
	"wickrule/rules/sheet"
	"wickrule/schema"
)

// Card is what stands on one.
type Card struct {
	Rule     string
	Shop     string // whose card it is; "" nobody's
	Question string
	Answer   string
	Why      []string // paragraphs
	AllRight string
	Do       string
	Tried    []string // what the shop tried, where the rule rests on that
	Mind     []string
	Deferral string
}

// Of makes a rule's card. Shop is whose card it is, or nil.
func Of(r *lint.Rule, shop *lint.Shop) *Card {
	c := &Card{Rule: r.Name, Shop: shopTitle(shop), Question: r.Card.Question, Answer: r.Card.Answer, AllRight: r.Card.AllRight, Do: r.Card.Do}
	if c.Question == "" {
		c.Question = "Is this a problem: " + r.Title + "?"
		c.Answer = usualAnswer(r)
		c.AllRight = usualAllRight(r)
		c.Do = sentence(r.Remedy)
	}
	c.finish(r)
	return c
}

// OfOwn makes the card of a rule of the shop's own, written in this block. The
// question is the one that was asked in a trial which this rule alone rests on,
// where there is one.
func OfOwn(r *lint.Rule, shop *lint.Shop, rule *schema.Block) *Card {
	c := &Card{Rule: r.Name, Shop: shopTitle(shop), Question: "What is our rule for " + subject(rule) + "?", Answer: sentence(r.Title)}
	trials := explained.Behind(shop, rule)
	for i := range trials {
		if t := &trials[i]; len(t.Bears) == 1 && t.Asked != "" {
			c.Question = sentence(t.Asked)
			break
		}
	}
	for i := range trials {
		c.Tried = append(c.Tried, trialText(&trials[i]))
	}
	c.AllRight = soundText(shop, rule)
	c.Do = ownDo(rule)
	c.finish(r)
	return c
}

// finish fills in what every card has.
func (c *Card) finish(r *lint.Rule) {
	for paragraph := range strings.SplitSeq(strings.TrimSpace(r.Why), "\n\n") {
		if text := sentence(paragraph); text != "" {
			c.Why = append(c.Why, text)
		}
	}
	if len(c.Why) == 0 {
		c.Why = []string{"It is what we have found at the bench; ask us."}
	}
	if text := sentence(r.Cautions); text != "" {
		c.Mind = append(c.Mind, text)
	}
	c.Mind = append(c.Mind, sheet.BurningWax)
	c.Deferral = sheet.Deferral("card")
}

func shopTitle(shop *lint.Shop) string {
	if shop == nil || shop.Config == nil {
		return ""
	}
	return strings.Join(strings.Fields(shop.Config.Title()), " ")
}

// usualAnswer is the short answer of a rule that has none written: how much it
// matters.
func usualAnswer(r *lint.Rule) string {
	answer := [...]string{
		lint.Silent:   "No.",
		lint.Consider: "Not by itself, but it is worth knowing.",
		lint.Should:   "Yes: it should be put right first.",
		lint.Must:     "Yes: it is not made, sold or taught like this.",
	}
	text := answer[r.Levels.Sale]
	switch {
	case r.Levels == lint.Every(r.Levels.Sale):
	case r.Levels.OwnUse == lint.Silent:
		text = "In what is sold, y" + text[1:]
		if r.Levels.Sale == lint.Consider {
			text = "In what is sold it is worth knowing."
		}
		text += " For your own use nobody asks."
	case r.Levels.OwnUse == lint.Consider && r.Levels.Sale > lint.Consider:
		text = "In what is sold, y" + text[1:] + " For your own use it is worth knowing."
	}
	return text
}

// usualAllRight tells of the rule's good examples.
func usualAllRight(r *lint.Rule) string {
	var fine []string
	for _, e := range r.Good {
		fine = append(fine, e.About)
	}
	return "For instance: " + strings.Join(fine, "; ") + "."
}

// trialText is what the shop tried, and what came of it.
func trialText(t *explained.Trial) string {
	head := t.Date
	if t.Tried != "" {
		head = strings.TrimPrefix(head+", "+t.Tried, ", ")
	}
	if head != "" {
		head += ": "
	}
	switch {
	case t.Open():
		return head + "we do not know yet."
	case t.Noted != "":
		return head + sentence(t.Noted)
	}
	return head + t.Outcome + "."
}

// subject is what a rule of the shop's own is about, as one speaks of it.
func subject(rule *schema.Block) string {
	about := rule.Get("about").Text()
	if kind := strings.ReplaceAll(about, "_", " "); schema.Step(kind) != nil {
		return "the step \u201c" + kind + "\u201d"
	}
	return "the " + about
}

// soundText tells of the rule's sound examples, in words.
func soundText(shop *lint.Shop, rule *schema.Block) string {
	var like []string
	for sound := range rule.Each("sound") {
		for recipe := range sound.Each("recipe") {
			if said := exampleText(shop, recipe); said != "" {
				like = append(like, said)
			}
		}
	}
	if like == nil {
		return "Where you have tried it otherwise and it held: tell us."
	}
	return "Like this, for instance: " + strings.Join(like, ". Or: ") + "."
}

// exampleText is what a short recipe says, as one would say it: its stock by
// title and its steps, each with its figures.
func exampleText(shop *lint.Shop, recipe *schema.Block) string {
	var parts []string
	for v := range recipe.Attrs() {
		if v.IsAmount() {
			parts = append(parts, v.Spec.Name+" "+v.Amount().String())
		}
	}
	for _, b := range recipe.Blocks() {
		words := []string{b.Spec.Kind}
		if b.Spec.Kind == "" {
			words[0] = titleOf(shop, []string{b.Name()}, b.Label)
		}
		for v := range b.Attrs() {
			switch {
			case v.IsAmount() && b.Spec.Kind == "":
				words = append(words, "("+v.Amount().String()+")")
			case v.IsAmount() && joins(v.Spec.Name):
				words = append(words, v.Spec.Name+" "+v.Amount().String())
			case v.IsAmount():
				words[len(words)-1] += ","
				words = append(words, v.Spec.Name+" "+v.Amount().String())
			case v.Spec.Refers != nil:
				for _, item := range v.Items() {
					words = append(words, "with "+titleOf(shop, v.Spec.Refers, item.Text))
				}
			}
		}
		parts = append(parts, strings.Join(words, " "))
	}
	return strings.Join(parts, "; ")
}

// titleOf is the title of what a key leads to, else the key.
func titleOf(shop *lint.Shop, kinds []string, key string) string {
	if b := shop.Resolve(lint.Reference{Kinds: kinds, Key: key}); b != nil {
		return b.Title()
	}
	return key
}

// joins says whether an attribute's name joins a step and its figure as one
// speaks: "cure for 3 days".
func joins(attr string) bool {
	switch attr {
	case "to", "at", "for", "after":
		return true
	}
	return false
}

// ownDo is what to do by a rule of the shop's own: the limit it sets, where
// that is a plain one, and what its fixes are called.
func ownDo(rule *schema.Block) string {
	var ways []string
	if limit := plainLimit(rule.Get("require").Written()); limit != "" {
		ways = append(ways, sentence(limit))
	}
	for _, kind := range []string{"set", "insert"} {
		for fix := range rule.Each(kind) {
			if fix.Label != "" {
				ways = append(ways, sentence(fix.Label))
			}
		}
	}
	if ways == nil {
		return "Do as we do, and tell us where it went otherwise with you."
	}
	return strings.Join(ways, " ")
}

// plainLimit says a limit of the form `cure.for >= amount("24 h")` in words:
// "cure for 24 h or more"; "" where it is of another form.
func plainLimit(require string) string {
	words := strings.Fields(strings.ReplaceAll(require, `("`, `(" `))
	if len(words) < 4 || words[2] != `amount("` {
		return ""
	}
	than, ok := map[string]string{">=": " or more", "<=": " or less", ">": " is too little", "<": " is too much"}[words[1]]
	figure, closed := strings.CutSuffix(strings.Join(words[3:], " "), `")`)
	of, attr, dotted := strings.Cut(words[0], ".")
	if !ok || !closed || !dotted || strings.Contains(attr, ".") || strings.ContainsAny(figure, `"()`) {
		return ""
	}
	if strings.Contains(figure, "°") && strings.HasPrefix(words[1], ">") {
		than += ", and never above what the wax's sheet allows"
	}
	of, attr = strings.ReplaceAll(of, "_", " "), strings.ReplaceAll(attr, "_", " ")
	switch {
	case of == "recipe":
		return attr + ": " + figure + than
	case joins(attr):
		return of + " " + attr + " " + figure + than
	}
	return of + ", " + attr + " " + figure + than
}

// sentence is a text on one line, with a capital and a stop.
func sentence(text string) string {
	text = schema.Capital(strings.Join(strings.Fields(text), " "))
	if text == "" || strings.ContainsRune(".!?…", rune(text[len(text)-1])) {
		return text
	}
	return text + "."
}
