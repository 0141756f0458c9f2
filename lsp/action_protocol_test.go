package lsp

import (
	"context"
	"encoding/json"
	"strings"
	"testing"

	"github.com/sourcegraph/jsonrpc2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/examples"
	"wickrule/lint"
	"wickrule/rules"
	"wickrule/schema"
)

// askRaw is the answer to a request for code actions as it comes over the wire.
func (e *editor) askRaw(uri, piece string, more map[string]any) []map[string]any {
	e.t.Helper()
	where := e.position(uri, piece, 0)
	context := map[string]any{"diagnostics": []any{}}
	for name, value := range more {
		context[name] = value
	}
	var raw json.RawMessage
	e.call("textDocument/codeAction", map[string]any{
		"textDocument": map[string]any{"uri": uri}, "range": protocol.Range{Start: where, End: where}, "context": context,
	}, &raw)
	require.NotEqual(e.t, "null", string(raw))
	var list []map[string]any
	require.NoError(e.t, json.Unmarshal(raw, &list))
	return list
}

// failing is the error that a request is answered with.
func (e *editor) failing(method string, params any) *jsonrpc2.Error {
	e.t.Helper()
	err := e.conn.Call(context.Background(), method, params, nil)
	var failed *jsonrpc2.Error
	require.ErrorAs(e.t, err, &failed)
	return failed
}

func kindsOf(list []map[string]any) map[string]int {
	kinds := map[string]int{}
	for _, a := range list {
		kinds[a["kind"].(string)]++
	}
	return kinds
}

func TestActionsOverTheWire(t *testing.T) {
	disk := demoShop(t)
	e := connect(t, disk, "shop", able)
	options := e.result.Capabilities.CodeActionProvider.(protocol.CodeActionOptions)
	assert.Equal(t, []string{"quickfix", "refactor.rewrite", "source.fixAll"}, options.CodeActionKinds)
	uri := e.open(tide, string(disk[tide].Data))
	e.findings(uri)
	e.replace(uri, `"5 % of wax"`, `"7 % of wax"`)
	sent := e.findings(uri)[0]
	raw, err := json.Marshal(sent)
	require.NoError(t, err)
	var asSent map[string]any
	require.NoError(t, json.Unmarshal(raw, &asSent))
	asSent["data"] = map[string]any{"rule": "fragrance-over-limit", "further": []any{1.0, nil}} // what a client adds, comes back too

	list := e.askRaw(uri, `"7 % of wax"`, map[string]any{"diagnostics": []any{asSent}})
	first := list[0]
	assert.Equal(t, "lower the load to 6 % of wax", first["title"])
	assert.Equal(t, "quickfix", first["kind"])
	assert.Equal(t, true, first["isPreferred"])
	assert.Equal(t, []any{asSent}, first["diagnostics"])
	where := e.position(uri, `"7 % of wax"`, 0)
	change := map[string]any{
		"textDocument": map[string]any{"uri": uri, "version": 2.0},
		"edits": []any{map[string]any{"newText": `"6 % of wax"`, "range": map[string]any{
			"start": map[string]any{"line": float64(where.Line), "character": float64(where.Character)},
			"end":   map[string]any{"line": float64(where.Line), "character": float64(where.Character + 12)},
		}}},
	}
	assert.Equal(t, map[string]any{"documentChanges": []any{change}}, first["edit"])

	// the kinds asked for hold those below them
	for only, want := range map[string]map[string]int{
		"quickfix": {"quickfix": 2}, "refactor": {"refactor.rewrite": 3}, "refactor.rewrite": {"refactor.rewrite": 3},
		"refactor.extract": {}, "source": {}, "quick": {}, "": {"quickfix": 2, "refactor.rewrite": 3},
	} {
		assert.Equal(t, want, kindsOf(e.askRaw(uri, `"7 % of wax"`, map[string]any{"only": []string{only}})), only)
	}
	// what cannot be done is told to who asks for it only
	disabled := func(more map[string]any) (n int) {
		for _, a := range e.askRaw(uri, `"7 % of wax"`, more) {
			if a["disabled"] != nil {
				assert.Nil(t, a["edit"])
				n++
			}
		}
		return n
	}
	assert.Equal(t, 1, disabled(map[string]any{"triggerKind": 1}))
	assert.Equal(t, 0, disabled(map[string]any{"triggerKind": 2}))

	// a fault whose repair is safe: put right by itself, or with all of its kind in the file
	e.replace(uri, `"3/8 in"`, `3/8 in`)
	e.findings(uri)
	var all map[string]any
	for _, a := range e.askRaw(uri, "3/8 in", map[string]any{"only": []string{"quickfix"}}) {
		if a["title"] == mendTitle {
			all = a
		}
	}
	require.NotNil(t, all)
	assert.Equal(t, all["edit"], e.askRaw(uri, "recipe", map[string]any{"only": []string{"source.fixAll"}})[0]["edit"])
}

