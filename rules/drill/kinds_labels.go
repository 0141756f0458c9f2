package drill

import (
	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema"
)

func labelKinds() []Kind {
	return []Kind{
		{"no label is attached", "warning-label-missing", func(b *Bench) []Fault {
			if !b.flame() || len(b.Vessels) != 1 {
				return nil
			}
			return b.without("attach label", Header(b.Vessels[0].Block))
		}},
		{"the label is made for another market", "label-not-for-market", func(b *Bench) []Fault {
			if b.View.MadeFor != lint.Sale || len(b.View.Markets()) == 0 {
				return nil
			}
			return b.otherLabel(func(l *schema.Block) bool {
				for _, m := range b.View.Markets() {
					if has(l.Get("markets"), m.Text) {
						return false
					}
				}
				return len(l.Get("markets").Items()) > 0
			})
		}},
	}
}

func labelHunches() []Kind {
	return []Kind{
		{"the label lacks a caution that this candle needs", "caution-missing", func(b *Bench) []Fault { return b.otherLabel(b.sameMarket) }},
		{"the label promises more than the candle weighs", "net-weight-overstated", func(b *Bench) []Fault { return b.otherLabel(b.sameMarket) }},
		{"the label does not say how much is in it", "net-weight-missing", func(b *Bench) []Fault { return b.otherLabel(b.sameMarket) }},
		{"the label leaves out the hazards of this scent", "hazard-label-missing", func(b *Bench) []Fault { return b.otherLabel(b.sameMarket) }},
	}
}

// sameMarket says whether a label is made for all markets of the recipe.
func (b *Bench) sameMarket(label *schema.Block) bool {
	for _, m := range b.View.Markets() {
		if !has(label.Get("markets"), m.Text) {
			return false
		}
	}
	return true
}

// otherLabel attaches other labels of the stock.
func (b *Bench) otherLabel(fits func(*schema.Block) bool) []Fault {
	return b.everyStep("attach label", func(s *batch.Step) []Fault {
		said := s.Block.Get("label")
		if !said.Known() {
			return nil
		}
		var all []Fault
		for _, label := range b.shelf("label", func(l *schema.Block) bool { return l.Label != said.Text() && fits(l) }) {
			all = append(all, Fault{Edits: []schema.Edit{schema.SetValue(said, schema.Quote(label.Label))}})
		}
		return all
	})
}
