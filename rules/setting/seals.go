package setting

import (
	"cmp"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/repair"
	"wickrule/schema"
	"wickrule/schema/quantity"
)

// mostSeals is how many seals are offered at most.
const mostSeals = 4

// hasHole says whether a mold has an open wick hole. Known is false where its
// stock does not say, or cannot be read: then absent tells the two apart.
func hasHole(v *batch.Vessel) (yes, known, absent bool) {
	if v.Kind != "mold" || v.Stock == nil {
		return false, true, false
	}
	said := v.Stock.Get("wick_hole")
	return said.Yes(), said.Known(), said.Absent()
}

// sealing is how the wick hole of one mold is closed.
type sealing struct {
	pour  *batch.Step // the first pour into it; nil: none
	early *batch.Step // the last sealing before that pour with something that seals; nil: none
	loose *batch.Step // the last sealing before that pour with nothing but what does not seal; nil: none
	late  *batch.Step // the first sealing after it; nil: none
}

func sealingOf(p *lint.Pass, b *batch.Batch, vessel int) sealing {
	s := sealing{pour: firstPour(b, vessel)}
	for i := range b.Steps {
		step := &b.Steps[i]
		if step.Kind != sealStep || !step.Is(vessel) {
			continue
		}
		switch {
		case s.pour != nil && s.pour.Index < step.Index:
			if s.late == nil {
				s.late = step
			}
		case sealsNothing(p, step):
			s.loose = step
		default:
			s.early = step
		}
	}
	return s
}

const (
	sealStep = "seal wick hole"
	wickStep = "set wick"
)

// sealsNothing says whether a step seals with nothing but what is no seal.
func sealsNothing(p *lint.Pass, step *batch.Step) bool {
	items := step.Block.Get("with").Items()
	for _, item := range items {
		if seal, ok := p.Stock("seal", item.Text); !ok || !noSeal(seal) {
			return false
		}
	}
	return len(items) > 0
}

// noSeal says whether an item on the shelf for seals does not seal against hot
// wax: masking tape and the like, whose glue lets go below 60 to 70 °C (common
// practice), unless its maker states what it holds to.
func noSeal(seal *schema.Block) bool {
	return seal.Get("kind").Text() == "tape" && seal.Get("holds_to").Absent() && looksLikeMaskingTape(seal)
}

func looksLikeMaskingTape(seal *schema.Block) bool {
	name := strings.ToLower(seal.Title() + " " + seal.Label)
	for _, word := range [...]string{"masking", "painter", "sticky tape", "packing tape", "parcel tape"} {
		if strings.Contains(name, word) {
			return true
		}
	}
	return false
}

// hottest is the highest temperature of all pours into a vessel, in °C. Where
// no pour says one, it is the top of what the wax is poured at. False: neither
// is known.
func hottest(p *lint.Pass, b *batch.Batch, vessels []int) (quantity.Rat, bool) {
	var top quantity.Rat
	found := false
	for i := range b.Pours {
		s := b.Pours[i].Step
		if !s.Heat.IsAmount() || !slices.ContainsFunc(vessels, s.Is) || doubted(p, b, s) {
			continue
		}
		if high := s.Heat.Amount().High().Base(); !found || top.Less(high) {
			top, found = high, true
		}
	}
	if !found {
		if usual := b.PourAt(); usual.Known() {
			return quantity.Max(usual.Low(), usual.High()), true
		}
	}
	return top, found
}

// sealsThatHold lists the seals on the shelf whose stated figure is at or
// above a temperature in °C, the ones with most in hand first. What is sold
// for wick tabs is not offered for a wick hole, nor the other way round.
func sealsThatHold(p *lint.Pass, need quantity.Rat, stepKind string) []*schema.Block {
	var fit []*schema.Block
	for _, seal := range p.Shop().Shelf("seal") {
		holds := seal.Get("holds_to")
		if holds.IsAmount() && !holds.Amount().Base().Less(need) && soldFor(stepKind, seal) {
			fit = append(fit, seal)
		}
	}
	slices.SortFunc(fit, func(a, b *schema.Block) int {
		return cmp.Or(b.Get("holds_to").Amount().Cmp(a.Get("holds_to").Amount()), cmp.Compare(a.Label, b.Label))
	})
	return fit[:min(len(fit), mostSeals)]
}

func soldFor(stepKind string, seal *schema.Block) bool {
	kind := seal.Get("kind").Text()
	if stepKind == sealStep {
		switch kind {
		case "plug", "putty", "screw", "silicone":
			return true
		case "tape":
			return !looksLikeMaskingTape(seal)
		}
		return false
	}
	switch kind {
	case "sticker", "hot-melt glue", "silicone", "putty":
		return true
	}
	return false
}

// swapSeal offers seals that hold a temperature in °C in place of one item of
// a step's list. Where another of the list would not hold either, or the one
// offered is in it already, it takes the place of the whole list.
func swapSeal(p *lint.Pass, step *batch.Step, item schema.Item, need quantity.Rat) []schema.Fix {
	with := step.Block.Get("with")
	verb := "seal the wick hole with "
	if step.Kind == wickStep {
		verb = "hold the wick's tab with "
	}
	var fixes []schema.Fix
	for _, seal := range sealsThatHold(p, need, step.Kind) {
		if seal.Label == item.Text {
			continue
		}
		if othersHold(p, with, item, seal.Label, need) {
			fixes = append(fixes, schema.Fix{
				Title: verb + seal.Label + " in place of " + item.Text,
				Edits: []schema.Edit{{File: step.Block.File, Span: item.Span, Text: schema.Quote(seal.Label)}},
			})
			continue
		}
		fixes = append(fixes, repair.Rewrite(verb+seal.Label, with, schema.Quote(seal.Label)))
	}
	return fixes
}

// othersHold says whether a list has others than the item, all of which are
// known to hold and none of which is the one to be put in.
func othersHold(p *lint.Pass, with schema.Value, item schema.Item, put string, need quantity.Rat) bool {
	others := 0
	for _, other := range with.Items() {
		if other.Span == item.Span {
			continue
		}
		seal, ok := p.Stock("seal", other.Text)
		if !ok || other.Text == put {
			return false
		}
		if holds := seal.Get("holds_to"); holds.IsAmount() && holds.Amount().Base().Less(need) || noSeal(seal) {
			return false
		}
		others++
	}
	return others > 0
}