// An older client: no literals, no versions, no preferred or disabled actions.
func TestActionsAsCommands(t *testing.T) {
	disk := demoShop(t)
	e := connect(t, disk, "shop", `{"workspace": {"applyEdit": true}}`)
	assert.Equal(t, true, e.result.Capabilities.CodeActionProvider)
	uri := e.open(tide, string(disk[tide].Data))
	e.replace(uri, `"5 % of wax"`, `"7 % of wax"`)
	e.findings(uri)
	list := e.askRaw(uri, `"7 % of wax"`, map[string]any{"only": []string{"quickfix"}})
	require.Len(t, list, 1)
	assert.Equal(t, "lower the load to 6 % of wax", list[0]["title"])
	assert.Equal(t, commandApply, list[0]["command"])
	applied := make(chan protocol.ApplyWorkspaceEditParams, 1)
	e.mu.Lock()
	e.asked["workspace/applyEdit"] = func(raw json.RawMessage) any {
		var p protocol.ApplyWorkspaceEditParams
		assert.NoError(t, json.Unmarshal(raw, &p))
		applied <- p
		return map[string]any{"applied": true}
	}
	e.mu.Unlock()
	run := map[string]any{"command": list[0]["command"], "arguments": list[0]["arguments"]}
	e.call("workspace/executeCommand", run, nil)
	got := <-applied
	assert.Equal(t, "lower the load to 6 % of wax", *got.Label)
	require.Len(t, got.Edit.Changes[uri], 1)
	assert.Equal(t, `"6 % of wax"`, got.Edit.Changes[uri][0].NewText)
	// a text that moved on is left alone
	e.replace(uri, "Tide and thyme pillar", "Thyme")
	assert.EqualValues(t, contentModified, e.failing("workspace/executeCommand", run).Code)
	// nothing can be done without a way to do it
	e = connect(t, disk, "shop", `{}`)
	uri = e.open(tide, strings.Replace(string(disk[tide].Data), `"5 % of wax"`, `"7 % of wax"`, 1))
	assert.Empty(t, e.askRaw(uri, `"7 % of wax"`, nil))
}

// A client that asks again for the edits gets them made then, of the text that
// it was offered for.
func TestMendingWhenChosen(t *testing.T) {
	disk := demoShop(t)
	e := connect(t, disk, "shop", strings.Replace(able, `"disabledSupport": true`, `"resolveSupport": {"properties": ["edit"]}`, 1))
	uri := e.open(tide, strings.Replace(string(disk[tide].Data), `"3/8 in"`, `3/8 in`, 1))
	offered := e.askRaw(uri, "recipe", map[string]any{"only": []string{"source.fixAll"}})
	require.Len(t, offered, 1)
	assert.Nil(t, offered[0]["edit"])
	offered[0]["theirs"] = "kept"
	var chosen map[string]any
	e.call("codeAction/resolve", offered[0], &chosen)
	assert.Equal(t, "kept", chosen["theirs"])
	raw, err := json.Marshal(chosen["edit"])
	require.NoError(t, err)
	assert.Contains(t, string(raw), `"version":1`)
	assert.Contains(t, string(raw), `leave = \"3/8 in\"`)
	e.replace(uri, "Tide and thyme pillar", "Thyme")
	assert.EqualValues(t, contentModified, e.failing("codeAction/resolve", offered[0]).Code)
	e.call("codeAction/resolve", map[string]any{"title": "another's"}, &chosen)
	assert.Equal(t, "another's", chosen["title"])
}

