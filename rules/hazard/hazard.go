// Package hazard classifies the finished candle as a mixture from what the
// safety data sheets of its fragrances, dyes and additives say: by the
// calculation methods of Regulation (EC) No 1272/2008, Annex I, which Great
// Britain has kept with the same tables. It keeps every step of the arithmetic
// so that it can be shown, and tells what a label then carries. Everything is
// exact: 5 % of total times 20 % is 1 % and reaches a limit of 1 %.
//
// Tests of the candle itself and bridging come before calculation (Article 9)
// and are not known here. The wax, the wick and the vessel count as not
// classified. The supplier's sheet and the authority of the market decide.
package hazard

import (
	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// Of is the classification of a view's recipe. The recipe must not be nil.
var Of = lint.NewFact("hazard", classify)

// Classification is what the candle is classified as, and how that came about.
// Where something is Unknown or Unread, or waits for a figure, it is the least
// that applies.
type Classification struct {
	Broken     bool                // a value it rests on cannot be read or names unknown stock, which another rule says
	Unknown    []*batch.Ingredient // whose stock lists no components and does not say that there are none
	Unread     []Unread            // entries that cannot be read or put to use
	Waits      []batch.Figure      // shares of the total that are not known
	NoM        []*schema.Block     // components harmful to water that state no m_factor; 1 is used
	Substances []*Substance
	Steps      []Step
	Results    []Result
	Elicits    []*Substance // sensitizers that must be named though they do not classify the candle
	Doubts     []Doubt
}

// Unread is an entry of a component with why it is of no use.
type Unread struct {
	Value schema.Value
	Item  schema.Item
	Why   string
}

// At is where the entry stands.
func (u Unread) At() lint.Place {
	if u.Item.Span == (schema.Span{}) {
		return lint.AtValue(u.Value)
	}
	return lint.AtItem(u.Value, u.Item)
}

// Limit says whether it is a limit that cannot be put to use, rather than an
// entry that cannot be read.
func (u Unread) Limit() bool { return u.Value.Spec.Name == "limit" }

// Doubt is something that a person has to decide.
type Doubt struct {
	Component *schema.Block
	Says      string
}

// Result is a class that the candle falls into, with the index of the step
// that decides it.
type Result struct {
	Hazard
	Step int
}

// Whole says whether all components are known and counted.
func (c *Classification) Whole() bool {
	return !c.Broken && len(c.Unknown) == 0 && len(c.Unread) == 0 && len(c.Waits) == 0 && len(c.NoM) == 0
}

// Checked is the classification without what rests on figures from memory.
func (c *Classification) Checked() *Classification {
	checked := *c
	checked.Results = nil
	for _, r := range c.Results {
		if !c.Steps[r.Step].Memory {
			checked.Results = append(checked.Results, r)
		}
	}
	return &checked
}

// Has says whether the candle falls into a class.
func (c *Classification) Has(class Class) bool {
	for _, r := range c.Results {
		if r.Class == class {
			return true
		}
	}
	return false
}

func classify(view *lint.View) *Classification {
	c := &Classification{}
	c.gather(batch.Of.In(view))
	c.work()
	return c
}

// work goes through the classes in the order of Annex I.
func (c *Classification) work() {
	c.acute()
	c.skin()
	c.eyes()
	c.sensitizers(RespSens)
	c.sensitizers(SkinSens)
	c.oneByOne()
	c.narcoticAndIrritant()
	c.water()
	c.unusedLimits()
}

func (c *Classification) doubt(component *schema.Block, says string) {
	c.Doubts = append(c.Doubts, Doubt{component, says})
}

// unusedLimits tells of specific limits that cannot be put to use.
func (c *Classification) unusedLimits() {
	for _, s := range c.Substances {
		if !s.HasLimit || s.limitFor() != NoClass {
			continue
		}
		for _, p := range s.Parts {
			if limit := p.Component.Get("limit"); limit.Known() {
				c.Unread = append(c.Unread, Unread{Value: limit, Why: "the limit of " + s.Name + " (" + limit.Amount().String() +
					") is of no use here: it is no sensitizer, and which of its hazards the limit is for is not said"})
			}
		}
	}
}

// percent is so many hundredths of a per cent: percent(10) is 0.1 %.
func percent(hundredths int64) quantity.Rat { return quantity.NewRat(hundredths, 10000) }

// Health says whether a class is harm to people.
func (c Class) Health() bool {
	switch c {
	case AquaticAcute, AquaticChronic, Ozone, DisruptsNature, Lasting, Physical, Outside, NoClass:
		return false
	}
	return true
}
