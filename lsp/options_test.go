package lsp

import (
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
	"wickrule/rules"
)

// tuning is a shop file that tunes the demo shop's rule about putty, with what
// stands in the tune.
func tuning(inner string) string {
	return "shop \"quay\" {\n  tune \"fresh-putty-for-hot-pours\" {\n" + inner + "\n  }\n}\n"
}

func TestCompletionOfOptions(t *testing.T) {
	for _, c := range []struct {
		about, inner string // with a mark where the cursor stands
		first        []string
		after        string
	}{
		{"a whole block", "    ‸", []string{`level: one of "must", "should", "consider" or "off"`, "reason: text, over several lines if need be",
			`option "in_hand": a temperature difference, 10 °F: What we keep in hand`}, ""},
		{"the name", `    option "‸" {`, []string{"in_hand: a temperature difference, 10 °F: What we keep in hand"}, `option "in_hand" {`},
		{"the name, the quote open", `    option "in‸`, []string{"in_hand: a temperature difference, 10 °F: What we keep in hand"}, "option \"in_hand\" {\n  is = \"10 °F\"\n}"},
		{"the name, no quote yet", `    option ‸`, []string{"in_hand: a temperature difference, 10 °F: What we keep in hand"}, "option \"in_hand\" {\n  is = \"10 °F\"\n}"},
		{"one that is set", "    option \"in_hand\" {\n      is = \"5 °F\"\n    }\n    option \"‸\" {\n    }", []string{"in_hand: a temperature difference, 10 °F: set already"}, ""},
		{"what it is", "    option \"in_hand\" {\n      ‸\n    }", []string{"is: an amount or a text in quotes, a number, true or false: required"}, ""},
		{"the value", "    option \"in_hand\" {\n      is = ‸\n    }", []string{"10 °F: as the rule says"}, `is = "10 °F"`},
		{"the value in quotes", "    option \"in_hand\" {\n      is = \"‸\"\n    }", []string{"10 °F: as the rule says"}, `is = "10 °F"`},
		{"a unit of a difference", "    option \"in_hand\" {\n      is = \"5 ‸\"\n    }", []string{"°F: a temperature difference", "°C: a temperature difference"}, `is = "5 °F"`},
		{"no unit of weight", "    option \"in_hand\" {\n      is = \"5 g‸\"\n    }", []string{"°F: a temperature difference", "°C: a temperature difference"}, ""},
		{"a value that stands there", "    option \"in_hand\" {\n      is = ‸ \"5 °F\"\n    }", nil, ""},
		{"of an option that there is not", "    option \"in_hnd\" {\n      is = \"‸\"\n    }", nil, ""},
	} {
		t.Run(c.about, func(t *testing.T) {
			h, text, items := completing(t, "shop.candle.hcl", tuning(c.inner))
			var said []string
			for _, item := range items {
				label := item.Label
				if item.Detail != nil {
					label += ": " + *item.Detail
				}
				if why := whyOf(item); why != "" {
					label += ": " + why
				}
				said = append(said, label)
			}
			if c.first == nil {
				assert.Empty(t, said)
				return
			}
			require.GreaterOrEqual(t, len(said), len(c.first), "%q", said)
			assert.Equal(t, c.first, said[:len(c.first)])
			if c.after != "" {
				assert.Contains(t, afterTaking(t, h, text, items[0]), c.after)
			}
		})
	}
	_, _, items := completing(t, "shop.candle.hcl", "shop \"quay\" {\n  tune \"heat-near-flash\" {\n    option \"‸\" {\n    }\n  }\n}\n")
	assert.Empty(t, items, "a rule of the program has none")
}

