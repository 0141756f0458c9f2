package shoprule

import (
	"slices"

	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// fix is a repair that a rule offers.
type fix struct {
	title string

	what, to *expr // of a set

	step          *schema.Block // of an insert
	after, before string
}

// readFixes compiles the set and insert blocks.
func (p *program) readFixes(c *compiler) {
	for _, b := range p.block.Blocks() {
		switch {
		case b.Is("set"):
			p.readSet(c, b)
		case b.Is("insert"):
			p.readInsert(b)
		}
	}
}

func (p *program) readSet(c *compiler, b *schema.Block) {
	if b.Label == "" {
		p.problem(b.Header(), "a fix is called by what comes of it: set \"lower the pour\" { … }")
		return
	}
	what := p.read(c, b.Get("what"), func(c *compiler, e *expr) *expr {
		switch {
		case !e.named || e.name == nil || !e.name.ofRecipe() || e.far:
			c.refuse(e, "what is set is an attribute of the recipe, such as pour.at; the shelves are as the supplier says")
		case !e.name.canBeSet():
			c.refuse(e, "what is set is an amount, a word or a key, and this is %s", e.Type)
		}
		return e
	})
	to := p.read(c, b.Get("to"), func(c *compiler, e *expr) *expr {
		if what == nil {
			return e
		}
		_, isKey := keyOf(what)
		if !(what.same(e.Type) || what.Kind == Mixed && e.Kind == Amount || isKey && e.Kind == Text) {
			if isKey {
				c.refuse(e, "what is set is the key of something on the shelves, a text: this is %s", e.Type)
			}
			c.refuse(e, "what is set is %s, and this is %s", what.Type, e.Type)
		}
		if e.Kind == Text && e.fixed != nil && !what.knows(e.fixed.text) {
			word := e.fixed.text
			c.refuse(e, "%s is not among what it can be; %s", schema.Quote(word), schema.NearestOrKnown(word, what.Choices, `"`))
		}
		return e
	})
	if what != nil && to != nil {
		p.fixes = append(p.fixes, fix{title: b.Label, what: what, to: to})
	}
}

// ofRecipe says whether a name is an attribute that the recipe writes.
func (n *name) ofRecipe() bool { return n.Attr != nil && n.From != "shelves" }

// canBeSet says whether a fix can rewrite it.
func (n *name) canBeSet() bool {
	return n.ofRecipe() && n.Type.Kind != List && n.Type.Kind != Number
}

// keyOf says whether an expression names the key of something on the shelves.
func keyOf(e *expr) (attr *schema.AttrSpec, ok bool) {
	return e.name.Attr, e.name.Attr.Type == schema.Key
}

func (p *program) readInsert(b *schema.Block) {
	steps := slices.Collect(b.Each("step"))
	switch {
	case b.Label == "":
		p.problem(b.Header(), "a fix is called by what comes of it: insert \"cure for three days\" { … }")
	case len(steps) != 1:
		p.problem(b.Header(), "an insert holds the one step that it puts into the recipe")
	case !b.Get("after").Absent() && !b.Get("before").Absent():
		p.problem(b.Get("before").NameSpan(), "a step is put after another or before it: take one of the two out")
	default:
		for v := range steps[0].Attrs() {
			if v.IsAmount() && v.Amount().Dim() == quantity.Temperature {
				p.problem(v.Span(), "a fix never brings in a temperature of its own: leave out %s, which whoever pours decides", v.Spec.Name)
				return
			}
		}
		p.fixes = append(p.fixes, fix{title: b.Label, step: steps[0], after: b.Get("after").Text(), before: b.Get("before").Text()})
	}
}

// repairs are the fixes for a combination of blocks, those that fit.
func (p *program) repairs(s *scene, now [mostNamed]*thing) []schema.Fix {
	copy(s.now[:], now[:])
	var fixes []schema.Fix
	for i := range p.fixes {
		var made schema.Fix
		var ok bool
		if f := &p.fixes[i]; f.step != nil {
			made, ok = f.insert(s)
		} else {
			made, ok = f.set(s)
		}
		if ok {
			fixes = append(fixes, made)
		}
	}
	return fixes
}

// set rewrites a value. An amount is only ever lowered, and put on a step that
// a workbench can hold, downwards; a value that is not written is not made up.
func (f *fix) set(s *scene) (schema.Fix, bool) {
	if attr, isKey := keyOf(f.what); isKey {
		said := s.now[f.what.slot].block.Get(attr.Name)
		to := f.to.eval(s)
		if !said.Known() || !to.known() || said.Text() == to.text {
			return schema.Fix{}, false
		}
		for _, kind := range attr.Refers {
			if _, ok := s.view.Stock(kind, to.text); ok {
				return repair.Rewrite(f.title, said, schema.Quote(to.text)), true
			}
		}
		return schema.Fix{}, false
	}
	th := s.now[f.what.slot]
	if th.block == nil {
		return schema.Fix{}, false
	}
	said := th.block.Get(f.what.name.Attr.Name)
	to := f.to.eval(s)
	if !said.Known() || !to.known() {
		return schema.Fix{}, false
	}
	switch f.what.Kind {
	case YesNo:
		literal := "false"
		if to.yes {
			literal = "true"
		}
		return repair.Rewrite(f.title, said, literal), literal != said.Written()
	case Text:
		return repair.Rewrite(f.title, said, schema.Quote(to.text)), said.Text() != to.text
	}
	if !said.IsAmount() {
		return schema.Fix{}, false
	}
	was := said.Amount()
	goal := typeOf(was)
	if !goal.same(f.to.Type) || was.IsRange() || said.BelowRim() {
		return schema.Fix{}, false
	}
	lowered := repair.Lowered(was, to.low)
	if lowered.Cmp(was) >= 0 || lowered.Base().Sign() <= 0 && goal.Dim != quantity.Temperature {
		return schema.Fix{}, false
	}
	return repair.Rewrite(f.title, said, schema.Quote(lowered.String())), true
}

// insert puts a step into the recipe.
func (f *fix) insert(s *scene) (schema.Fix, bool) {
	text := f.step.File.Text.Slice(f.step.Span)
	var last *schema.Block
	for i := range s.b.Steps {
		step := &s.b.Steps[i]
		if f.before != "" && step.Kind == f.before {
			return repair.Before(f.title, step.Block, text), true
		}
		if f.after != "" && step.Kind == f.after {
			last = step.Block
		}
	}
	switch {
	case last != nil:
		return repair.After(f.title, last, text), true
	case f.after == "" && f.before == "":
		return repair.LastStep(f.title, s.view.Recipe, text), true
	}
	return schema.Fix{}, false
}
