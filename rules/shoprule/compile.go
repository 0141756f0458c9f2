package shoprule

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"wickrule/schema"
	"wickrule/schema/quantity"
)

// How large one expression, and one rule, may be.
const (
	mostNodes   = 200
	deepest     = 32
	mostSource  = 4000 // bytes of an expression
	mostMessage = 2000 // bytes of a message
	mostNamed   = 8    // kinds of blocks that one rule names
	mostDigits  = 15
)

// expr is a compiled expression.
type expr struct {
	Type
	span      schema.Span // in the rule's text
	eval      func(*scene) value
	fixed     *value // always the same
	quickTest tester // the quick forms; nil: they are made of eval
	quickEnds ends
	quickWord wordOf
	quickList listOf
	thing     func(*scene) *thing // Kind == Thing
	literal   bool                // written in the rule itself
	text      string              // literal texts
	written   string              // amounts in the rule: as they are written there
	named     bool                // a plain name: it can be pointed at
	name      *name               // of a plain name's last attribute; nil: the thing itself
	slot      int                 // of a plain name: of what it starts with; -1 where that is no block
	far       bool                // of a plain name: it leads through another thing
	stands    schema.Span         // of an option that is one plain value: where that is written in the rule
}

// problem is something in a rule that cannot be read, by its place in the
// rule's text.
type problem struct {
	span    schema.Span
	message string
	instead string      // what was probably meant, as it is written; "" where that is not known
	put     schema.Span // where that is to stand
}

// failure stops the compiling of one expression.
type failure struct{ problem }

// compiler reads the expressions of one rule.
type compiler struct {
	p       *program
	start   int32 // where the expression stands in the rule's text
	source  string
	nodes   int
	depth   int
	message bool // texts may be filled in
	bare    bool // nothing of the recipe may be named
}

// fail stops at a place with a message.
func (c *compiler) fail(rng hcl.Range, format string, values ...any) {
	panic(failure{problem{span: c.span(rng), message: fmt.Sprintf(format, values...)}})
}

// misspelt stops at a word that is none of those known, with the nearest. Mark
// is what stands around a word: a quote around a text.
func (c *compiler) misspelt(rng hcl.Range, word string, known []string, mark, format string, values ...any) {
	p := problem{span: c.span(rng), message: fmt.Sprintf(format, values...) + "; " + schema.NearestOrKnown(word, known, mark)}
	if near, _ := schema.Nearest(word, known); near != "" {
		p.instead, p.put = mark+near+mark, p.span
	}
	panic(failure{p})
}

func (c *compiler) span(rng hcl.Range) schema.Span {
	at := func(i int) int32 { return c.start + int32(min(max(i, 0), len(c.source))) }
	s := schema.Span{Start: at(rng.Start.Byte), End: at(rng.End.Byte)}
	s.End = max(s.End, s.Start)
	return s
}

func (c *compiler) slice(rng hcl.Range) string {
	s := c.span(rng)
	return c.source[s.Start-c.start : s.End-c.start]
}

// compile reads an expression that stands in the rule's text at start. What
// cannot be read is put among the rule's problems, and nil returned.
func (c *compiler) compile(source string, start int32, read func(hclsyntax.Expression) *expr) (e *expr) {
	c.source, c.start, c.nodes, c.depth = source, start, 0, 0
	whole := schema.Span{Start: start, End: start + int32(len(source))}
	defer func() {
		if reason := recover(); reason != nil {
			e = nil
			stop, ok := reason.(failure)
			if !ok { // the parser itself stopped on it
				stop = failure{problem{span: whole, message: "this expression cannot be read"}}
			}
			if stop.message != "" {
				c.p.problems = append(c.p.problems, stop.problem)
			}
		}
	}()
	if len(source) > mostSource {
		panic(failure{problem{span: whole, message: fmt.Sprintf("this expression has %d bytes, and %d are read: split the rule in two", len(source), mostSource)}})
	}
	tree, complaints := hclsyntax.ParseExpression([]byte(source), "", hcl.InitialPos)
	if complaints.HasErrors() {
		at := whole
		if subject := complaints[0].Subject; subject != nil {
			at = c.span(*subject)
		}
		panic(failure{problem{span: at, message: "this expression cannot be read: check its signs, quotes and brackets"}})
	}
	return read(tree)
}

// compileWith compiles the expression that a value of the rule is, and lets
// settle look at it as a whole.
func (c *compiler) compileWith(v schema.Value, settle func(*compiler, *expr) *expr) *expr {
	return c.compile(v.Text(), v.Span().Start, func(tree hclsyntax.Expression) *expr { return settle(c, c.read(tree)) })
}

