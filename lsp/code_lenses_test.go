package lsp

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func lensesOf(t *testing.T, h *here) []string {
	t.Helper()
	lenses, err := h.codeLenses(t.Context(), nil)
	require.NoError(t, err)
	var texts []string
	for _, l := range lenses {
		texts = append(texts, h.text.Slice(h.span(l.Range))+": "+l.Command.Title)
	}
	return texts
}

func TestLensesOfARecipe(t *testing.T) {
	h := looking(t, tideFile, able, nil)
	assert.Equal(t, []string{
		`recipe "tide-pillar": 2 pillars`,
		`recipe "tide-pillar": fragrance 5 % of wax (4.76 % of total)`,
		`recipe "tide-pillar": nothing found`,
		`recipe "tide-pillar": three candles burned and passed`,
	}, lensesOf(t, h))
	text := strings.Replace(demoText(t, tideFile), "5 % of wax", "7 % of wax", 1)
	assert.Equal(t, []string{
		`recipe "tide-pillar": 2 pillars`,
		`recipe "tide-pillar": fragrance 7 % of wax (6.54 % of total)`,
		`recipe "tide-pillar": two must`,
		`recipe "tide-pillar": three candles burned and passed, but of another formulation or without saying which`,
	}, lensesOf(t, looking(t, tideFile, able, map[string]string{tideFile: text})))
	half, _, _ := strings.Cut(demoText(t, tideFile), "  step")
	for _, lens := range lensesOf(t, looking(t, tideFile, able, map[string]string{tideFile: half})) {
		assert.NotContains(t, lens, "nothing found", "half typed")
	}
	no := false
	h.wants.Lenses = &no
	assert.Empty(t, lensesOf(t, h))
}

func TestLensesOfStock(t *testing.T) {
	texts := lensesOf(t, looking(t, "stock/waxes.candle.hcl", able, nil))
	assert.Contains(t, texts, `wax "northlight-pillar": used in 4 recipes`)
	assert.Contains(t, texts, `wax "quay-votive": used in 1 recipe`)
	assert.Len(t, texts, 12)
	melts := lensesOf(t, looking(t, "recipes/gorse-melt.candle.hcl", able, nil))
	for _, text := range melts {
		assert.NotContains(t, text, "burned", "a melt has no flame")
	}
}

// Nothing is run by a client that runs no commands.
func TestTheSheetIsOfferedToWhoCanRunIt(t *testing.T) {
	lenses, err := looking(t, tideFile, able, nil).codeLenses(t.Context(), nil)
	require.NoError(t, err)
	for _, lens := range lenses {
		assert.Empty(t, lens.Command.Command)
	}
	h := looking(t, tideFile, `{"workspace": {"executeCommand": {}}}`, nil)
	lenses, err = h.codeLenses(t.Context(), nil)
	require.NoError(t, err)
	assert.Equal(t, "wickrule.sheet", lenses[0].Command.Command)
	assert.Equal(t, []any{h.uri, "tide-pillar"}, lenses[0].Command.Arguments)
	assert.Empty(t, lenses[1].Command.Command)
}
