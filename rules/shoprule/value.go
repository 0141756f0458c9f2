package shoprule

import (
	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// value is what an expression gave for one combination of blocks. It is
// Known; Absent, because lacks does not state attr; or Broken, because what it
// rests on cannot be read or names nothing, which another rule says.
type value struct {
	state    schema.State
	yes      bool
	ranged   bool // an amount with two ends
	byZero   bool // Absent: something was divided by nothing
	end      end  // which end of what is written it is
	attr     uint8
	low      quantity.Rat // an amount in its base unit, or a number
	high     quantity.Rat // the upper end; the same as low where there is one end
	text     string
	list     []string     // a list that is written nowhere
	said     schema.Value // where it is written, to show it as written and to point at it
	lacks    *schema.Block
	computed bool // said is only where it comes from: what is shown is reckoned
}

// end tells the ends of a written range apart.
type end uint8

const (
	bothEnds end = iota
	lowEnd
	highEnd
)

func yes(holds bool) value { return value{state: schema.Known, yes: holds} }

func words(text string) value { return value{state: schema.Known, text: text} }

func number(n quantity.Rat) value { return value{state: schema.Known, low: n, high: n} }

func span(low, high quantity.Rat) value {
	return value{state: schema.Known, low: low, high: high, ranged: !low.Equal(high)}
}

func broken() value { return value{state: schema.Broken} }

// lacking is the value of what a block does not state. A nil block: there is
// nothing to ask for.
func lacking(b *schema.Block, attr string) value {
	if b == nil {
		return value{}
	}
	return value{lacks: b, attr: b.Spec.Place(attr)}
}

func (v *value) known() bool { return v.state == schema.Known }

// items are the elements of a known list.
func (v *value) items() []string {
	if v.list != nil || v.said.Block == nil {
		return v.list
	}
	var all []string
	for _, item := range v.said.Items() {
		all = append(all, item.Text)
	}
	return all
}

// less is the state of what rests on two values: broken where one is, else
// lacking what one lacks. False: both are known.
func less(a, b *value) (value, bool) {
	switch {
	case a.state == schema.Known && b.state == schema.Known:
		return value{}, false
	case a.state == schema.Broken || b.state == schema.Broken:
		return broken(), true
	case a.state == schema.Absent:
		return unknownAs(a), true
	}
	return unknownAs(b), true
}

func unknownAs(v *value) value {
	return value{state: v.state, lacks: v.lacks, attr: v.attr, byZero: v.byZero}
}

// figure is a number of the batch as a value.
func figure(f batch.Figure) value {
	switch {
	case f.Known():
		return number(f.Value)
	case f.State == schema.Broken:
		return broken()
	case f.Lacks == nil:
		return value{}
	}
	return lacking(f.Lacks, f.Attr())
}

// ask has the pass say which attribute the value waits for.
func (v *value) ask(p *lint.Pass) {
	if v.state == schema.Absent && v.lacks != nil {
		p.CannotCheck(v.lacks, v.lacks.Spec.Attrs[v.attr].Name)
	}
}
