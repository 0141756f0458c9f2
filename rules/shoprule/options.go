package shoprule

import (
	"fmt"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// An option is a figure of the rule under a name. A shop that shares the rule
// with others can have another figure for it: its tune of the rule says so.

// option reads a figure of the rule's own, and puts what the shop has for it
// in its place.
func (p *program) option(o *schema.Block) {
	c := &compiler{p: p, bare: true}
	e := p.read(c, o.Get("is"), func(c *compiler, e *expr) *expr {
		v := e.eval(nil) // nothing of the recipe is in it
		if !v.known() {
			c.refuse(e, "this cannot be reckoned: %s", v.why())
		}
		is := constant(e.Type, e.span, v)
		is.written = e.written
		if e.literal {
			is.stands = e.span
		}
		return is
	})
	switch {
	case !IsOptionName(o.Label):
		p.problem(o.LabelSpan, "an option's name has small letters, digits and _ only, so that it can be asked for as option.in_hand")
	case p.options[o.Label] != nil:
		p.problem(o.LabelSpan, "there is already an option %s in this rule", o.Label)
	case e != nil:
		if here, m := e.tuned(o.Label, tunedOption(p.tune, o.Label)); here != nil && m == nil {
			here.stands = e.stands
			p.sets = append(p.sets, set{o.Label, e})
			e = here
		}
		p.options[o.Label] = e
		p.optionNames = append(p.optionNames, o.Label)
	default:
		p.unread = append(p.unread, o.Label)
	}
}

// set is an option that the shop's tune has set, and what it is in the rule.
type set struct {
	name string
	was  *expr
}

// tunedNotes say what the shop has for the rule's options, since whoever reads
// the rule finds another figure there.
func (p *program) tunedNotes(pass *lint.Pass) []lint.Note {
	if len(p.sets) == 0 {
		return nil
	}
	tune := pass.Shop().Tune(p.rule.Name) // an edit of the shop block has everything checked again: no need to note it
	var notes []lint.Note
	for _, s := range p.sets {
		is := p.options[s.name]
		if at := tunedOption(tune, s.name); at.Known() && !is.comesTo(s.was) {
			notes = append(notes, lint.Note{Place: lint.AtValue(at),
				Message: fmt.Sprintf("in this shop %s is %s; the rule says %s", s.name, is.constantly(pass.Units()), s.was.constantly(pass.Units()))})
		}
	}
	return notes
}

// IsOptionName says whether an option can be called by a name: it is asked for
// as option.NAME.
func IsOptionName(name string) bool {
	return name != "" && !strings.ContainsFunc(name, func(r rune) bool { return r != '_' && (r < 'a' || r > 'z') && (r < '0' || r > '9') })
}

// tunedOption is what a tune says that an option is; of several the first
// counts.
func tunedOption(tune *schema.Block, name string) schema.Value {
	if tune != nil {
		for o := range tune.Each("option") {
			if o.Label == name {
				return o.Get("is")
			}
		}
	}
	return schema.Value{}
}

// misfit is why a value cannot stand for an option.
type misfit struct {
	message string
	instead string // what was probably meant; "" where that is not known
}

// tuned is the option with a value that a shop has for it. Nil: the shop has
// none that can be read.
func (e *expr) tuned(name string, v schema.Value) (*expr, *misfit) {
	if !v.Known() {
		return nil, nil
	}
	text, quoted := v.Text(), strings.HasPrefix(v.Written(), `"`)
	refused := func(how, instead string) (*expr, *misfit) {
		return nil, &misfit{name + " is " + e.Type.String() + ", and " + v.Written() + " is none: " + how, instead}
	}
	is := value{}
	switch e.Kind {
	case YesNo:
		if text != "true" && text != "false" {
			return refused("write true or false", "")
		}
		if quoted {
			return refused("write it without quotes", text)
		}
		is = yes(text == "true")
	case Number:
		n, ok := readNumber(text)
		switch {
		case !ok:
			return refused("write a number, such as "+e.fixed.low.Decimal(decimals), "")
		case quoted:
			return refused("write it without quotes", text)
		}
		is = number(n)
	case Text:
		if !quoted {
			return refused("write it in quotes", schema.Quote(text))
		}
		is = words(text)
	case Amount:
		if !quoted {
			return refused("write it in quotes, with its unit", "")
		}
		return e.tunedAmount(name, text)
	default:
		return nil, &misfit{name + " is " + e.Type.String() + ", which no tune can set", ""}
	}
	here := constant(e.Type, e.span, is)
	return here, nil
}

func (e *expr) tunedAmount(name, text string) (*expr, *misfit) {
	q, err := quantity.Parse(text, e.Dim)
	switch {
	case err != nil:
		return nil, &misfit{name + " is " + e.Type.String() + ": " + err.Message, ""}
	case !typeOf(q).same(e.Type):
		return nil, &misfit{name + " is " + e.Type.String() + ", and " + schema.Quote(text) + " is " + typeOf(q).String(), ""}
	case q.IsRange() && !e.fixed.ranged:
		return nil, &misfit{name + " is one figure, and " + schema.Quote(text) + " is a range", ""}
	}
	here := constant(e.Type, e.span, span(q.Low().Base(), q.High().Base()))
	here.written = q.Written()
	return here, nil
}

// decimals is how many places of a number are shown.
const decimals = 6

// Option is a figure of a rule under a name.
type Option struct {
	Name  string
	Type  Type
	Range bool   // it can be a range
	Title string // what it is for; "" where the rule does not say
	Is    string // as people read it
	Here  string // what the shop has in its place; "" where it leaves it
}

// String is the option in a line: "What we keep in hand: 10 °F; in this shop
// 5 °F".
func (o Option) String() string {
	text := o.Is
	if o.Title != "" {
		text = strings.TrimSuffix(o.Title, ".") + ": " + text
	}
	if o.Here != "" {
		text += "; in this shop " + o.Here
	}
	return text
}

// OptionsOf are the options of a rule of the shop's own, in order, with what
// the shop has for them.
func OptionsOf(shop *lint.Shop, rule *schema.Block) []Option {
	p := programs.For(shop, written(rule))
	here := inForce(shop, rule)
	var all []Option
	for _, name := range p.optionNames {
		e := p.options[name]
		o := Option{Name: name, Type: e.Type, Range: e.fixed.ranged, Is: e.constantly(shop.Units())}
		for b := range p.block.Each("option") {
			if b.Label == name {
				o.Title = b.Get("title").Text()
				break
			}
		}
		if is := here.options[name]; is != nil && !is.comesTo(e) { // one that is made of another differs with that
			o.Here = is.constantly(shop.Units())
		}
		all = append(all, o)
	}
	return all
}

// OptionOf is an option of a rule of the shop's own by its name. False: there
// is none that can be read.
func OptionOf(shop *lint.Shop, rule *schema.Block, name string) (Option, bool) {
	if rule != nil {
		for _, o := range OptionsOf(shop, rule) {
			if o.Name == name {
				return o, true
			}
		}
	}
	return Option{}, false
}

// Literal is what the option is in the rule, as a tune would write it.
func (o Option) Literal() string {
	switch o.Type.Kind {
	case YesNo:
		if o.Is == "yes" {
			return "true"
		}
		return "false"
	case Number:
		return o.Is
	}
	return schema.Quote(o.Is)
}

// comesTo says whether two options are the same, however they are written.
func (e *expr) comesTo(o *expr) bool {
	a, b := e.fixed, o.fixed
	return a.yes == b.yes && a.text == b.text && a.low.Equal(b.low) && a.high.Equal(b.high)
}

// constantly is what an option is, as people read it.
func (e *expr) constantly(units quantity.System) string {
	switch v := e.fixed; {
	case e.Kind == YesNo && v.yes:
		return "yes"
	case e.Kind == YesNo:
		return "no"
	case e.Kind == Text:
		return v.text
	case e.Kind == Number:
		return v.low.Decimal(decimals)
	case e.written != "":
		return e.written
	case v.ranged:
		return quantity.FromBase(v.low, e.unit()).Show(units) + " to " + quantity.FromBase(v.high, e.unit()).Show(units)
	default:
		return quantity.FromBase(v.low, e.unit()).Show(units)
	}
}
