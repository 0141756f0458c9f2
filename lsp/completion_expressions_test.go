package lsp

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"
)

// putty is the rule that the format's own description shows, with an option,
// a fix and an example of each kind.
const putty = `rule "putty-in-hand" {
  title    = "Putty well below what it holds to"
  about    = "mold"
  when     = mold.seal.kind == "putty"
  require  = pour.at <= mold.seal.holds_to - option.in_hand
  point_at = pour.at
  message  = "A pour at ${show(pour.at)} (°F); putty holds to ${show(mold.seal.holds_to)}."
  rests_on = ["putty-reuse"]

  option "in_hand" {
    is    = degrees("10 °F")
    title = "What we keep in hand"
  }

  sound {
    recipe "cool-pour" {
      mold "pillar-3x6" { count = 1 }
      step "seal wick hole" { with = "wick-putty" }
      step "pour" { at = "170 °F" }
    }
  }

  faulty {
    recipe "hot-pour" {
      mold "pillar-3x6" { count = 1 }
      step "seal wick hole" { with = "wick-putty" }
      step "pour" { at = "212 °F" }
    }
  }
}
`

const puttyFile = "rules/putty.candle.hcl"

// offersIn is what is offered at the mark in the rule, one place of it changed.
func offersIn(t *testing.T, from, to string) (*here, string, []completionItem) {
	t.Helper()
	require.Equal(t, 1, strings.Count(putty, from), from)
	return completing(t, puttyFile, strings.Replace(putty, from, to, 1))
}

