package shoprule

import (
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"wickrule/schema"
	"wickrule/schema/quantity"
)

// Function is one function that a rule can use.
type Function struct {
	Name, Takes, Gives, Doc string
}

// Functions are all of them, in the order of the reference.
func Functions() []Function {
	return []Function{
		{"amount", `"182 °F"`, "a quantity", "A quantity as it is written in a recipe."},
		{"degrees", `"10 °F"`, "a temperature difference", "A difference of temperatures: 10 °F of difference is not the temperature 10 °F."},
		{"show", "an amount", "a text", "An amount for a message: as it was written, else in the shop's units."},
		{"includes", `list, "word"`, "yes or no", "Whether a list has the word."},
		{"count", `"step", "cure"`, "a number", "How many blocks of a kind the recipe has; of steps, how many of one kind."},
		{"least", "two or more of the same", "the same", "The smallest of several."},
		{"most", "two or more of the same", "the same", "The largest of several."},
		{"abs", "an amount or a number", "the same", "Without its sign."},
	}
}

var functionNames = func() (names []string) {
	for _, f := range Functions() {
		names = append(names, f.Name)
	}
	return names
}()

func (c *compiler) call(t *hclsyntax.FunctionCallExpr) *expr {
	if t.ExpandFinal {
		c.fail(t.Range(), "… is not for rules")
	}
	switch t.Name {
	case "amount":
		return c.amount(t, quantity.Weight, quantity.Volume, quantity.Length, quantity.Temperature, quantity.Time,
			quantity.Proportion, quantity.Share, quantity.Density, quantity.Count)
	case "degrees":
		return c.amount(t, quantity.Difference)
	case "show":
		return c.show(t)
	case "includes":
		return c.includes(t)
	case "count":
		return c.count(t)
	case "least":
		return c.outermost(t, func(a, b quantity.Rat) quantity.Rat { return quantity.Min(a, b) })
	case "most":
		return c.outermost(t, func(a, b quantity.Rat) quantity.Rat { return quantity.Max(a, b) })
	case "abs":
		return c.abs(t)
	}
	c.misspelt(t.NameRange, t.Name, functionNames, "", "there is no function %s", t.Name)
	return nil
}

// takes says no to another number of arguments.
func (c *compiler) takes(t *hclsyntax.FunctionCallExpr, least, most int) {
	if n := len(t.Args); n < least || n > most {
		for _, f := range Functions() {
			if f.Name == t.Name {
				c.fail(t.Range(), "write %s(%s)", f.Name, f.Takes)
			}
		}
	}
}

// word is an argument that is a text written there.
func (c *compiler) word(t *hclsyntax.FunctionCallExpr, arg int) (string, hcl.Range) {
	defer c.in(t.Args[arg].Range())()
	lit, ok := t.Args[arg].(*hclsyntax.TemplateExpr)
	if ok {
		if text, ok := literalText(lit); ok {
			return text, lit.SrcRange
		}
	}
	c.fail(t.Args[arg].Range(), "%s takes a text in quotes here", t.Name)
	return "", hcl.Range{}
}

func (c *compiler) amount(t *hclsyntax.FunctionCallExpr, dims ...quantity.Dimension) *expr {
	c.takes(t, 1, 1)
	text, rng := c.word(t, 0)
	q, err := quantity.Parse(text, dims...)
	if err != nil {
		c.fail(rng, "%s", err.Message)
	}
	v := span(q.Low().Base(), q.High().Base())
	e := constant(typeOf(q), c.span(t.Range()), v)
	e.literal, e.written = false, q.Written()
	return e
}

func (c *compiler) show(t *hclsyntax.FunctionCallExpr) *expr {
	c.takes(t, 1, 1)
	if c.bare {
		c.fail(t.Range(), "an option keeps the amount itself: show it where it stands in a message")
	}
	e := c.read(t.Args[0])
	if e.Kind == Thing || e.Kind == YesNo {
		c.fail(t.Args[0].Range(), "show takes an amount: %s is %s", c.slice(t.Args[0].Range()), e.Type)
	}
	return &expr{Type: Type{Kind: Text}, span: c.span(t.Range()), slot: -1, eval: func(s *scene) value { return words(shown(s, e, e.eval(s))) }}
}

// shown is a value as people read it.
func shown(s *scene, e *expr, v value) string {
	switch {
	case v.state == schema.Broken:
		return "(cannot be read)"
	case !v.known():
		return "(not said)"
	}
	switch e.Kind {
	case Text:
		return v.text
	case List:
		return strings.Join(v.items(), ", ")
	case Number:
		return v.low.Decimal(3)
	case Mixed:
		if v.said.IsAmount() {
			return v.said.Amount().String()
		}
		return v.said.Text()
	}
	if e.written != "" {
		return e.written
	}
	if q, ok := asWritten(e, &v); ok {
		return q.String()
	}
	unit, units := e.unit(), s.view.Units()
	low := quantity.FromBase(v.low, unit).Show(units)
	if !v.ranged {
		return low
	}
	return low + " to " + quantity.FromBase(v.high, unit).Show(units)
}

