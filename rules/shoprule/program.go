package shoprule

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// program is one rule block, compiled.
type program struct {
	rule    *lint.Rule
	block   *schema.Block // as read by itself: its places count from the start of the rule
	tune    *schema.Block // what the shop has for its options; nil: nothing
	slots   []*kind       // the kinds of blocks it names; the first is what it is about
	leads   int           // how many names lead from one thing to another
	options map[string]*expr
	when    *expr // nil: everywhere
	require *expr
	pointAt *expr // nil: the block it is about
	message *expr // nil: the title
	fixes   []fix

	quickWhen    tester // nil: everywhere
	quickRequire tester
	problems     []problem

	optionNames []string
	sets        []set    // by the tune
	unread      []string // the options that cannot be read, which was told
}

// wording is what a program is compiled from: the text of a rule, and of the
// tune that sets its options; "" where none does.
type wording struct{ rule, tune string }

// written is a rule as it stands, whatever a shop has for its options.
func written(rule *schema.Block) wording { return wording{rule: textOf(rule)} }

// tunedBy is a rule with the options that a tune sets. A nil tune sets none.
func tunedBy(rule, tune *schema.Block) wording {
	s := written(rule)
	if tune != nil {
		for range tune.Each("option") {
			s.tune = textOf(tune)
			break
		}
	}
	return s
}

// setBy is a rule with one option of a tune and no other.
func setBy(rule, option *schema.Block) wording {
	s := written(rule)
	s.tune = "tune \"\" {\n" + textOf(option) + "\n}"
	return s
}

// programs keeps compiled rules by their text.
var programs = lint.NewMemo("a shop's own rule", compileWording)

// inForce is a rule as it is in a shop: with the options that the shop sets,
// where the rule can be read with them.
func inForce(shop *lint.Shop, rule *schema.Block) *program {
	if p := programs.For(shop, tunedBy(rule, shop.Tune(rule.Label))); p.runs() {
		return p
	}
	return programs.For(shop, written(rule))
}

// compileWording compiles the rule block that a text is.
func compileWording(from wording) *program {
	p := &program{options: map[string]*expr{}}
	for _, b := range schema.Read("", []byte("shop \"\" {\n"+from.tune+"\n}\n")).Blocks {
		for tune := range b.Each("tune") {
			p.tune = tune
		}
	}
	for _, b := range schema.Read("", []byte(from.rule)).Blocks {
		if b.Is("rule") {
			p.block = b
			p.compile()
			break
		}
	}
	if p.block == nil {
		p.rule = &lint.Rule{About: lint.AboutRecipe}
	}
	return p
}

// textOf is the text of a rule block, as a key of its own: it does not hold on
// to the file.
func textOf(b *schema.Block) string { return strings.Clone(b.File.Text.Slice(b.Span)) }

// sound says whether the rule can be run.
func (p *program) runs() bool { return len(p.problems) == 0 && p.require != nil && len(p.slots) > 0 }

// slot is where among the kinds that the rule names one is; -1: there are too
// many.
func (p *program) slot(k *kind) int {
	for i, s := range p.slots {
		if s == k {
			return i
		}
	}
	if len(p.slots) == mostNamed {
		return -1
	}
	p.slots = append(p.slots, k)
	return len(p.slots) - 1
}

