package sheet_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/lint"
	"wickrule/rules/batch"
	"wickrule/schema/quantity"
)

// What the sheet offers for the label of the EU. Regulation (EC) No 1272/2008,
// Annex I, Table 3.4.5: a sensitizer of 1 % and more makes the candle Skin Sens.
// 1 H317; Table 3.4.6 and Annex II, 2.8: from 0.1 % on it is named, under EUH208
// where nothing is classified. 6 % of wax is 6/106 of the total, and a fifth of
// the oil is d-limonene: 1.13 %. At 5 % of wax it is 0.95 %, and citral, 2 % of
// the oil, falls to 0.095 %.
func TestHazardsForTheEU(t *testing.T) {
	s := of(t, "skerry-eu", "")
	require.Len(t, s.Hazards, 1)
	h := s.Hazards[0]
	assert.Equal(t, "EU", h.Market)
	assert.Contains(t, h.Text, "[GHS07] Warning. H317")
	assert.Contains(t, h.Text, "Contains d-limonene, linalool, citral")
	require.NotEmpty(t, h.Steps)
	assert.Contains(t, h.Steps[0], "makes 1.13 % of the candle")
	assert.Contains(t, h.Decide, "safety data sheets")
	assert.Empty(t, h.Least)

	s = of(t, "skerry-eu", "", lint.Change{From: `"6 % of wax"`, To: `"5 % of wax"`})
	require.Len(t, s.Hazards, 1)
	assert.Contains(t, s.Hazards[0].Text, "EUH208")
	assert.Contains(t, s.Hazards[0].Text, "d-limonene")
	assert.NotContains(t, s.Hazards[0].Text, "citral")
	assert.NotContains(t, s.Hazards[0].Text, "H317")

	assert.Empty(t, of(t, "skerry-eu", "", lint.Change{From: `["EU"]`, To: `["US"]`}).Hazards)
}

// A house blend says what it is mixed from: four fifths and a fifth of its
// weight, on the scale's step of 1 g.
func TestAHouseBlendInGrams(t *testing.T) {
	note := func(weight string) string {
		s := of(t, "tide-pillar", "", lint.Change{From: `wax "northlight-pillar"`, To: `wax "quay-votive"`}, lint.Change{From: `"1.24 kg"`, To: `"` + weight + `"`})
		return s.Pots[0].Weigh[0].Note
	}
	for weight, parts := range map[string][2]string{"1 kg": {"800 g", "200 g"}, "1001 g": {"801 g", "200 g"}, "1003 g": {"802 g", "201 g"}} {
		got := note(weight)
		assert.True(t, strings.HasPrefix(got, "a house blend of "+parts[0]+" Northlight"), got)
		assert.Contains(t, got, " and "+parts[1]+" Frostfield")
	}
	assert.Empty(t, of(t, "tide-pillar", "").Pots[0].Weigh[0].Note, "bought as it is")
}

// Layers are in the pot one after the other: of 30 oz and 15 oz two thirds at
// once. Melted without a pour between, or without saying which, it is all.
func TestLayersInThePot(t *testing.T) {
	two := lint.Change{From: `wax "pierhead-container" {
    weight = "2 lb 13 oz"
  }`, To: `wax "pierhead-container" {
    weight = "30 oz"
  }
  wax "headland-rapeseed" {
    weight = "15 oz"
  }`}
	melts := func(between, first, last string) lint.Change {
		return lint.Change{From: `  step "melt" {
    to   = "185 °F"`, To: `  step "melt" {
    to   = "170 °F"
` + first + `  }
` + between + `  step "melt" {
    to   = "185 °F"
` + last}
	}
	const pour, rapeseed, pierhead = "  step \"pour\" {\n    at = \"140 °F\"\n  }\n", "    wax = [\"headland-rapeseed\"]\n", "    wax = [\"pierhead-container\"]\n"
	for name, c := range map[string]struct {
		change lint.Change
		want   quantity.Rat
	}{
		"layers":         {melts(pour, rapeseed, pierhead), quantity.NewRat(2, 3)},
		"no pour":        {melts("", rapeseed, pierhead), quantity.Int(1)},
		"one says which": {melts(pour, rapeseed, ""), quantity.Int(1)},
	} {
		shop, _, err := lint.Example{Recipe: "harbor-jar", Changes: []lint.Change{two, c.change}}.Over(demo(t))
		require.NoError(t, err, name)
		b := batch.Of.In(lint.NewView(shop, shop.Find("recipe", "harbor-jar"), today))
		assert.True(t, b.AtOnce().Equal(c.want), "%s: %s", name, b.AtOnce().Decimal(4))
		full := of(t, "harbor-jar", "", two, c.change).Pots[0].Full
		assert.Equal(t, name == "layers", strings.HasPrefix(full, "one layer after the other, at most "), "%s: %s", name, full)
	}
}
