package lsp

import (
	"fmt"
	"io/fs"
	"path"
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
	"wickrule/schema"
)

// document is an open document. Its text counts, whatever is on disk.
type document struct {
	key     string
	uri     string // as the client spells it
	version int32
	text    string
	root    string // of the shop it belongs to
	name    string // in that shop
}

func (s *server) didOpen(p *protocol.DidOpenTextDocumentParams) error {
	d := p.TextDocument
	key := keyOf(d.URI)
	doc := &document{key: key, uri: d.URI, version: d.Version, text: d.Text}
	s.docs[key] = doc
	doc.root, doc.name = s.homeOf(key)
	if s.makesShop(key) {
		s.rehome()
		return nil
	}
	s.put(doc)
	return nil
}

// makesShop says whether an open document is a shop file that is not on disk:
// while it is open its folder is a shop.
func (s *server) makesShop(key string) bool {
	if path.Base(key) != lint.ShopFileName {
		return false
	}
	_, err := fs.Stat(s.Disk, key)
	return err != nil
}

func (s *server) didChange(p *protocol.DidChangeTextDocumentParams) error {
	doc := s.docs[keyOf(p.TextDocument.URI)]
	if doc == nil {
		return fmt.Errorf("%s is not open", p.TextDocument.URI)
	}
	if p.TextDocument.Version <= doc.version {
		s.Log("version %d of %s came after version %d", p.TextDocument.Version, doc.uri, doc.version)
	}
	for _, change := range p.ContentChanges {
		doc.text = changed(doc.text, s.enc, change)
	}
	doc.version = p.TextDocument.Version
	s.put(doc)
	return nil
}

// changed is a text after one change of the protocol.
func changed(text string, enc encoding, change any) string {
	switch c := change.(type) {
	case protocol.TextDocumentContentChangeEventWhole:
		return c.Text
	case protocol.TextDocumentContentChangeEvent:
		span := mapper{schema.NewText(text), enc}.span(*c.Range)
		return text[:span.Start] + c.Text + text[span.End:]
	}
	return text
}

// didClose gives a file back to the disk.
func (s *server) didClose(p *protocol.DidCloseTextDocumentParams) error {
	key := keyOf(p.TextDocument.URI)
	doc := s.docs[key]
	if doc == nil {
		return fmt.Errorf("%s is not open", p.TextDocument.URI)
	}
	delete(s.docs, key)
	shop := s.shops[doc.root]
	if shop != nil && shop.sent[doc.name] != 0 && doc.root == doc.key { // nothing else says its URI
		s.wire.notify("textDocument/publishDiagnostics", publishDiagnosticsParams{URI: doc.uri, Diagnostics: []diagnostic{}})
		delete(shop.sent, doc.name)
	}
	switch {
	case shop == nil:
	case !s.needed(shop):
		s.drop(shop)
	case s.makesShop(key):
		s.rehome()
	default:
		delete(shop.sent, doc.name) // said again, without a version
		s.reread(shop, doc.name)
		s.checkOpen(shop, doc)
	}
	s.rulesChanged(key, shop)
	return nil
}

// homeOf is the shop a document belongs to, and its name in it. What is no
// file of the house format by its name, or no file at all, is a shop of its
// own.
func (s *server) homeOf(key string) (root, name string) {
	if !strings.HasSuffix(key, lint.FileSuffix) || strings.Contains(key, ":") && !isDrive(key) {
		return key, path.Base(key)
	}
	disk := s.disk()
	if root, ok := lint.ShopAbove(disk, path.Dir(key)); ok {
		return root, lint.Below(root, key)
	}
	if shop := s.takerOf(key); shop != nil {
		return shop.root, lint.FromRoot(shop.root, key)
	}
	return path.Dir(key), path.Base(key)
}

// isDrive says whether a key is a path on a lettered drive: "c:/recipes".
func isDrive(key string) bool { return len(key) > 2 && key[1] == ':' && key[2] == '/' }

// put makes the text of a document that of its file.
func (s *server) put(doc *document) {
	shop := s.shopAt(doc.root)
	if shop.live != nil {
		folders := shop.live.Shop().RuleFolders()
		shop.live.Edit([]*schema.File{schema.Read(doc.name, []byte(doc.text))}, nil)
		s.takeAnew(shop, folders)
		s.renew()
		s.checkOpen(shop, doc)
	} // else it is taken up when the shop has been read
	s.rulesChanged(doc.key, shop)
}
