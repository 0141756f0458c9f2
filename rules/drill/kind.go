package drill

import (
	"slices"

	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// Kind is one kind of slip that people make, and how it is planted in a sound
// recipe. What it plants is worked out from the stock's figures and not by the
// rule that must find it.
type Kind struct {
	Slip  string // what went wrong, a sentence without a stop
	Rule  string // the rule that finds it
	Plant func(*Bench) []Fault
}

// Fault is one way to plant a slip: the edits, and the characters that its rule
// flags.
type Fault struct {
	Edits []schema.Edit
	Flag  string // as written after the edits; "" not known beforehand
	Rule  string
	Slip  string
}

// In is every way to plant the slip in a recipe.
func (k *Kind) In(b *Bench) []Fault {
	faults := k.Plant(b)
	for i := range faults {
		if faults[i].Rule == "" {
			faults[i].Rule = k.Rule
		}
		if faults[i].Slip == "" {
			faults[i].Slip = k.Slip
		}
	}
	return faults
}

// Kinds is every kind of slip whose rule is sure to speak.
func Kinds() []Kind {
	return slices.Concat(formulationKinds(), vesselKinds(), heatKinds(), settingKinds(), labelKinds(), writingKinds())
}

// Hunches is every kind of slip that its rule speaks of in some recipes only,
// as the rest of the recipe and the stock have it: the checker tells which.
func Hunches() []Kind {
	return slices.Concat(formulationHunches(), vesselHunches(), heatHunches(), settingHunches(), labelHunches())
}

// rewrite puts another literal in the place of a value, which is then flagged.
func rewrite(v schema.Value, literal string) Fault {
	return Fault{Edits: []schema.Edit{schema.SetValue(v, literal)}, Flag: literal}
}

// relabel renames a block's label, which is then flagged.
func relabel(b *schema.Block, key string) Fault {
	return Fault{Edits: []schema.Edit{{File: b.File, Span: b.LabelSpan, Text: schema.Quote(key)}}, Flag: schema.Quote(key)}
}

// remove takes blocks out; something else is then flagged.
func remove(flag string, blocks ...*schema.Block) Fault {
	f := Fault{Flag: flag}
	for _, b := range blocks {
		f.Edits = append(f.Edits, schema.RemoveBlock(b))
	}
	return f
}

// moved takes a block out and puts it in front of another.
func moved(b, before *schema.Block) Fault {
	return Fault{Edits: schema.MoveBlock(b, before), Flag: Header(b)}
}

// Header is a block's name and label as they are written.
func Header(b *schema.Block) string { return b.File.Text.Slice(b.Header()) }

// heated writes another temperature in the place of one, on the same scale and
// in whole degrees, as people do. Nothing where the one is not known.
func heated(v schema.Value, celsius quantity.Rat) []Fault {
	if !v.IsAmount() {
		return nil
	}
	return []Fault{rewrite(v, degrees(v.Amount(), celsius))}
}

// degrees is a temperature on the scale of another, to the nearest whole
// degree.
func degrees(like quantity.Quantity, celsius quantity.Rat) string {
	return schema.Quote(nearest(quantity.FromBase(celsius, like.Unit()).Number()).Decimal(0) + " " + like.Unit().Symbol)
}

func nearest(n quantity.Rat) quantity.Rat {
	return n.Add(quantity.NewRat(1, 2)).Floor(quantity.Int(1))
}

// transposed are the temperatures that come of two neighboring digits swapped,
// as a tired hand writes them.
func transposed(v schema.Value) []quantity.Quantity {
	if !v.IsAmount() || v.Amount().IsRange() {
		return nil
	}
	digits := v.Amount().Number().Decimal(0)
	if n := v.Amount().Number(); !n.Equal(n.Floor(quantity.Int(1))) {
		return nil // no whole number
	}
	var all []quantity.Quantity
	for i := 1; i < len(digits); i++ {
		swapped := []byte(digits)
		swapped[i-1], swapped[i] = swapped[i], swapped[i-1]
		if string(swapped) == digits || swapped[0] == '0' {
			continue
		}
		if q, err := quantity.Parse(string(swapped)+" "+v.Amount().Unit().Symbol, v.Amount().Dim()); err == nil {
			all = append(all, q)
		}
	}
	return all
}

// swapped are the slips of two digits swapped in a temperature that come out
// as is wanted.
func swapped(v schema.Value, wanted func(celsius quantity.Rat) bool) []Fault {
	var all []Fault
	for _, q := range transposed(v) {
		if wanted(q.Base()) {
			f := rewrite(v, schema.Quote(q.String()))
			f.Slip = "two digits of a temperature changed places"
			all = append(all, f)
		}
	}
	return all
}

// otherScale writes the number with the other scale's unit.
func otherScale(v schema.Value) []Fault {
	if !v.IsAmount() || v.Amount().IsRange() {
		return nil
	}
	unit := "°C"
	if v.Amount().Unit().Symbol == "°C" {
		unit = "°F"
	}
	return []Fault{rewrite(v, schema.Quote(v.Amount().Number().Decimal(1)+" "+unit))}
}

func kelvin(n int64) quantity.Rat { return quantity.Int(n) }

// everyStep plants in every step of a kind.
func (b *Bench) everyStep(kind string, plant func(*batch.Step) []Fault) []Fault {
	var all []Fault
	for _, s := range b.StepsOf(kind) {
		all = append(all, plant(s)...)
	}
	return all
}

// without takes all steps of a kind out.
func (b *Bench) without(kind, flag string) []Fault {
	var blocks []*schema.Block
	for _, s := range b.StepsOf(kind) {
		blocks = append(blocks, s.Block)
	}
	if blocks == nil {
		return nil
	}
	return []Fault{remove(flag, blocks...)}
}