// in counts a part of the expression; what it returns ends the part.
func (c *compiler) in(rng hcl.Range) func() {
	c.nodes++
	c.depth++
	if c.nodes > mostNodes {
		c.fail(rng, "this expression has over %d parts: split the rule in two", mostNodes)
	}
	if c.depth > deepest {
		c.fail(rng, "this expression is over %d levels deep: split the rule in two", deepest)
	}
	return func() { c.depth-- }
}

// read compiles a part of an expression. Only what is listed here is allowed.
func (c *compiler) read(tree hclsyntax.Expression) *expr {
	defer c.in(tree.Range())()
	switch t := tree.(type) {
	case *hclsyntax.LiteralValueExpr:
		return c.literal(t)
	case *hclsyntax.TemplateExpr:
		return c.template(t)
	case *hclsyntax.TemplateWrapExpr:
		if c.message {
			return c.filledIn(t.SrcRange, []hclsyntax.Expression{t.Wrapped})
		}
		c.fail(tree.Range(), "a text is filled in here, which only a message can be: leave out the quotes, ${ and }")
	case *hclsyntax.ParenthesesExpr:
		e := *c.read(t.Expression)
		e.span, e.named = c.span(tree.Range()), false
		return &e
	case *hclsyntax.ScopeTraversalExpr:
		return c.path(t.Traversal, t.Range())
	case *hclsyntax.RelativeTraversalExpr:
		return c.further(c.read(t.Source), t.Traversal, t.Range())
	case *hclsyntax.UnaryOpExpr:
		return c.unary(t)
	case *hclsyntax.BinaryOpExpr:
		return c.binary(t)
	case *hclsyntax.ConditionalExpr:
		return c.conditional(t)
	case *hclsyntax.FunctionCallExpr:
		return c.call(t)
	}
	c.fail(tree.Range(), "%s is not for rules: they have names, figures, comparisons, + - * /, && || !, ? : and the functions %s",
		construct(tree), strings.Join(functionNames, ", "))
	return nil
}

func construct(tree hclsyntax.Expression) string {
	switch tree.(type) {
	case *hclsyntax.ForExpr:
		return "a `for`"
	case *hclsyntax.SplatExpr:
		return "a splat"
	case *hclsyntax.IndexExpr:
		return "an index in brackets"
	case *hclsyntax.TupleConsExpr:
		return "a list in brackets"
	case *hclsyntax.ObjectConsExpr:
		return "a table in braces"
	case *hclsyntax.TemplateJoinExpr:
		return "a text with %{ }"
	}
	return "this"
}

// constant is an expression that always gives the same.
func constant(t Type, span schema.Span, v value) *expr {
	return &expr{Type: t, span: span, literal: true, text: v.text, slot: -1, fixed: &v, eval: func(*scene) value { return v }}
}

func (c *compiler) literal(t *hclsyntax.LiteralValueExpr) *expr {
	span, source := c.span(t.SrcRange), c.slice(t.SrcRange)
	switch source {
	case "true":
		return constant(Type{Kind: YesNo}, span, yes(true))
	case "false":
		return constant(Type{Kind: YesNo}, span, yes(false))
	case "null":
		c.fail(t.SrcRange, "null is not for rules: a value that is not written makes the rule say that it could not check")
	}
	n, ok := readNumber(source)
	if !ok {
		c.fail(t.SrcRange, "%s cannot be computed with: write a number of up to %d digits, without an exponent", source, mostDigits)
	}
	return constant(Type{Kind: Number}, span, number(n))
}

// readNumber is a number with its digits as written.
func readNumber(source string) (quantity.Rat, bool) {
	n, d, digits, point := int64(0), int64(1), 0, false
	for i := range len(source) {
		ch := source[i]
		switch {
		case ch == '.' && !point && i > 0:
			point = true
		case '0' <= ch && ch <= '9':
			if digits++; digits > mostDigits {
				return quantity.Rat{}, false
			}
			n = n*10 + int64(ch-'0')
			if point {
				d *= 10
			}
		default:
			return quantity.Rat{}, false
		}
	}
	return quantity.NewRat(n, d), digits > 0
}

// template is a text; in a message it may be filled in.
func (c *compiler) template(t *hclsyntax.TemplateExpr) *expr {
	if text, ok := literalText(t); ok {
		e := constant(Type{Kind: Text}, c.span(t.SrcRange), words(text))
		return e
	}
	if !c.message {
		c.fail(t.SrcRange, "a text is filled in here, which only a message can be")
	}
	return c.filledIn(t.SrcRange, t.Parts)
}

