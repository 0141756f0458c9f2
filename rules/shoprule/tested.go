package shoprule

import (
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// Outcome is what a part of a rule comes to in one recipe of its examples.
type Outcome struct {
	Recipe *schema.Block // as it stands in the rule
	Sound  bool          // in an example that the rule must pass
	Values []string      // one for each combination of blocks, as people read them; those alike once
	Lacks  string        // why there is no value, where there is none
}

// mostValues is how many values are told of one recipe.
const mostValues = 4

// ComesTo is what a part of a rule comes to in each recipe of its examples, in
// order. What stands behind when is asked only where that holds.
func (d *Draft) ComesTo(view *lint.View, rule *schema.Block, source string, behindWhen bool) []Outcome {
	e, p := d.partIn(source)
	if e == nil || len(p.slots) == 0 {
		return nil
	}
	var all []Outcome
	for _, b := range rule.Blocks() {
		if !b.Is("sound") && !b.Is("faulty") {
			continue
		}
		file := fileOf(b)
		if !file.Clean {
			continue // the format's own rules say so
		}
		for _, v := range view.Laid(file) {
			o := Outcome{Recipe: inPlace(b, v.Recipe), Sound: b.Is("sound")}
			p.values(v, e, behindWhen, &o)
			all = append(all, o)
		}
	}
	return all
}

// inPlace is a recipe of an example as it stands in the rule.
func inPlace(example, recipe *schema.Block) *schema.Block {
	for b := range example.Each("recipe") {
		if b.Span.Start == recipe.Span.Start+example.Body.Start {
			return b
		}
	}
	return example
}

// Fixed is an amount that is the same whatever the recipe: one that stands in
// the rule, or an option. "": it is none.
func (d *Draft) Fixed(source string, units quantity.System) string {
	e := d.part(source)
	if e == nil || e.fixed == nil || e.Kind != Amount {
		return ""
	}
	return e.bothWays(e.fixed, units)
}

func (p *program) values(view *lint.View, e *expr, behindWhen bool, o *Outcome) {
	s := sceneOf.In(view)
	r, over := p.begin(s)
	if over {
		o.Lacks = "too many blocks can be combined here"
		return
	}
	o.Lacks = "there is no " + strings.ReplaceAll(p.lacking(s), "_", " ")
	for r.next() {
		if behindWhen && p.when != nil {
			if v := p.when.eval(s); !v.known() || !v.yes {
				o.Lacks = "not asked: the rule's when does not hold"
				continue
			}
		}
		text, why := e.reads(s)
		if why != "" {
			o.Lacks = why
			continue
		}
		if !slices.Contains(o.Values, text) && len(o.Values) < mostValues {
			o.Values = append(o.Values, text)
		}
	}
	if len(o.Values) > 0 {
		o.Lacks = ""
	}
}

// lacking is the first kind of block that the rule names and a recipe has none
// of; else those that do not go together.
func (p *program) lacking(s *scene) string {
	for _, k := range p.slots {
		if len(s.of(k.at)) == 0 {
			return k.Name
		}
	}
	return "combination of " + p.named()
}

// reads is what an expression comes to in a scene, as people read it, or why
// it comes to nothing.
func (e *expr) reads(s *scene) (text, why string) {
	if e.Kind == Thing {
		th := e.thing(s)
		if th.state != schema.Known {
			v := value{state: th.state, lacks: th.lacks, attr: th.attr}
			return "", v.why()
		}
		return th.reads(s), ""
	}
	v := e.eval(s)
	switch {
	case !v.known():
		return "", v.why()
	case e.Kind == YesNo && v.yes:
		return "yes", ""
	case e.Kind == YesNo:
		return "no", ""
	case e.Kind == Text || e.Kind == List:
		if text := shown(s, e, v); text != "" {
			return text, ""
		}
		return "empty", ""
	case e.Kind == Amount:
		return e.bothWays(&v, s.view.Units()), ""
	}
	return shown(s, e, v), ""
}

// reads is what a thing is called.
func (t *thing) reads(s *scene) string {
	switch {
	case t.stock != nil:
		return t.stock.Title()
	case t.block != nil && t.block.Is("step"):
		return strings.Join(strings.Fields(t.block.File.Text.Slice(t.block.Span)), " ")
	case t.block != nil:
		return t.block.Title()
	}
	return s.view.Recipe.Title()
}

// bothWays is an amount with the other system in brackets.
func (e *expr) bothWays(v *value, units quantity.System) string {
	if q, ok := asWritten(e, v); ok {
		return q.Both(units)
	}
	if q, err := quantity.Parse(e.written, e.Dim); e.written != "" && err == nil {
		return q.Both(units)
	}
	low := quantity.FromBase(v.low, e.unit()).Both(units)
	if !v.ranged {
		return low
	}
	return low + " to " + quantity.FromBase(v.high, e.unit()).Both(units)
}
