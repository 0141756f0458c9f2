package burns

import (
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/rules/formula"
	"wickrule/schema"
)

// wanted is how many candles must have burned well before one is sold.
const wanted = 3

// tested is one kind of candle the recipe makes and the burns that speak of
// it: a jar tested says nothing of a tin.
type tested struct {
	subject string
	at      lint.Place
	vessel  int // index into batch.Batch.Vessels
	current []*schema.Block
	older   []*schema.Block // of another formulation, or without saying of which
}

// passed are the candles of this formulation whose every burn passed, and
// failed those of which one did not.
func (t *tested) passed() (passed, failed []string) { return batch.Burned(t.current) }

// outdated are the candles that passed and are of another formulation.
func (t *tested) outdated() []string {
	passed, _ := batch.Burned(t.older)
	return passed
}

// stale says whether enough candles passed and too few of them as the recipe
// is now: then the change is what is to be said, and not that none was burned.
func (t *tested) stale() bool {
	passed, _ := t.passed()
	return len(passed) < wanted && len(passed)+len(t.outdated()) >= wanted
}

// kinds lists the kinds of candle a recipe makes that burn, with their burns.
// None where the formulation cannot be read, which other rules say.
func kinds(p *lint.Pass) []tested {
	b := batch.Of.In(p.View)
	burns := p.TestBurns()
	if len(b.Vessels) < 2 {
		if b.Makes == "melt" {
			return nil
		}
		return readable(p, []tested{sorted(p, b, burns, tested{subject: p.Recipe.Title(), at: lint.AtHeader(p.Recipe)})})
	}
	var list []tested
	var seen []string
	for i := range b.Vessels {
		v := &b.Vessels[i]
		if v.Stock == nil || b.MadeIn(v) == "melt" || slices.Contains(seen, same(v)) {
			continue
		}
		seen = append(seen, same(v))
		list = append(list, sorted(p, b, burns, tested{subject: p.Recipe.Title() + " in " + v.Stock.Title(), at: lint.AtHeader(v.Block), vessel: i}))
	}
	return readable(p, list)
}

// same is what two vessel blocks have in common that make the same candle.
func same(v *batch.Vessel) string {
	return v.Kind + " " + v.Block.Label + " " + v.WickSaid.Text() + v.Block.Get("wicks").Written() + v.Block.Get("fill").Written()
}

func readable(p *lint.Pass, list []tested) []tested {
	if len(p.TestBurns()) > 0 && formula.Of.In(p.View).State == schema.Broken {
		return nil
	}
	return list
}

// sorted sorts the burns that speak of one kind of candle.
func sorted(p *lint.Pass, b *batch.Batch, burns []*schema.Block, t tested) tested {
	for _, burn := range burns {
		switch {
		case !formula.Speaks(burn, t.vessel, b):
		case formula.Of.In(p.View).Current(burn, t.vessel):
			t.current = append(t.current, burn)
		default:
			t.older = append(t.older, burn)
		}
	}
	return t
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

// latest is the burn with the latest date, the last written where several have it.
func latest(burns []*schema.Block) *schema.Block {
	var last *schema.Block
	for _, burn := range burns {
		if last == nil || burn.Label >= last.Label {
			last = burn
		}
	}
	return last
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