// literalText is a text without anything to be filled in.
func literalText(t *hclsyntax.TemplateExpr) (string, bool) {
	var b strings.Builder
	for _, part := range t.Parts {
		piece, ok := pieceOf(part)
		if !ok {
			return "", false
		}
		b.WriteString(piece)
	}
	return b.String(), true
}

// filledIn is a message. A value that is not known reads as such: a message is
// never the reason that a finding is lost.
func (c *compiler) filledIn(rng hcl.Range, trees []hclsyntax.Expression) *expr {
	c.message = false // only once
	var parts []func(*scene) string
	for _, tree := range trees {
		if text, ok := pieceOf(tree); ok {
			parts = append(parts, func(*scene) string { return text })
			continue
		}
		e := c.read(tree)
		switch e.Kind {
		case Thing:
			c.fail(tree.Range(), "%s is %s: ask for something of it, such as its title", c.slice(tree.Range()), e.Type)
		case Amount, Mixed:
			c.fail(tree.Range(), "%s is %s: write show(%s), so that it reads in the shop's units", c.slice(tree.Range()), e.Type, c.slice(tree.Range()))
		case YesNo:
			c.fail(tree.Range(), "yes or no cannot be read in a sentence: write … ? \"one\" : \"other\"")
		}
		parts = append(parts, func(s *scene) string { return shown(s, e, e.eval(s)) })
	}
	return &expr{Type: Type{Kind: Text}, span: c.span(rng), slot: -1, eval: func(s *scene) value {
		var b strings.Builder
		for _, part := range parts {
			b.WriteString(part(s))
			if b.Len() > mostMessage {
				break
			}
		}
		return words(b.String())
	}}
}

// pieceOf is the text of a piece of a template. A number or a yes that is
// filled in is no such piece.
func pieceOf(tree hclsyntax.Expression) (text string, ok bool) {
	defer func() {
		if recover() != nil { // not a text
			ok = false
		}
	}()
	lit, ok := tree.(*hclsyntax.LiteralValueExpr)
	if !ok {
		return "", false
	}
	return lit.Val.AsString(), true
}

// path is a name and what is asked of it.
func (c *compiler) path(t hcl.Traversal, rng hcl.Range) *expr {
	root := t.RootName()
	if root == "option" {
		return c.option(t, rng)
	}
	k := table.byName[root]
	if k == nil {
		known := append(slices.Clone(table.words), "option")
		c.misspelt(t[0].SourceRange(), root, known, "", "nothing is called %s in a rule", root)
	}
	if c.bare {
		c.fail(t[0].SourceRange(), "an option is a figure of the rule itself: %s cannot be named in it", root)
	}
	slot := c.p.slot(k)
	if slot < 0 {
		c.fail(rng, "this rule names over %d kinds of blocks: split it in two", mostNamed)
	}
	e := &expr{Type: Type{Kind: Thing, Of: root}, span: c.span(t[0].SourceRange()), named: true, slot: slot,
		thing: func(s *scene) *thing { return s.now[slot] }}
	e = c.further(e, t[1:], rng)
	e.span = c.span(rng)
	return e
}

// option is a figure of the rule by its name.
func (c *compiler) option(t hcl.Traversal, rng hcl.Range) *expr {
	if len(t) < 2 {
		c.fail(rng, "say which option: option.NAME")
	}
	step, ok := t[1].(hcl.TraverseAttr)
	if !ok {
		c.fail(rng, "say which option: option.NAME")
	}
	o := c.p.options[step.Name]
	if o == nil && slices.Contains(c.p.unread, step.Name) {
		panic(failure{}) // told where it is written
	}
	if o == nil {
		c.misspelt(undotted(step), step.Name, c.p.optionNames, "", "this rule has no option %s", step.Name)
	}
	e := *o
	e.span, e.literal = c.span(rng), false
	return c.further(&e, t[2:], rng)
}

// further is what is asked of something: an attribute of a thing, an end of a
// range.
func (c *compiler) further(e *expr, t hcl.Traversal, rng hcl.Range) *expr {
	for _, step := range t {
		attr, ok := step.(hcl.TraverseAttr)
		if !ok {
			c.fail(rng, "an index in brackets is not for rules")
		}
		c.nodes++
		if c.nodes > mostNodes {
			c.fail(rng, "this expression has over %d parts: split the rule in two", mostNodes)
		}
		switch e.Kind {
		case Thing:
			e = c.ask(e, attr)
		case Amount, Number:
			e = c.end(e, attr)
		default:
			c.fail(undotted(attr), "%s is %s, of which nothing can be asked", c.source[e.span.Start-c.start:e.span.End-c.start], e.Type)
		}
	}
	return e
}

