package lsp

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"slices"

	"github.com/sourcegraph/jsonrpc2"
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/rules/formula"
	"wickrule/schema"
)

// A rename gives something another key, and everything that names it the same
// one, in all files of the shop. It is made whole or not at all, and never
// changes what any other name in the shop means: a recipe that silently names
// another wick can burn a house down. What cannot be done so is refused with
// the reason (rename_refused.go).

// refuse is a rename that is not made, and why.
func refuse(format string, values ...any) error {
	return &jsonrpc2.Error{Code: requestFailed, Message: fmt.Sprintf(format, values...)}
}

// prepareRename is the key at the cursor, without its quotes. nil: there is
// none.
func (h *here) prepareRename(_ context.Context, p *protocol.PrepareRenameParams) (*protocol.RangeWithPlaceholder, error) {
	m, ok := h.mentionAt(h.offset(p.Position))
	if !ok {
		return nil, nil
	}
	if _, err := h.renamed(&m); err != nil {
		return nil, err
	}
	return &protocol.RangeWithPlaceholder{Range: h.rangeOf(m.inside()), Placeholder: m.key}, nil
}

// renamed is what a rename at a mention is about: the one block that gets
// another key.
func (h *here) renamed(m *mention) (named, error) {
	to := h.resolve(m)
	if !to.found {
		if m.kinds[0] == "rule" && h.ownRule(m.key) {
			return to, refuse("%s is a rule that comes with the program: its name cannot be changed", m.key)
		}
		return to, refuse("no %s here is called %s: write it down first, then it can be renamed", kindWords(m.kinds), m.key)
	}
	// Which of two a recipe means, nobody but its maker knows. Were both to get
	// the new key, one figure for another would be as wrong as before, and
	// harder to find.
	if same := h.defined(to.kinds[0], to.key, to.example); len(same) > 1 {
		return to, refuse("there are %d %s blocks called %s (%s): give all but one another key by hand first, so that it is plain which one the recipes mean",
			len(same), kindWords(to.kinds), to.key, h.linesOf(same))
	}
	return to, nil
}

func (h *here) rename(ctx context.Context, p *protocol.RenameParams) (*protocol.WorkspaceEdit, error) {
	m, ok := h.mentionAt(h.offset(p.Position))
	if !ok {
		return nil, refuse("no key stands here: a rename starts on the key of a stock item, a recipe, a trial or a rule")
	}
	to, err := h.renamed(&m)
	if err != nil {
		return nil, err
	}
	if p.NewName == to.key {
		return &protocol.WorkspaceEdit{}, nil
	}
	changes, err := h.renameTo(ctx, &to, p.NewName)
	if err != nil {
		return nil, err
	}
	for _, other := range h.elsewhere(&to) {
		if err := other.renameToo(ctx, p.NewName, changes); err != nil {
			return nil, err
		}
	}
	edit := h.editOf(changes)
	return &edit, nil
}

// renameToo adds to the changes what a rename changes in another shop that has
// what is renamed.
func (h *seenFrom) renameToo(ctx context.Context, key string, changes map[string][]protocol.TextEdit) error {
	to, err := h.renamed(&h.mention)
	var more map[string][]protocol.TextEdit
	if err == nil {
		more, err = h.renameTo(ctx, &to, key)
	}
	var no *jsonrpc2.Error
	if errors.As(err, &no) {
		return refuse("the shop %s has this too, and there %s", h.called(), no.Message)
	}
	for uri, edits := range more {
		if both, ok := changes[uri]; ok && !slices.Equal(both, edits) {
			return refuse("the shop %s has this too, and there not every place that says %s means it: see to that by hand first", h.called(), to.key)
		}
		changes[uri] = edits
	}
	return err
}

// renameTo is the edits of one shop, by URI, that give something another key.
func (h *here) renameTo(ctx context.Context, to *named, key string) (map[string][]protocol.TextEdit, error) {
	if err := h.free(to, key); err != nil {
		return nil, err
	}
	var edits []schema.Edit
	seen := map[*schema.File][]schema.Span{} // what is known to be read, in files that say either key
	var refused error
	err := h.eachMention(ctx, func(m *mention) {
		if m.key == to.key || m.key == key {
			seen[m.block.File] = append(seen[m.block.File], m.span)
		}
		if refused == nil {
			refused = h.keepsMeaning(m, to, key)
		}
		if h.leadsTo(m, to) {
			if !m.plain() && refused == nil {
				refused = refuse("%s is written in a way that cannot be replaced: write it between quotes, as one word, first", h.lineOf(m.block.File, m.span.Start))
			}
			edits = append(edits, schema.Edit{File: m.block.File, Span: m.inside(), Text: key})
		}
	})
	if err == nil {
		err = refused
	}
	if err == nil {
		err = h.noneUnread(ctx, to, key, seen)
	}
	if err != nil {
		return nil, err
	}
	if spec := schema.Top(to.kinds[0]); spec != nil && spec.Stock {
		edits = append(edits, h.burnedUnder(formula.Renaming{Kind: to.kinds[0], From: to.key, To: key}, edits)...)
	}
	slices.SortStableFunc(edits, func(a, b schema.Edit) int {
		return cmp.Or(cmp.Compare(a.File.Name, b.File.Name), cmp.Compare(a.Span.Start, b.Span.Start))
	})
	return h.edits(edits), nil
}

// lineOf is a place as it is spoken of: "line 3 of recipes/tide.candle.hcl".
func (h *here) lineOf(f *schema.File, at int32) string {
	return fmt.Sprintf("line %d of %s", f.Text.Line(at), f.Name)
}

func (h *here) linesOf(blocks []*schema.Block) string {
	lines := ""
	for i, b := range blocks {
		if i > 0 {
			lines += ", "
		}
		lines += h.lineOf(b.File, b.Span.Start)
	}
	return lines
}
