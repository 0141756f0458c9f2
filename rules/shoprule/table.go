package shoprule

import (
	"slices"
	"strings"

	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// kind is one kind of thing that a rule can name.
type kind struct {
	Name  string
	Doc   string
	Names []*name // what can be asked of it, in the order of the reference

	at          int    // its place in the table
	step        string // the kind of step it is; anyStep
	vessel      bool
	ingredients func(*batch.Batch) []batch.Ingredient
	all         func(*scene, func(thing)) // lists those of a recipe; nil and none of the above: there is one
	recipe      *schema.BlockSpec         // of its block in the recipe
	stock       *schema.BlockSpec         // of its item on the shelves
	byName      map[string]*name
}

// anyStep is the kind that stands for steps of every kind.
const anyStep = "any"

// name is what can be asked of a thing: mold.count, pour.at.
type name struct {
	Name        string
	Type        Type
	Doc         string
	From        string // "recipe", "shelves" or "reckoned"
	Attr        *schema.AttrSpec
	get         func(*scene, *thing) value
	quick       func(*scene, *thing) (schema.Value, bool) // get without what messages need: the written value, where it is known
	quickFigure func(*scene, *thing) *batch.Figure        // the same for a figure of the batch
	follow      func(*scene, *thing) thing                // Type.Kind == Thing
}

// kindTable is everything a rule can name. It is made once and never changes.
type kindTable struct {
	kinds  []*kind
	byName map[string]*kind
	words  []string // the names of all kinds
}

var table = buildTable()

func (t *kindTable) add(k *kind) *kind {
	k.at, k.byName = len(t.kinds), map[string]*name{}
	t.kinds = append(t.kinds, k)
	t.byName[k.Name] = k
	t.words = append(t.words, k.Name)
	return k
}

// buildTable lists the kinds, then fills in what can be asked of each: what is
// reckoned first, then what the recipe says, then the shelves. The first of a
// name counts.
func buildTable() *kindTable {
	t := &kindTable{byName: map[string]*kind{}}
	recipe := schema.Top("recipe")
	t.add(&kind{Name: "recipe", Doc: "The recipe.", recipe: recipe})
	t.add(&kind{Name: "batch", Doc: "The figures of the whole batch, worked out from the recipe and the shelves."})
	t.add(&kind{Name: "cooling", Doc: "How the wax of the first pour is reckoned to cool, in the vessel that sets last. A model, good to 40 % either way: every time is a range."})
	t.add(&kind{Name: "hazards", Doc: "What the finished candle is classified as by Regulation (EC) No 1272/2008, Annex I, from the components on the shelves."})
	t.add(&kind{Name: "shop", Doc: "The shop.", stock: schema.Top("shop"), all: theShop})
	for _, in := range []struct {
		name string
		of   func(*batch.Batch) []batch.Ingredient
	}{
		{"wax", func(b *batch.Batch) []batch.Ingredient { return b.Waxes }},
		{"fragrance", func(b *batch.Batch) []batch.Ingredient { return b.Fragrances }},
		{"dye", func(b *batch.Batch) []batch.Ingredient { return b.Dyes }},
		{"additive", func(b *batch.Batch) []batch.Ingredient { return b.Additives }},
	} {
		t.add(&kind{Name: in.name, Doc: "Each " + in.name + " of the recipe, with its item on the shelf.",
			recipe: recipe.Block(in.name), stock: schema.Top(in.name), ingredients: in.of})
	}
	for _, v := range []string{"mold", "container", "taper"} {
		t.add(&kind{Name: v, Doc: "Each " + v + " of the recipe, with its item on the shelf.",
			recipe: recipe.Block(v), stock: schema.Top(v), vessel: true})
	}
	t.add(&kind{Name: "topping", Doc: "Each topping of the recipe, with its item on the shelf.", recipe: recipe.Block("topping"), stock: schema.Top("topping"), all: allToppings})
	t.add(&kind{Name: "pot", Doc: "The pot the recipe names.", stock: schema.Top("pot"), all: thePot})
	t.add(&kind{Name: "wick", Doc: "The wick of each vessel that names one. Beside a vessel it is that vessel's.", stock: schema.Top("wick"), all: allWicks})
	t.add(&kind{Name: "seal", Doc: "Each seal that a step names. Beside a vessel it is one of the steps about that vessel.", stock: schema.Top("seal"), all: namedBySteps("seal", "with", "seal wick hole", "set wick")})
	t.add(&kind{Name: "label", Doc: "Each label that a step attaches.", stock: schema.Top("label"), all: namedBySteps("label", "label", "attach label")})
	t.add(&kind{Name: "step", Doc: "Each step of the recipe, whatever its kind.", recipe: recipe.Block("step"), step: anyStep})
	for _, spec := range schema.Steps() {
		t.add(&kind{Name: strings.ReplaceAll(spec.Kind, " ", "_"), Doc: "Each `" + spec.Kind + "` step.", recipe: spec, step: spec.Kind})
	}
	for _, k := range t.kinds {
		t.reckoned(k)
		if k.recipe != nil {
			t.written(k, k.recipe, "recipe")
		}
		if k.stock != nil {
			t.written(k, k.stock, "shelves")
		}
	}
	return t
}

func (k *kind) put(n *name) {
	if k.byName[n.Name] == nil {
		k.byName[n.Name] = n
		k.Names = append(k.Names, n)
	}
}

// written adds the attributes of a block as names.
func (t *kindTable) written(k *kind, spec *schema.BlockSpec, from string) {
	onShelf := from == "shelves"
	for _, attr := range spec.Attrs {
		n := &name{Name: attr.Name, Type: t.typeOfAttr(attr), Doc: attr.Doc, From: from, Attr: attr}
		place, byPlace := spec.Place(attr.Name), k.step != anyStep
		blockOf := func(th *thing) *schema.Block {
			if onShelf {
				return th.stock
			}
			return th.block
		}
		said := func(b *schema.Block) schema.Value {
			if byPlace {
				return b.At(place)
			}
			return b.Get(attr.Name)
		}
		look := func(th *thing) (schema.Value, *value) {
			b := blockOf(th)
			switch {
			case th.state != schema.Known:
				return schema.Value{}, &value{state: th.state, lacks: th.lacks, attr: th.attr}
			case b == nil && k.Name == "shop":
				return schema.Value{}, &value{} // a folder without a shop block
			case b == nil:
				return schema.Value{}, &value{state: schema.Broken}
			}
			return said(b), nil
		}
		if n.Type.Kind == Thing {
			to := n.Type.Of
			n.follow = func(s *scene, th *thing) thing {
				v, other := look(th)
				switch {
				case other != nil:
					return thing{state: other.state, lacks: other.lacks, attr: other.attr, vessel: -1, step: -1}
				case v.Absent():
					return missing(v.Block, attr.Name)
				case v.Broken():
					return brokenThing()
				}
				stock, ok := s.view.Stock(to, v.Text())
				if !ok {
					return brokenThing()
				}
				return thing{state: schema.Known, vessel: th.vessel, step: th.step, stock: stock, said: v}
			}
		} else {
			typ := n.Type
			n.quick = func(_ *scene, th *thing) (schema.Value, bool) {
				b := blockOf(th)
				if b == nil || th.state != schema.Known {
					return schema.Value{}, false
				}
				v := said(b)
				return v, v.Known()
			}
			n.get = func(s *scene, th *thing) value {
				v, other := look(th)
				if other != nil {
					return *other
				}
				return s.read(v, &typ)
			}
		}
		k.put(n)
	}
}

// typeOfAttr is what an attribute of the language gives to a rule.
func (t *kindTable) typeOfAttr(a *schema.AttrSpec) Type {
	switch a.Type {
	case schema.Choice:
		return Type{Kind: Text, Choices: a.Choices}
	case schema.Choices:
		return Type{Kind: List, Choices: a.Choices}
	case schema.Texts, schema.Keys:
		return Type{Kind: List}
	case schema.Key:
		if len(a.Refers) == 1 && t.byName[a.Refers[0]] != nil {
			return Type{Kind: Thing, Of: a.Refers[0]}
		}
		return Type{Kind: Text}
	case schema.YesNo:
		return Type{Kind: YesNo}
	case schema.Whole, schema.Figure:
		return Type{Kind: Number}
	case schema.Amount:
		switch {
		case len(a.Dims) > 1 || a.Dims[0] == quantity.Count:
			return Type{Kind: Mixed, Instead: instead[a.Name]}
		case a.Dims[0] == quantity.Proportion:
			return ofWax
		}
		return amountOf(a.Dims[0])
	}
	return Type{Kind: Text}
}

// instead says what to ask in the place of an attribute whose dimension only
// the recipe tells.
var instead = map[string]string{
	"load":   "of_wax or of_total",
	"fill":   "filled (a volume), headspace (a length) or candle_weight",
	"amount": "weight",
}

// read is a written value as what an expression computes with.
func (s *scene) read(v schema.Value, t *Type) value {
	switch v.State() {
	case schema.Absent:
		a := lacking(v.Block, v.Spec.Name)
		a.said = v
		return a
	case schema.Broken:
		return value{state: schema.Broken, said: v}
	}
	out := value{state: schema.Known, said: v}
	switch t.Kind {
	case YesNo:
		out.yes = v.Yes()
	case Text:
		out.text = v.Text()
	case Number:
		out.low = v.Figure()
		if v.Spec.Type == schema.Whole {
			out.low = quantity.Int(int64(v.Whole(0)))
		}
		out.high = out.low
	case Amount:
		s.measure(&out)
	}
	return out
}

// measure takes the written amount of a value, a proportion of the total as
// what it is of the wax in this batch.
func (s *scene) measure(out *value) {
	if !out.said.IsAmount() {
		out.state = schema.Broken // by eye: another rule says so
		return
	}
	q := out.said.Amount()
	out.low, out.high = q.Base(), q.Base()
	if q.IsRange() {
		out.high, out.ranged = q.High().Base(), true
	}
	if q.Basis() == quantity.OfTotal {
		said := out.said
		*out = s.onWax(*out)
		out.said = said
	}
}

// onWax turns a proportion of the total into one of the wax, as this batch is
// weighed: part / total <= t just where part / wax <= t x total / wax.
func (s *scene) onWax(v value) value {
	total, wax := figure(s.b.Total), figure(s.b.WaxWeight)
	if l, unknown := less(&total, &wax); unknown {
		return l
	}
	by, ok := total.low.Quo(wax.low)
	if !ok {
		return broken()
	}
	v.low, v.high = v.low.Mul(by), v.high.Mul(by)
	return v
}

// nearNames are the names that can be asked of a kind, for messages.
func (k *kind) nearNames() []string {
	var all []string
	for _, n := range k.Names {
		all = append(all, n.Name)
	}
	slices.Sort(all)
	return all
}
