package rules_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules"
	"wickrule/rules/batch"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// A mutation plants one kind of fault in a sound recipe. What it plants is
// worked out from the stock's figures and not by the rule that must find it.
type mutation struct {
	kind  string
	rule  string
	plant func(*bench) []mutant
}

// mutant is one planted fault: the edits, and the characters that must be
// flagged. Where the flagged text is what an edit wrote, at is that edit.
type mutant struct {
	edits []schema.Edit
	flag  string
	rule  string // where it differs from the mutation's
}

// bench is a demo recipe with its figures.
type bench struct {
	*batch.Batch
	view *lint.View
}

func (b *bench) steps(kind string) []*batch.Step {
	var steps []*batch.Step
	for i := range b.Steps {
		if b.Steps[i].Kind == kind {
			steps = append(steps, &b.Steps[i])
		}
	}
	return steps
}

// rewrite plants a value and wants it flagged.
func rewrite(v schema.Value, literal string) mutant {
	return mutant{edits: []schema.Edit{schema.SetValue(v, literal)}, flag: literal}
}

// remove takes blocks out and wants something else flagged.
func remove(flag string, blocks ...*schema.Block) mutant {
	m := mutant{flag: flag}
	for _, b := range blocks {
		m.edits = append(m.edits, schema.RemoveBlock(b))
	}
	return m
}

func header(b *schema.Block) string { return b.File.Text.Slice(b.Header()) }

// degrees is a temperature as it would be written on the scale of another,
// rounded to a tenth.
func degrees(like quantity.Quantity, celsius quantity.Rat) string {
	return schema.Quote(quantity.FromBase(celsius, like.Unit()).Number().Decimal(1) + " " + like.Unit().Symbol)
}

func kelvin(n int64) quantity.Rat { return quantity.Int(n) }

// each plants a new temperature in the value where both ends are known.
func heated(v schema.Value, celsius quantity.Rat) []mutant {
	if !v.IsAmount() {
		return nil
	}
	return []mutant{rewrite(v, degrees(v.Amount(), celsius))}
}

// everyStep plants in every step of a kind.
func (b *bench) everyStep(kind string, plant func(*batch.Step) []mutant) []mutant {
	var all []mutant
	for _, s := range b.steps(kind) {
		all = append(all, plant(s)...)
	}
	return all
}

func (b *bench) firstPours() []*batch.Pour {
	var pours []*batch.Pour
	for i := range b.Pours {
		if !b.Pours[i].Second {
			pours = append(pours, &b.Pours[i])
		}
	}
	return pours
}

// belowCeiling says whether a temperature leaves the other heat rules alone:
// five degrees under the ceiling and well under the flash point.
func (b *bench) belowCeiling(celsius quantity.Rat) bool {
	ceiling, flash := b.NeverAbove(), b.FlashPoint()
	return ceiling.Known() && flash.Known() && celsius.Add(kelvin(2)).Less(ceiling.AtLow().Low()) && celsius.Add(kelvin(32)).Less(flash.AtLow().Low())
}

func (b *bench) molds() []*batch.Vessel {
	var molds []*batch.Vessel
	for i := range b.Vessels {
		if b.Vessels[i].Kind == "mold" {
			molds = append(molds, &b.Vessels[i])
		}
	}
	return molds
}

func (b *bench) containers() []*batch.Vessel {
	var containers []*batch.Vessel
	for i := range b.Vessels {
		if b.Vessels[i].Kind == "container" {
			containers = append(containers, &b.Vessels[i])
		}
	}
	return containers
}

func (b *bench) flame() bool { return b.Makes != "melt" }

// swapTo renames the label of an ingredient or vessel.
func relabel(b *schema.Block, key string) mutant {
	return mutant{edits: []schema.Edit{{File: b.File, Span: b.LabelSpan, Text: schema.Quote(key)}}, flag: schema.Quote(key)}
}

