package lsp

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

// ruleShop is a shop with the rule of these tests, changed at one place, and
// the seals it names.
func ruleShop(from, to string) map[string]string {
	return map[string]string{
		"rules.candle.hcl": strings.Replace(putty, from, to, 1),
		"stock.candle.hcl": "seal \"wick-putty\" {\n  title = \"Wick putty °\"\n  kind = \"putty\"\n  holds_to = \"220 °F\"\n}\nseal \"plug\" {}\nmold \"pillar-3x6\" {}\n",
	}
}

// keyed is the rule with the seal asked for by its key, at both ends of a sign
// and in a list, behind signs that take two bytes.
const keyed = `when     = "°" != "x" && mold.seal.key == "wick-putty" && "plug" != mold.seal.key`

func keyedShop() map[string]string { return ruleShop(`when     = mold.seal.kind == "putty"`, keyed) }

func TestDefinitionInExpressions(t *testing.T) {
	disk := smallShop(keyedShop())
	e := connect(t, disk, "shop", `{}`)
	uri := e.openAll(disk, "rules.candle.hcl")[0]
	for _, c := range []struct {
		about, piece string
		further      int
		places       []string
	}{
		{"an option", "option.in_hand", 9, []string{"rules.candle.hcl:10 in_hand"}},
		{"the word option is no name", "option.in_hand", 2, nil},
		{"the option itself", `"in_hand"`, 2, []string{"rules.candle.hcl:10 in_hand"}},
		{"a key that a name is compared with", `"wick-putty" &&`, 1, []string{"stock.candle.hcl:1 wick-putty"}},
		{"a key that is compared with a name", `"plug"`, 5, []string{"stock.candle.hcl:6 plug"}},
		{"a text that is no key", `"x"`, 1, nil},
		{"a name of the recipe", "pour.at", 1, nil},
		{"a trial that nobody has written down", `["putty-reuse"]`, 3, nil},
	} {
		t.Run(c.about, func(t *testing.T) {
			var locations []protocol.Location
			e.call("textDocument/definition", e.about(uri, c.piece, c.further), &locations)
			require.NotNil(t, locations)
			require.Equal(t, c.places, places(t, disk, locations))
		})
	}
}

// The ranges are in UTF-16: the line starts with a sign of two bytes in UTF-8
// that is one unit there.
func TestReferencesInExpressions(t *testing.T) {
	disk := smallShop(keyedShop())
	e := connect(t, disk, "shop", `{}`)
	uri := e.openAll(disk, "rules.candle.hcl")[0]
	var locations []protocol.Location
	e.call("textDocument/references", with(e.about(uri, `"wick-putty" &&`, 1), "context", map[string]any{"includeDeclaration": true}), &locations)
	assert.Equal(t, []string{"rules.candle.hcl:4 wick-putty", "rules.candle.hcl:18 wick-putty", "rules.candle.hcl:26 wick-putty", "stock.candle.hcl:1 wick-putty"}, places(t, disk, locations))
	line := strings.Split(e.texts[uri], "\n")[3]
	at := strings.Index(line, "wick-putty") - 1 // one byte more than units before it
	assert.Equal(t, protocol.Range{Start: protocol.Position{Line: 3, Character: uint32(at)}, End: protocol.Position{Line: 3, Character: uint32(at + len("wick-putty"))}}, locations[0].Range)
	e.call("textDocument/references", with(e.about(uri, `"in_hand"`, 1), "context", map[string]any{"includeDeclaration": true}), &locations)
	assert.Equal(t, []string{"rules.candle.hcl:5 in_hand", "rules.candle.hcl:10 in_hand"}, places(t, disk, locations))
	var marks []protocol.DocumentHighlight
	e.call("textDocument/documentHighlight", e.about(uri, "option.in_hand", 8), &marks)
	require.Len(t, marks, 2)
	assert.Equal(t, protocol.DocumentHighlightKindWrite, *marks[1].Kind)
}

func TestRenameInExpressions(t *testing.T) {
	disk := smallShop(keyedShop())
	e := connect(t, disk, "shop", `{}`)
	uri := e.openAll(disk, "rules.candle.hcl")[0]
	renamed := func(piece string, further int, name string) map[string]string {
		t.Helper()
		var edit protocol.WorkspaceEdit
		e.call("textDocument/rename", with(e.about(uri, piece, further), "newName", name), &edit)
		return editedTexts(t, disk, edit.Changes)
	}
	rules := string(disk["shop/rules.candle.hcl"].Data)
	assert.Equal(t, map[string]string{"rules.candle.hcl": strings.ReplaceAll(rules, "in_hand", "spare")}, renamed("option.in_hand", 8, "spare"))
	all := renamed(`"wick-putty" &&`, 2, "gray-putty")
	assert.Equal(t, strings.ReplaceAll(rules, "wick-putty", "gray-putty"), all["rules.candle.hcl"])
	assert.Contains(t, all["stock.candle.hcl"], `seal "gray-putty"`)
	for name, text := range all {
		assert.Empty(t, schema.Read(name, []byte(text)).Problems, name)
	}
	for name, says := range map[string]string{
		"in-hand": `"in-hand" cannot be the name of an option: write small letters, digits and _, such as in_hand`,
		"In":      `"In" cannot be the name of an option: write small letters, digits and _, such as in_hand`,
	} {
		message, code := e.refusal("textDocument/rename", with(e.about(uri, "option.in_hand", 8), "newName", name))
		assert.Equal(t, says, message)
		assert.Equal(t, int64(requestFailed), code)
	}
	var spot protocol.RangeWithPlaceholder
	e.call("textDocument/prepareRename", e.about(uri, "option.in_hand", 8), &spot)
	assert.Equal(t, "in_hand", spot.Placeholder)
	assert.Equal(t, "in_hand", e.textAt(uri, spot.Range))
}