// A change to the rule, with a mark where the cursor stands, the items that
// come first, each with its detail, and the changed place with the first taken.
func TestCompletionInExpressions(t *testing.T) {
	const whole = `require  = pour.at <= mold.seal.holds_to - option.in_hand`
	for _, c := range []struct {
		about, from, to string
		first           []string
		after           string
	}{
		{"nothing typed", whole, `require  = ‸`, []string{"mold: Each mold of the recipe, with its item on the shelf.", "pour: Each `pour` step.",
			`option.in_hand: a temperature difference, degrees("10 °F"): What we keep in hand`}, `require  = mold`},
		{"half a name", whole, `require  = po‸ <= 3`, []string{"mold: Each mold of the recipe, with its item on the shelf."}, `require  = mold <= 3`},
		{"behind a name", whole, `require  = pour.at ‸`, nil, ""},
		{"behind a figure", whole, `require  = 3.‸`, nil, ""},
		{"of a block", whole, `require  = pour.‸`, []string{"kind: a text", "number: a number", "from_start: a time"}, `require  = pour.kind`},
		{"of a block that one leads to", whole, `require  = mold.seal.ho‸`, []string{"key: a text", "title: a text", "kind: a text", "holds_to: a temperature"}, `require  = mold.seal.key`},
		{"what measures the same first", whole, `require  = pour.at <= mold.seal.‸`, []string{"holds_to: a temperature"}, `pour.at <= mold.seal.holds_to`},
		{"also a difference", whole, `require  = pour.at <= mold.seal.holds_to - option.‸`, []string{`in_hand: a temperature difference, degrees("10 °F"): What we keep in hand`}, `- option.in_hand`},
		{"the ends of a range", whole, `require  = wax.pour_at.‸`, []string{"low: a temperature: The lower end of a range; of what is no range, itself.", "high: a temperature: The upper end of a range; of what is no range, itself."}, `wax.pour_at.low`},
		{"of a call", whole, `require  = least(pour.at, wax.pour_at).‸`, []string{"low: a temperature: The lower end of a range; of what is no range, itself."}, `least(pour.at, wax.pour_at).low`},
		{"over lines, in brackets", whole, "require  = (pour.at <=\n    mold.seal.‸)", []string{"holds_to: a temperature"}, `mold.seal.holds_to)`},
		{"a word of a list", whole, `require  = mold.seal.kind == "p‸`, []string{"plug", "putty"}, `mold.seal.kind == "plug"`},
		{"a word of a list, with its quote", `mold.seal.kind == "putty"`, `mold.seal.kind == "pu‸tty"`, []string{"plug", "putty"}, `mold.seal.kind == "plug"`},
		{"the key of stock", whole, `require  = mold.seal.key != "‸"`, []string{"foil-tape: Aluminum foil tape", "rubber-plug: Silicone rubber plug"}, `mold.seal.key != "foil-tape"`},
		{"a word of a list of words", whole, `require  = includes(wax.suits, "‸`, []string{"pillar", "votive", "container"}, `includes(wax.suits, "pillar"`},
		{"what is counted", whole, `require  = count("‸") > 1`, []string{"wax", "fragrance", "dye", "additive", "mold"}, `count("wax") > 1`},
		{"of steps, a kind", whole, `require  = count("step", "‸") > 1`, []string{"release", "warm mold"}, `count("step", "release") > 1`},
		{"a unit of what stands before the sign", whole, `require  = pour.at <= amount("180 ‸`, []string{"°F: a temperature", "°C: a temperature"}, `amount("180 °F"`},
		{"a unit of time", whole, `require  = pour.since_pour >= amount("2 ‸")`, []string{"min: a time", "h: a time"}, `amount("2 min")`},
		{"a difference", `is    = degrees("10 °F")`, `is    = degrees("10 ‸")`, []string{"°F: a temperature difference"}, `degrees("10 °F")`},
		{"an option has no names in it", `is    = degrees("10 °F")`, `is    = ‸`, []string{`amount: ("182 °F") gives a quantity`, `degrees: ("10 °F") gives a temperature difference`, "true", "false"}, `is    = amount("")`},
		{"what is filled in", `${show(pour.at)}`, `${‸}`, []string{"show: (an amount) gives a text", "mold: Each mold of the recipe, with its item on the shelf."}, `${show()} (°F)`},
		{"in what is filled in, half typed", `${show(mold.seal.holds_to)}."`, `${show(mold.seal.‸`, []string{"key: a text"}, `${show(mold.seal.key`},
		{"in the text of a message", "putty holds to", "put‸ty holds to", nil, ""},
		{"what a fix sets", "  sound {", "  set \"another\" {\n    what = pour.‸\n  }\n  sound {", []string{"at: a temperature", "leave: a length"}, "what = pour.at"},
		{"the key that a fix puts in place", "  sound {", "  set \"another\" {\n    what = mold.wick\n    to   = \"‸\"\n  }\n  sound {", []string{"cored-cotton-28: Cored, cotton, for small glasses"}, `to   = "cored-cotton-28"`},
		{"the word that a fix puts in place", "  sound {", "  set \"another\" {\n    what = recipe.made_for\n    to   = \"‸\n  }\n  sound {", []string{"sale", "own use", "class"}, `to   = "sale"`},
		{"what it points at", "point_at = pour.at", "point_at = ‸", []string{"mold: Each mold of the recipe, with its item on the shelf."}, "point_at = mold"},
		{"behind a remark", whole, "require  = pour.at # mold.‸", nil, ""},
		{"a name that there is not", whole, "require  = poor.‸", nil, ""},
		{"what stands before has its brackets", whole, `require  = am‸("3 g") > wax.weight`, []string{"mold: Each mold of the recipe, with its item on the shelf."}, ""},
	} {
		t.Run(c.about, func(t *testing.T) {
			h, text, items := offersIn(t, c.from, c.to)
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
			require.GreaterOrEqual(t, len(said), len(c.first), "%q", said)
			if c.first == nil {
				assert.Empty(t, said)
				return
			}
			assert.Equal(t, c.first, said[:len(c.first)])
			if c.after != "" {
				assert.Contains(t, afterTaking(t, h, text, items[0]), c.after)
			}
		})
	}
}

