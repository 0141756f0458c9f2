package lsp

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"slices"

	"github.com/sourcegraph/jsonrpc2"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
	"wickrule/rules/sheet"
	"wickrule/schema"
)

// The commands that a client can have executed.
const (
	commandApply    = "wickrule.apply"    // what a code action does: its title, its edit, and the versions it is about by URI
	commandExplain  = "wickrule.explain"  // the name of a rule; answers with Markdown
	commandMendFile = "wickrule.mendFile" // the URI of a document
	commandMendShop = "wickrule.mendShop" // the URI of any document of the shop
	commandSheet    = "wickrule.sheet"    // the URI of a document and the key of a recipe of its shop; answers with Markdown
)

// commandNames are the commands that are announced.
func commandNames() []string {
	return []string{commandApply, commandExplain, commandMendFile, commandMendShop, commandSheet}
}

// command is one that the client asks for.
type command struct {
	*snapshot
	ctx       context.Context
	server    *server
	name      string
	arguments []json.RawMessage
}

func executeCommand(ctx context.Context, s *server, now *snapshot, params json.RawMessage) (any, error) {
	p, err := decode[struct {
		Command   string            `json:"command"`
		Arguments []json.RawMessage `json:"arguments"`
	}](params)
	if err != nil {
		return nil, err
	}
	c := &command{snapshot: now, ctx: ctx, server: s, name: p.Command, arguments: p.Arguments}
	switch c.name {
	case commandApply:
		return c.apply()
	case commandExplain:
		return c.explain()
	case commandMendFile:
		return c.mend(false)
	case commandMendShop:
		return c.mend(true)
	case commandSheet:
		return c.sheet()
	}
	return nil, &jsonrpc2.Error{Code: jsonrpc2.CodeInvalidParams, Message: fmt.Sprintf("there is no command %s: %s", c.name, schema.NearestOrKnown(c.name, commandNames(), ""))}
}

// failed is the error of what was asked for rightly and could not be done.
func failed(message string) error {
	return &jsonrpc2.Error{Code: requestFailed, Message: message}
}

// take reads the arguments, each into one of those given. What says in words
// what they are.
func (c *command) take(what string, into ...any) error {
	wrong := &jsonrpc2.Error{Code: jsonrpc2.CodeInvalidParams, Message: c.name + " takes " + what}
	if len(c.arguments) != len(into) {
		return wrong
	}
	for i, argument := range c.arguments {
		if string(argument) == "null" || json.Unmarshal(argument, into[i]) != nil {
			return wrong
		}
	}
	return nil
}

// mend puts right what is safe in a document, or in its whole shop, and says
// what was done.
func (c *command) mend(whole bool) (any, error) {
	var uri string
	if err := c.take("one argument, the URI of a document", &uri); err != nil {
		return nil, err
	}
	h, ok := c.at(uri)
	if !ok {
		return nil, noDocument(uri)
	}
	file := h.file.Name
	if whole {
		file = ""
	}
	m := h.mend(file)
	if len(m.edits) > 0 {
		if err := c.change("put right what is safe", h.workspaceEdit(m.edits)); err != nil {
			return nil, err
		}
	}
	c.server.wire.notify("window/showMessage", protocol.ShowMessageParams{Type: protocol.MessageTypeInfo, Message: m.told()})
	return m.told(), nil
}

// change has the client change texts.
func (c *command) change(label string, edit any) error {
	if !c.can.Workspace.ApplyEdit {
		return failed("this editor does not let a server change texts: workspace/applyEdit is not among what it says it can do")
	}
	var result struct {
		Applied       bool   `json:"applied"`
		FailureReason string `json:"failureReason"`
	}
	params := struct {
		Label string `json:"label"`
		Edit  any    `json:"edit"`
	}{label, edit}
	if err := c.server.conn.Call(c.ctx, "workspace/applyEdit", params, &result); err != nil {
		return failed("the editor did not change the texts: " + err.Error())
	}
	if !result.Applied {
		why := result.FailureReason
		if why == "" {
			why = "it gave no reason; a text may have changed meanwhile"
		}
		return failed("the editor did not change the texts: " + why)
	}
	return nil
}

// apply makes the edit of a code action, for a client that knows commands
// only, unless a text has changed since.
func (c *command) apply() (any, error) {
	var title string
	var edit json.RawMessage
	var versions map[string]int32
	if err := c.take("three arguments, as a code action gives them: its title, its edit and the versions it is about", &title, &edit, &versions); err != nil {
		return nil, err
	}
	for _, uri := range slices.Sorted(maps.Keys(versions)) {
		if doc, ok := c.docs[keyOf(uri)]; !ok || doc.version != versions[uri] {
			return nil, &jsonrpc2.Error{Code: contentModified, Message: uri + " has changed since: ask again"}
		}
	}
	return nil, c.change(title, edit)
}

// versions are those of the open documents that an edit is about, by URI.
func (h *here) versions(edit *protocol.WorkspaceEdit) map[string]int32 {
	versions := map[string]int32{}
	note := func(uri string) {
		if doc, ok := h.docs[keyOf(uri)]; ok {
			versions[uri] = doc.version
		}
	}
	for uri := range edit.Changes {
		note(uri)
	}
	for _, change := range edit.DocumentChanges {
		if of, ok := change.(protocol.TextDocumentEdit); ok {
			note(of.TextDocument.URI)
		}
	}
	return versions
}

// sheet is the batch sheet of a recipe, in Markdown.
func (c *command) sheet() (any, error) {
	var uri, key string
	if err := c.take("two arguments, the URI of a document and the key of a recipe of its shop", &uri, &key); err != nil {
		return nil, err
	}
	h, ok := c.at(uri)
	if !ok {
		return nil, noDocument(uri)
	}
	recipe := h.shop.Find("recipe", key)
	if recipe == nil {
		return nil, failed(fmt.Sprintf("there is no recipe %q in this shop: %s", key, schema.NearestOrKnown(key, h.shop.Keys("recipe"), `"`)))
	}
	made, err := sheet.Make(h.shop, recipe, sheet.Options{Today: h.today, Rules: h.rules})
	if err != nil {
		return nil, failed(err.Error())
	}
	var text bytes.Buffer
	if err := made.Markdown(&text); err != nil {
		return nil, failed(err.Error())
	}
	return text.String(), nil
}

// explain tells about a rule, in Markdown.
func (c *command) explain() (any, error) {
	var name string
	if err := c.take("one argument, the name of a rule", &name); err != nil {
		return nil, err
	}
	var names []string
	for _, root := range append(slices.Sorted(maps.Keys(c.shops)), "") {
		shop := c.shops[root]
		if shop == nil {
			shop = lint.NewShop(root, nil)
		}
		for _, rule := range c.rules(shop) {
			if rule.Name == name {
				return explanation(shop, rule), nil
			}
			names = append(names, rule.Name)
		}
	}
	slices.Sort(names)
	return nil, &jsonrpc2.Error{Code: jsonrpc2.CodeInvalidParams, Message: fmt.Sprintf("there is no rule %q: %s", name, schema.NearestOrKnown(name, slices.Compact(names), `"`))}
}
