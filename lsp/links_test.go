package lsp

import (
	"testing"

	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"
)

func linksOf(t *testing.T, source string) (links []string) {
	disk := smallShop(map[string]string{"shop.candle.hcl": "shop \"quay\" {}\n", "stock/a.candle.hcl": "# °🕯\nwax \"north\" {\n  source = " + source + "\n}\n"})
	e := connect(t, disk, "shop", able)
	uri := e.openAll(disk, "stock/a.candle.hcl")[0]
	var found []protocol.DocumentLink
	e.call("textDocument/documentLink", map[string]any{"textDocument": map[string]any{"uri": uri}}, &found)
	require.NotNil(t, found)
	for _, l := range found {
		links = append(links, e.textAt(uri, l.Range)+" -> "+*l.Target)
	}
	return links
}

func TestLinks(t *testing.T) {
	for source, want := range map[string][]string{
		`"supplier's sheet, 2026-03"`:                        nil,
		`"🕯 https://example.org/north?grade=1, of 2026-03."`: {"https://example.org/north?grade=1 -> https://example.org/north?grade=1"},
		`"http://example.org/a and (http://example.org/b)"`:  {"http://example.org/a -> http://example.org/a", "http://example.org/b -> http://example.org/b"},
		`"sheets/north light.pdf"`:                           {"sheets/north light.pdf -> file:///shop/sheets/north%20light.pdf"},
		`"north.PDF"`:                                        {"north.PDF -> file:///shop/north.PDF"},
		`"../north.pdf"`:                                     nil, // outside of the shop
		`"/etc/north.pdf"`:                                   nil,
		`"c:\\north.pdf"`:                                    nil,
		`".hidden/north.pdf"`:                                nil,
		`"north.exe"`:                                        nil,
		`"javascript:alert(1)"`:                              nil,
		`"file:///etc/passwd"`:                               nil,
		`"https://"`:                                         nil,
		`"https://example.org@evil.example/"`:                nil,
		`"httpsx://example.org"`:                             nil,
	} {
		require.Equal(t, want, linksOf(t, source), source)
	}
}
