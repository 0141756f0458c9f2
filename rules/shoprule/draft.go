package shoprule

import (
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"wickrule/lint"
	"wickrule/schema"
)

// Draft is a rule as it is being written: what can be named in it, and what a
// part of its expressions is. It answers for a rule that cannot be read too,
// from what of it can be.
type Draft struct {
	p *program
}

// DraftOf is the draft of a rule block. A nil block is a rule of which nothing
// has been read.
func DraftOf(shop *lint.Shop, rule *schema.Block) *Draft {
	if rule == nil {
		return &Draft{&program{options: map[string]*expr{}, rule: &lint.Rule{}}}
	}
	return &Draft{programs.For(shop, written(rule))}
}

// Name is something that can be written in an expression.
type Name struct {
	Word  string
	Gives string // its type and dimension: "a temperature"
	Doc   string
	From  string // where it is from: "recipe", "shelves", "reckoned", "this rule"; "" for a kind of block
	Words []string
	Type  Type
	One   bool // there is one of it in a recipe, such as the batch
	Set   bool // a fix can set it
}

// Kinds are the names that an expression can start with: first what the rule
// names already, then all others in the order of the reference.
func (d *Draft) Kinds() []Name {
	var names []Name
	for _, k := range d.p.slots {
		names = append(names, k.told())
	}
	for _, k := range table.kinds {
		if !slices.Contains(d.p.slots, k) {
			names = append(names, k.told())
		}
	}
	return names
}

// Named is how many of Kinds the rule names already.
func (d *Draft) Named() int { return len(d.p.slots) }

// Options are the options of the rule that can be read, in order.
func (d *Draft) Options() []Name {
	var names []Name
	for _, word := range d.p.optionNames {
		names = append(names, d.optionTold(word))
	}
	return names
}

func (d *Draft) optionTold(word string) Name {
	o := d.p.options[word]
	n := Name{Word: word, Gives: o.Type.String(), From: fromRule, Type: o.Type}
	for b := range d.p.block.Each("option") {
		if b.Label == word {
			n.Doc = b.Get("title").Text()
			n.Words = []string{b.Get("is").Text()}
			break
		}
	}
	return n
}

const fromRule = "this rule"

// Asked are the names that can be asked of an expression, behind a dot, and
// what that is: "a pour". Nothing can be asked of most.
func (d *Draft) Asked(base string) (names []Name, of string) {
	if base == "option" {
		return d.Options(), "this rule"
	}
	e := d.part(base)
	switch {
	case e == nil:
		return nil, ""
	case e.Kind == Thing:
		for _, n := range table.byName[e.Of].Names {
			names = append(names, n.told())
		}
	case !e.literal && (e.Kind == Amount || e.Kind == Number):
		names = endsOf(e.Type)
	}
	return names, e.Type.String()
}

func endsOf(t Type) []Name {
	return []Name{
		{Word: "low", Gives: t.String(), Doc: "The lower end of a range; of what is no range, itself.", Type: t},
		{Word: "high", Gives: t.String(), Doc: "The upper end of a range; of what is no range, itself.", Type: t},
	}
}

func (k *kind) told() Name {
	t := Type{Kind: Thing, Of: k.Name}
	return Name{Word: k.Name, Gives: t.String(), Doc: k.Doc, Type: t, One: k.one()}
}

// one says whether a recipe has one of the kind, whatever stands in it.
func (k *kind) one() bool {
	return k.step == "" && !k.vessel && k.ingredients == nil && (k.all == nil || k.Name == "shop")
}

func (n *name) told() Name {
	return Name{Word: n.Name, Gives: n.gives(), Doc: n.Doc, From: n.From, Words: n.Type.Choices, Type: n.Type, Set: n.canBeSet()}
}

// NameOf is what can be asked of a kind, or with "" a kind itself. False: there
// is none of that word.
func NameOf(kind, word string) (Name, bool) {
	if kind == "" {
		k := table.byName[word]
		if k == nil {
			return Name{}, false
		}
		return k.told(), true
	}
	if k := table.byName[kind]; k != nil && k.byName[word] != nil {
		return k.byName[word].told(), true
	}
	return Name{}, false
}

// Fits says whether an expression can stand behind a sign that has left before
// it: pour.at <= wax.weight cannot.
func (d *Draft) Fits(left, sign, right string) bool { return d.part(left+" "+sign+" "+right) != nil }

// TypeOf is what an expression gives. False: it cannot be read.
func (d *Draft) TypeOf(source string) (Type, bool) {
	e := d.part(source)
	if e == nil {
		return Type{}, false
	}
	return e.Type, true
}

// part compiles a part of one of the rule's expressions, beside what the rule
// already is. Nil: it cannot be read.
func (d *Draft) part(source string) *expr {
	e, _ := d.partIn(source)
	return e
}

func (d *Draft) partIn(source string) (*expr, *program) {
	p := *d.p
	p.slots, p.problems = slices.Clone(d.p.slots), nil
	c := &compiler{p: &p}
	return c.compile(source, 0, func(tree hclsyntax.Expression) *expr { return c.read(tree) }), &p
}

// Words are the words that an expression can come to, where there is a list of
// them, and else the kinds of blocks whose key it is.
func (d *Draft) Words(source string) (words, kinds []string) {
	e := d.part(source)
	if e == nil || e.Kind != Text && e.Kind != List {
		return nil, nil
	}
	return e.Choices, e.keysOf()
}

// Keys are the kinds of blocks whose key an expression stands for, be it the
// key or the block.
func (d *Draft) Keys(source string) []string { return d.keysOf(source) }

// keysOf are the kinds of blocks whose keys a name gives.
func (e *expr) keysOf() []string {
	if e.name == nil {
		return nil
	}
	if a := e.name.Attr; a != nil && (a.Type == schema.Key || a.Type == schema.Keys) {
		return a.Refers
	}
	for _, k := range table.kinds {
		if k.byName["key"] == e.name {
			return []string{k.Name}
		}
	}
	return nil
}

// Counted are the words that count takes first: kinds of blocks of a recipe.
func Counted() []string {
	var words []string
	for _, k := range table.kinds {
		if k.recipe != nil && k.Name != "recipe" && (k.step == "" || k.step == anyStep) {
			words = append(words, k.Name)
		}
	}
	return words
}

// FunctionNamed is a function, or false.
func FunctionNamed(word string) (Function, bool) {
	for _, f := range Functions() {
		if f.Name == word {
			return f, true
		}
	}
	return Function{}, false
}

// Arguments are what a function takes, one by one. Of several of the same
// sort one stands for all.
func (f Function) Arguments() []string { return strings.Split(f.Takes, ", ") }
