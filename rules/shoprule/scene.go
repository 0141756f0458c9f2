package shoprule

import (
	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

// sceneOf is what the rules of a shop see of one recipe.
var sceneOf = lint.NewFact("the shop's own rules", func(v *lint.View) *scene {
	return &scene{view: v, b: batch.Of.In(v), table: table, lists: make([][]thing, len(table.kinds)), listed: make([]bool, len(table.kinds))}
})

// scene is one recipe with what its rules have asked for so far.
type scene struct {
	view   *lint.View
	b      *batch.Batch
	table  *kindTable
	lists  [][]thing // by kind
	listed []bool
	now    [mostNamed]*thing // the combination in hand, by the slots of the rule
	round  round
	seals  []*thing // by vessel, as far as they were asked for
	led    []thing  // where names led that lead to a thing, by their number in the rule
}

// thing is a block of the recipe with its stock item, or what is reckoned from
// it. State tells whether it is there: see value.
type thing struct {
	state  schema.State
	attr   uint8
	vessel int // which of the batch's vessels it is or belongs to; -1: none
	step   int // which of the batch's steps it is or is named by; -1: none
	block  *schema.Block
	stock  *schema.Block
	lacks  *schema.Block
	in     *batch.Ingredient
	said   schema.Value // where it is named, for what has no block of its own
	item   schema.Item
}

func missing(lacks *schema.Block, attr string) thing {
	t := thing{vessel: -1, step: -1}
	if lacks != nil {
		t.lacks, t.attr = lacks, lacks.Spec.Place(attr)
	}
	return t
}

func brokenThing() thing { return thing{state: schema.Broken, vessel: -1, step: -1} }

// place is where a finding about the thing points.
func (t *thing) place(s *scene) lint.Place {
	switch {
	case t.block != nil:
		return lint.AtHeader(t.block)
	case t.said.Block != nil && t.item.Text != "":
		return lint.AtItem(t.said, t.item)
	case t.said.Block != nil:
		return lint.AtValue(t.said)
	}
	return lint.AtHeader(s.view.Recipe)
}

// of lists the things of a kind, by its place in the table.
func (s *scene) of(kind int) []thing {
	if !s.listed[kind] {
		s.lists[kind] = s.list(s.table.kinds[kind])
		s.listed[kind] = true
	}
	return s.lists[kind]
}

func (s *scene) list(k *kind) (all []thing) {
	add := func(t thing) { all = append(all, t) }
	switch {
	case k.step == anyStep:
		all = make([]thing, 0, len(s.b.Steps))
		for i := range s.b.Steps {
			add(s.stepThing(i))
		}
	case k.step != "":
		for i := range s.b.Steps {
			if s.b.Steps[i].Kind == k.step {
				add(s.stepThing(i))
			}
		}
	case k.ingredients != nil:
		list := k.ingredients(s.b)
		all = make([]thing, 0, len(list))
		for i := range list {
			add(thing{state: schema.Known, vessel: -1, step: -1, block: list[i].Block, stock: list[i].Stock, in: &list[i]})
		}
	case k.vessel:
		for i := range s.b.Vessels {
			if s.b.Vessels[i].Kind == k.Name {
				add(s.vesselThing(i))
			}
		}
	case k.all != nil:
		k.all(s, add)
	default:
		add(thing{state: schema.Known, vessel: -1, step: -1, block: s.view.Recipe})
	}
	return all
}

func (s *scene) stepThing(i int) thing {
	return thing{state: schema.Known, vessel: -1, step: i, block: s.b.Steps[i].Block}
}

func (s *scene) vesselThing(i int) thing {
	v := &s.b.Vessels[i]
	return thing{state: schema.Known, vessel: i, step: -1, block: v.Block, stock: v.Stock}
}

// goTogether says whether two things of a recipe can be spoken of at once: a
// step that names its vessel goes with that one only, and so does what belongs
// to a vessel.
func (s *scene) goTogether(a, b *thing) bool {
	switch {
	case a.vessel >= 0 && b.vessel >= 0:
		return a.vessel == b.vessel || a.block != nil && b.block != nil
	case a.vessel >= 0 && b.step >= 0:
		return s.b.Steps[b.step].Is(a.vessel)
	case a.step >= 0 && b.vessel >= 0:
		return s.b.Steps[a.step].Is(b.vessel)
	}
	return true
}

// allWicks lists the wick of each vessel that names one.
func allWicks(s *scene, add func(thing)) {
	for i := range s.b.Vessels {
		v := &s.b.Vessels[i]
		if v.WickSaid.Absent() {
			continue
		}
		t := thing{state: schema.Known, vessel: i, step: -1, stock: v.Wick, said: v.WickSaid}
		if v.Wick == nil {
			t.state = schema.Broken
		}
		add(t)
	}
}

// namedBySteps lists the stock items of a kind that an attribute of the steps
// of some kinds names.
func namedBySteps(kind, attr string, steps ...string) func(*scene, func(thing)) {
	return func(s *scene, add func(thing)) {
		for i := range s.b.Steps {
			for _, step := range steps {
				if s.b.Steps[i].Kind != step {
					continue
				}
				said := s.b.Steps[i].Block.Get(attr)
				for _, item := range said.Items() {
					t := thing{state: schema.Known, vessel: -1, step: i, said: said, item: item}
					if t.stock, _ = s.view.Stock(kind, item.Text); t.stock == nil {
						t.state = schema.Broken
					}
					add(t)
				}
			}
		}
	}
}

func allToppings(s *scene, add func(thing)) {
	for _, b := range s.b.Toppings {
		t := thing{state: schema.Known, vessel: -1, step: -1, block: b}
		t.stock, _ = s.view.Stock("topping", b.Label)
		add(t)
	}
}

func thePot(s *scene, add func(thing)) {
	if said := s.view.Recipe.Get("pot"); said.Known() {
		t := thing{state: schema.Known, vessel: -1, step: -1, said: said}
		if t.stock, _ = s.view.Stock("pot", said.Text()); t.stock == nil {
			t.state = schema.Broken
		}
		add(t)
	}
}

func theShop(s *scene, add func(thing)) {
	add(thing{state: schema.Known, vessel: -1, step: -1, stock: s.view.Config()})
}

// seal is the weakest seal of a vessel, looked for once.
func (s *scene) seal(step string, t *thing) thing {
	if s.seals == nil {
		s.seals = make([]*thing, len(s.b.Vessels))
	}
	if s.seals[t.vessel] == nil {
		found := weakestSeal(s, step, t)
		s.seals[t.vessel] = &found
	}
	return *s.seals[t.vessel]
}

// weakestSeal is the seal that a vessel's own steps name; of several the one
// that holds least, and before that one whose limit is not known.
func weakestSeal(s *scene, step string, t *thing) thing {
	weakest := brokenThing() // with no such step another rule speaks, or nothing need be sealed
	var least schema.Value
	for i := range s.b.Steps {
		if s.b.Steps[i].Kind != step || !s.b.Steps[i].Is(t.vessel) {
			continue
		}
		said := s.b.Steps[i].Block.Get("with")
		if said.Absent() {
			return missing(s.b.Steps[i].Block, "with")
		}
		for _, item := range said.Items() {
			stock, _ := s.view.Stock("seal", item.Text)
			if stock == nil {
				return brokenThing()
			}
			holds := stock.Get("holds_to")
			if weakest.stock == nil || !holds.IsAmount() && least.IsAmount() ||
				holds.IsAmount() && least.IsAmount() && holds.Amount().Cmp(least.Amount()) < 0 {
				weakest = thing{state: schema.Known, vessel: t.vessel, step: i, stock: stock, said: said, item: item}
				least = holds
			}
		}
	}
	return weakest
}