// undotted is where the name of an attribute stands.
func undotted(attr hcl.TraverseAttr) hcl.Range {
	rng := attr.SrcRange
	rng.Start.Byte = max(rng.Start.Byte, rng.End.Byte-len(attr.Name))
	return rng
}

// ask is an attribute of a thing.
func (c *compiler) ask(of *expr, attr hcl.TraverseAttr) *expr {
	k := table.byName[of.Of]
	n := k.byName[attr.Name]
	if n == nil {
		c.misspelt(undotted(attr), attr.Name, k.nearNames(), "", "%s has no %s", of.Type, attr.Name)
	}
	span := c.span(attr.SrcRange)
	e := &expr{Type: n.Type, span: schema.Span{Start: of.span.Start, End: span.End}, named: of.named, name: n, slot: of.slot, far: of.name != nil}
	thingOf, get, follow := of.thing, n.get, n.follow
	if n.Type.Kind == Thing {
		number := c.p.leads
		c.p.leads++
		e.thing = func(s *scene) *thing {
			s.led[number] = follow(s, thingOf(s))
			return &s.led[number]
		}
		return e
	}
	if of.name == nil { // asked of a block of the combination: the usual case
		slot := of.slot
		quickName(e, n, func(s *scene) *thing { return s.now[slot] })
		e.eval = func(s *scene) value { return get(s, s.now[slot]) }
		return e
	}
	e.eval = func(s *scene) value { return get(s, thingOf(s)) }
	quickName(e, n, thingOf)
	return e
}

// end is one end of a range.
func (c *compiler) end(of *expr, attr hcl.TraverseAttr) *expr {
	high := attr.Name == "high"
	if attr.Name != "low" && !high {
		c.fail(undotted(attr), "%s has .low and .high, the ends of a range, and no .%s", of.Type, attr.Name)
	}
	inner := of.eval
	return &expr{Type: of.Type, span: schema.Span{Start: of.span.Start, End: c.span(attr.SrcRange).End}, named: of.named, name: of.name, slot: of.slot, far: of.far,
		eval: func(s *scene) value {
			v := inner(s)
			if !v.known() || !v.ranged {
				return v
			}
			v.ranged, v.end = false, lowEnd
			if high {
				v.low, v.end = v.high, highEnd
			} else {
				v.high = v.low
			}
			return v
		}}
}

func (c *compiler) unary(t *hclsyntax.UnaryOpExpr) *expr {
	if t.Op != hclsyntax.OpLogicalNot {
		c.fail(t.SrcRange, "a minus in front is not for rules: write what it is less than the other way round")
	}
	inner := c.wanted(t.Val, YesNo, "! turns yes or no round")
	return &expr{Type: inner.Type, span: c.span(t.SrcRange), slot: -1, quickTest: quickNot(inner), eval: func(s *scene) value {
		v := inner.eval(s)
		if v.known() {
			v = yes(!v.yes)
		}
		return v
	}}
}

// wanted is a part that must be of one kind.
func (c *compiler) wanted(tree hclsyntax.Expression, k Kind, why string) *expr {
	e := c.read(tree)
	if e.Kind != k {
		c.fail(tree.Range(), "%s: %s is %s", why, c.slice(tree.Range()), e.Type)
	}
	return e
}

func (c *compiler) conditional(t *hclsyntax.ConditionalExpr) *expr {
	when := c.wanted(t.Condition, YesNo, "what stands before ? is yes or no")
	a, b := c.read(t.TrueResult), c.read(t.FalseResult)
	if a.Kind == Thing || a.Kind == Mixed || !a.same(b.Type) {
		c.fail(t.SrcRange, "? chooses between two of the same sort: %s is %s and %s is %s",
			c.slice(t.TrueResult.Range()), a.Type, c.slice(t.FalseResult.Range()), b.Type)
	}
	return &expr{Type: a.Type, span: c.span(t.SrcRange), slot: -1, eval: func(s *scene) value {
		v := when.eval(s)
		switch {
		case !v.known():
			return unknownAs(&v)
		case v.yes:
			return a.eval(s)
		}
		return b.eval(s)
	}}
}