var mutations = []mutation{
	{"load a quarter over the limit", "fragrance-over-limit", func(b *bench) []mutant {
		if len(b.Fragrances) != 1 || len(b.Waxes) != 1 || !b.Fragrances[0].Block.Get("load").IsAmount() {
			return nil
		}
		limit := b.Waxes[0].Stock.Get("fragrance_limit").Amount()
		over := limit.Number().Mul(quantity.NewRat(5, 4))
		return []mutant{rewrite(b.Fragrances[0].Block.Get("load"), schema.Quote(over.Decimal(3)+" "+limit.Unit().Symbol))}
	}},
	{"basis of the load left out", "load-basis-unstated", func(b *bench) []mutant {
		var all []mutant
		for _, f := range b.Fragrances {
			if load := f.Block.Get("load"); load.IsAmount() && load.Amount().Basis() == quantity.OfWax {
				all = append(all, rewrite(load, schema.Quote(load.Amount().Number().Decimal(3)+" %")))
			}
		}
		return all
	}},
	{"load as a fraction", "load-looks-like-fraction", func(b *bench) []mutant {
		var all []mutant
		for _, f := range b.Fragrances {
			if load := f.Block.Get("load"); load.IsAmount() {
				all = append(all, rewrite(load, `"0.05 % of wax"`))
			}
		}
		return all
	}},
	{"dye by eye", "dye-by-eye", func(b *bench) []mutant {
		var all []mutant
		for _, d := range b.Dyes {
			if w := d.Block.Get("weight"); w.Known() {
				all = append(all, mutant{edits: []schema.Edit{{File: w.Block.File, Span: schema.Span{Start: w.NameSpan().Start, End: w.Span().End}, Text: `amount = "to shade"`}}, flag: `"to shade"`})
			}
		}
		return all
	}},
	{"half as much wax again", "batch-left-over", func(b *bench) []mutant { return b.weighed(quantity.NewRat(3, 2)) }},
	{"a third less wax", "batch-does-not-fill", func(b *bench) []mutant { return b.weighed(quantity.NewRat(2, 3)) }},

	{"pillar wax in a container", "wax-not-for-container", func(b *bench) []mutant {
		if len(b.containers()) == 0 || len(b.Waxes) != 1 || b.Makes == "melt" || b.Waxes[0].Block.Label == "northlight-pillar" {
			return nil
		}
		return []mutant{relabel(b.Waxes[0].Block, "northlight-pillar")}
	}},
	{"container wax in a mold", "wax-not-for-mold", func(b *bench) []mutant {
		if len(b.molds()) == 0 || len(b.Waxes) != 1 {
			return nil
		}
		return []mutant{relabel(b.Waxes[0].Block, b.pick("wax", func(w *schema.Block) bool {
			items := w.Get("suits").Items()
			return len(items) > 0 && !slices.ContainsFunc(items, func(i schema.Item) bool { return i.Text != "container" && i.Text != "tealight" })
		}))}
	}},
	{"wick far too small", "wick-outside-diameter", func(b *bench) []mutant {
		return b.wicked(func(wick *schema.Block, v *batch.Vessel) bool {
			return wick.Get("burns").Amount().High().Base().Mul(quantity.Int(2)).Less(v.Diameter.Value) && v.Wicks == 1
		})
	}},
	{"wick far too large", "wick-outside-diameter", func(b *bench) []mutant {
		return b.wicked(func(wick *schema.Block, v *batch.Vessel) bool {
			return v.Diameter.Value.Mul(quantity.NewRat(5, 4)).Less(wick.Get("burns").Amount().Low().Base())
		})
	}},
	{"no wick", "wick-missing", func(b *bench) []mutant {
		var all []mutant
		for i := range b.Vessels {
			if v := &b.Vessels[i]; b.flame() && v.WickSaid.Known() {
				all = append(all, mutant{edits: []schema.Edit{schema.RemoveAttr(v.WickSaid)}, flag: header(v.Block)})
			}
		}
		return all
	}},
	{"a candle said to be a melt", "wick-in-melt", func(b *bench) []mutant {
		makes := b.Recipe.Get("makes")
		if !b.flame() || !makes.Known() || len(b.Vessels) != 1 || b.Vessels[0].Kind == "taper" || !b.Vessels[0].WickSaid.Known() {
			return nil
		}
		return []mutant{{edits: []schema.Edit{schema.SetValue(makes, `"melt"`)}, flag: b.Vessels[0].WickSaid.Written()}}
	}},
	{"wick not fixed", "wick-tab-missing", func(b *bench) []mutant {
		if len(b.containers()) != 1 || !b.flame() {
			return nil
		}
		return b.without("set wick", header(b.containers()[0].Block))
	}},

	{"pour over the range", "pour-too-hot", func(b *bench) []mutant {
		var all []mutant
		for _, pour := range b.firstPours() {
			if hot := b.PourAt().AtHigh().High().Add(kelvin(3)); b.belowCeiling(hot) && !b.layered() {
				all = append(all, heated(pour.Step.Heat, hot)...)
			}
		}
		return all
	}},
	{"pour under the range", "pour-too-cool", func(b *bench) []mutant {
		var all []mutant
		for _, pour := range b.firstPours() {
			if !b.layered() {
				all = append(all, heated(pour.Step.Heat, b.PourAt().AtLow().Low().Sub(kelvin(4)))...)
			}
		}
		return all
	}},
	{"pour on the other scale", "temperature-scale-doubtful", func(b *bench) []mutant {
		var all []mutant
		for _, pour := range b.firstPours() {
			all = append(all, otherScale(pour.Step.Heat)...)
		}
		return all
	}},
	{"melt on the other scale", "temperature-scale-doubtful", func(b *bench) []mutant {
		return b.everyStep("melt", func(s *batch.Step) []mutant { return otherScale(s.Heat) })
	}},
	{"melt over the range", "melt-too-hot", func(b *bench) []mutant {
		return b.everyStep("melt", func(s *batch.Step) []mutant {
			if hot := b.MeltTo().AtHigh().High().Add(kelvin(3)); b.belowCeiling(hot) && !b.layered() {
				return heated(s.Heat, hot)
			}
			return nil
		})
	}},
	{"melt under the range", "melt-too-cool", func(b *bench) []mutant {
		return b.everyStep("melt", func(s *batch.Step) []mutant {
			if b.layered() {
				return nil
			}
			return heated(s.Heat, b.MeltTo().AtLow().Low().Sub(kelvin(4)))
		})
	}},
	{"melt over the ceiling", "heat-above-ceiling", func(b *bench) []mutant {
		return b.everyStep("melt", func(s *batch.Step) []mutant {
			return heated(s.Heat, b.NeverAbove().AtLow().Low().Add(kelvin(1)))
		})
	}},
	{"melt near the flash point", "heat-near-flash", func(b *bench) []mutant {
		return b.everyStep("melt", func(s *batch.Step) []mutant {
			return heated(s.Heat, b.FlashPoint().AtLow().Low().Sub(kelvin(29)))
		})
	}},
	{"melt without a figure", "temperature-never-said", func(b *bench) []mutant {
		return b.everyStep("melt", func(s *batch.Step) []mutant {
			return []mutant{{edits: []schema.Edit{schema.RemoveAttr(s.Heat)}, flag: header(s.Block)}}
		})
	}},
	{"fragrance into wax too hot", "fragrance-added-too-hot", func(b *bench) []mutant {
		return b.everyStep("add fragrance", func(s *batch.Step) []mutant {
			if hot := b.AddFragranceAt().AtHigh().High().Add(kelvin(3)); b.belowCeiling(hot) && !b.layered() {
				return heated(s.Heat, hot)
			}
			return nil
		})
	}},
	{"over an open flame", "open-heat", func(b *bench) []mutant {
		return b.everyStep("melt", func(s *batch.Step) []mutant {
			return []mutant{rewrite(s.Block.Get("over"), `"direct heat"`)}
		})
	}},

	{"seal left out", "wick-hole-unsealed", func(b *bench) []mutant {
		if !b.hasHole() {
			return nil
		}
		return b.without("seal wick hole", header(b.molds()[0].Block))
	}},
	{"sealed at the end", "wick-hole-sealed-late", func(b *bench) []mutant {
		if !b.hasHole() {
			return nil
		}
		return b.everyStep("seal wick hole", func(s *batch.Step) []mutant {
			last := b.Steps[len(b.Steps)-1].Block
			text := s.Block.File.Text.Slice(s.Block.Span)
			return []mutant{{edits: []schema.Edit{schema.RemoveBlock(s.Block), schema.InsertBlockBefore(last, text)}, flag: header(s.Block)}}
		})
	}},
	{"sealed with glue", "seal-too-weak", func(b *bench) []mutant {
		if !b.hasHole() {
			return nil
		}
		weak := b.pick("seal", func(s *schema.Block) bool {
			return s.Get("holds_to").IsAmount() && s.Get("holds_to").Amount().Base().Less(b.firstPours()[0].Step.Heat.Amount().Base())
		})
		return b.everyStep("seal wick hole", func(s *batch.Step) []mutant {
			return []mutant{rewrite(s.Block.Get("with"), schema.Quote(weak))}
		})
	}},
	{"second pour left out", "second-pour-missing", func(b *bench) []mutant {
		if !b.shrinks() {
			return nil
		}
		return b.without("second pour", header(b.molds()[0].Block))
	}},
	{"second pour cooler", "second-pour-too-cool", func(b *bench) []mutant {
		return b.seconds(func(p *batch.Pour) []mutant {
			return heated(p.Step.Heat, p.First.Heat.Amount().Base().Sub(kelvin(5)))
		})
	}},
	{"second pour far hotter", "second-pour-out-of-step", func(b *bench) []mutant {
		return b.seconds(func(p *batch.Pour) []mutant {
			if hot := p.First.Heat.Amount().Base().Add(kelvin(13)); b.belowCeiling(hot) {
				return heated(p.Step.Heat, hot)
			}
			return nil
		})
	}},
	{"relief holes left out", "relief-holes-missing", func(b *bench) []mutant {
		if !b.shrinks() || len(b.steps("second pour")) == 0 {
			return nil
		}
		return b.without("relief holes", header(b.steps("second pour")[0].Block))
	}},
	{"relief holes at once", "relief-holes-too-early", func(b *bench) []mutant {
		return b.everyStep("relief holes", func(s *batch.Step) []mutant { return []mutant{rewrite(s.Block.Get("after"), `"5 min"`)} })
	}},
	{"relief holes a day later", "relief-holes-too-late", func(b *bench) []mutant {
		return b.everyStep("relief holes", func(s *batch.Step) []mutant { return []mutant{rewrite(s.Block.Get("after"), `"1 d"`)} })
	}},
	{"unmolded at once", "unmold-too-soon", func(b *bench) []mutant {
		return b.everyStep("unmold", func(s *batch.Step) []mutant { return []mutant{rewrite(s.Block.Get("after"), `"10 min"`)} })
	}},
	{"hardly a drop to the pour", "narrow-pour-window", func(b *bench) []mutant {
		top := b.PourAt().AtHigh().High()
		if b.layered() || len(b.firstPours()) != 1 || top.Less(b.MeltTo().AtLow().Low()) {
			return nil // the ranges do not meet
		}
		pour, melt := b.firstPours()[0], b.firstPours()[0].Melt
		m := rewrite(pour.Step.Heat, degrees(pour.Step.Heat.Amount(), top.Sub(quantity.NewRat(2, 5))))
		m.edits = append(m.edits, schema.SetValue(melt.Heat, degrees(melt.Heat.Amount(), top)))
		return []mutant{m}
	}},
	{"stirred for half a minute", "stir-too-short", func(b *bench) []mutant {
		return b.everyStep("add fragrance", func(s *batch.Step) []mutant { return []mutant{rewrite(s.Block.Get("stir"), `"30 s"`)} })
	}},
	{"cured for an hour", "cure-too-short", func(b *bench) []mutant {
		if len(b.Fragrances) == 0 {
			return nil
		}
		return b.everyStep("cure", func(s *batch.Step) []mutant { return []mutant{rewrite(s.Block.Get("for"), `"1 h"`)} })
	}},
	{"wick left an inch long", "wick-untrimmed", func(b *bench) []mutant {
		if b.Makes == "taper" || b.Makes == "tealight" {
			return nil
		}
		return b.everyStep("trim wick", func(s *batch.Step) []mutant { return []mutant{rewrite(s.Block.Get("to"), `"1 in"`)} })
	}},
	{"fragrance never stirred in", "ingredient-never-added", func(b *bench) []mutant {
		if len(b.Fragrances) != 1 {
			return nil
		}
		return b.without("add fragrance", header(b.Fragrances[0].Block))
	}},
	{"unmolded before the pour", "steps-out-of-order", func(b *bench) []mutant {
		return b.everyStep("unmold", func(s *batch.Step) []mutant {
			text := s.Block.File.Text.Slice(s.Block.Span)
			return []mutant{{edits: []schema.Edit{schema.RemoveBlock(s.Block), schema.InsertBlockBefore(b.firstPours()[0].Step.Block, text)}, flag: header(s.Block)}}
		})
	}},

	{"no label", "warning-label-missing", func(b *bench) []mutant {
		if !b.flame() || len(b.Vessels) != 1 {
			return nil
		}
		return b.without("attach label", header(b.Vessels[0].Block))
	}},
	{"a label for elsewhere", "label-not-for-market", func(b *bench) []mutant {
		if b.view.MadeFor != lint.Sale {
			return nil
		}
		other := map[string]string{"US": "uk-amber-jar", "EU": "us-base", "UK": "us-base"}[b.view.Markets()[0].Text]
		return b.everyStep("attach label", func(s *batch.Step) []mutant { return []mutant{rewrite(s.Block.Get("label"), schema.Quote(other))} })
	}},
	{"a label without its hazards", "hazard-label-missing", func(b *bench) []mutant {
		return b.otherLabel("names", func(line string) bool { return strings.HasPrefix(line, "hazards") || strings.HasPrefix(line, "names") })
	}},
	{"a label without the substances it must name", "hazard-label-missing", func(b *bench) []mutant {
		return b.otherLabel("names", func(line string) bool { return strings.HasPrefix(line, "names") })
	}},
	{"a load at which a sensitizer reaches 1 % of the candle", "hazard-label-missing", func(b *bench) []mutant {
		var all []mutant
		for i := range b.Fragrances {
			in := &b.Fragrances[i]
			for component := range in.Stock.Each("component") {
				text := component.File.Text.Slice(component.Span)
				share := component.Get("share").Amount().High().Base()
				load, _ := quantity.Int(1).Quo(share.Mul(quantity.Int(100))) // a ratio of the total
				if !strings.Contains(text, "Skin Sens. 1B") || !in.OfTotal.Value.Less(load) || !b.soldAbroad() || b.labelHas("H317") {
					continue
				}
				m := rewrite(in.Block.Get("load"), schema.Quote(load.Mul(quantity.Int(100)).Decimal(6)+" % of total"))
				m.flag = b.steps("attach label")[0].Block.Get("label").Written()
				all = append(all, m)
			}
		}
		return all
	}},
	{"an oil without its safety data sheet", "hazard-unknown", func(b *bench) []mutant { return b.otherOil("") }},
	{"an oil that may not be sold", "banned-ingredient", func(b *bench) []mutant {
		return b.otherOil("  component \"scent\" {\n    share   = \"20 %\"\n    hazards = [\"Repr. 1B H360FD\"]\n  }\n")
	}},
	{"a label without its weight, classified", "net-weight-missing", func(b *bench) []mutant {
		if !b.soldIn("EU") {
			return nil
		}
		return b.otherLabel("hazards", func(line string) bool { return strings.HasPrefix(line, "net_weight") })
	}},
	{"a label without its identifier", "hazard-label-missing", func(b *bench) []mutant {
		return b.otherLabel("ufi", func(line string) bool { return strings.HasPrefix(line, "ufi") })
	}},
	{"declared to look like food", "looks-like-food", func(b *bench) []mutant {
		if b.view.MadeFor == lint.OwnUse || !b.soldAbroad() {
			return nil
		}
		return []mutant{rewrite(b.Recipe.Get("looks_like"), `"food"`)}
	}},
	{"a burn that failed", "test-burn-missing", func(b *bench) []mutant {
		if b.view.MadeFor != lint.Sale {
			return nil
		}
		var all []mutant
		for burn := range b.Recipe.Each("test_burn") {
			all = append(all, mutant{edits: []schema.Edit{schema.SetValue(burn.Get("result"), `"fail"`)}, flag: header(b.Recipe)})
		}
		return all
	}},
	{"a burn that failed, and nothing changed since", "test-burn-unsafe", func(b *bench) []mutant {
		var all []mutant
		for burn := range b.Recipe.Each("test_burn") {
			all = append(all, rewrite(burn.Get("result"), `"fail"`))
		}
		return all
	}},
	{"a flame over 75 mm", "test-burn-unsafe", func(b *bench) []mutant {
		var all []mutant
		for burn := range b.Recipe.Each("test_burn") {
			all = append(all, rewrite(burn.Get("flame"), `"3.1 in"`))
		}
		return all
	}},
	{"heavy soot, noted as passed", "test-burn-doubtful", func(b *bench) []mutant {
		var all []mutant
		for burn := range b.Recipe.Each("test_burn") {
			all = append(all, rewrite(burn.Get("soot"), `"heavy"`))
		}
		return all
	}},
	{"one more wick than was burned", "test-burn-stale", func(b *bench) []mutant {
		if len(b.Vessels) != 1 || b.view.MadeFor != lint.Sale || len(b.view.TestBurns()) == 0 {
			return nil
		}
		burns := b.view.TestBurns()
		v := &b.Vessels[0]
		return []mutant{{edits: []schema.Edit{schema.SetValue(v.Block.Get("wicks"), strconv.Itoa(v.Wicks+1))}, flag: burns[len(burns)-1].Get("formula").Written()}}
	}},
	{"burned for an evening and not to the end", "test-burn-not-to-the-end", func(b *bench) []mutant {
		if len(b.Vessels) != 1 || b.view.MadeFor != lint.Sale || len(b.view.TestBurns()) == 0 {
			return nil
		}
		m := mutant{flag: header(b.Recipe)}
		for _, burn := range b.view.TestBurns() {
			m.edits = append(m.edits, schema.SetValue(burn.Get("to_end"), "false"))
		}
		return []mutant{m}
	}},

	{"a key misspelt", "unknown-key", func(b *bench) []mutant {
		var all []mutant
		for _, w := range b.Waxes {
			all = append(all, relabel(w.Block, w.Block.Label+"x"))
		}
		return all
	}},
	{"a closing quote forgotten", "syntax", func(b *bench) []mutant {
		var all []mutant
		for i := range b.Steps {
			if heat := b.Steps[i].Heat; heat.Known() {
				at := heat.Span().End
				all = append(all, mutant{edits: []schema.Edit{{File: heat.Block.File, Span: schema.Span{Start: at - 1, End: at}}}, flag: strings.TrimSuffix(heat.Written(), `"`)})
			}
		}
		return all
	}},
	{"an attribute misspelt", "unknown-attribute", func(b *bench) []mutant {
		return b.everyStep("pour", func(s *batch.Step) []mutant {
			return []mutant{{edits: []schema.Edit{{File: s.Block.File, Span: s.Heat.NameSpan(), Text: "aat"}}, flag: "aat"}}
		})
	}},
	{"a unit left out", "unit-missing", func(b *bench) []mutant {
		var all []mutant
		for i := range b.Steps {
			if heat := b.Steps[i].Heat; heat.IsAmount() && !heat.Amount().IsRange() {
				all = append(all, mutant{edits: []schema.Edit{schema.SetValue(heat, heat.Amount().Number().Decimal(1))}, flag: heat.Amount().Number().Decimal(1)})
			}
		}
		return all
	}},
	{"a weight for a temperature", "unit-wrong-kind", func(b *bench) []mutant {
		return b.everyStep("pour", func(s *batch.Step) []mutant {
			return []mutant{{edits: []schema.Edit{schema.SetValue(s.Heat, `"176 g"`)}, flag: `176 g`}}
		})
	}},
	{"a step misspelt", "unknown-step", func(b *bench) []mutant {
		return b.everyStep("pour", func(s *batch.Step) []mutant { return []mutant{relabel(s.Block, "poor")} })
	}},
	{"a sum in place of a weight", "not-a-literal", func(b *bench) []mutant {
		var all []mutant
		for _, w := range b.Waxes {
			all = append(all, rewrite(w.Block.Get("weight"), "600 + 640"))
		}
		return all
	}},
	{"whom it is for left out", "made-for-missing", func(b *bench) []mutant {
		return []mutant{{edits: []schema.Edit{schema.RemoveAttr(b.Recipe.Get("made_for"))}, flag: header(b.Recipe)}}
	}},
}

