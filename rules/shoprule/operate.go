package shoprule

import (
	"fmt"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"wickrule/schema"
	"wickrule/schema/quantity"
)

func (c *compiler) binary(t *hclsyntax.BinaryOpExpr) *expr {
	switch t.Op {
	case hclsyntax.OpLogicalAnd:
		return c.both(t, false)
	case hclsyntax.OpLogicalOr:
		return c.both(t, true)
	case hclsyntax.OpEqual:
		return c.equal(t, true)
	case hclsyntax.OpNotEqual:
		return c.equal(t, false)
	case hclsyntax.OpLessThan:
		return c.order(t, lessThan)
	case hclsyntax.OpLessThanOrEqual:
		return c.order(t, atMost)
	case hclsyntax.OpGreaterThan:
		return c.order(t, moreThan)
	case hclsyntax.OpGreaterThanOrEqual:
		return c.order(t, atLeast)
	case hclsyntax.OpAdd:
		return c.add(t)
	case hclsyntax.OpSubtract:
		return c.subtract(t)
	case hclsyntax.OpMultiply:
		return c.multiply(t)
	case hclsyntax.OpDivide:
		return c.divide(t)
	}
	c.fail(t.SrcRange, "this sign is not for rules: they have comparisons, + - * /, && and ||")
	return nil
}

// both is && and ||. An end that decides does so whatever the other is: false
// && unknown is false, true || unknown is true.
func (c *compiler) both(t *hclsyntax.BinaryOpExpr, decides bool) *expr {
	sign := "&&"
	if decides {
		sign = "||"
	}
	a := c.wanted(t.LHS, YesNo, sign+" joins two that are yes or no")
	b := c.wanted(t.RHS, YesNo, sign+" joins two that are yes or no")
	return &expr{Type: a.Type, span: c.span(t.SrcRange), slot: -1, quickTest: quickBoth(a, b, decides), eval: func(s *scene) value {
		x := a.eval(s)
		if x.known() && x.yes == decides {
			return x
		}
		y := b.eval(s)
		if y.known() && y.yes == decides {
			return y
		}
		if l, unknown := less(&x, &y); unknown {
			return l
		}
		return yes(!decides)
	}}
}

// two are the sides of a sign. Text never turns into a number.
func (c *compiler) two(t *hclsyntax.BinaryOpExpr) (a, b *expr) { return c.read(t.LHS), c.read(t.RHS) }

// mismatch tells of two sides that do not go together, and what to do where
// that is known.
func (c *compiler) mismatch(t *hclsyntax.BinaryOpExpr, what string, a, b *expr) {
	for _, side := range []struct {
		e    *expr
		tree hclsyntax.Expression
	}{{a, t.LHS}, {b, t.RHS}} {
		switch {
		case side.e.Kind == Mixed && side.e.Instead != "":
			c.fail(side.tree.Range(), "%s may be written in several ways, so it cannot be reckoned with: ask for %s", c.slice(side.tree.Range()), side.e.Instead)
		case side.e.Kind == Mixed:
			c.fail(side.tree.Range(), "%s may be written in several ways, so it cannot be reckoned with", c.slice(side.tree.Range()))
		case side.e.Kind == Thing:
			c.fail(side.tree.Range(), "%s is %s: ask for something of it, such as its key", c.slice(side.tree.Range()), side.e.Type)
		}
	}
	hint := ""
	switch {
	case a.Kind == Amount && b.Kind == Amount && (a.Dim == quantity.Temperature && b.Dim == quantity.Difference || a.Dim == quantity.Difference && b.Dim == quantity.Temperature):
		hint = `; amount("182 °F") is a temperature, degrees("10 °F") a difference`
	case a.Kind == Amount && b.Kind == Amount && a.Dim == quantity.Proportion && b.Dim == quantity.Proportion:
		hint = "; take both of wax or both of total"
	case a.Kind == Amount && b.Kind == Text || a.Kind == Text && b.Kind == Amount:
		hint = `; an amount is written amount("…")`
	case a.Kind == Amount && b.Kind == Number || a.Kind == Number && b.Kind == Amount:
		hint = `; a number needs its unit: amount("…")`
	}
	p := problem{span: c.span(t.SrcRange), message: fmt.Sprintf("%s: %s is %s and %s is %s%s", what, c.slice(t.LHS.Range()), a.Type, c.slice(t.RHS.Range()), b.Type, hint)}
	if p.instead = meant(b, a.Type); p.instead != "" {
		p.put = b.span
	} else if p.instead = meant(a, b.Type); p.instead != "" {
		p.put = a.span
	}
	panic(failure{p})
}