// An option of each kind offers what it takes.
func TestCompletionOfOptionsOfEachKind(t *testing.T) {
	rule := strings.Replace(putty, "  option", `  option "strict" { is = true }
  option "from" { is = 2.5 }
  option "made" { is = "a $ and a }" }
  option "heat" { is = amount("170 to 180 °F") }
  option`, 1)
	for _, c := range []struct{ label, body, typed, offered string }{
		{"strict", "is = true", "is = ‸", "true: as the rule says, false"},
		{"from", "is = 2.5", "is = ‸", "2.5: as the rule says"},
		{"made", `is = "a $ and a }"`, `is = "‸"`, "a $ and a }: as the rule says"},
		{"heat", `is = "170 to 180 °F"`, `is = "‸"`, "170 to 180 °F: as the rule says"},
		{"in_hand", `is = "10 °F"`, `is = "‸"`, "10 °F: as the rule says"},
	} {
		shop := func(inner string) string {
			return rule + "\nshop \"quay\" {\n  tune \"putty-in-hand\" {\n" + inner + "\n  }\n}\n"
		}
		h, text, items := completing(t, "a.candle.hcl", shop(`    option "`+c.label+`‸`))
		made := ""
		for _, item := range items {
			if item.Label == c.label {
				made = withDefaultOf(afterSnippet(t, h, text, item))
			}
		}
		assert.Contains(t, made, c.body, c.label)
		_, _, items = completing(t, "a.candle.hcl", shop("    option \""+c.label+"\" {\n      "+c.typed+"\n    }"))
		var said []string
		for _, item := range items {
			label := item.Label
			if why := whyOf(item); why != "" {
				label += ": " + why
			}
			said = append(said, label)
		}
		assert.Equal(t, c.offered, strings.Join(said, ", "), c.label)
	}
}

// afterSnippet is a text after an item has been taken, the signs of its snippet
// still in it.
func afterSnippet(t *testing.T, h *here, text string, item completionItem) string {
	t.Helper()
	edit, ok := item.TextEdit.(protocol.TextEdit)
	require.True(t, ok)
	span := h.span(edit.Range)
	return text[:span.Start] + edit.NewText + text[span.End:]
}

// withDefaultOf reads a snippet's first place as LSP 3.17, Snippet Syntax, says.
func withDefaultOf(text string) string {
	before, rest, _ := strings.Cut(text, "${1:")
	var b strings.Builder
	for i := 0; i < len(rest); i++ {
		switch {
		case rest[i] == '\\' && i+1 < len(rest):
			i++
			b.WriteByte(rest[i])
		case rest[i] == '}':
			return before + b.String() + rest[i+1:]
		default:
			b.WriteByte(rest[i])
		}
	}
	return text
}

func TestHoverOfOptions(t *testing.T) {
	const set = "    option \"in_hand\" {\n      is = \"15 °F\"\n    }"
	const tried = "The examples of the rule are tried with what the rule says; the recipes of this shop with what this shop has."
	for _, c := range []struct {
		about, from, to string
		says            []string
	}{
		{"its name", `"in_hand"`, `"in_‸hand"`, []string{"**option.in_hand** A temperature difference. What we keep in hand.", "The rule fresh-putty-for-hot-pours says 10 °F; in this shop it is 15 °F.", tried}},
		{"its value", `"15 °F"`, `"15‸ °F"`, []string{"The rule fresh-putty-for-hot-pours says 10 °F; in this shop it is 15 °F.", tried}},
		{"one that does not fit", `"15 °F"`, `"15‸ g"`, []string{"The rule fresh-putty-for-hot-pours says 10 °F.", tried}},
		{"one that there is not", `"in_hand"`, `"in_‸hnd"`, []string{"**option** What an option of a rule of the shop's own is in this shop"}},
		{"the rule", `"fresh-putty-for-hot-pours"`, `"fresh-‸putty-for-hot-pours"`, []string{"Option in_hand: What we keep in hand: 10 °F; in this shop 15 °F."}},
	} {
		t.Run(c.about, func(t *testing.T) {
			marked := strings.Replace(tuning(set), c.from, c.to, 1)
			h := lookingAt(t, able, "shop.candle.hcl", strings.Replace(marked, mark, "", 1))
			h.snapshot.rules = withOwn
			hover := h.hover(int32(strings.Index(marked, mark)))
			require.NotNil(t, hover)
			text := hover.Contents.(protocol.MarkupContent).Value
			for _, says := range c.says {
				assert.Contains(t, text, says)
			}
			assert.Equal(t, strings.HasSuffix(c.to, " g\""), !strings.Contains(text, "in this shop") && c.about != "one that there is not")
		})
	}
	// And in the rule.
	rule := exampleShop().Find("rule", "fresh-putty-for-hot-pours").File
	for piece, says := range map[string]string{"option.in_hand": "In this shop it is 15 °F.", `option "in_hand"`: "in this shop it is 15 °F."} {
		h := lookingAt(t, able, "shop.candle.hcl", tuning(set))
		h = h.snapshot.of(h.shop, h.shop.File(rule.Name))
		hover := h.hover(int32(strings.Index(rule.Text.String(), piece) + len("option.i")))
		require.NotNil(t, hover, piece)
		assert.Contains(t, hover.Contents.(protocol.MarkupContent).Value, says, piece)
	}
}

