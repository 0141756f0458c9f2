package lsp

import (
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"
)

func TestDefinition(t *testing.T) {
	disk := smallShop(rested)
	e := connect(t, disk, "shop", `{}`)
	uris := e.openAll(disk, "recipe.candle.hcl", "logs/trials.candle.hcl", "stock.candle.hcl", "shop.candle.hcl")
	recipe, trials, stock, shop := uris[0], uris[1], uris[2], uris[3]
	for _, c := range []struct {
		about, uri, piece string
		further           int
		places            []string
	}{
		{"a label", recipe, `"north"`, 0, []string{"stock.candle.hcl:1 north"}},
		{"an item of a list", recipe, `putty`, 3, []string{"stock.candle.hcl:15 putty"}},
		{"of two kinds the one meant", recipe, `"stearin"`, 1, []string{"stock.candle.hcl:13 stearin"}},
		{"the part of a blend is a wax first", stock, `"stearin"`, 1, []string{"stock.candle.hcl:12 stearin"}},
		{"a definition leads to itself", stock, `"house"`, 1, []string{"stock.candle.hcl:4 house"}},
		{"a rule of the shop", shop, `"putty-cool"`, 1, []string{"logs/trials.candle.hcl:5 putty-cool"}},
		{"a rule of the program stands nowhere", shop, `"unused-stock"`, 1, nil},
		{"what an example has of its own", trials, `"own"`, 1, []string{"logs/trials.candle.hcl:18 own"}},
		{"what an example takes from the shop", trials, `"round"`, 1, []string{"stock.candle.hcl:16 round"}},
		{"a step kind is no key", recipe, `"pour"`, 1, nil},
		{"nothing", recipe, `weight`, 1, nil},
	} {
		t.Run(c.about, func(t *testing.T) {
			var locations []protocol.Location
			e.call("textDocument/definition", e.about(c.uri, c.piece, c.further), &locations)
			require.NotNil(t, locations)
			require.Equal(t, c.places, places(t, disk, locations))
		})
	}
}

// LSP 3.17, LocationLink: the target's range encloses the selection range, and
// the origin is "the span of the origin of this link".
func TestDefinitionAsLink(t *testing.T) {
	disk := smallShop(rested)
	e := connect(t, disk, "shop", `{"textDocument": {"definition": {"linkSupport": true}}}`)
	uris := e.openAll(disk, "recipe.candle.hcl", "stock.candle.hcl")
	var links []protocol.LocationLink
	e.call("textDocument/definition", e.about(uris[0], `"north"`, 0), &links)
	require.Len(t, links, 1)
	require.Equal(t, "north", e.textAt(uris[0], *links[0].OriginSelectionRange))
	require.Equal(t, "north", e.textAt(uris[1], links[0].TargetSelectionRange))
	require.Equal(t, "wax \"north\" {\n  title = \"north °🕯 north\"\n}", e.textAt(uris[1], links[0].TargetRange))
}

func TestRepeatedKeysAreAllShown(t *testing.T) {
	disk := smallShop(rested)
	disk["shop/also.candle.hcl"] = &fstest.MapFile{Data: []byte("wick \"braid\" {}\n")}
	e := connect(t, disk, "shop", `{}`)
	uri := e.openAll(disk, "recipe.candle.hcl")[0]
	var locations []protocol.Location
	e.call("textDocument/definition", e.about(uri, `"braid"`, 1), &locations)
	require.Equal(t, []string{"also.candle.hcl:1 braid", "stock.candle.hcl:17 braid"}, places(t, disk, locations)) // the first counts
}

func TestReferences(t *testing.T) {
	disk := smallShop(rested)
	e := connect(t, disk, "shop", `{}`)
	uris := e.openAll(disk, "recipe.candle.hcl", "stock.candle.hcl")
	ask := func(uri, piece string, further int, declaration bool) []string {
		var locations []protocol.Location
		e.call("textDocument/references", with(e.about(uri, piece, further), "context", map[string]any{"includeDeclaration": declaration}), &locations)
		require.NotNil(t, locations)
		return places(t, disk, locations)
	}
	north := []string{"logs/trials.candle.hcl:11 north", "recipe.candle.hcl:2 north", "recipe.candle.hcl:12 north", "stock.candle.hcl:5 north"}
	require.Equal(t, north, ask(uris[0], `"north"`, 2, false))
	// LSP 3.17, ReferenceContext: includeDeclaration "Include the declaration
	// of the current symbol."
	require.Equal(t, []string{"logs/trials.candle.hcl:11 north", "recipe.candle.hcl:2 north", "recipe.candle.hcl:12 north", "stock.candle.hcl:1 north", "stock.candle.hcl:5 north"},
		ask(uris[1], `"north"`, 2, true))
	require.Equal(t, []string{"recipe.candle.hcl:5 stearin"}, ask(uris[1], `additive "stearin"`, 12, false))
	require.Equal(t, []string{"recipe.candle.hcl:14 putty-cool", "shop.candle.hcl:2 putty-cool"}, ask(uris[0], `"putty-cool"`, 2, false))
	require.Empty(t, ask(uris[1], `title`, 2, true))
}

func TestHighlights(t *testing.T) {
	disk := smallShop(rested)
	e := connect(t, disk, "shop", `{}`)
	uri := e.openAll(disk, "stock.candle.hcl")[0]
	var found []protocol.DocumentHighlight
	e.call("textDocument/documentHighlight", e.about(uri, `part "north"`, 8), &found)
	var said []string
	for _, f := range found {
		require.Equal(t, "north", e.textAt(uri, f.Range))
		said = append(said, map[protocol.DocumentHighlightKind]string{protocol.DocumentHighlightKindRead: "read", protocol.DocumentHighlightKindWrite: "write"}[*f.Kind])
	}
	require.Equal(t, []string{"write", "read"}, said)
}

// What is asked about a text as it stands, typed on but not saved.
func TestReferencesFollowTyping(t *testing.T) {
	disk := smallShop(rested)
	e := connect(t, disk, "shop", `{}`)
	uri := e.openAll(disk, "recipe.candle.hcl")[0]
	e.replace(uri, "  wax \"north\"", "  # °🕯\n  wax \"north\"")
	var locations []protocol.Location
	e.call("textDocument/references", with(e.about(uri, `"braid"`, 1), "context", map[string]any{"includeDeclaration": false}), &locations)
	require.Len(t, locations, 2)
	require.Equal(t, uri, locations[1].URI)
	require.Equal(t, "braid", e.textAt(uri, locations[1].Range))
	require.True(t, strings.HasPrefix(e.texts[uri], "recipe \"tide\" {\n  # °🕯\n"))
}
