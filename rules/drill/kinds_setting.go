package drill

import (
	"wickrule/rules/batch"
	"wickrule/schema"
)

func settingKinds() []Kind {
	return []Kind{
		{"the wick hole is never sealed", "wick-hole-unsealed", func(b *Bench) []Fault {
			if !b.hasHole() {
				return nil
			}
			return b.without("seal wick hole", Header(b.molds()[0].Block))
		}},
		{"the wick hole is sealed after the pour", "wick-hole-sealed-late", func(b *Bench) []Fault {
			if !b.hasHole() {
				return nil
			}
			return b.everyStep("seal wick hole", func(s *batch.Step) []Fault {
				last := b.Steps[len(b.Steps)-1].Block
				if last == s.Block {
					return nil
				}
				return []Fault{moved(s.Block, last)}
			})
		}},
		{"the seal softens below the heat of the pour", "seal-too-weak", func(b *Bench) []Fault {
			if !b.hasHole() || len(b.FirstPours()) == 0 || !b.FirstPours()[0].Step.Heat.IsAmount() {
				return nil
			}
			pour := b.FirstPours()[0].Step.Heat.Amount().Base()
			weak := b.shelf("seal", func(s *schema.Block) bool {
				return s.Get("holds_to").IsAmount() && s.Get("holds_to").Amount().Base().Less(pour)
			})
			return b.everyStep("seal wick hole", func(s *batch.Step) []Fault {
				var all []Fault
				for _, seal := range weak {
					all = append(all, rewrite(s.Block.Get("with"), schema.Quote(seal.Label)))
				}
				return all
			})
		}},
		{"there is no second pour", "second-pour-missing", func(b *Bench) []Fault {
			if !b.shrinks() {
				return nil
			}
			return b.without("second pour", Header(b.molds()[0].Block))
		}},
		{"the second pour is cooler than the first", "second-pour-too-cool", func(b *Bench) []Fault {
			return b.seconds(func(p *batch.Pour) []Fault {
				return heated(p.Step.Heat, p.First.Heat.Amount().Base().Sub(kelvin(5)))
			})
		}},
		{"the second pour is far hotter than the first", "second-pour-out-of-step", func(b *Bench) []Fault {
			return b.seconds(func(p *batch.Pour) []Fault {
				if hot := p.First.Heat.Amount().Base().Add(kelvin(13)); b.belowCeiling(hot) {
					return heated(p.Step.Heat, hot)
				}
				return nil
			})
		}},
		{"the second pour follows the first at once", "second-pour-too-soon", func(b *Bench) []Fault {
			return b.everyStep("second pour", func(s *batch.Step) []Fault {
				if after := s.Block.Get("after"); after.Known() && s.Index > 0 && b.Steps[s.Index-1].Kind == "pour" {
					return []Fault{rewrite(after, `"1 min"`), rewrite(after, `"2 min"`)}
				}
				return nil
			})
		}},
		{"no relief holes are opened", "relief-holes-missing", func(b *Bench) []Fault {
			if !b.shrinks() || len(b.StepsOf("second pour")) == 0 {
				return nil
			}
			return b.without("relief holes", Header(b.StepsOf("second pour")[0].Block))
		}},
		{"the relief holes are poked while the wax is liquid", "relief-holes-too-early", func(b *Bench) []Fault {
			return b.waiting("relief holes", `"5 min"`, `"10 min"`)
		}},
		{"the relief holes are poked the next day", "relief-holes-too-late", func(b *Bench) []Fault { return b.waiting("relief holes", `"1 d"`) }},
		{"the candle is unmolded while its core is soft", "unmold-too-soon", func(b *Bench) []Fault {
			return b.waiting("unmold", `"10 min"`, `"20 min"`, `"45 min"`)
		}},
		{"the candle cures for an hour or a night", "cure-too-short", func(b *Bench) []Fault {
			if len(b.Fragrances) == 0 {
				return nil
			}
			return b.everyStep("cure", func(s *batch.Step) []Fault {
				return []Fault{rewrite(s.Block.Get("for"), `"1 h"`), rewrite(s.Block.Get("for"), `"12 h"`)}
			})
		}},
		{"the wick is left long", "wick-untrimmed", func(b *Bench) []Fault {
			if b.Makes == "taper" || b.Makes == "tealight" {
				return nil
			}
			return b.everyStep("trim wick", func(s *batch.Step) []Fault {
				return []Fault{rewrite(s.Block.Get("to"), `"1 in"`), rewrite(s.Block.Get("to"), `"5/8 in"`)}
			})
		}},
		{"the fragrance is never stirred in", "ingredient-never-added", func(b *Bench) []Fault {
			if len(b.Fragrances) != 1 {
				return nil
			}
			return b.without("add fragrance", Header(b.Fragrances[0].Block))
		}},
		{"the dye is never stirred in", "ingredient-never-added", func(b *Bench) []Fault {
			if len(b.Dyes) != 1 {
				return nil
			}
			return b.without("add dye", Header(b.Dyes[0].Block))
		}},
		{"the candle is unmolded before the pour", "steps-out-of-order", func(b *Bench) []Fault {
			if len(b.FirstPours()) == 0 {
				return nil
			}
			return b.everyStep("unmold", func(s *batch.Step) []Fault { return []Fault{moved(s.Block, b.FirstPours()[0].Step.Block)} })
		}},
		{"the fragrance goes in after the pour", "steps-out-of-order", func(b *Bench) []Fault {
			if len(b.FirstPours()) != 1 {
				return nil
			}
			after := b.FirstPours()[0].Step.Index + 1
			if after >= len(b.Steps) {
				return nil
			}
			return b.everyStep("add fragrance", func(s *batch.Step) []Fault { return []Fault{moved(s.Block, b.Steps[after].Block)} })
		}},
		{"the cure comes before the pour", "steps-out-of-order", func(b *Bench) []Fault {
			if len(b.FirstPours()) == 0 {
				return nil
			}
			return b.everyStep("cure", func(s *batch.Step) []Fault { return []Fault{moved(s.Block, b.FirstPours()[0].Step.Block)} })
		}},
	}
}

func settingHunches() []Kind {
	return []Kind{
		{"the first pour leaves no room for the second", "no-room-for-second-pour", func(b *Bench) []Fault {
			return b.everyStep("pour", func(s *batch.Step) []Fault {
				if !s.Block.Get("leave").IsAmount() || len(b.StepsOf("second pour")) == 0 {
					return nil
				}
				return []Fault{{Edits: []schema.Edit{schema.SetValue(s.Block.Get("leave"), `"1/16 in"`)}}}
			})
		}},
		{"the wick is never trimmed", "wick-untrimmed", func(b *Bench) []Fault {
			if b.Makes == "taper" || b.Makes == "tealight" {
				return nil
			}
			return b.without("trim wick", "")
		}},
	}
}

// waiting plants other waits in every step of a kind whose wait is written.
func (b *Bench) waiting(kind string, literals ...string) []Fault {
	return b.everyStep(kind, func(s *batch.Step) []Fault {
		var all []Fault
		for _, literal := range literals {
			if s.Block.Get("after").Known() {
				all = append(all, rewrite(s.Block.Get("after"), literal))
			}
		}
		return all
	})
}

// seconds plants in every second pour into a mold with a first before it.
func (b *Bench) seconds(plant func(*batch.Pour) []Fault) []Fault {
	var all []Fault
	for i := range b.Pours {
		if p := &b.Pours[i]; p.Second && p.First != nil && len(b.molds()) > 0 && p.First.Heat.IsAmount() {
			all = append(all, plant(p)...)
		}
	}
	return all
}
