package lsp

import (
	"context"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"wickrule/schema"
)

// A client that asks about the whole text because of findings it names may
// make everything it is answered at once, where it does not know which action
// is to be preferred: it is answered one repair a finding.
func TestActionsOfNamedFindings(t *testing.T) {
	const unaware = `{"textDocument": {"codeAction": {"codeActionLiteralSupport": {}}}}`
	const aware = `{"textDocument": {"codeAction": {"codeActionLiteralSupport": {}, "isPreferredSupport": true}}}`
	name := "recipes/tide-pillar.candle.hcl"
	text := strings.Replace(exampleShop().File(name).Text.String(), "5 % of wax", "7 % of wax", 1)
	asked := func(capabilities string, span schema.Span, codes ...string) []string {
		h := lookingAt(t, capabilities, name, text)
		p := &codeActionParams{Range: h.rangeOf(span)}
		for _, d := range h.diagnostics(h.check()) {
			for _, code := range codes {
				if d.Code == code {
					data, err := json.Marshal(d)
					require.NoError(t, err)
					var back sentBack
					require.NoError(t, json.Unmarshal(data, &back))
					p.Context.Diagnostics = append(p.Context.Diagnostics, back)
				}
			}
		}
		require.Len(t, p.Context.Diagnostics, len(codes))
		list, err := h.codeActions(context.Background(), p)
		require.NoError(t, err)
		var actions []codeAction
		for _, a := range list {
			actions = append(actions, *a.(*codeAction))
		}
		return titles(actions)
	}
	all := schema.Span{End: int32(len(text))}
	at := int32(strings.Index(text, "7 % of wax"))
	lower := "lower the load to 6 % of wax"
	assert.Equal(t, []string{lower}, asked(unaware, all, "fragrance-over-limit"))
	assert.Equal(t, []string{lower}, asked(unaware, all, "fragrance-over-limit", "test-burn-stale"))
	assert.Empty(t, asked(unaware, all, "test-burn-stale"), "what it takes is a choice of the maker's")
	for about, list := range map[string][]string{
		"nothing is named":                 asked(unaware, all),
		"at a place":                       asked(unaware, schema.Span{Start: at, End: at}, "fragrance-over-limit"),
		"one that knows what is preferred": asked(aware, all, "fragrance-over-limit"),
	} {
		assert.Contains(t, list, lower, about)
		assert.Greater(t, len(list), 1, about)
	}
}