// asWritten is an amount with the digits it is written with. False: it is
// reckoned.
func asWritten(e *expr, v *value) (quantity.Quantity, bool) {
	if !v.said.IsAmount() || v.computed || v.said.Spec == nil || v.said.Amount().Dim() != e.Dim {
		return quantity.Quantity{}, false
	}
	q := v.said.Amount()
	switch v.end {
	case lowEnd:
		q = q.Low()
	case highEnd:
		q = q.High()
	}
	return q, true
}

func (c *compiler) includes(t *hclsyntax.FunctionCallExpr) *expr {
	c.takes(t, 2, 2)
	list := c.wanted(t.Args[0], List, "includes looks into a list")
	word := c.wanted(t.Args[1], Text, "includes looks for a text")
	c.chosen(list, word, t.Args[1])
	return &expr{Type: Type{Kind: YesNo}, span: c.span(t.Range()), slot: -1, quickTest: quickIncludes(list, word), eval: func(s *scene) value {
		l, w := list.eval(s), word.eval(s)
		if u, unknown := less(&l, &w); unknown {
			return u
		}
		return yes(slices.Contains(l.items(), w.text))
	}}
}

// count is how many blocks of a kind there are: of the kinds that stand for
// blocks of a recipe.
func (c *compiler) count(t *hclsyntax.FunctionCallExpr) *expr {
	c.takes(t, 1, 2)
	if c.bare {
		c.fail(t.Range(), "an option is a figure of the rule itself: the blocks of a recipe cannot be counted in it")
	}
	word, rng := c.word(t, 0)
	known := Counted()
	if !slices.Contains(known, word) {
		c.misspelt(rng, word, known, `"`, "a recipe has no blocks called %s", word)
	}
	at := table.byName[word].at
	if len(t.Args) == 2 {
		if word != "step" {
			c.fail(t.Args[1].Range(), "only steps are of kinds: write count(%s)", schema.Quote(word))
		}
		step, rng := c.word(t, 1)
		if schema.Step(step) == nil {
			c.misspelt(rng, step, schema.StepKinds(), `"`, "there is no step %s", step)
		}
		at = table.byName[strings.ReplaceAll(step, " ", "_")].at
	}
	return &expr{Type: Type{Kind: Number}, span: c.span(t.Range()), slot: -1, eval: func(s *scene) value {
		return number(quantity.Int(int64(len(s.of(at)))))
	}}
}

func (c *compiler) outermost(t *hclsyntax.FunctionCallExpr, pick func(a, b quantity.Rat) quantity.Rat) *expr {
	c.takes(t, 2, 16)
	all := make([]*expr, len(t.Args))
	for i, arg := range t.Args {
		all[i] = c.read(arg)
		if all[i].Kind != Amount && all[i].Kind != Number || !all[i].same(all[0].Type) {
			c.fail(arg.Range(), "%s takes several of the same sort: %s is %s and %s is %s", t.Name,
				c.slice(t.Args[0].Range()), all[0].Type, c.slice(arg.Range()), all[i].Type)
		}
	}
	return &expr{Type: all[0].Type, span: c.span(t.Range()), slot: -1, eval: func(s *scene) value {
		best := all[0].eval(s)
		for _, e := range all[1:] {
			v := e.eval(s)
			if l, unknown := less(&best, &v); unknown {
				return l
			}
			best = span(pick(best.low, v.low), pick(best.high, v.high))
		}
		return best
	}}
}

func (c *compiler) abs(t *hclsyntax.FunctionCallExpr) *expr {
	c.takes(t, 1, 1)
	e := c.read(t.Args[0])
	if e.Kind != Number && e.Kind != Amount || e.isTemperature() {
		c.fail(t.Args[0].Range(), "abs takes a difference, another amount or a number: %s is %s", c.slice(t.Args[0].Range()), e.Type)
	}
	return &expr{Type: e.Type, span: c.span(t.Range()), slot: -1, eval: func(s *scene) value {
		v := e.eval(s)
		if !v.known() {
			return unknownAs(&v)
		}
		low, high := v.low.Abs(), v.high.Abs()
		if v.low.Sign() < 0 && v.high.Sign() > 0 {
			return span(quantity.Int(0), quantity.Max(low, high))
		}
		return span(quantity.Min(low, high), quantity.Max(low, high))
	}}
}
