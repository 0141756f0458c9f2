package burns

import (
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/formula"
	"wickrule/schema"
)

// kinds lists the kinds of candle a recipe makes that burn, with their burns.
// None where the formulation cannot be read, which other rules say.
func kinds(p *lint.Pass) []formula.Tested {
	if len(p.TestBurns()) > 0 && formula.Of.In(p.View).State == schema.Broken {
		return nil
	}
	return formula.Tests(p.View)
}

// at is what a finding about one kind of candle points at: the recipe, or the
// vessel where it has several.
func at(p *lint.Pass, t *formula.Tested) lint.Place {
	if b := batch.Of.In(p.View); len(b.Vessels) > 1 {
		return lint.AtHeader(b.Vessels[t.Vessel].Block)
	}
	return lint.AtHeader(p.Recipe)
}

// before is what the candles are burned before: a sale or a class.
func before(p *lint.Pass) string {
	if p.MadeFor == lint.Class {
		return "taught"
	}
	return "sold"
}

// list puts words together: "A, B and C".
func list(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// mayBeCurrent lists the burns of the formulation as it is now, and those that
// do not say of which they are: what went wrong in one of these may go wrong
// again.
func mayBeCurrent(p *lint.Pass) []*schema.Block {
	b := batch.Of.In(p.View)
	var burns []*schema.Block
	for _, burn := range p.TestBurns() {
		if !formula.IsCode(burn.Get("formula").Text()) {
			burns = append(burns, burn)
			continue
		}
		for i := range max(1, len(b.Vessels)) {
			if formula.Of.In(p.View).Counts(burn, i, b) {
				burns = append(burns, burn)
				break
			}
		}
	}
	return burns
}

// vesselOf is the vessel that was burned; nil where the recipe has several and
// the burn does not say.
func vesselOf(b *batch.Batch, burn *schema.Block) *batch.Vessel {
	said := burn.Get("vessel")
	if !said.Known() && len(b.Vessels) == 1 {
		return &b.Vessels[0]
	}
	for i := range b.Vessels {
		if said.Known() && b.Vessels[i].Block.Label == said.Text() {
			return &b.Vessels[i]
		}
	}
	return nil
}

// whichBurn is a burn in a sentence: "candle A, burned on 2026-09-07".
func whichBurn(burn *schema.Block) string {
	if name := burn.Get("candle").Text(); name != "" {
		return "candle " + name + ", burned on " + burn.Label
	}
	return "the burn of " + burn.Label
}