func (b *bench) soldIn(market string) bool {
	return b.view.MadeFor == lint.Sale && b.view.SoldIn(market)
}

// soldAbroad says whether the candle is sold where it is classified as a
// mixture.
func (b *bench) soldAbroad() bool { return b.soldIn("EU") || b.soldIn("UK") }

// labelHas says whether the recipe's label carries a hazard statement.
func (b *bench) labelHas(code string) bool {
	label, _ := b.view.Stock("label", b.steps("attach label")[0].Block.Get("label").Text())
	return slices.ContainsFunc(label.Get("hazards").Items(), func(item schema.Item) bool { return item.Text == code })
}

// otherLabel attaches a copy of the recipe's label without some of its lines,
// where the label has the attribute.
func (b *bench) otherLabel(attr string, drop func(line string) bool) []mutant {
	if !b.soldAbroad() {
		return nil
	}
	said := b.steps("attach label")[0].Block.Get("label")
	label, _ := b.view.Stock("label", said.Text())
	if label.Get(attr).Absent() {
		return nil
	}
	var kept []string
	for line := range strings.Lines(label.File.Text.Slice(label.Span)) {
		if !drop(strings.TrimSpace(line)) {
			kept = append(kept, line)
		}
	}
	text := strings.Replace(strings.Join(kept, ""), schema.Quote(said.Text()), `"copied"`, 1)
	return []mutant{{edits: []schema.Edit{schema.SetValue(said, `"copied"`), schema.InsertBlockBefore(b.Recipe, text)}, flag: `"copied"`}}
}