func withOwn(shop *lint.Shop) []*lint.Rule { return append(rules.All(), rules.Own(shop)...) }

// twoRules is a shop with two rules that have an option of one name, and tunes
// of both.
var twoRules = map[string]string{
	"rules.candle.hcl": putty + strings.ReplaceAll(putty, "putty-in-hand", "putty-again"),
	"shop.candle.hcl": `shop "quay" {
  tune "putty-in-hand" {
    option "in_hand" { is = "5 °F" }
  }
  tune "putty-again" {
    option "in_hand" { is = "6 °F" }
  }
  tune "nobodys" {
    option "in_hand" { is = "7 °F" }
  }
}
`,
}

func TestOptionsAreFoundAndRenamed(t *testing.T) {
	disk := smallShop(twoRules)
	e := connect(t, disk, "shop", `{}`)
	uris := e.openAll(disk, "shop.candle.hcl", "rules.candle.hcl")
	var locations []protocol.Location
	e.call("textDocument/definition", e.about(uris[0], `"in_hand" { is = "5`, 3), &locations)
	assert.Equal(t, []string{"rules.candle.hcl:10 in_hand"}, places(t, disk, locations))
	e.call("textDocument/definition", e.about(uris[0], `"in_hand" { is = "6`, 3), &locations)
	assert.Equal(t, []string{"rules.candle.hcl:40 in_hand"}, places(t, disk, locations))
	e.call("textDocument/definition", e.about(uris[0], `"in_hand" { is = "7`, 3), &locations)
	assert.Empty(t, locations)

	all := []string{"rules.candle.hcl:5 in_hand", "rules.candle.hcl:10 in_hand", "shop.candle.hcl:3 in_hand"}
	for uri, piece := range map[string]string{uris[0]: `"in_hand" { is = "5`, uris[1]: `"in_hand"`} {
		e.call("textDocument/references", with(e.about(uri, piece, 2), "context", map[string]any{"includeDeclaration": true}), &locations)
		assert.Equal(t, all, places(t, disk, locations))
		var edit protocol.WorkspaceEdit
		e.call("textDocument/rename", with(e.about(uri, piece, 2), "newName", "spare"), &edit)
		texts := editedTexts(t, disk, edit.Changes)
		assert.Equal(t, strings.ReplaceAll(putty, "in_hand", "spare")+twoRules["rules.candle.hcl"][len(putty):], texts["rules.candle.hcl"])
		assert.Equal(t, strings.Replace(twoRules["shop.candle.hcl"], "in_hand", "spare", 1), texts["shop.candle.hcl"])
	}
	message, _ := e.refusal("textDocument/rename", with(e.about(uris[0], `"in_hand" { is = "5`, 2), "newName", "in-hand"))
	assert.Equal(t, `"in-hand" cannot be the name of an option: write small letters, digits and _, such as in_hand`, message)
	message, _ = e.refusal("textDocument/rename", with(e.about(uris[0], `"in_hand" { is = "7`, 2), "newName", "spare"))
	assert.Equal(t, "no option here is called in_hand: write it down first, then it can be renamed", message)
}