func TestCommands(t *testing.T) {
	disk := demoShop(t)
	e := connect(t, disk, "shop", able)
	assert.Equal(t, commandNames(), e.result.Capabilities.ExecuteCommandProvider.Commands)
	text := strings.Replace(string(disk[tide].Data), `"3/8 in"`, `3/8 in`, 1)
	uri := e.open(tide, text)
	e.findings(uri)
	edits := make(chan protocol.WorkspaceEdit, 1)
	answer := map[string]any{"applied": true}
	e.mu.Lock()
	e.asked["workspace/applyEdit"] = func(raw json.RawMessage) any {
		var p protocol.ApplyWorkspaceEditParams
		assert.NoError(t, json.Unmarshal(raw, &p))
		edits <- p.Edit
		return answer
	}
	e.mu.Unlock()
	execute := func(name string, arguments ...any) map[string]any {
		return map[string]any{"command": name, "arguments": arguments}
	}
	var told string
	for _, name := range []string{commandMendFile, commandMendShop} {
		e.call("workspace/executeCommand", execute(name, uri), &told)
		assert.Equal(t, "1 repair made", told)
		edit := <-edits
		require.Len(t, edit.DocumentChanges, 1)
		change := edit.DocumentChanges[0].(protocol.TextDocumentEdit)
		assert.Equal(t, uri, change.TextDocument.URI)
		assert.EqualValues(t, 1, *change.TextDocument.Version)
		require.Len(t, change.Edits, 1)
	}
	e.call("workspace/executeCommand", execute(commandExplain, "fragrance-over-limit"), &told)
	assert.True(t, strings.HasPrefix(told, "# fragrance-over-limit\n\n"), told)
	for _, r := range rules.All() {
		if r.Name == "fragrance-over-limit" {
			assert.Contains(t, told, r.Why)
			assert.Contains(t, told, r.Remedy)
			assert.Contains(t, told, r.Source)
		}
	}
	e.call("workspace/executeCommand", execute(commandSheet, uri, "tide-pillar"), &told)
	assert.Contains(t, told, "Tide and thyme pillar")
	assert.Contains(t, told, "Northlight paraffin, pillar grade")

	for _, c := range []struct {
		params any
		code   int
		says   string
	}{
		{execute(commandMendFile), jsonrpc2.CodeInvalidParams, "wickrule.mendFile takes one argument, the URI of a document"},
		{execute(commandMendFile, 7), jsonrpc2.CodeInvalidParams, "takes one argument"},
		{execute(commandMendFile, nil), jsonrpc2.CodeInvalidParams, "takes one argument"},
		{execute(commandMendShop, "file:///elsewhere/a.candle.hcl"), requestFailed, "is not open, and in no shop that is"},
		{execute(commandExplain, "fragrance-over-limt"), jsonrpc2.CodeInvalidParams, `the nearest is "fragrance-over-limit"`},
		{execute(commandExplain, "a", "b"), jsonrpc2.CodeInvalidParams, "takes one argument, the name of a rule"},
		{execute(commandSheet, uri), jsonrpc2.CodeInvalidParams, "takes two arguments"},
		{execute(commandSheet, uri, "tide-piller"), requestFailed, `there is no recipe "tide-piller" in this shop`},
		{execute(commandApply, "x", nil, nil), jsonrpc2.CodeInvalidParams, "takes three arguments"},
		{execute("wickrule.mendFiles", uri), jsonrpc2.CodeInvalidParams, "there is no command wickrule.mendFiles"},
		{map[string]any{}, jsonrpc2.CodeInvalidParams, "there is no command"},
	} {
		got := e.failing("workspace/executeCommand", c.params)
		assert.EqualValues(t, c.code, got.Code, c.says)
		assert.Contains(t, got.Message, c.says)
	}
	// the editor refuses, and says why
	e.mu.Lock()
	answer = map[string]any{"applied": false, "failureReason": "the text has moved on"}
	e.mu.Unlock()
	assert.Contains(t, e.failing("workspace/executeCommand", execute(commandMendFile, uri)).Message, "the text has moved on")
	<-edits
	// or cannot
	e = connect(t, disk, "shop", `{}`)
	uri = e.open(tide, text)
	assert.Contains(t, e.failing("workspace/executeCommand", execute(commandMendFile, uri)).Message, "does not let a server change texts")
}

