package lsp

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

// outline is a tree of symbols as indented lines.
func outline(symbols []protocol.DocumentSymbol, indent string) (lines []string) {
	for _, s := range symbols {
		line := indent + s.Name
		if s.Detail != nil {
			line += " | " + *s.Detail
		}
		lines = append(append(lines, line), outline(s.Children, indent+"  ")...)
	}
	return lines
}

func TestOutline(t *testing.T) {
	disk := demoShop(t)
	e := connect(t, disk, "shop", able)
	uri := e.open(tide, string(disk[tide].Data))
	var symbols []protocol.DocumentSymbol
	e.call("textDocument/documentSymbol", map[string]any{"textDocument": map[string]any{"uri": uri}}, &symbols)
	require.Equal(t, []string{
		"Tide and thyme pillar | recipe tide-pillar",
		"  wax northlight-pillar | 1.24 kg",
		"  fragrance tide-and-thyme | 5 % of wax",
		"  dye madder | 0.6 g",
		"  mold pillar-3x6",
		"  step seal wick hole",
		"  step warm mold | 110 °F",
		"  step melt | 186 °F",
		"  step add dye",
		"  step add fragrance | 183 °F",
		"  step pour | 176 °F",
	}, outline(symbols, "")[:11])
	require.Contains(t, outline(symbols, ""), "  test_burn 2026-09-28 | candle A, burn 22, pass")
	// LSP 3.17, DocumentSymbol: selectionRange "Must be contained by the range".
	require.Equal(t, `"tide-pillar"`, e.textAt(uri, symbols[0].SelectionRange))
	require.Equal(t, strings.TrimSpace(e.texts[uri]), e.textAt(uri, symbols[0].Range))
}

func TestOutlineForAClientWithoutTrees(t *testing.T) {
	disk := smallShop(rested)
	e := connect(t, disk, "shop", `{}`)
	uri := e.openAll(disk, "stock.candle.hcl")[0]
	var symbols []protocol.SymbolInformation
	e.call("textDocument/documentSymbol", map[string]any{"textDocument": map[string]any{"uri": uri}}, &symbols)
	var lines []string
	for _, s := range symbols {
		in := ""
		if s.ContainerName != nil {
			in = *s.ContainerName
		}
		lines = append(lines, s.Name+" | "+in)
	}
	require.Equal(t, []string{"north °🕯 north | ", "house | ", "part north | house", "part stearin | house"}, lines[:4])
}

func TestSearch(t *testing.T) {
	disk := demoShop(t)
	e := connect(t, disk, "shop", able)
	e.open(tide, string(disk[tide].Data))
	for query, want := range map[string][]string{
		"madder":     {"Madder red (madder)", "A strong load is stirred for at least two minutes (strong-loads-stirred-longer)"}, // its letters, in order
		"MadderRed":  {"Madder red (madder)"},
		"tide thyme": {"Tide and thyme (tide-and-thyme)", "Tide and thyme pillar (tide-pillar)"},
		"rbrplg":     {"Silicone rubber plug (rubber-plug)"},
		"zzz":        {},
	} {
		var found []protocol.SymbolInformation
		e.call("workspace/symbol", map[string]any{"query": query}, &found)
		require.NotNil(t, found)
		names := []string{}
		for _, f := range found {
			names = append(names, f.Name)
		}
		require.Equal(t, want, names, query)
	}
	var all []protocol.SymbolInformation
	// LSP 3.17, WorkspaceSymbolParams: "Clients may send an empty string here
	// to request all symbols."
	e.call("workspace/symbol", map[string]any{"query": ""}, &all)
	require.Greater(t, len(all), 80)
}

func TestSearchIsCappedAndCanBeGivenUp(t *testing.T) {
	var text strings.Builder
	for i := range 1000 {
		fmt.Fprintf(&text, "wick \"braid-%d\" {}\n", i)
	}
	now := standing(t, []*schema.File{schema.Read("wicks.candle.hcl", []byte(text.String()))}, `{}`, utf16)
	found, err := now.workspaceSymbols(t.Context(), &protocol.WorkspaceSymbolParams{Query: "b9"})
	require.NoError(t, err)
	require.Len(t, found, 271) // those of 0 to 999 with a 9 in them
	require.Equal(t, "braid-9", found[0].Name)
	found, err = now.workspaceSymbols(t.Context(), &protocol.WorkspaceSymbolParams{})
	require.NoError(t, err)
	require.Len(t, found, mostSymbols)
	given, cancel := context.WithCancel(t.Context())
	cancel()
	_, err = now.workspaceSymbols(given, &protocol.WorkspaceSymbolParams{})
	require.ErrorIs(t, err, context.Canceled)
}

// A name is never empty: LSP 3.17, DocumentSymbol: it "must not be an empty
// string or a string only consisting of white spaces".
func TestSymbolsHaveNames(t *testing.T) {
	disk := fstest.MapFS{"shop/odd.candle.hcl": &fstest.MapFile{Data: []byte("wax \" \" {\n  title = \"  \"\n}\nwax {}\nrecipe \"\" {\n  step \"pour\" {}\n}\n")}}
	e := connect(t, disk, "shop", able)
	uri := e.openAll(disk, "odd.candle.hcl")[0]
	var symbols []protocol.DocumentSymbol
	e.call("textDocument/documentSymbol", map[string]any{"textDocument": map[string]any{"uri": uri}}, &symbols)
	require.Equal(t, []string{"wax", "wax", "recipe", "  step pour"}, outline(symbols, ""))
	var found json.RawMessage
	e.call("workspace/symbol", map[string]any{"query": "w"}, &found)
	require.NotContains(t, string(found), `"name":""`)
}
