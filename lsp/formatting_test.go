package lsp

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

const untidy = "# °🕯\nwax \"north\" {\n density = \"0.9 g/mL\"   \n  title=\"North 🕯\"\n}\n\nwick \"braid\" {\n    trim =   \"1/4 in\"\n}\n\n\n"

const tidy = "# °🕯\nwax \"north\" {\n  density = \"0.9 g/mL\"\n  title   = \"North 🕯\"\n}\n\nwick \"braid\" {\n  trim = \"1/4 in\"\n}\n"

func formatted(t *testing.T, text, method string, params map[string]any) (string, []protocol.TextEdit) {
	t.Helper()
	disk := smallShop(map[string]string{"a.candle.hcl": text})
	e := connect(t, disk, "shop", `{}`)
	uri := e.openAll(disk, "a.candle.hcl")[0]
	var edits []protocol.TextEdit
	params["textDocument"] = map[string]any{"uri": uri}
	params["options"] = map[string]any{"tabSize": 8, "insertSpaces": false}
	e.call(method, params, &edits)
	require.NotNil(t, edits)
	return editedTexts(t, disk, map[string][]protocol.TextEdit{uri: edits})["a.candle.hcl"], edits
}

func TestFormatting(t *testing.T) {
	after, edits := formatted(t, untidy, "textDocument/formatting", map[string]any{})
	require.Equal(t, tidy, after)
	require.Less(t, len(edits), strings.Count(untidy, "\n")) // only what changes
	_, edits = formatted(t, tidy, "textDocument/formatting", map[string]any{})
	require.Empty(t, edits)
	_, edits = formatted(t, strings.Replace(untidy, `°🕯`, "\"\nwax {", 1), "textDocument/formatting", map[string]any{})
	require.Empty(t, edits)
}

// LSP 3.17, Document Range Formatting: "to format a given range in a document".
func TestRangeFormatting(t *testing.T) {
	at := func(line, character uint32) protocol.Position {
		return protocol.Position{Line: line, Character: character}
	}
	after, _ := formatted(t, untidy, "textDocument/rangeFormatting", map[string]any{"range": protocol.Range{Start: at(6, 0), End: at(8, 1)}})
	require.Equal(t, strings.Replace(untidy, `    trim =   "1/4 in"`, `  trim = "1/4 in"`, 1), after)
	_, edits := formatted(t, untidy, "textDocument/rangeFormatting", map[string]any{"range": protocol.Range{Start: at(2, 3), End: at(2, 6)}})
	require.Empty(t, edits)
}

// typing is a text with the cursor at the mark, right behind the character
// that was typed.
func typing(t *testing.T, marked, ch string) (string, []protocol.TextEdit) {
	t.Helper()
	before, behind, found := strings.Cut(marked, "‸")
	require.True(t, found)
	text := before + behind
	at := mapper{schema.NewText(text), utf16}.position(int32(len(before)))
	after, edits := formatted(t, text, "textDocument/onTypeFormatting", map[string]any{"position": at, "ch": ch})
	for _, e := range edits { // nothing at or behind the cursor is touched
		end := e.Range.End
		require.True(t, end.Line < at.Line || end.Line == at.Line && end.Character <= at.Character, "%v", e)
	}
	if after == "" {
		after = text
	}
	return after, edits
}

func TestFormattingWhileTyping(t *testing.T) {
	for _, c := range []struct{ about, marked, ch, after string }{
		{"a line is finished", "wax \"a\" {\n  title = \"A\"\n density=\"1 g/mL\"\n  ‸\n}\n", "\n", "wax \"a\" {\n  title   = \"A\"\n  density = \"1 g/mL\"\n  \n}\n"},
		{"a line between others stays with them", "wax \"a\" {\n  title   = \"A\"\n  ‸\n  density = \"1 g/mL\"\n}\n", "\n", ""},
		{"the lines of another block are left alone", "wax \"b\" {\n title=\"B\"\n}\n\nwax \"a\" {\n title=\"A\"\n‸\n}\n", "\n", "wax \"b\" {\n title=\"B\"\n}\n\nwax \"a\" {\n  title = \"A\"\n\n}\n"},
		{"a block is closed", "wax \"b\" {\n title=\"B\"\n}\nrecipe \"a\" {\nwax \"b\" {\n weight=\"1 kg\"\n  }‸\n     dye \"c\" {}\n}\n", "}", "wax \"b\" {\n title=\"B\"\n}\nrecipe \"a\" {\n  wax \"b\" {\n    weight = \"1 kg\"\n  }\n     dye \"c\" {}\n}\n"},
		{"a brace in a text", "wax \"b\" {\n  title=\"B}‸\"\n}\n", "}", ""},
		{"a text that does not read", "wax \"b\" {\n title=\"B\n  ‸\n}\n", "\n", ""},
		{"a block not closed yet", "wax \"b\" {\n title=\"B\"\n  ‸", "\n", ""},
		{"in a heredoc", "wax \"b\" {\n  notes = <<EOT\n a\n‸\n b=c\nEOT\n}\n", "\n", ""},
		{"at the top", "‸\nwax \"b\" {\n title=\"B\"\n}\n", "\n", ""},
		{"line ends of the older kinds", "wax \"a\" {\r\n title=\"A\"\r\n‸\r\n}\r\n", "\n", "wax \"a\" {\r\n  title = \"A\"\r\n\r\n}\r\n"},
	} {
		t.Run(c.about, func(t *testing.T) {
			after, edits := typing(t, c.marked, c.ch)
			if c.after == "" {
				require.Empty(t, edits)
				return
			}
			require.Equal(t, c.after, after)
		})
	}
}
