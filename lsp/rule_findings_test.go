package lsp

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
	"wickrule/rules/shoprule"
)

// newRule is where the rule of these tests stands in the demo shop.
const newRule = "shop/rules/new.candle.hcl"

// Each edit of a rule, and what is found of it at once: the characters, the
// rule and the words.
func TestFindingsInARule(t *testing.T) {
	e := connect(t, demoShop(t), "shop", able)
	uri := e.open(newRule, putty)
	require.Empty(t, e.findings(uri))
	for _, c := range []struct{ about, from, to, found string }{
		{"a faulty example that the rule does not flag", `"212 °F"`, `"205 °F"`,
			`recipe "hot-pour"; rule-example-fails; hot-pour is meant to be faulty, and the rule finds nothing wrong with it`},
		{"a sound example that it flags", `"170 °F"`, `"215 °F"`,
			`recipe "cool-pour"; rule-example-fails; cool-pour is meant to be sound, and the rule speaks of it: A pour at 215 °F (°F); putty holds to 220 °F`},
		{"an example to which it does not apply", `== "putty"`, `== "plug"`,
			`recipe "hot-pour"; rule-example-fails; hot-pour is meant to be faulty, and the rule does not apply to it: it needs mold, pour, and its when must hold` +
				"\nsound; rule-example-fails; the rule was never checked on this sound example: it needs mold, pour, and its when must hold"},
		{"a figure of an example without its unit", `"212 °F"`, `"212"`, `212; unit-missing; 212 needs its unit: write "212 °F" or "212 °C"`},
		{"a step of an example", "step \"pour\" { at = \"212", "step \"poor\" { at = \"212", `"poor"; unknown-step; "poor" is no step that is known; the nearest is "pour"`},
		{"stock of an example that there is not", "with = \"wick-putty\" }\n      step \"pour\" { at = \"212", "with = \"wick-puty\" }\n      step \"pour\" { at = \"212",
			`"wick-puty"; unknown-key; no seal here is called wick-puty; the nearest is wick-putty`},
		{"a name that there is not", "pour.at <=", "pour.att <=", `att; rule-unreadable; a pour has no att; the nearest is at`},
		{"an option that there is not", "option.in_hand", "option.in_hands", `in_hands; rule-unreadable; this rule has no option in_hands; the nearest is in_hand`},
		{"a temperature held against a weight", "require  = pour.at <=", "require  = pour.at <= mold.seal.holds_to && wax.weight <=",
			`wax.weight <= mold.seal.holds_to - option.in_hand; rule-unreadable; these have no order: wax.weight is a weight and mold.seal.holds_to - option.in_hand is a temperature`},
		{"the same behind a sign of two bytes", `when     = mold.seal.kind == "putty"`, `when     = "°" != "x" && pour.at <= wax.weight`,
			`pour.at <= wax.weight; rule-unreadable; these have no order: pour.at is a temperature and wax.weight is a weight`},
		{"in what a message fills in", "${show(pour.at)}", "${show(pour.att)}", `att; rule-unreadable; a pour has no att; the nearest is at`},
		{"an amount that cannot be read", `degrees("10 °F")`, `degrees("10 °G")`, "\"10 °G\"; rule-unreadable; *"},
		{"half typed", "pour.at <=", "pour. <=", `*; syntax; *`},
	} {
		t.Run(c.about, func(t *testing.T) {
			e.t = t
			e.replace(uri, c.from, c.to)
			var said []string
			for _, d := range e.findings(uri) {
				said = append(said, fmt.Sprintf("%s; %v; %s", e.textAt(uri, d.Range), d.Code, d.Message))
			}
			want := strings.Split(c.found, "\n")
			if assert.Len(t, said, len(want), "%q", said) {
				for _, line := range want {
					assert.Condition(t, func() bool {
						for _, s := range said {
							if alike(line, s) {
								return true
							}
						}
						return false
					}, "%q is not among %q", line, said)
				}
			}
			e.replace(uri, c.to, c.from)
			require.Empty(t, e.findings(uri))
		})
	}
}

// alike says whether two lines are the same, part by part; * stands for any.
func alike(want, got string) bool {
	w, g := strings.SplitN(want, "; ", 3), strings.SplitN(got, "; ", 3)
	for i := range w {
		if w[i] != "*" && w[i] != g[i] {
			return false
		}
	}
	return true
}

// What the editor shows of examples is what proving them says, word for word.
func TestEditorAndProofSayTheSame(t *testing.T) {
	for _, text := range []string{putty, strings.Replace(putty, "212", "205", 1), strings.Replace(putty, "170", "215", 1), strings.Replace(putty, `== "putty"`, `!= "putty"`, 1)} {
		h := lookingAt(t, able, puttyFile, text)
		var shown, proved []string
		for _, f := range h.check().Findings {
			if f.Rule.Name == "rule-example-fails" {
				shown = append(shown, h.text.Slice(f.At.Span)+": "+f.Message)
			}
		}
		for _, e := range shoprule.Prove(lint.NewFileView(h.shop, h.file, today), h.file.Blocks[0]).Examples {
			if e.Says != "" {
				proved = append(proved, h.text.Slice(e.At.Span)+": "+e.Says)
			}
		}
		assert.Equal(t, proved, shown)
	}
}

// What was probably meant is offered as a fix. The places are in UTF-16.
func TestFixesOfExpressions(t *testing.T) {
	e := connect(t, demoShop(t), "shop", able)
	uri := e.open(newRule, putty)
	for _, c := range []struct{ from, to, title, put string }{
		{`when     = mold`, `when     = "°" != "x" && mould`, "write mold", "mould"},
		{"pour.at <=", "pour.att <=", "write at", "att"},
		{"option.in_hand", "option.in_hnad", "write in_hand", "in_hnad"},
		{"${show(pour.at)}", "${shwo(pour.at)}", "write show", "shwo"},
		{`== "putty"`, `== "puty"`, `write "putty"`, `"puty"`},
		{"- option.in_hand", `- amount("10 °F")`, `write amount("10 °F")`, ""}, // a temperature less a temperature is a difference
		{"mold.seal.holds_to - option.in_hand", `"180 °F"`, `write amount("180 °F")`, `"180 °F"`},
	} {
		e.replace(uri, c.from, c.to)
		found := e.findings(uri)
		var actions []codeAction
		e.call("textDocument/codeAction", map[string]any{
			"textDocument": map[string]any{"uri": uri}, "range": found[0].Range,
			"context": map[string]any{"diagnostics": found, "only": []string{"quickfix"}},
		}, &actions)
		i := 0
		for i < len(actions) && actions[i].Title != c.title {
			i++
		}
		if c.put == "" {
			assert.Len(t, actions, i, c.title)
		} else if assert.Less(t, i, len(actions), c.title) {
			edits := editsIn(t, actions[i].Edit)
			require.Len(t, edits, 1)
			assert.Equal(t, c.put, e.textAt(uri, edits[0].Range))
			assert.Equal(t, c.title, "write "+edits[0].NewText)
		}
		e.replace(uri, c.to, c.from)
	}
}

// editsIn are the edits of one document that an edit of the workspace makes.
func editsIn(t *testing.T, edit *protocol.WorkspaceEdit) (edits []protocol.TextEdit) {
	t.Helper()
	require.NotNil(t, edit)
	require.Len(t, edit.DocumentChanges, 1)
	for _, e := range edit.DocumentChanges[0].(protocol.TextDocumentEdit).Edits {
		edits = append(edits, e.(protocol.TextEdit))
	}
	return edits
}
