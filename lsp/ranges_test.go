package lsp

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"
)

const foldable = `# A comment of
# two lines.
recipe "tide" { # one alone
  /* and one
     between signs */
  notes = <<-EOT
    One line,
    and another. # no comment
  EOT
  markets = [
    "US",
    "EU",
  ]
  step "pour" {}
  step "melt" {
    to = "180 °F" } // the brace is not alone
  # alone
  x = 1 # beside something
  # not of one piece with that
}
`

func foldsOf(t *testing.T, capabilities string) (*editor, string, []protocol.FoldingRange) {
	disk := smallShop(map[string]string{"a.candle.hcl": foldable})
	e := connect(t, disk, "shop", capabilities)
	uri := e.openAll(disk, "a.candle.hcl")[0]
	var folds []protocol.FoldingRange
	e.call("textDocument/foldingRange", map[string]any{"textDocument": map[string]any{"uri": uri}}, &folds)
	return e, uri, folds
}

// The expected lines are read off the text above, from 0 up.
func TestFoldingWholeLines(t *testing.T) {
	_, _, folds := foldsOf(t, `{"textDocument": {"foldingRange": {"lineFoldingOnly": true}}}`)
	var lines []string
	for _, f := range folds {
		require.Nil(t, f.StartCharacter)
		require.Nil(t, f.EndCharacter)
		kind := ""
		if f.Kind != nil {
			kind = " " + *f.Kind
		}
		lines = append(lines, fmt.Sprintf("%d-%d%s", f.StartLine, f.EndLine, kind))
	}
	require.Equal(t, []string{"0-1 comment", "2-18", "3-4 comment", "5-7", "9-11", "14-15"}, lines)
}

// LSP 3.17, FoldingRange: without lineFoldingOnly it goes from startCharacter to
// before endCharacter.
func TestFoldingCharacters(t *testing.T) {
	e, uri, folds := foldsOf(t, `{}`)
	var texts []string
	for _, f := range folds {
		texts = append(texts, e.textAt(uri, protocol.Range{
			Start: protocol.Position{Line: f.StartLine, Character: *f.StartCharacter}, End: protocol.Position{Line: f.EndLine, Character: *f.EndCharacter}}))
	}
	body := foldable[strings.Index(foldable, " # one alone"):strings.LastIndex(foldable, "}")]
	require.Equal(t, []string{
		"# A comment of\n# two lines.", body, "/* and one\n     between signs */", "\n    One line,\n    and another. # no comment\n",
		"\n    \"US\",\n    \"EU\",\n  ", "\n    to = \"180 °F\" ",
	}, texts)
}

func TestSelectionGrows(t *testing.T) {
	text := "# 🕯\nrecipe \"tide\" {\n  step \"seal wick hole\" {\n    with = [\"plug\", \"putty\"] # both\n  }\n}\n"
	disk := smallShop(map[string]string{"a.candle.hcl": text})
	e := connect(t, disk, "shop", `{}`)
	uri := e.openAll(disk, "a.candle.hcl")[0]
	ask := func(places ...protocol.Position) (all [][]string) {
		var ranges []protocol.SelectionRange
		e.call("textDocument/selectionRange", map[string]any{"textDocument": map[string]any{"uri": uri}, "positions": places}, &ranges)
		require.Len(t, ranges, len(places)) // LSP 3.17, Selection Range: the arrays go together
		for _, r := range ranges {
			var texts []string
			for at := &r; at != nil; at = at.Parent {
				texts = append(texts, e.textAt(uri, at.Range))
				if at.Parent != nil { // "parent.range must contain this.range"
					require.Contains(t, e.textAt(uri, at.Parent.Range), e.textAt(uri, at.Range))
					require.NotEqual(t, at.Range, at.Parent.Range)
				}
			}
			all = append(all, texts)
		}
		return all
	}
	attribute := `with = ["plug", "putty"]`
	inner := "step \"seal wick hole\" {\n    with = [\"plug\", \"putty\"] # both\n  }"
	outer := "recipe \"tide\" {\n  " + inner + "\n}"
	around := []string{"\n    " + attribute + " # both\n  ", inner, "\n  " + inner + "\n", outer, text}
	got := ask(e.position(uri, "putty", 2), e.position(uri, "with", 1), e.position(uri, "seal", 1), e.position(uri, "🕯", 0), e.position(uri, "both", 0), e.position(uri, "}\n}", 0))
	require.Equal(t, append([]string{"putty", `"putty"`, `["plug", "putty"]`, attribute, attribute + " # both"}, around...), got[0])
	require.Equal(t, append([]string{"with", attribute, attribute + " # both"}, around...), got[1])
	require.Equal(t, append([]string{"seal wick hole", `"seal wick hole"`, `step "seal wick hole"`}, around[1:]...), got[2])
	require.Equal(t, []string{"# 🕯", text}, got[3])
	require.Equal(t, append([]string{"# both", attribute + " # both"}, around...), got[4])
	require.Equal(t, around, got[5])
}
