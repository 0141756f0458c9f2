package lsp

import (
	"encoding/json"
	"io/fs"
	"testing"

	"github.com/stretchr/testify/require"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/schema"
)

// looking is a document of the demo shop to ask, with texts laid over its
// files, for a client of these capabilities.
func looking(t testing.TB, name string, capabilities string, over map[string]string) *here {
	t.Helper()
	shop, errs := lint.Load(examples.Shop(), "shop", nil)
	require.Empty(t, errs)
	var files []*schema.File
	for n, text := range over {
		files = append(files, schema.Read(n, []byte(text)))
	}
	shop = shop.With(files...)
	var can client
	require.NoError(t, json.Unmarshal([]byte(capabilities), &can))
	all := rules.All()
	s := &snapshot{enc: can.encoding(), can: &can, today: today, rules: func(*lint.Shop) []*lint.Rule { return all }, shops: map[string]*lint.Shop{"shop": shop}}
	h, ok := s.in(shop, name)
	require.True(t, ok, name)
	return h
}

func demoText(t testing.TB, name string) string {
	t.Helper()
	data, err := fs.ReadFile(examples.Shop(), name)
	require.NoError(t, err)
	return string(data)
}