// Behind signs that take more bytes than units, in the two encodings: LSP 3.17,
// PositionEncodingKind. A degree sign has two bytes in UTF-8 and one unit in
// UTF-16; a candle four and two.
func TestRulesOverThePipe(t *testing.T) {
	text := strings.Replace(putty, `when     = mold.seal.kind == "putty"`, `when     = "°🕯" != "x" && mold.seal.kin`, 1)
	line, column16 := 3, len(`  when     = "..." != "x" && mold.seal.`)
	for enc, column := range map[string]int{"utf-16": column16, "utf-8": column16 + 3} {
		e := connect(t, demoShop(t), "shop", strings.Replace(able, `["utf-16"]`, `["`+enc+`"]`, 1))
		uri := e.open(newRule, text)
		about := e.about(uri, "seal.kin", len("seal.kin"))
		var list completionList
		e.call("textDocument/completion", with(about, "context", map[string]any{"triggerKind": 1}), &list)
		require.NotEmpty(t, list.Items)
		var kind completionItem
		for _, item := range list.Items {
			if item.Label == "kind" {
				kind = item
			}
		}
		require.NotNil(t, kind.TextEdit, "%s: %q", enc, labelsOf(list.Items))
		edit := kind.TextEdit.(protocol.TextEdit)
		want := protocol.Range{Start: protocol.Position{Line: uint32(line), Character: uint32(column)}, End: protocol.Position{Line: uint32(line), Character: uint32(column + 3)}}
		assert.Equal(t, want, edit.Range, enc)
		assert.Equal(t, "a text", *kind.Detail)
		var resolved completionItem
		e.call("completionItem/resolve", kind, &resolved)
		assert.Equal(t, "A text, as its item on the shelf says.\n\nWhat it is. Hot-melt glue softens far below the heat of a pour.\n\nOne of: plug, putty, screw, tape, hot-melt glue, magnet, sticker, silicone.",
			resolved.Documentation.(protocol.MarkupContent).Value)
		e.replace(uri, "mold.seal.kin", `mold.seal.kind == "putty"`)
		var hover protocol.Hover
		e.call("textDocument/hover", e.about(uri, "seal.kind", len("seal.k")), &hover)
		want.End.Character++
		assert.Equal(t, want, *hover.Range, enc)
		assert.Contains(t, hover.Contents.(protocol.MarkupContent).Value, "- cool-pour, sound: putty\n- hot-pour, faulty: putty")
		var help protocol.SignatureHelp
		e.call("textDocument/signatureHelp", e.about(uri, `degrees("10`, len(`degrees("1`)), &help)
		require.Len(t, help.Signatures, 1)
		assert.Equal(t, `degrees("10 °F") gives a temperature difference`, help.Signatures[0].Label)
	}
}

// A dot in a figure and a brace of a block were typed for their own sake.
func TestDotsAndBracesElsewhere(t *testing.T) {
	disk := demoShop(t)
	e := connect(t, disk, "shop", able)
	uri := e.open(tide, string(disk[tide].Data))
	ask := func(piece string, further int, trigger string) int {
		var list completionList
		e.call("textDocument/completion", with(e.about(uri, piece, further), "context", map[string]any{"triggerKind": 2, "triggerCharacter": trigger}), &list)
		return len(list.Items)
	}
	e.replace(uri, `weight = "0.6 g"`, `weight = "0." `)
	assert.Zero(t, ask(`"0."`, 3, "."))
	e.replace(uri, `  dye "madder" {`, `  dye "madder" {`)
	assert.Zero(t, ask(`dye "madder" {`, len(`dye "madder" {`), "{"))
	rule := e.open(newRule, putty)
	e.replace(rule, `${show(pour.at)}`, `${`)
	var list completionList
	e.call("textDocument/completion", with(e.about(rule, "${", 2), "context", map[string]any{"triggerKind": 2, "triggerCharacter": "{"}), &list)
	require.NotEmpty(t, list.Items)
	assert.Equal(t, "show", list.Items[0].Label)
}
