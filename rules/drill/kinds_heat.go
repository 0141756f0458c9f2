package drill

import (
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

func heatKinds() []Kind {
	return []Kind{
		{"the pour is hotter than this wax is poured", "pour-too-hot", func(b *Bench) []Fault {
			return b.everyPour(func(p *batch.Pour, low, high quantity.Rat) []Fault {
				var all []Fault
				if hot := high.Add(kelvin(3)); b.belowCeiling(hot) {
					all = heated(p.Step.Heat, hot)
				}
				return append(all, swapped(p.Step.Heat, func(c quantity.Rat) bool { return high.Less(c) && b.belowCeiling(c) })...)
			})
		}},
		{"the pour is cooler than this wax is poured", "pour-too-cool", func(b *Bench) []Fault {
			return b.everyPour(func(p *batch.Pour, low, high quantity.Rat) []Fault {
				return append(heated(p.Step.Heat, low.Sub(kelvin(4))), swapped(p.Step.Heat, func(c quantity.Rat) bool { return c.Less(low) && low.Sub(kelvin(25)).Less(c) })...)
			})
		}},
		{"the temperature of the pour is on the other scale", "temperature-scale-doubtful", func(b *Bench) []Fault {
			var all []Fault
			for _, pour := range b.FirstPours() {
				all = append(all, otherScale(pour.Step.Heat)...)
			}
			return all
		}},
		{"the temperature of the melt is on the other scale", "temperature-scale-doubtful", func(b *Bench) []Fault {
			return b.everyStep("melt", func(s *batch.Step) []Fault { return otherScale(s.Heat) })
		}},
		{"the melt is hotter than this wax is melted", "melt-too-hot", func(b *Bench) []Fault {
			return b.everyMelt(func(s *batch.Step, low, high quantity.Rat) []Fault {
				var all []Fault
				if hot := high.Add(kelvin(3)); b.belowCeiling(hot) {
					all = heated(s.Heat, hot)
				}
				return append(all, swapped(s.Heat, func(c quantity.Rat) bool { return high.Less(c) && b.belowCeiling(c) })...)
			})
		}},
		{"the melt is cooler than this wax is melted", "melt-too-cool", func(b *Bench) []Fault {
			return b.everyMelt(func(s *batch.Step, low, high quantity.Rat) []Fault {
				return append(heated(s.Heat, low.Sub(kelvin(4))), swapped(s.Heat, func(c quantity.Rat) bool { return c.Less(low) && low.Sub(kelvin(25)).Less(c) })...)
			})
		}},
		{"the melt is as hot as for another wax, over the ceiling of this one", "heat-above-ceiling", func(b *Bench) []Fault {
			ceiling, flash := b.NeverAbove(), b.FlashPoint()
			if !ceiling.Known() || !flash.Known() {
				return nil
			}
			return b.everyStep("melt", func(s *batch.Step) []Fault {
				all := heated(s.Heat, ceiling.AtLow().Low().Add(kelvin(1)))
				for _, other := range b.shelf("wax", func(w *schema.Block) bool { return w.Get("melt_to").IsAmount() }) {
					hot := other.Get("melt_to").Amount().High().Base()
					if ceiling.AtLow().Low().Less(hot) && hot.Add(kelvin(31)).Less(flash.AtLow().Low()) {
						more := heated(s.Heat, hot)
						for i := range more {
							more[i].Slip = "the wax is melted as hot as " + other.Title() + " is, over the ceiling of this one"
						}
						all = append(all, more...)
					}
				}
				return all
			})
		}},
		{"the melt goes near the wax's flash point", "heat-near-flash", func(b *Bench) []Fault {
			if !b.FlashPoint().Known() {
				return nil
			}
			return b.everyStep("melt", func(s *batch.Step) []Fault { return heated(s.Heat, b.FlashPoint().AtLow().Low().Sub(kelvin(29))) })
		}},
		{"nobody says how hot the melt is", "temperature-never-said", func(b *Bench) []Fault {
			return b.everyStep("melt", func(s *batch.Step) []Fault {
				if !s.Heat.Known() {
					return nil
				}
				return []Fault{{Edits: []schema.Edit{schema.RemoveAttr(s.Heat)}, Flag: Header(s.Block)}}
			})
		}},
		{"nobody says how hot the pour is", "temperature-never-said", func(b *Bench) []Fault {
			return b.everyStep("pour", func(s *batch.Step) []Fault {
				if !s.Heat.Known() {
					return nil
				}
				return []Fault{{Edits: []schema.Edit{schema.RemoveAttr(s.Heat)}, Flag: Header(s.Block)}}
			})
		}},
		{"the fragrance goes into wax that is too hot", "fragrance-added-too-hot", func(b *Bench) []Fault {
			return b.everyScent(func(s *batch.Step, low, high quantity.Rat) []Fault {
				if hot := high.Add(kelvin(3)); b.belowCeiling(hot) {
					return heated(s.Heat, hot)
				}
				return nil
			})
		}},
		{"the fragrance goes into wax that is too cool", "fragrance-added-too-cool", func(b *Bench) []Fault {
			return b.everyScent(func(s *batch.Step, low, high quantity.Rat) []Fault { return heated(s.Heat, low.Sub(kelvin(4))) })
		}},
		{"the wax is melted over direct heat", "open-heat", func(b *Bench) []Fault {
			return b.everyStep("melt", func(s *batch.Step) []Fault {
				return []Fault{rewrite(s.Block.Get("over"), `"direct heat"`)}
			})
		}},
		{"the wax is melted in a microwave", "open-heat", func(b *Bench) []Fault {
			return b.everyStep("melt", func(s *batch.Step) []Fault {
				return []Fault{rewrite(s.Block.Get("over"), `"microwave"`)}
			})
		}},
		{"the melt is kept hot for half the day", "heat-left-on", func(b *Bench) []Fault {
			return b.everyStep("melt", func(s *batch.Step) []Fault {
				return []Fault{{Edits: []schema.Edit{schema.SetValue(s.Block.Get("hold"), `"5 h"`)}}}
			})
		}},
	}
}

func heatHunches() []Kind {
	return []Kind{
		{"the pour is hotter than the melt", "pour-above-melt", func(b *Bench) []Fault {
			melted, _, ok := ends(b.MeltTo())
			if !ok {
				return nil
			}
			return b.everyPour(func(p *batch.Pour, low, high quantity.Rat) []Fault {
				hot := quantity.Min(high, melted.Add(kelvin(2)))
				if p.Melt == nil || !p.Melt.Heat.IsAmount() || !melted.Add(kelvin(1)).Less(hot) {
					return nil // this wax is always poured cooler than it is melted
				}
				all := heated(p.Step.Heat, hot)
				for i := range all {
					all[i].Edits = append(all[i].Edits, schema.SetValue(p.Melt.Heat, degrees(p.Melt.Heat.Amount(), melted)))
				}
				return all
			})
		}},
	}
}

// ends are both ends of a figure of the stock in °C; false: it is not known.
func ends(s batch.Stated) (low, high quantity.Rat, ok bool) {
	if !s.Known() || s.Empty {
		return low, high, false
	}
	return s.AtLow().Low(), s.AtHigh().High(), true
}

// everyPour plants in every first pour of a recipe without layers, with the
// range the wax is poured at.
func (b *Bench) everyPour(plant func(p *batch.Pour, low, high quantity.Rat) []Fault) []Fault {
	low, high, ok := ends(b.PourAt())
	if !ok || b.Layered() {
		return nil
	}
	var all []Fault
	for _, pour := range b.FirstPours() {
		all = append(all, plant(pour, low, high)...)
	}
	return all
}

// everyMelt is the same for melts.
func (b *Bench) everyMelt(plant func(s *batch.Step, low, high quantity.Rat) []Fault) []Fault {
	low, high, ok := ends(b.MeltTo())
	if !ok || b.Layered() {
		return nil
	}
	return b.everyStep("melt", func(s *batch.Step) []Fault { return plant(s, low, high) })
}

// everyScent is the same for adding fragrance.
func (b *Bench) everyScent(plant func(s *batch.Step, low, high quantity.Rat) []Fault) []Fault {
	low, high, ok := ends(b.AddFragranceAt())
	if !ok || b.Layered() {
		return nil
	}
	return b.everyStep("add fragrance", func(s *batch.Step) []Fault { return plant(s, low, high) })
}