// otherOil swaps the fragrance for one of which this is stated.
func (b *bench) otherOil(components string) []mutant {
	if !b.soldAbroad() {
		return nil
	}
	oil := "fragrance \"from-the-fair\" {\n  title = \"Oil from the fair\"\n" + components + "}"
	m := relabel(b.Fragrances[0].Block, "from-the-fair")
	m.edits = append(m.edits, schema.InsertBlockBefore(b.Recipe, oil))
	return []mutant{m}
}

// weighed multiplies every wax's weight. The vat that tapers are dipped in is
// never emptied.
func (b *bench) weighed(by quantity.Rat) []mutant {
	if b.Makes == "taper" || len(b.Waxes) != 1 {
		return nil
	}
	w := b.Waxes[0].Block.Get("weight")
	grams := schema.Quote(w.Amount().Base().Mul(by).Decimal(0) + " g")
	return []mutant{rewrite(w, grams)}
}

// wicked gives each candle the first stock wick that is wrong for it as asked.
func (b *bench) wicked(wrong func(*schema.Block, *batch.Vessel) bool) []mutant {
	var all []mutant
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if !b.flame() || v.Wick == nil || !v.Diameter.Known() {
			continue
		}
		for _, wick := range b.view.Shop().Shelf("wick") {
			if wick.Get("burns").IsAmount() && wrong(wick, v) {
				all = append(all, rewrite(v.WickSaid, schema.Quote(wick.Label)))
				break
			}
		}
	}
	return all
}