// Mending a whole shop reaches files that are not open, and does what the
// command line does.
func TestMendingAShop(t *testing.T) {
	shop := loaded(t, examples.Faulty())
	s := snapshotOf(t, shop)
	m := s.of(shop, shop.Files()[0]).mend("")
	want := lint.Mend(shop, func(*lint.Shop) []*lint.Rule { return rules.All() }, today, lint.MendOptions{})
	edit := s.of(shop, shop.Files()[0]).workspaceEdit(m.edits)
	got := after(t, shop, &edit)
	require.NotEmpty(t, want.Changed)
	for _, c := range want.Changed {
		assert.Equal(t, c.Text, got[c.File.Name])
	}
	assert.Contains(t, m.told(), numbered(len(want.Applied), "repair")+" made")
	assert.Contains(t, m.told(), numbered(len(want.Withheld), "repair")+" left to you")
}

// Half-typed text, with characters of every width: every prefix of a recipe
// gets an answer, and no edit reaches outside the text.
func TestActionsOnEveryPrefix(t *testing.T) {
	shop := loaded(t, examples.Shop())
	whole := strings.Replace(shop.File(tideName).Text.String(), "Tide and thyme pillar", "Tide \U0001F56F e\u0301 °", 1)
	step := 3
	if testing.Short() {
		step = 20
	}
	for end := 0; end < len(whole) && end < 1500; end += step {
		f := schema.Read(tideName, []byte(whole[:end]))
		now := shop.With(f)
		s := snapshotOf(t, now)
		for _, a := range ask(t, s, now, f, schema.Span{Start: 0, End: int32(end)}) {
			if a.Edit != nil {
				after(t, now, a.Edit)
			}
		}
		for _, a := range ask(t, s, now, f, schema.Span{Start: int32(end), End: int32(end)}) {
			if a.Edit != nil {
				after(t, now, a.Edit)
			}
		}
	}
}

// The same actions, whatever ends the lines, and whatever counts a character.
func TestActionsInEveryEncodingAndLineEnd(t *testing.T) {
	shop, f := changedDemo(t, tideName, `"5 % of wax"`, `"7 % of wax"`)
	for _, end := range []string{"\n", "\r\n", "\r"} {
		text := strings.ReplaceAll(strings.Replace(f.Text.String(), "Tide and thyme pillar", "Tide \U0001F56F", 1), "\n", end)
		f := schema.Read(tideName, []byte(text))
		now := shop.With(f)
		a := titled(ask(t, snapshotOf(t, now), now, f, at(t, f, `"7 % of wax"`)), "state it as a weight: 86.8 g")
		require.NotNil(t, a)
		want := strings.Replace(text, `load = "7 % of wax"`, `weight = "86.8 g"`, 1)
		assert.Equal(t, want, after(t, now, a.Edit)[tideName])
	}
}

func TestDifferences(t *testing.T) {
	for _, c := range []struct{ old, now string }{
		{"", "a\n"}, {"a\n", ""}, {"a\nb\nc\n", "a\nx\nc\n"}, {"a\nb", "a\nb\n"}, {"a\r\nb\r\n", "b\r\na\r\n"}, {"a\rb\rc", "a\rc"},
		{"a\nb\nc\nd\ne\n", "b\nc\nx\ne\nf\n"}, {"a\n", "a\n"}, {"x\nx\nx\n", "x\nx\n"},
	} {
		f := schema.Read("a.candle.hcl", []byte(c.old))
		edits := differences(f, c.now)
		got, err := schema.Apply(c.old, edits)
		require.NoError(t, err)
		assert.Equal(t, c.now, got, "%q", c.old)
	}
	f := schema.Read("a.candle.hcl", []byte("a\nb\nc\nd\n"))
	assert.Len(t, differences(f, "A\nb\nc\nD\n"), 2, "what is the same stays")
}