// What is set and cannot be read is not left behind.
func TestOptionsAreNotRenamedOverAFault(t *testing.T) {
	disk := smallShop(map[string]string{"rules.candle.hcl": putty, "shop.candle.hcl": "shop \"quay\" {\n  tune \"putty-in-hand\" {\n    opt \"in_hand\" { is = \"5 °F\" }\n  }\n}\n"})
	e := connect(t, disk, "shop", `{}`)
	uri := e.openAll(disk, "rules.candle.hcl")[0]
	message, _ := e.refusal("textDocument/rename", with(e.about(uri, `"in_hand"`, 2), "newName", "spare"))
	assert.Equal(t, "line 3 of shop.candle.hcl says in_hand where the text cannot be read: see to that by hand first, so that nothing is left behind under the wrong key", message)

	disk = smallShop(map[string]string{"rules.candle.hcl": putty, "shop.candle.hcl": "shop \"quay\" {\n  tune \"putty-in-hand\" {\n    option \"spare\" { is = \"5 °F\" }\n  }\n}\n"})
	e = connect(t, disk, "shop", `{}`)
	uri = e.openAll(disk, "rules.candle.hcl")[0]
	message, _ = e.refusal("textDocument/rename", with(e.about(uri, `"in_hand"`, 2), "newName", "spare"))
	assert.Equal(t, "line 3 of shop.candle.hcl names an option called spare that nobody has written down yet, and would mean this one after the rename: put that right first", message)
}

// sharing is two shops that take a rule from beside them and set its option.
func sharing() fstest.MapFS {
	disk := repository()
	disk["repo/house-rules/heat.candle.hcl"] = &fstest.MapFile{Data: []byte(putty)}
	for shop, is := range map[string]string{"quay": "5 °F", "yard": "6 °F"} {
		disk["repo/"+shop+"/shop.candle.hcl"] = &fstest.MapFile{Data: []byte("shop \"" + shop + "\" {\n  rules_from = [\"../house-rules\"]\n" +
			"  tune \"putty-in-hand\" {\n    option \"in_hand\" { is = \"" + is + "\" }\n  }\n}\n")}
	}
	return disk
}

// A rename leaves no shop behind that takes the rule, wherever it starts.
func TestSharedOptionsAreRenamedInEveryShop(t *testing.T) {
	disk := sharing()
	e := connectTo(t, testConfig(t, disk), "repo", `{}`)
	yard, quay, rule := "repo/yard/shop.candle.hcl", "repo/quay/shop.candle.hcl", "repo/house-rules/heat.candle.hcl"
	uris := map[string]string{}
	for _, file := range []string{yard, quay, rule} {
		uris[file] = e.open(file, string(disk[file].Data))
	}
	for _, from := range []string{yard, quay, rule} {
		for _, c := range []struct{ piece, old, new string }{{`"in_hand"`, "in_hand", "spare"}, {`"putty-in-hand"`, "putty-in-hand", "putty-kept"}} {
			var edit protocol.WorkspaceEdit
			e.call("textDocument/rename", with(e.about(uris[from], c.piece, 2), "newName", c.new), &edit)
			texts := editedTexts(t, disk, edit.Changes)
			require.Len(t, texts, 3, from)
			for file, text := range texts {
				require.Equal(t, strings.ReplaceAll(string(disk[file].Data), c.old, c.new), text, from)
			}
		}
		var locations []protocol.Location
		e.call("textDocument/references", with(e.about(uris[from], `"in_hand"`, 2), "context", map[string]any{"includeDeclaration": true}), &locations)
		require.Len(t, locations, 4, from)
	}
	e.replace(uris[yard], `option "in_hand" { is = "6 °F" }`, `option "in_hand" { is = "6 °F" } option "spare" {}`)
	message, _ := e.refusal("textDocument/rename", with(e.about(uris[quay], `"in_hand"`, 2), "newName", "spare"))
	require.Contains(t, message, `the shop "yard" has this too, and there line `)
}
