package lsp

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/schema"
)

const tideFile = "recipes/tide-pillar.candle.hcl"

// hovered is the text of a hover where a piece of text stands and so many
// bytes on, and the characters it is about.
func hovered(t *testing.T, h *here, piece string, further int) (says, on string) {
	t.Helper()
	at := strings.Index(h.text.String(), piece)
	require.GreaterOrEqual(t, at, 0, piece)
	hover := h.hover(int32(at + further))
	if hover == nil {
		return "", ""
	}
	return hover.Contents.(protocol.MarkupContent).Value, h.text.Slice(h.span(*hover.Range))
}

// paragraph is one paragraph of a hover, counted from nothing.
func paragraph(t *testing.T, says string, n int) string {
	t.Helper()
	all := strings.Split(says, "\n\n")
	require.Greater(t, len(all), n, says)
	return all[n]
}

// 5 % of wax is 5/105 of the total: 4.76 %. Of 1240 g of wax it is 62 g, and 6 %
// would be 74.4 g. An ounce is 28.349523125 g exactly (NIST Handbook 44,
// Appendix C), so 62 g are 2.187 oz and 12.4 g are 0.437 oz.
func TestHoverOfALoad(t *testing.T) {
	h := looking(t, tideFile, able, nil)
	says, on := hovered(t, h, `"5 % of wax"`, 3)
	assert.Equal(t, `"5 % of wax"`, on)
	assert.Equal(t, "5 % of wax (4.76 % of total), which is 2.19 oz (62 g) in this batch. Northlight paraffin, pillar grade holds 6 % of wax; this is 1 % of wax, 0.437 oz (12.4 g), under it. "+
		"Its certificate allows 25 % of total.", paragraph(t, says, 0))
	assert.Contains(t, paragraph(t, says, 1), "**load** ")
}

// 176 °F is 80 °C, and 6 °F are 10/3 K (NIST SP 811, B.8).
func TestHoverOfAPour(t *testing.T) {
	h := looking(t, tideFile, able, nil)
	says, on := hovered(t, h, `"176 °F"`, 8) // behind the closing quote, at the end of the line
	assert.Equal(t, `"176 °F"`, on)
	assert.Equal(t, "**176 °F (80 °C)**", paragraph(t, says, 0))
	assert.Equal(t, "Northlight paraffin, pillar grade is poured at 168 to 182 °F (75.6 to 83.3 °C); this is 6 °F (3.3 °C) under the top. "+
		"Northlight paraffin, pillar grade is never made hotter than 240 °F (115.6 °C); 64 °F (35.6 °C) in hand. "+
		"Silicone rubber plug holds to 350 °F (176.7 °C); 174 °F (96.7 °C) in hand.", paragraph(t, says, 1))
}

func TestHoverOfThingsInStock(t *testing.T) {
	h := looking(t, tideFile, able, nil)
	says, on := hovered(t, h, `"northlight-pillar"`, 4)
	assert.Equal(t, `"northlight-pillar"`, on)
	assert.Equal(t, "**Northlight paraffin, pillar grade**, a paraffin wax, sold for pillar and votive.", paragraph(t, says, 0))
	assert.Contains(t, says, "poured at 168 to 182 °F (75.6 to 83.3 °C)")
	assert.Contains(t, says, "Source: supplier's sheet, 2026-03.")
	assert.Contains(t, says, "Used in four recipes: Kitchen shelf light; Tide and thyme pillar; Tideline pillar, two layers; and one other.")
	assert.Contains(t, says, "Hot wax burns the skin and can catch fire")

	// A cylinder of 3 by 6 in is 9π/4 × 6 in³ = 695.0 mL, and at 0.91 g/mL 632.4 g.
	says, _ = hovered(t, h, `"pillar-3x6"`, 1)
	assert.Contains(t, says, "Here: 2 pillars of 1 lb 6.3 oz (632 g) each, 2 lb 12.6 oz (1.265 kg) together; 23.5 fl oz (695 mL) of wax in one. The batch fills 2 of 2")

	says, on = hovered(t, h, `"rubber-plug"`, 0)
	assert.Equal(t, `"rubber-plug"`, on)
	assert.Contains(t, says, "Here the hottest pour is at 182 °F (83.3 °C); 168 °F (93.3 °C) in hand.")

	says, _ = hovered(t, h, `"us-base"`, 2)
	assert.Contains(t, says, "Says: burn within sight, keep away from things that catch fire, keep away from children.")
}

