package lsp

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"
)

func TestColors(t *testing.T) {
	disk := smallShop(map[string]string{"a.candle.hcl": "dye \"madder\" {\n  title = \"🕯 °\"\n  color = \"#b5473c\"\n}\ndye \"woad\" {\n  color = \"blue\"\n}\n"})
	e := connect(t, disk, "shop", able)
	uri := e.openAll(disk, "a.candle.hcl")[0]
	var found []protocol.ColorInformation
	e.call("textDocument/documentColor", map[string]any{"textDocument": map[string]any{"uri": uri}}, &found)
	require.Len(t, found, 1)
	require.Equal(t, "#b5473c", e.textAt(uri, found[0].Range))
	// CSS Color Module Level 4, section 5.2: the digits are sRGB parts of 0 to
	// 255; LSP 3.17, Color: parts in the range [0-1].
	require.Equal(t, protocol.Color{Red: 181.0 / 255, Green: 71.0 / 255, Blue: 60.0 / 255, Alpha: 1}, found[0].Color)

	var ways []protocol.ColorPresentation
	pick := func(c protocol.Color) string {
		e.call("textDocument/colorPresentation", map[string]any{"textDocument": map[string]any{"uri": uri}, "color": c, "range": found[0].Range}, &ways)
		require.Len(t, ways, 1)
		require.Equal(t, found[0].Range, ways[0].TextEdit.Range)
		require.Equal(t, ways[0].Label, ways[0].TextEdit.NewText)
		return ways[0].Label
	}
	require.Equal(t, "#b5473c", pick(found[0].Color))
	require.Equal(t, "#00ff80", pick(protocol.Color{Red: -1, Green: 2, Blue: 0.5, Alpha: 0.3}))
}

// Every color reads and writes back as it was.
func TestColorsThereAndBack(t *testing.T) {
	for n := range 256 {
		text := fmt.Sprintf("#%02x%02x%02x", n, 255-n, n/2)
		c, ok := colorOf(text)
		require.True(t, ok)
		require.Equal(t, text, writtenColor(c))
	}
}
