package vessel

import (
	"slices"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// burns says whether what is made in the vessel is known to be lit: a melt has
// no wick and no flame.
func burns(b *batch.Batch, v *batch.Vessel) bool {
	made := b.MadeIn(v)
	return made != "" && made != "melt"
}

// goesInto says whether a wax is poured into a vessel. It follows the pot: a
// melt that names its waxes starts another layer after a pour and adds to the
// pot before one. A wax that no melt names counts as going everywhere.
func goesInto(b *batch.Batch, vessel int, wax *batch.Ingredient) bool {
	if len(b.Waxes) == 1 || !melted(b, wax.Block.Label) {
		return true
	}
	inPot, named, poured, filled := true, false, false, false
	for i := range b.Steps {
		s := &b.Steps[i]
		switch s.Kind {
		case "melt":
			waxes := s.Block.Get("wax")
			if !waxes.Known() {
				inPot, named = true, false
			} else {
				if poured || !named {
					inPot = false
				}
				named = true
				inPot = inPot || has(waxes, wax.Block.Label)
			}
			poured = false
		case "pour", "second pour", "dip", "overdip":
			poured = true
			if s.Is(vessel) {
				filled = true
				if inPot {
					return true
				}
			}
		}
	}
	return !filled
}

// melted says whether a melt names the wax, or names none and so melts all.
func melted(b *batch.Batch, wax string) bool {
	for i := range b.Steps {
		if s := &b.Steps[i]; s.Kind == "melt" {
			if waxes := s.Block.Get("wax"); !waxes.Known() || has(waxes, wax) {
				return true
			}
		}
	}
	return false
}

func has(list schema.Value, word string) bool {
	return slices.ContainsFunc(list.Items(), func(i schema.Item) bool { return i.Text == word })
}

// minority says whether less than a quarter of the wax in a vessel is of the
// kind told by which: a hardener, not what the candle is made of (common
// practice: stearin makes up 5 to 30 % of a hard paraffin). Where weights are
// not known it is taken to be more.
func minority(b *batch.Batch, vessel int, which func(*batch.Ingredient) bool) bool {
	part, whole := quantity.Int(0), quantity.Int(0)
	for i := range b.Waxes {
		in := &b.Waxes[i]
		if !goesInto(b, vessel, in) {
			continue
		}
		if !in.OfWax.Known() {
			return false
		}
		whole = whole.Add(in.OfWax.Value)
		if which(in) {
			part = part.Add(in.OfWax.Value)
		}
	}
	return part.Mul(quantity.Int(4)).Less(whole)
}

// wicked is the wick of a vessel: the one the vessel names, else the one that
// a step sets there.
type wicked struct {
	said  schema.Value
	stock *schema.Block // nil: none said, or unknown key
}

func wickOf(p *lint.Pass, b *batch.Batch, vessel int) wicked {
	v := &b.Vessels[vessel]
	w := wicked{v.WickSaid, v.Wick}
	if !v.WickSaid.Absent() {
		return w
	}
	for i := range b.Steps {
		if s := &b.Steps[i]; s.Kind == "set wick" && s.Is(vessel) {
			if said := s.Block.Get("wick"); !said.Absent() {
				stock, _ := p.Stock("wick", said.Text())
				return wicked{said, stock}
			}
		}
	}
	return w
}

// hottestPour is the hottest pour into a vessel, of those that say how hot and
// leave no doubt which scale is meant; nil: none.
func hottestPour(p *lint.Pass, b *batch.Batch, vessel int) *batch.Step {
	var hottest *batch.Step
	for i := range b.Pours {
		s := b.Pours[i].Step
		if !s.Heat.IsAmount() || !s.Is(vessel) || doubted(p, b, s) {
			continue
		}
		if hottest == nil || high(hottest).Less(high(s)) {
			hottest = s
		}
	}
	return hottest
}

// high is the upper end of a step's heat, in °C.
func high(s *batch.Step) quantity.Rat { return s.Heat.Amount().High().Base() }

const scaleDoubtful = "temperature-scale-doubtful"

// hardStop is hotter than anybody works wax: 121 °C (250 °F), common practice.
var hardStop = quantity.Int(121)

// doubted says whether a temperature in °C is hotter than wax is ever made,
// while the same number of °F lies where this wax is worked. Which scale is
// meant has to be settled first, and that is another rule's finding; where the
// recipe concedes it or the shop tunes it, the figure is meant as written.
func doubted(p *lint.Pass, b *batch.Batch, s *batch.Step) bool {
	written := s.Heat.Amount()
	if written.Unit() != quantity.Celsius {
		return false
	}
	top := hardStop
	if ceiling := b.NeverAbove(); ceiling.Known() {
		top = quantity.Min(top, ceiling.High())
	}
	if !top.Less(written.High().Base()) || !p.HasRule(scaleDoubtful) || p.Tuned(scaleDoubtful) {
		return false
	}
	for c := range p.Recipe.Each("concession") {
		if c.Label == scaleDoubtful {
			return false
		}
	}
	worked := b.PourAt()
	if !worked.Known() {
		return false
	}
	hottest := worked.High()
	if melt := b.MeltTo(); melt.Known() {
		hottest = quantity.Max(hottest, melt.High())
	}
	meant := quantity.Of(written.High().Number(), quantity.Fahrenheit).Base()
	return !meant.Less(worked.Low()) && !hottest.Less(meant)
}
