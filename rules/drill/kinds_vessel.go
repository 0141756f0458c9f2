package drill

import (
	"slices"
	"strconv"

	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

func vesselKinds() []Kind {
	return []Kind{
		{"a container wax is taken for a mold", "wax-not-for-mold", func(b *Bench) []Fault {
			if len(b.molds()) == 0 {
				return nil
			}
			return b.otherWax(func(w *schema.Block) bool {
				for _, use := range w.Get("suits").Items() {
					if use.Text != "container" && use.Text != "tealight" {
						return false
					}
				}
				return len(w.Get("suits").Items()) > 0
			})
		}},
		{"the wick is far too small", "wick-outside-diameter", func(b *Bench) []Fault {
			return b.wicked(func(wick *schema.Block, v *batch.Vessel) bool {
				return wick.Get("burns").Amount().High().Base().Mul(quantity.Int(2)).Less(v.Diameter.Value) && v.Wicks == 1
			})
		}},
		{"the wick is a size or two too small", "wick-outside-diameter", func(b *Bench) []Fault {
			return b.wicked(func(wick *schema.Block, v *batch.Vessel) bool {
				return v.Wicks == 1 && v.Wick.Get("families").Written() == wick.Get("families").Written() && wick.Get("burns").Amount().High().Base().Less(v.Diameter.Value)
			})
		}},
		{"the wick is far too large", "wick-outside-diameter", func(b *Bench) []Fault {
			return b.wicked(func(wick *schema.Block, v *batch.Vessel) bool {
				return v.Diameter.Value.Mul(quantity.NewRat(5, 4)).Less(wick.Get("burns").Amount().Low().Base())
			})
		}},
		{"the wick is of the right size, and for another wax", "wick-not-for-wax", func(b *Bench) []Fault {
			wax := b.oneWax()
			if wax == nil {
				return nil
			}
			family := wax.Stock.Get("family").Text()
			return b.wicked(func(wick *schema.Block, v *batch.Vessel) bool {
				burns := wick.Get("burns").Amount()
				return v.Wicks == 1 && len(wick.Get("families").Items()) > 0 && !has(wick.Get("families"), family) && wick.Get("tab").Yes() == v.Wick.Get("tab").Yes() &&
					!v.Diameter.Value.Less(burns.Low().Base()) && !burns.High().Base().Less(v.Diameter.Value)
			})
		}},
		{"no wick is named", "wick-missing", func(b *Bench) []Fault {
			var all []Fault
			for i := range b.Vessels {
				if v := &b.Vessels[i]; b.flame() && v.WickSaid.Known() {
					all = append(all, Fault{Edits: []schema.Edit{schema.RemoveAttr(v.WickSaid)}, Flag: Header(v.Block)})
				}
			}
			return all
		}},
		{"a candle is said to be a melt", "wick-in-melt", func(b *Bench) []Fault {
			makes := b.Recipe.Get("makes")
			if !b.flame() || !makes.Known() || len(b.Vessels) != 1 || b.Vessels[0].Kind == "taper" || !b.Vessels[0].WickSaid.Known() {
				return nil
			}
			return []Fault{{Edits: []schema.Edit{schema.SetValue(makes, `"melt"`)}, Flag: b.Vessels[0].WickSaid.Written()}}
		}},
		{"one wick in place of several", "one-wick-too-wide", func(b *Bench) []Fault {
			var all []Fault
			for i := range b.Vessels {
				if v := &b.Vessels[i]; v.Wicks > 1 {
					all = append(all, Fault{Edits: []schema.Edit{schema.SetValue(v.Block.Get("wicks"), "1")}})
				}
			}
			return all
		}},
		{"one wick more than the candle is wide enough for", "wick-outside-diameter", func(b *Bench) []Fault {
			var all []Fault
			for i := range b.Vessels {
				if v := &b.Vessels[i]; v.Wick != nil && b.flame() {
					all = append(all, Fault{Edits: []schema.Edit{schema.SetValue(v.Block.Get("wicks"), strconv.Itoa(v.Wicks+1))}})
				}
			}
			return all
		}},
		{"the wick is never fixed to the bottom", "wick-tab-missing", func(b *Bench) []Fault {
			if len(b.containers()) != 1 || !b.flame() {
				return nil
			}
			return b.without("set wick", Header(b.containers()[0].Block))
		}},
		{"a wick without a tab in a container", "wick-tab-missing", func(b *Bench) []Fault {
			if len(b.containers()) == 0 {
				return nil
			}
			return b.wicked(func(wick *schema.Block, v *batch.Vessel) bool {
				burns := wick.Get("burns").Amount()
				return v.Kind == "container" && wick.Get("tab").No() && !v.Diameter.Value.Less(burns.Low().Base()) && !burns.High().Base().Less(v.Diameter.Value)
			})
		}},
		{"the glass is not warmed", "glass-too-cold-for-pour", func(b *Bench) []Fault {
			if len(b.containers()) == 0 {
				return nil
			}
			return b.without("warm container", "")
		}},
		{"one more wick than was test burned", "test-burn-stale", func(b *Bench) []Fault {
			burned := b.burned()
			if len(b.Vessels) != 1 || burned == "" {
				return nil
			}
			v := &b.Vessels[0]
			return []Fault{{Edits: []schema.Edit{schema.SetValue(v.Block.Get("wicks"), strconv.Itoa(v.Wicks+1))}, Flag: burned}}
		}},
		{"the recipe is changed after its test burns", "test-burn-stale", func(b *Bench) []Fault {
			burned := b.burned()
			if burned == "" {
				return nil
			}
			all := b.everyLoad(func(load schema.Value) string {
				less := load.Amount().Number().Sub(quantity.Int(1))
				if less.Sign() <= 0 {
					return ""
				}
				return less.Decimal(3) + " " + load.Amount().Unit().Symbol
			})
			for i := range all {
				all[i].Flag = burned
			}
			return all
		}},
	}
}

func vesselHunches() []Kind {
	return []Kind{
		{"a pillar wax is taken for a container", "wax-not-for-container", func(b *Bench) []Fault {
			if len(b.containers()) == 0 || b.Makes == "melt" {
				return nil
			}
			return b.otherWax(func(w *schema.Block) bool {
				return has(w.Get("suits"), "pillar") && !has(w.Get("suits"), "container") && !has(w.Get("suits"), "tealight")
			})
		}},
		{"the container is filled to the brim", "container-overfilled", func(b *Bench) []Fault {
			var all []Fault
			for _, v := range b.containers() {
				fill, height := v.Block.Get("fill"), v.Stock.Get("height")
				if fill.Known() && height.IsAmount() {
					all = append(all, Fault{Edits: []schema.Edit{schema.SetValue(fill, height.Written())}})
				}
			}
			return all
		}},
		{"the pot is the small one", "pot-overfull", func(b *Bench) []Fault {
			said := b.Recipe.Get("pot")
			if !said.Known() {
				return nil
			}
			var all []Fault
			for _, pot := range b.shelf("pot", func(p *schema.Block) bool { return p.Label != said.Text() }) {
				all = append(all, rewrite(said, schema.Quote(pot.Label)))
			}
			return all
		}},
		{"a vessel that is not made for candles", "container-not-for-candles", func(b *Bench) []Fault {
			var all []Fault
			for _, v := range b.containers() {
				for _, other := range b.shelf("container", func(c *schema.Block) bool { return c.Get("made_for_candles").No() }) {
					all = append(all, relabel(v.Block, other.Label))
				}
			}
			return all
		}},
	}
}

// burned is the formula of the last test burn as it is written, where the burns
// say what was burned: else nobody can tell what was changed since.
func (b *Bench) burned() string {
	burns := b.View.TestBurns()
	if !slices.ContainsFunc(burns, func(burn *schema.Block) bool { return burn.Get("burned_as").Known() }) {
		return ""
	}
	return burns[len(burns)-1].Get("formula").Written()
}

// otherWax swaps the only wax for others from the shelf, in the steps that
// name it as well.
func (b *Bench) otherWax(fits func(*schema.Block) bool) []Fault {
	wax := b.oneWax()
	if wax == nil {
		return nil
	}
	var all []Fault
	for _, other := range b.shelf("wax", func(w *schema.Block) bool { return w.Label != wax.Block.Label && fits(w) }) {
		f := relabel(wax.Block, other.Label)
		f.Edits = append(f.Edits, b.renamed("wax", wax.Block.Label, other.Label)...)
		all = append(all, f)
	}
	return all
}

// wicked gives each candle the stock wicks that are wrong for it as asked.
func (b *Bench) wicked(wrong func(*schema.Block, *batch.Vessel) bool) []Fault {
	var all []Fault
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if !b.flame() || v.Wick == nil || !v.WickSaid.Known() || !v.Diameter.Known() {
			continue
		}
		for _, wick := range b.View.Shop().Shelf("wick") {
			if wick.Label != v.Wick.Label && wick.Get("burns").IsAmount() && wrong(wick, v) {
				all = append(all, rewrite(v.WickSaid, schema.Quote(wick.Label)))
			}
		}
	}
	return all
}