// An option is known in its rule only.
func TestOptionsOfTwoRules(t *testing.T) {
	text := putty + strings.ReplaceAll(putty, "putty-in-hand", "putty-again")
	disk := smallShop(map[string]string{"rules.candle.hcl": text})
	e := connect(t, disk, "shop", `{}`)
	uri := e.openAll(disk, "rules.candle.hcl")[0]
	var edit protocol.WorkspaceEdit
	e.call("textDocument/rename", with(e.about(uri, "option.in_hand", 8), "newName", "spare"), &edit)
	assert.Equal(t, strings.ReplaceAll(putty, "in_hand", "spare")+text[len(putty):], editedTexts(t, disk, edit.Changes)["rules.candle.hcl"])
}

func TestSignatureHelp(t *testing.T) {
	able := `{"textDocument": {"signatureHelp": {"signatureInformation": {"documentationFormat": ["markdown"], "parameterInformation": {"labelOffsetSupport": true}}}}}`
	for _, c := range []struct {
		about, to string // with a mark
		label     string
		parameter string
	}{
		{"behind the bracket", `require = amount(‸`, `amount("182 °F") gives a quantity`, `"182 °F"`},
		{"in the text", `require = pour.at <= amount("18‸0 °F")`, `amount("182 °F") gives a quantity`, `"182 °F"`},
		{"behind the sign of degrees", `require = pour.at - melt.to <= degrees("1‸`, `degrees("10 °F") gives a temperature difference`, `"10 °F"`},
		{"the first of two", `require = includes(‸wax.suits, "pillar")`, `includes(list, "word") gives yes or no`, "list"},
		{"the second of two", `require = includes(wax.suits, "pi‸llar")`, `includes(list, "word") gives yes or no`, `"word"`},
		{"of several, the one that stands for all", `require = least(pour.at, melt.to, ‸`, `least(two or more of the same) gives the same`, "two or more of the same"},
		{"the inner of two", `require = least(pour.at, amount(‸`, `amount("182 °F") gives a quantity`, `"182 °F"`},
		{"behind the inner of two", `require = least(pour.at, amount("3 °F"), ‸`, `least(two or more of the same) gives the same`, "two or more of the same"},
		{"in a message", `message = "° ${show(‸pour.at)}"`, `show(an amount) gives a text`, "an amount"},
		{"behind the brackets", `require = amount("180 °F")‸`, "", ""},
		{"in brackets of no function", `require = (‸pour.at)`, "", ""},
		{"of a function there is not", `require = amont(‸`, "", ""},
		{"in no expression", `title = "amount(‸"`, "", ""},
	} {
		t.Run(c.about, func(t *testing.T) {
			text := "rule \"a\" {\n  about = \"pour\"\n  " + c.to + "\n}\n"
			at := strings.Index(text, mark)
			h := lookingAt(t, able, puttyFile, strings.Replace(text, mark, "", 1))
			help := h.signatureHelp(int32(at))
			if c.label == "" {
				require.Nil(t, help)
				return
			}
			require.NotNil(t, help)
			require.Len(t, help.Signatures, 1)
			s := help.Signatures[0]
			assert.Equal(t, c.label, s.Label)
			active := s.Parameters[*help.ActiveParameter]
			span := active.Label.([]protocol.UInteger) // LSP 3.17, ParameterInformation: UTF-16 offsets, the end exclusive
			label := mapper{schema.NewText(s.Label), utf16}
			assert.Equal(t, c.parameter, label.text.Slice(label.span(protocol.Range{Start: protocol.Position{Character: span[0]}, End: protocol.Position{Character: span[1]}})))
			assert.NotEmpty(t, s.Documentation.(protocol.MarkupContent).Value)
			plain := lookingAt(t, `{}`, puttyFile, strings.Replace(text, mark, "", 1)).signatureHelp(int32(at))
			assert.Equal(t, c.parameter, plain.Signatures[0].Parameters[*plain.ActiveParameter].Label)
		})
	}
}
