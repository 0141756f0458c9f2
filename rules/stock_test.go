package rules_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules"
	"wickrule/schema"
)

// Nothing about the example shop is left unchecked: every stock item in use
// states what the rules ask of it.
func TestTheExampleShopStatesWhatRulesAskFor(t *testing.T) {
	for _, u := range lint.Run(exampleShop(t), rules.All(), today).Unchecked {
		t.Errorf("%s", u.Message)
	}
}

// needed are attributes of stock that a rule rests on: without one of them a
// shop that uses the item is told so, by a finding or as something that could
// not be checked. The items listed can do without, for the reason beside them.
var needed = map[string][]string{
	"wax.family":                 {},
	"wax.melt_to":                {},
	"wax.never_above":            {},
	"wax.flash_point":            {},
	"wax.fragrance_limit":        {"ropewalk-dipping", "clover-beeswax"},                                                                            // unscented
	"wax.suits":                  {"sandbar-palm", "lagoon-coconut", "headland-rapeseed", "clover-beeswax", "frostfield-stearin", "clearwater-gel"}, // what the family is always for stands in
	"fragrance.flash_point":      {},
	"fragrance.most_in_candles":  {},
	"fragrance.water_based":      {},
	"dye.limit":                  {},
	"dye.water_based":            {},
	"additive.usual":             {},
	"additive.water_based":       {},
	"mold.shape":                 {}, // a size that is not what was burned
	"mold.diameter":              {},
	"mold.height":                {},
	"mold.material":              {"pillar-2x5", "beacon-cone", "skep"},                                  // softens_at is stated
	"mold.wick_hole":             {"pillar-3x6", "pillar-3x4", "pillar-2x5", "block-3x5", "beacon-cone"}, // sealed all the same
	"container.kind":             {},
	"container.diameter":         {"clamshell-6"}, // no wick
	"container.height":           {"clamshell-6"}, // no flame, and no headspace is usual
	"container.holds":            {},
	"container.material":         {"clamshell-6"}, // no flame, and softens_at is stated
	"container.made_for_candles": {"clamshell-6"}, // no flame
	"wick.burns":                 {},
	"wick.families":              {},
	"wick.core":                  {"flat-braid-24", "flat-braid-15", "square-braid-2", "square-braid-5", "square-braid-4", "square-braid-6-tab", "wooden-half-inch"}, // no core by their construction
	"wick.tab":                   {"flat-braid-24", "flat-braid-15", "square-braid-2", "square-braid-5", "square-braid-4", "cored-zinc-34"},                          // in molds and tapers
	"wick.lead_at_most":          {},
	"seal.holds_to":              {}, // the glue is poured cooler than any gives way, but a rule of the shop asks
	"taper.diameter":             {},
	"pot.holds":                  {},
	"label.cautions":             {"us-melt"}, // no flame
	"label.markets":              {},
	"label.pictograms":           {},
	"label.hazards":              {},
	"label.names":                {},
	"label.precautions":          {},
	"label.ufi":                  {},
	"label.languages":            {"us-base", "us-pillar", "us-slim", "us-block", "us-small", "us-jar", "us-tin", "us-bowl", "us-votive", "us-tealight", "us-taper", "us-melt"}, // the US does not ask
}

// Any one attribute may be left out of any stock item of the example shop: no
// rule stops, and where the attribute is needed the shop is not silent.
func TestEveryAttributeOfStockLeftOut(t *testing.T) {
	shop := exampleShop(t)
	all := rules.All()
	before := lint.Run(shop, all, today)
	require.Empty(t, before.Findings)
	require.Empty(t, before.Unchecked)
	used := usedStock(shop)
	seen := map[string]bool{}
	for _, f := range shop.Files() {
		for _, b := range f.Blocks {
			if !b.Spec.Stock {
				continue
			}
			for a := range b.Attrs() {
				name := b.Name() + "." + a.Spec.Name
				text, err := schema.Apply(f.Text.String(), []schema.Edit{schema.RemoveAttr(b.Get(a.Spec.Name))})
				require.NoError(t, err)
				laid, _ := with(shop, f.Name, text)
				report := lint.Run(laid, all, today)
				sane(t, report, b.Label+" without "+a.Spec.Name)
				without, asked := needed[name]
				seen[name] = true
				if silent := len(report.Findings) == 0 && len(report.Unchecked) == 0; asked && used[b.Label] {
					assert.Equal(t, slices.Contains(without, b.Label), silent, "%s %s without %s", b.Name(), b.Label, a.Spec.Name)
				}
			}
		}
	}
	for name := range needed {
		assert.True(t, seen[name], "no stock item of the example shop states %s", name)
	}
}

// usedStock are the keys that recipes of the shop name.
func usedStock(shop *lint.Shop) map[string]bool {
	used := map[string]bool{}
	for _, f := range shop.Files() {
		for ref := range lint.References(f) {
			used[ref.Key] = true
		}
	}
	return used
}
