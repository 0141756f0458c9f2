package lsp

import (
	"maps"
	"path"
	"slices"
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
	"wickrule/schema"
)

// snapshot is everything a request may look at, as it stood when the request
// arrived. It never changes.
type snapshot struct {
	enc   encoding
	can   *client
	wants settings
	today string
	rules func(*lint.Shop) []*lint.Rule
	shops map[string]*lint.Shop // by root; of those that have been read
	docs  map[string]opened     // open documents, by key
}

// opened is an open document. Its text is that of its file in its shop.
type opened struct {
	uri     string // as the client spells it
	version int32
	root    string // of its shop
	name    string // in its shop
}

// keyOf is what a document is known by, however its URI is spelled: its path,
// or for what is no file its URI.
func keyOf(uri string) string {
	if p, ok := pathOf(uri); ok {
		return p
	}
	return uri
}

// here is what a request about a document is answered from: the document's
// file, in its shop.
type here struct {
	*snapshot
	mapper
	uri  string
	shop *lint.Shop
	file *schema.File
}

// at is the document of that URI, open or not. False: it is in no shop that
// has been read.
func (s *snapshot) at(uri string) (*here, bool) {
	key := keyOf(uri)
	if doc, ok := s.docs[key]; ok {
		return s.in(s.shops[doc.root], doc.name)
	}
	for root, shop := range s.shops {
		if name := lint.Below(root, key); name != key || root == "." {
			if h, ok := s.in(shop, name); ok {
				return h, true
			}
		}
	}
	return nil, false
}

// in is a file of a shop. False: there is none of that name.
func (s *snapshot) in(shop *lint.Shop, name string) (*here, bool) {
	if shop == nil {
		return nil, false
	}
	f := shop.File(name)
	if f == nil {
		return nil, false
	}
	return s.of(shop, f), true
}

func (s *snapshot) of(shop *lint.Shop, f *schema.File) *here {
	return &here{snapshot: s, mapper: mapper{f.Text, s.enc}, uri: s.uriOf(shop, f.Name), shop: shop, file: f}
}

// uriOf is the URI of a file of a shop: as the client spells it where the file
// is open.
func (s *snapshot) uriOf(shop *lint.Shop, name string) string {
	full := path.Join(shop.Root, name)
	if doc, ok := s.docs[full]; ok {
		return doc.uri
	}
	if doc, ok := s.docs[shop.Root]; ok && doc.name == name { // alone, in a shop of its own
		return doc.uri
	}
	return fileURI(full)
}

// location is where something of the shop stands.
func (h *here) location(p lint.Place) protocol.Location {
	return protocol.Location{URI: h.uriOf(h.shop, p.File.Name), Range: mapper{p.File.Text, h.enc}.rangeOf(p.Span)}
}

// blockAt is the innermost block in which an offset lies, or nil.
func (h *here) blockAt(offset int32) *schema.Block {
	blocks := h.file.Blocks
	var found *schema.Block
	for {
		inner := (*schema.Block)(nil)
		for _, b := range blocks {
			if b.Span.Touches(offset) {
				inner = b
			}
		}
		if inner == nil {
			return found
		}
		found, blocks = inner, inner.Blocks()
	}
}

// valueAt is the attribute of a block at an offset, name or value. False: none
// is there.
func valueAt(b *schema.Block, offset int32) (schema.Value, bool) {
	if b == nil {
		return schema.Value{}, false
	}
	for v := range b.Attrs() {
		if v.NameSpan().Touches(offset) || v.Span().Touches(offset) {
			return v, true
		}
	}
	return schema.Value{}, false
}

// topOf is the top-level block that a block lies in, itself included.
func topOf(b *schema.Block) *schema.Block {
	for b != nil && b.Parent != nil {
		b = b.Parent
	}
	return b
}

// recipeOf is the recipe that a block lies in, itself included, or nil.
func recipeOf(b *schema.Block) *schema.Block {
	if top := topOf(b); top.Is("recipe") {
		return top
	}
	return nil
}

// view looks at a recipe of the document's shop.
func (h *here) view(recipe *schema.Block) *lint.View { return lint.NewView(h.shop, recipe, h.today) }

// check is what the rules say of the document, with the fixes at hand.
func (h *here) check() *lint.Report {
	return lint.RunFile(h.shop, h.rules(h.shop), h.today, h.file.Name)
}

// edits turns byte edits of one shop's files into the protocol's, by URI, in
// the order of their places.
func (h *here) edits(edits []schema.Edit) map[string][]protocol.TextEdit {
	changes := map[string][]protocol.TextEdit{}
	for _, e := range edits {
		uri := h.uriOf(h.shop, e.File.Name)
		changes[uri] = append(changes[uri], protocol.TextEdit{Range: mapper{e.File.Text, h.enc}.rangeOf(e.Span), NewText: e.Text})
	}
	return changes
}

// workspaceEdit turns byte edits into one edit of the workspace. Where the
// client can, the version of each open document goes with it, so that an edit
// of a text that has moved on is refused.
func (h *here) workspaceEdit(edits []schema.Edit) protocol.WorkspaceEdit {
	return h.editOf(h.edits(edits))
}

// editOf is changes by URI as one edit of the workspace.
func (h *here) editOf(changes map[string][]protocol.TextEdit) protocol.WorkspaceEdit {
	if !h.can.Workspace.WorkspaceEdit.DocumentChanges {
		return protocol.WorkspaceEdit{Changes: changes}
	}
	var documents []any
	for _, uri := range slices.Sorted(maps.Keys(changes)) {
		list := changes[uri]
		id := protocol.OptionalVersionedTextDocumentIdentifier{TextDocumentIdentifier: protocol.TextDocumentIdentifier{URI: uri}}
		if doc, ok := h.docs[keyOf(uri)]; ok {
			id.Version = &doc.version
		}
		texts := make([]any, len(list))
		for i, e := range list {
			texts[i] = e
		}
		documents = append(documents, protocol.TextDocumentEdit{TextDocument: id, Edits: texts})
	}
	return protocol.WorkspaceEdit{DocumentChanges: documents}
}

// markup is Markdown for a client that shows it, and the same text for one
// that does not.
func (h *here) markup(markdown string) protocol.MarkupContent {
	if h.can.markdown() {
		return protocol.MarkupContent{Kind: protocol.MarkupKindMarkdown, Value: markdown}
	}
	return protocol.MarkupContent{Kind: protocol.MarkupKindPlainText, Value: plainText(markdown)}
}

// plainText takes the marks of the little Markdown that is written here out of
// a text.
func plainText(markdown string) string {
	var lines []string
	for line := range strings.SplitSeq(markdown, "\n") {
		if strings.HasPrefix(line, "```") || strings.HasPrefix(line, "|---") {
			continue
		}
		lines = append(lines, strings.NewReplacer("**", "", "`", "").Replace(line))
	}
	return strings.Join(lines, "\n")
}