// meant is how a side is written that was meant to measure what the other
// does: an amount in plain quotes, or a difference written as a temperature.
// "" where that is not plain.
func meant(e *expr, other Type) string {
	if other.Kind != Amount {
		return ""
	}
	text, function := "", "amount"
	switch {
	case e.Kind == Text && e.literal:
		text = e.text
	case other.Dim == quantity.Difference && e.isTemperature():
		text = e.written
	}
	if other.Dim == quantity.Difference {
		function = "degrees"
	}
	if q, err := quantity.Parse(text, other.Dim); text == "" || err != nil || !typeOf(q).same(other) {
		return ""
	}
	return function + "(" + schema.Quote(text) + ")"
}

func (c *compiler) order(t *hclsyntax.BinaryOpExpr, o ordering) *expr {
	a, b := c.two(t)
	if a.Kind != Amount && a.Kind != Number || !a.same(b.Type) {
		c.mismatch(t, "these have no order", a, b)
	}
	return &expr{Type: Type{Kind: YesNo}, span: c.span(t.SrcRange), slot: -1, quickTest: quickOrder(a, b, o), eval: func(s *scene) value {
		x := a.eval(s)
		y := b.eval(s)
		if l, unknown := less(&x, &y); unknown {
			return l
		}
		return yes(o.holds(x.low, x.high, y.low, y.high))
	}}
}

func (c *compiler) equal(t *hclsyntax.BinaryOpExpr, wanted bool) *expr {
	a, b := c.two(t)
	if a.Kind == Thing || a.Kind == Mixed || a.Kind == List || !a.same(b.Type) {
		if a.Kind == List && b.Kind == Text || a.Kind == Text && b.Kind == List {
			c.fail(t.SrcRange, "a list is looked into with includes(list, \"word\")")
		}
		c.mismatch(t, "these cannot be equal", a, b)
	}
	if a.Kind == Text {
		c.chosen(a, b, t.RHS)
		c.chosen(b, a, t.LHS)
	}
	e := &expr{Type: Type{Kind: YesNo}, span: c.span(t.SrcRange), slot: -1}
	left, right := a.eval, b.eval
	if a.Kind == Text {
		e.quickTest = quickSame(a, b, wanted)
	}
	switch {
	case a.Kind == Text && b.literal:
		word := b.text
		e.eval = func(s *scene) value {
			x := left(s)
			if !x.known() {
				return unknownAs(&x)
			}
			return yes((x.text == word) == wanted)
		}
	case a.Kind == Text || a.Kind == YesNo:
		e.eval = func(s *scene) value {
			x, y := left(s), right(s)
			if l, unknown := less(&x, &y); unknown {
				return l
			}
			return yes((x.text == y.text && x.yes == y.yes) == wanted)
		}
	default:
		e.eval = func(s *scene) value {
			x, y := left(s), right(s)
			if l, unknown := less(&x, &y); unknown {
				return l
			}
			if wanted { // at both ends
				return yes(x.low.Equal(y.low) && x.high.Equal(y.high) && x.low.Equal(x.high))
			}
			return yes(!x.low.Equal(y.low) && !x.low.Equal(y.high) && !x.high.Equal(y.low) && !x.high.Equal(y.high))
		}
	}
	return e
}

// chosen says no to a word that the other side can never be.
func (c *compiler) chosen(of, word *expr, tree hclsyntax.Expression) {
	if word.literal && !of.knows(word.text) {
		c.misspelt(tree.Range(), word.text, of.Choices, `"`, "%s is not among what this can be", schema.Quote(word.text))
	}
	if option := word.fixed; option != nil && !of.knows(option.text) {
		p := problem{span: c.span(tree.Range()), message: fmt.Sprintf("%s is %s, which is not among what this can be; %s",
			c.slice(tree.Range()), schema.Quote(option.text), schema.NearestOrKnown(option.text, of.Choices, `"`))}
		if near, _ := schema.Nearest(option.text, of.Choices); near != "" && word.stands.Len() > 0 {
			p.instead, p.put = schema.Quote(near), word.stands
		}
		panic(failure{p})
	}
}

// reckon is an expression made of two amounts or numbers.
func (c *compiler) reckon(t *hclsyntax.BinaryOpExpr, typ Type, a, b *expr, of func(x, y *value) value) *expr {
	e := &expr{Type: typ, span: c.span(t.SrcRange), slot: -1, eval: func(s *scene) value {
		x := a.eval(s)
		y := b.eval(s)
		if l, unknown := less(&x, &y); unknown {
			return l
		}
		return of(&x, &y)
	}}
	if a.fixed != nil && b.fixed != nil {
		if v := e.eval(nil); v.known() {
			e.fixed = &v
			e.eval = func(*scene) value { return v }
		}
	}
	return e
}