func (b *bench) pick(kind string, fit func(*schema.Block) bool) string {
	for _, item := range b.view.Shop().Shelf(kind) {
		if fit(item) {
			return item.Label
		}
	}
	panic("the demo shop has no such " + kind)
}

// without takes all steps of a kind out.
func (b *bench) without(kind, flag string) []mutant {
	var blocks []*schema.Block
	for _, s := range b.steps(kind) {
		blocks = append(blocks, s.Block)
	}
	if blocks == nil {
		return nil
	}
	return []mutant{remove(flag, blocks...)}
}

func (b *bench) seconds(plant func(*batch.Pour) []mutant) []mutant {
	var all []mutant
	for i := range b.Pours {
		if p := &b.Pours[i]; p.Second && p.First != nil && len(b.molds()) > 0 && p.First.Heat.IsAmount() {
			all = append(all, plant(p)...)
		}
	}
	return all
}

func (b *bench) hasHole() bool {
	return len(b.molds()) > 0 && b.molds()[0].Stock.Get("wick_hole").Yes()
}

// shrinks says whether the recipe is one that the second pour is for.
func (b *bench) shrinks() bool {
	return len(b.molds()) > 0 && !b.layered() && b.Shrinkage().Known() && quantity.NewRat(6, 100).Less(b.Shrinkage().AtLow().Low()) &&
		quantity.Int(50).Less(b.molds()[0].Diameter.Value) && quantity.Int(50).Less(b.molds()[0].Height.Value)
}