func TestHoverOfAStep(t *testing.T) {
	h := looking(t, tideFile, able, nil)
	says, on := hovered(t, h, `"second pour"`, 3)
	assert.Equal(t, `"second pour"`, on)
	assert.Contains(t, says, "A little hotter than the first pour, it melts into it.")
	assert.Contains(t, says, "By the times written, 3 h 15 min after the first pour.")
	assert.Contains(t, says, "Hot wax burns the skin")
	says, _ = hovered(t, h, `"attach label"`, 3)
	assert.Contains(t, says, "For the US (ASTM F2058) the labels must say: burn within sight; keep away from things that catch fire; keep away from children.")
}

func TestHoverOfWords(t *testing.T) {
	h := looking(t, tideFile, able, nil)
	says, on := hovered(t, h, `made_for = "sale"`, 2)
	assert.Equal(t, "made_for", on)
	assert.Contains(t, says, "For example `made_for = \"sale\"`.")
	says, on = hovered(t, h, `made_for = "sale"`, 13)
	assert.Equal(t, `"sale"`, on)
	assert.Equal(t, "**sale** A stranger will light it: judged most strictly.", paragraph(t, says, 0))
	says, on = hovered(t, h, "mold \"pillar", 1)
	assert.Equal(t, "mold", on)
	assert.Contains(t, says, "**mold** A mold the candles are poured into")

	labels := looking(t, "stock/labels.candle.hcl", able, nil)
	says, on = hovered(t, labels, `"burn within sight"`, 3)
	assert.Equal(t, `"burn within sight"`, on)
	assert.Equal(t, "**burn within sight** Keep the burning candle where you can see it.", paragraph(t, says, 0))
	assert.Equal(t, "Wanted on every candle in the US (ASTM F2058).", paragraph(t, says, 1))
}

func TestHoverOfFindingsAndRules(t *testing.T) {
	text := strings.Replace(demoText(t, tideFile), "5 % of wax", "7 % of wax", 1)
	text = strings.TrimSuffix(strings.TrimRight(text, "\n"), "}") + "  concession \"batch-left-over\" {\n    reason = \"*all* goes\"\n  }\n}\n"
	h := looking(t, tideFile, able, map[string]string{tideFile: text})
	says, on := hovered(t, h, `"7 % of wax"`, 1)
	assert.Equal(t, `"7 % of wax"`, on)
	assert.True(t, strings.HasPrefix(paragraph(t, says, 0), "**must** 7 % of wax is over what Northlight paraffin, pillar grade holds (6 % of wax) by "), says)
	assert.Contains(t, says, "; this is over it by 1 % of wax, 0.437 oz (12.4 g).")
	assert.Contains(t, says, "**fragrance-over-limit** ")
	assert.Contains(t, says, "To put it right: Lower the load to the limit or below.")
	assert.Contains(t, says, "can be neither conceded nor turned down")

	says, on = hovered(t, h, `"batch-left-over"`, 3)
	assert.Equal(t, `"batch-left-over"`, on)
	assert.Contains(t, says, "**batch-left-over** ")
	assert.Contains(t, says, "Source: ")
}

// A client that shows no Markdown gets none of its marks.
func TestHoverInPlainText(t *testing.T) {
	h := looking(t, tideFile, `{}`, nil)
	hover := h.hover(int32(strings.Index(h.text.String(), `"176`)))
	content := hover.Contents.(protocol.MarkupContent)
	assert.Equal(t, protocol.MarkupKindPlainText, content.Kind)
	assert.NotContains(t, content.Value, "*")
	h = looking(t, tideFile, able, map[string]string{tideFile: "recipe \"a\" {\n  title = \"*Salt* <b>& holds_to\"\n}\n"})
	says, _ := hovered(t, h, `"a"`, 1)
	assert.Contains(t, says, `**\*Salt\* \<b>\& holds_to**`)
}

func TestHoverAcrossThePipe(t *testing.T) {
	disk := demoShop(t)
	e := connect(t, disk, "shop", able)
	uri := e.open(tide, "\U0001F56F\ufe0f # ° e\u0301\n"+string(disk[tide].Data))
	e.replace(uri, "\U0001F56F\ufe0f # ° e\u0301\n", "# \U0001F56F ° e\u0301\n")
	e.replace(uri, `at    = "176 °F"`, `at    = "80 °C" # `+"\U0001F56F")
	var hover protocol.Hover
	p := e.about(uri, `"80 °C"`, 0)
	e.call("textDocument/hover", p, &hover)
	assert.Equal(t, `"80 °C"`, e.textAt(uri, *hover.Range))
	var none *protocol.Hover
	end := e.position(uri, "° e", 0)
	end.Character = 5000
	e.call("textDocument/hover", map[string]any{"textDocument": map[string]any{"uri": uri}, "position": end}, &none)
	assert.Nil(t, none)
}

