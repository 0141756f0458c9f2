package lsp

import (
	"cmp"
	"context"
	"encoding/json"
	"slices"
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

// The kinds of code action that are offered.
const (
	quickFix  = protocol.CodeActionKindQuickFix
	rewriting = protocol.CodeActionKindRefactorRewrite
	fixAll    = "source.fixAll"
)

var codeActionKinds = []protocol.CodeActionKind{quickFix, rewriting, fixAll}

// Why code actions are asked for: the person did, or the cursor moved.
const offeredUnasked = 2

// codeAction is the protocol's, with findings that go back as they came.
type codeAction struct {
	Title       string                  `json:"title"`
	Kind        string                  `json:"kind"`
	Diagnostics []any                   `json:"diagnostics,omitempty"`
	IsPreferred bool                    `json:"isPreferred,omitempty"`
	Disabled    *disabled               `json:"disabled,omitempty"`
	Edit        *protocol.WorkspaceEdit `json:"edit,omitempty"`
	Data        *actionData             `json:"data,omitempty"`
}

// disabled says why an action cannot be done.
type disabled struct {
	Reason string `json:"reason"`
}

// codeActions lists what can be done at a place: the fixes of the findings
// there first, then what turns one way of writing into another.
func (h *here) codeActions(_ context.Context, p *codeActionParams) ([]any, error) {
	a := &actions{here: h, params: p, at: h.span(p.Range)}
	a.block = h.blockAt(a.at.Start)
	a.recipe = recipeOf(a.block)
	if a.wantsOneEach() {
		a.oneEach()
		return a.list()
	}
	if a.wanted(quickFix) {
		found := a.findings()
		a.fixes(found)
		a.stock(found)
		a.steps()
		a.mendFile(found)
		a.concessions(found)
		a.example(found)
	}
	if a.wanted(rewriting) {
		a.loads()
		a.otherUnits()
		a.scale()
		a.burns()
		a.trial()
	}
	if a.asked(fixAll) {
		a.fixAll()
	}
	return a.list()
}

// actions collects what can be done at one place.
type actions struct {
	*here
	params *codeActionParams
	at     schema.Span
	block  *schema.Block // the innermost block at the start of the range, or nil
	recipe *schema.Block // the recipe it lies in, or nil
	all    []codeAction
}

// wanted says whether actions of a kind are asked for.
func (a *actions) wanted(kind string) bool {
	return len(a.params.Context.Only) == 0 || a.asked(kind)
}

// asked says whether actions of a kind are asked for by that kind, or by one
// that holds it: "source" holds "source.fixAll", and "" everything.
func (a *actions) asked(kind string) bool {
	return slices.ContainsFunc(a.params.Context.Only, func(only string) bool {
		return only == "" || kind == only || strings.HasPrefix(kind, only+".")
	})
}

// offer adds an action that makes byte edits, laid out as the files are.
func (a *actions) offer(action codeAction, edits []schema.Edit) {
	edit := a.workspaceEdit(laidOut(edits))
	action.Edit = &edit
	a.all = append(a.all, action)
}

// cannot adds an action that cannot be done, with the reason, for a client
// that shows such and a person that looks for it.
func (a *actions) cannot(title, kind, reason string) {
	if a.can.TextDocument.CodeAction.DisabledSupport && a.params.Context.TriggerKind != offeredUnasked {
		a.all = append(a.all, codeAction{Title: title, Kind: kind, Disabled: &disabled{reason}})
	}
}

// list is the answer: for a client that does not know code actions, commands
// that have it apply the edits.
func (a *actions) list() ([]any, error) {
	out := []any{}
	for i := range a.all {
		action := &a.all[i]
		action.IsPreferred = action.IsPreferred && a.can.TextDocument.CodeAction.IsPreferredSupport
		switch {
		case a.can.TextDocument.CodeAction.CodeActionLiteralSupport != nil:
			out = append(out, action)
		case action.Edit != nil && a.can.Workspace.ApplyEdit:
			out = append(out, protocol.Command{Title: action.Title, Command: commandApply, Arguments: []any{action.Title, action.Edit, a.versions(action.Edit)}})
		}
	}
	return out, nil
}

// laidOut is edits of any files in the order of their places, with what the
// house layout asks for after them.
func laidOut(edits []schema.Edit) []schema.Edit {
	var files []*schema.File
	for _, e := range edits {
		if !slices.Contains(files, e.File) {
			files = append(files, e.File)
		}
	}
	var laid []schema.Edit
	for _, f := range files {
		var own []schema.Edit
		for _, e := range edits {
			if e.File == f {
				own = append(own, e)
			}
		}
		own = schema.Laid(f, own)
		slices.SortStableFunc(own, func(x, y schema.Edit) int { return cmp.Compare(x.Span.Start, y.Span.Start) })
		laid = append(laid, own...)
	}
	return laid
}

// UnmarshalJSON keeps a diagnostic as it came, beside what is looked at.
func (d *sentBack) UnmarshalJSON(data []byte) error {
	type plain sentBack // without this method
	if err := json.Unmarshal(data, (*plain)(d)); err != nil {
		return err
	}
	d.raw = slices.Clone(data)
	return nil
}

// MarshalJSON gives a diagnostic back as it came.
func (d sentBack) MarshalJSON() ([]byte, error) { return d.raw, nil }