// layered recipes melt several times, each with waxes of its own.
func (b *bench) layered() bool { return len(b.steps("melt")) > 1 }

// otherScale writes the number with the other scale's unit.
func otherScale(v schema.Value) []mutant {
	if !v.IsAmount() || v.Amount().IsRange() {
		return nil
	}
	unit := "°C"
	if v.Amount().Unit().Symbol == "°C" {
		unit = "°F"
	}
	return []mutant{rewrite(v, schema.Quote(v.Amount().Number().Decimal(1)+" "+unit))}
}

// Every mutation is caught by its rule on the mutated characters, in every
// demo recipe it applies to. common practice: a check that has never been seen
// to fail proves nothing.
func TestEveryMutationIsCaught(t *testing.T) {
	shop := exampleShop(t)
	require.GreaterOrEqual(t, len(mutations), 25)
	planted := 0
	for _, m := range mutations {
		t.Run(m.kind, func(t *testing.T) {
			n := 0
			for _, recipe := range shop.Recipes() {
				view := lint.NewView(shop, recipe, today)
				for _, mutant := range m.plant(&bench{batch.Of.In(view), view}) {
					n++
					checkMutant(t, shop, recipe, m, mutant)
				}
			}
			assert.Positivef(t, n, "%q was planted nowhere", m.kind)
			planted += n
		})
	}
	t.Logf("%d mutants of %d kinds in %d recipes", planted, len(mutations), len(shop.Recipes()))
}

func checkMutant(t *testing.T, shop *lint.Shop, recipe *schema.Block, m mutation, planted mutant) {
	t.Helper()
	text, err := schema.Apply(recipe.File.Text.String(), planted.edits)
	require.NoError(t, err)
	report := lint.Run(shop.With(schema.Read(recipe.File.Name, []byte(text))), rules.All(), today)
	require.Empty(t, report.Faults)
	var said []string
	for _, f := range report.Findings {
		flagged := f.At.File.Text.Slice(f.At.Span)
		if f.Rule.Name == m.rule && flagged == planted.flag {
			return
		}
		said = append(said, fmt.Sprintf("%s on %s: %s", f.Rule.Name, flagged, f.Message))
	}
	assert.Failf(t, "survived", "%s, %s: wanted %s on %s; said was:\n%s", recipe.Label, m.kind, m.rule, planted.flag, strings.Join(said, "\n"))
}
