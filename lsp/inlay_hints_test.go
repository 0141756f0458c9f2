package lsp

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"
)

// hinted is the hints of a document as its lines show them.
func hinted(t *testing.T, h *here, r protocol.Range) []string {
	t.Helper()
	hints, err := h.inlayHints(t.Context(), &inlayHintParams{Range: r})
	require.NoError(t, err)
	var lines []string
	for _, hint := range hints {
		at := h.offset(hint.Position)
		before := h.text.Slice(h.text.LineSpan(int(hint.Position.Line) + 1))[:at-h.text.LineSpan(int(hint.Position.Line)+1).Start]
		lines = append(lines, strings.TrimSpace(before)+" <"+hint.Label+">")
	}
	return lines
}

var all = protocol.Range{End: protocol.Position{Line: 9999}}

// 5 % of wax is 1/21 of the total. 186 °F is 85.6 °C, 182 °F is 83.3 °C (NIST SP
// 811, B.8).
func TestHintsOfARecipe(t *testing.T) {
	h := looking(t, tideFile, able, nil)
	assert.Equal(t, []string{
		`load = "5 % of wax" <4.76 % of total · 2.19 oz (62 g) · 1 % of wax under the limit>`,
		`weight = "0.6 g" <0.048 % of wax · 0.046 % of total>`,
		`count = 2 <fills 2 of 2>`,
		`to = "110 °F" <43.3 °C>`,
		`to   = "186 °F" <85.6 °C>`,
		`at   = "183 °F" <83.9 °C>`,
		`at    = "176 °F" <80 °C>`,
		`step "second pour" <takes about 7.81 oz (221 g)>`,
		`at    = "182 °F" <83.3 °C>`,
	}, hinted(t, h, all))
	assert.Equal(t, []string{`count = 2 <fills 2 of 2>`}, hinted(t, h, protocol.Range{Start: protocol.Position{Line: 18}, End: protocol.Position{Line: 19}}), "only where asked")
	no := false
	h.wants.Hints = &no
	assert.Empty(t, hinted(t, h, all))
}

func TestHintsSayOnlyWhatIsKnown(t *testing.T) {
	hints := func(body string) []string {
		return hinted(t, looking(t, "recipes/x.candle.hcl", able, map[string]string{"recipes/x.candle.hcl": body}), all)
	}
	// An ounce to the pound is 1/16 of the wax and 1/17 of the total: 6.25 % and 5.88 %.
	assert.Equal(t, []string{`load = "1 oz per lb" <6.25 % of wax · 5.88 % of total · 1 oz (28.3 g)>`},
		hints("recipe \"x\" {\n  wax \"millrace-soy\" {\n    weight = \"1 lb\"\n  }\n  fragrance \"harbor-vanilla\" {\n    load = \"1 oz per lb\"\n  }\n}\n"))
	// 5.5 of 6 % leaves less than a fifth, 4.8 leaves just a fifth.
	near := "recipe \"x\" {\n  wax \"northlight-pillar\" {\n    weight = \"1 kg\"\n  }\n  fragrance \"tide-and-thyme\" {\n    weight = \"55 g\"\n  }\n}\n"
	assert.Equal(t, []string{`weight = "55 g" <5.5 % of wax · 5.21 % of total · 0.5 % of wax under the limit>`}, hints(near))
	assert.Equal(t, []string{`weight = "48 g" <4.8 % of wax · 4.58 % of total>`}, hints(strings.Replace(near, "55 g", "48 g", 1)))
	assert.Equal(t, []string{`weight = "60 g" <6 % of wax · 5.66 % of total · at the limit>`}, hints(strings.Replace(near, "55 g", "60 g", 1)))
	assert.Equal(t, []string{`weight = "61 g" <6.1 % of wax · 5.75 % of total>`}, hints(strings.Replace(near, "55 g", "61 g", 1)), "what is over is found and no hint")
	assert.Empty(t, hints("recipe \"x\" {\n  fragrance \"nobody-knows\" {\n    weight = \"55 g\"\n  }\n  mold \"nobody-knows\" {\n    count = 2\n  }\n}\n"))
	assert.Empty(t, hints("recipe \"x\" {\n  step \"pour\" {\n    at = \"176\"\n  }\n}\n"))
	short := "recipe \"x\" {\n  wax \"northlight-pillar\" {\n    weight = \"1 kg\"\n  }\n  mold \"pillar-3x6\" {\n    count = 2\n  }\n}\n"
	assert.Equal(t, []string{"count = 2 <fills 1 of 2>"}, hints(short))
	assert.Equal(t, []string{"count = 1 <fills 1 of 1 (enough for 3)>"}, hints(strings.Replace(strings.Replace(short, "1 kg", "2 kg", 1), "count = 2", "count = 1", 1)))
}