func (p *program) compile() {
	b := p.block
	if about := b.Get("about"); about.Known() {
		p.slot(table.byName[about.Text()])
	}
	for o := range b.Each("option") {
		p.option(o)
	}
	c := &compiler{p: p}
	condition := func(attr string) *expr {
		return p.read(c, b.Get(attr), func(c *compiler, e *expr) *expr {
			if e.Kind != YesNo {
				c.refuse(e, "%s is a question of yes or no, and this is %s", attr, e.Type)
			}
			return e
		})
	}
	p.when = condition("when")
	p.require = condition("require")
	p.pointAt = p.read(c, b.Get("point_at"), func(c *compiler, e *expr) *expr {
		if !e.named {
			c.refuse(e, "point_at is one name or attribute, such as pour.at")
		}
		return e
	})
	c.message = true
	p.message = p.read(c, b.Get("message"), func(c *compiler, e *expr) *expr {
		if e.Kind != Text {
			c.refuse(e, "a message is a text in quotes, and this is %s", e.Type)
		}
		return e
	})
	c.message = false
	if m := b.Get("message"); m.Known() && len(m.Text()) > mostMessage {
		p.problem(m.Span(), "this message has %d bytes, and a message has %d at most", len(m.Text()), mostMessage)
	}
	p.readFixes(c)
	p.rule = p.value()
	if p.when != nil && (p.when.fixed == nil || !p.when.fixed.yes) {
		p.quickWhen = p.when.tests()
	}
	if p.require != nil {
		p.quickRequire = p.require.tests()
	}
}

// refuse says no to a whole expression.
func (c *compiler) refuse(e *expr, format string, values ...any) {
	panic(failure{problem{span: e.span, message: fmt.Sprintf(format, values...)}})
}

func (p *program) problem(at schema.Span, format string, values ...any) {
	p.problems = append(p.problems, problem{span: at, message: fmt.Sprintf(format, values...)})
}

// read compiles the expression of an attribute. Nil: it is not written, or
// cannot be read, which was told.
func (p *program) read(c *compiler, v schema.Value, settle func(*compiler, *expr) *expr) *expr {
	if !v.Known() {
		return nil
	}
	message := c.message
	e := c.compileWith(v, settle)
	c.message = message
	return e
}

// value is the rule as the engine knows it.
func (p *program) value() *lint.Rule {
	b := p.block
	level, ok := lint.ParseLevel(b.Get("level").Text())
	if !ok {
		level = lint.Should
	}
	levels := lint.Every(level)
	if l, ok := lint.ParseLevel(b.Get("level_for_class").Text()); ok {
		levels.Class = l
	}
	if l, ok := lint.ParseLevel(b.Get("level_for_own_use").Text()); ok {
		levels.OwnUse = l
	}
	title := strings.TrimSuffix(strings.TrimSpace(b.Title()), ".")
	rests := "the shop's own experience"
	if items := b.Get("rests_on").Items(); len(items) > 0 {
		var keys []string
		for _, item := range items {
			keys = append(keys, item.Text)
		}
		rests = "the shop's own trials: " + strings.Join(keys, ", ")
	}
	remedy := "Do as the rule says, or record a concession with its reason."
	if len(p.fixes) > 0 {
		var titles []string
		for _, f := range p.fixes {
			titles = append(titles, f.title)
		}
		remedy = "Offered where it fits: " + strings.Join(titles, "; ") + "."
	}
	return &lint.Rule{
		Name: b.Label, Group: OwnGroup, Title: title,
		Why: strings.TrimSpace(b.Get("because").Text()), Remedy: remedy, Source: rests,
		Levels: levels, About: lint.AboutRecipe, Check: p.check,
	}
}

// OwnGroup is the heading of the rules that a shop writes for itself.
const OwnGroup = "The shop's own rules"

// For is the rules of a shop's own that can be read, in the order of places. Of
// several of one name the first counts.
func For(shop *lint.Shop) []*lint.Rule { return own.For(shop).rules }

// ownRules is the shop's own rules, compiled.
type ownRules struct {
	rules []*lint.Rule
	named map[string]*program
}

var own = lint.NewRuleMemo("the shop's own rules", func(shop *lint.Shop) *ownRules {
	o := &ownRules{named: map[string]*program{}}
	for _, b := range shop.Rules() {
		if b.Label == "" || o.named[b.Label] != nil {
			continue
		}
		p := inForce(shop, b)
		o.named[b.Label] = p
		if p.runs() {
			o.rules = append(o.rules, p.rule)
		}
	}
	return o
})