// sweep asks everything of this file at every byte of a text.
func sweep(t *testing.T, h *here, step int) {
	whole := schema.Span{End: int32(h.text.Len())}
	inside := func(r protocol.Range) {
		span := h.span(r)
		require.True(t, whole.Contains(span))
		require.Equal(t, r, h.rangeOf(span))
	}
	for at := 0; at <= h.text.Len(); at += step {
		if hover := h.hover(int32(at)); hover != nil {
			inside(*hover.Range)
			require.True(t, h.span(*hover.Range).Touches(int32(at)), "at %d", at)
			require.NotEmpty(t, hover.Contents.(protocol.MarkupContent).Value)
			require.NotContains(t, hover.Contents.(protocol.MarkupContent).Value, "\n\n\n")
		}
	}
	lenses, err := h.codeLenses(t.Context(), nil)
	require.NoError(t, err)
	require.NotNil(t, lenses)
	for _, l := range lenses {
		inside(l.Range)
		require.NotEmpty(t, l.Command.Title)
	}
	hints, err := h.inlayHints(t.Context(), &inlayHintParams{Range: h.rangeOf(whole)})
	require.NoError(t, err)
	require.NotNil(t, hints)
	for _, hint := range hints {
		inside(protocol.Range{Start: hint.Position, End: hint.Position})
		require.NotEmpty(t, hint.Label)
	}
}

func TestHoverAtEveryByteOfTheDemoShop(t *testing.T) {
	shop, errs := lint.Load(examples.Shop(), "shop", nil)
	require.Empty(t, errs)
	step := 2
	if testing.Short() {
		step = 23
	}
	for _, f := range shop.Files() {
		sweep(t, looking(t, f.Name, able, nil), step)
	}
}

// Every beginning of a recipe is a text that somebody is typing.
func TestHoverInHalfTypedText(t *testing.T) {
	text := demoText(t, tideFile)
	text, _, _ = strings.Cut(text, "  test_burn")
	h := looking(t, tideFile, able, nil)
	step := 5
	if testing.Short() {
		step = 97
	}
	for end := 0; end <= len(text); end += step {
		shop := h.shop.With(schema.Read(tideFile, []byte(text[:end])))
		now, ok := h.in(shop, tideFile)
		require.True(t, ok)
		sweep(t, now, max(1, end/20))
	}
}

// 5.66 % of total times 20 % is 1.13 % (Regulation (EC) No 1272/2008, Annex I,
// Table 3.4.5: 1B from 1 %), times 8 % 0.453 % (Table 3.4.6: named from 0.1 %).
func TestHoverOfHazards(t *testing.T) {
	h := looking(t, "recipes/skerry-eu.candle.hcl", able, nil)
	says, _ := hovered(t, h, `"kelp-and-lime"`, 3)
	assert.Contains(t, says, "**Hazards, for the EU** \\[GHS07\\] Warning. H317 May cause an allergic skin reaction. Contains d-limonene, linalool, citral.")
	assert.Contains(t, says, "d-limonene: 20 % of Kelp and lime, which is 5.66 % of total, makes 1.13 % of the candle, at or over the limit of 1 % for Skin Sens. 1 H317 (Annex I, Table 3.4.5).")
	assert.Contains(t, says, "A unique formula identifier (UFI) and a notice to the poison centers are due")
	assert.Contains(t, says, "The supplier's safety data sheets and the authority of the market decide.")

	says, _ = hovered(t, h, `recipe "skerry-eu"`, 9)
	assert.Contains(t, says, "**Hazards, for the EU** ")
	assert.Contains(t, says, "linalool: 8 % of Kelp and lime, which is 5.66 % of total, makes 0.453 % of the candle")

	says, _ = hovered(t, h, `"eu-kelp-jar"`, 3)
	assert.Contains(t, says, "**Here, for the EU** ")
	assert.NotContains(t, says, "By itself it lacks")
	assert.Contains(t, says, "Table 3.4.5")

	says, _ = hovered(t, h, `"headland-rapeseed"`, 3)
	assert.NotContains(t, says, "Hazards", "wax counts as not classified")
	us := looking(t, tideFile, able, nil)
	says, _ = hovered(t, us, `"tide-and-thyme"`, 3)
	assert.NotContains(t, says, "Hazards, for", "the US classifies no candles for the shop counter")
}

// What was changed since a burn is told attribute by attribute, where a burn
// keeps what was burned.
func TestHoverOfAnOlderFormula(t *testing.T) {
	h := looking(t, tideFile, able, map[string]string{tideFile: strings.Replace(demoText(t, tideFile), `load = "5 % of wax"`, `load = "5.5 % of wax"`, 1)})
	says, _ := hovered(t, h, `"4g0w0vn-3e195k"`, 3)
	assert.Contains(t, says, "Since this burn fragrance tide-and-thyme was changed (5 % of wax then, 5.5 % of wax now): it says nothing of the recipe as it stands.")
}