// add joins what measures the same, and a temperature with a difference.
func (c *compiler) add(t *hclsyntax.BinaryOpExpr) *expr {
	a, b := c.two(t)
	typ, ok := a.Type, a.same(b.Type)
	switch {
	case a.Kind != Amount && a.Kind != Number:
		ok = false
	case a.isTemperature() && b.isDifference():
		ok = true
	case a.isDifference() && b.isTemperature():
		typ, ok = b.Type, true
	case a.isTemperature() && b.isTemperature():
		c.fail(t.SrcRange, `two temperatures have no sum: %s and %s; a difference is written degrees("10 °F")`, c.slice(t.LHS.Range()), c.slice(t.RHS.Range()))
	}
	if !ok {
		c.mismatch(t, "these cannot be added", a, b)
	}
	e := c.reckon(t, typ, a, b, func(x, y *value) value { return span(x.low.Add(y.low), x.high.Add(y.high)) })
	e.quickEnds = quickSum(a, b, false)
	return e
}

func (t *Type) isTemperature() bool { return t.Kind == Amount && t.Dim == quantity.Temperature }
func (t *Type) isDifference() bool  { return t.Kind == Amount && t.Dim == quantity.Difference }

// subtract takes from what measures the same; two temperatures leave a
// difference.
func (c *compiler) subtract(t *hclsyntax.BinaryOpExpr) *expr {
	a, b := c.two(t)
	typ, ok := a.Type, a.same(b.Type)
	switch {
	case a.Kind != Amount && a.Kind != Number:
		ok = false
	case a.isTemperature() && b.isTemperature():
		typ = amountOf(quantity.Difference)
	case a.isTemperature() && b.isDifference():
		ok = true
	}
	if !ok {
		c.mismatch(t, "one of these cannot be taken from the other", a, b)
	}
	e := c.reckon(t, typ, a, b, func(x, y *value) value { return span(x.low.Sub(y.high), x.high.Sub(y.low)) })
	e.quickEnds = quickSum(a, b, true)
	return e
}

// multiply is a number times a number or an amount. A temperature has no
// double: 20 °F is not twice as warm as 10 °F.
func (c *compiler) multiply(t *hclsyntax.BinaryOpExpr) *expr {
	a, b := c.two(t)
	typ := a.Type
	if a.Kind == Number {
		typ = b.Type
	}
	if a.Kind != Number && b.Kind != Number || typ.Kind != Number && typ.Kind != Amount {
		c.mismatch(t, "a quantity is multiplied by a number only", a, b)
	}
	if typ.isTemperature() {
		c.fail(t.SrcRange, "a temperature cannot be multiplied: on another scale it would be another; a difference can")
	}
	return c.reckon(t, typ, a, b, func(x, y *value) value {
		return spread(x.low.Mul(y.low), x.low.Mul(y.high), x.high.Mul(y.low), x.high.Mul(y.high))
	})
}

// divide is an amount by a number, by what measures the same, or a weight by a
// volume.
func (c *compiler) divide(t *hclsyntax.BinaryOpExpr) *expr {
	a, b := c.two(t)
	typ := a.Type
	switch {
	case a.isTemperature() || b.isTemperature():
		c.fail(t.SrcRange, "a temperature cannot be divided: on another scale it would be another; a difference can")
	case (a.Kind == Amount || a.Kind == Number) && b.Kind == Number:
	case a.Kind == Amount && a.same(b.Type):
		typ = Type{Kind: Number}
	case a.Kind == Amount && b.Kind == Amount && a.Dim == quantity.Weight && b.Dim == quantity.Volume:
		typ = amountOf(quantity.Density)
	default:
		c.mismatch(t, "a quantity is divided by a number, by one that measures the same, or a weight by a volume", a, b)
	}
	return c.reckon(t, typ, a, b, func(x, y *value) value {
		if y.low.Sign() <= 0 && y.high.Sign() >= 0 {
			return value{byZero: true}
		}
		q := func(a, b quantity.Rat) quantity.Rat { n, _ := a.Quo(b); return n }
		return spread(q(x.low, y.low), q(x.low, y.high), q(x.high, y.low), q(x.high, y.high))
	})
}

// spread is the range that covers all of several figures.
func spread(first quantity.Rat, more ...quantity.Rat) value {
	low, high := first, first
	for _, m := range more {
		low, high = quantity.Min(low, m), quantity.Max(high, m)
	}
	return span(low, high)
}
