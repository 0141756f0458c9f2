package lsp

import (
	"errors"
	"io/fs"
	"math"
	"path"
	"runtime"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// shopState is a shop that some open document or workspace folder needs.
type shopState struct {
	root  string
	live  *lint.Live        // nil while it is being read
	ready chan struct{}     // closed once it has been read
	stale map[string]bool   // files that changed on disk meanwhile
	sent  map[string]uint64 // the sum of what was last published, by file
}

// shopAt is the shop with that root. A new one is read beside the loop.
func (s *server) shopAt(root string) *shopState {
	if shop := s.shops[root]; shop != nil {
		return shop
	}
	shop := &shopState{root: root, ready: make(chan struct{}), stale: map[string]bool{}, sent: map[string]uint64{}}
	s.shops[root] = shop
	if doc := s.docs[root]; doc != nil && doc.root == root { // a document that is a shop of its own
		shop.live = lint.NewLive(lint.NewShop(root, nil), s.Rules, s.Today())
		close(shop.ready)
		return shop
	}
	over := s.disk()
	s.calls.run(func() {
		live, errs := s.read(over, root)
		s.inbox.put(func() { s.hasRead(shop, live, errs) })
	})
	return shop
}

// read reads and checks a whole shop. It runs beside the loop.
func (s *server) read(over overlay, root string) (*lint.Live, []lint.ReadError) {
	progress := s.progress("Reading " + path.Base("/"+root))
	defer progress.end()
	var shop *lint.Shop
	var errs []lint.ReadError
	if folder, closer, err := s.Folder(root); err != nil {
		errs = []lint.ReadError{{Name: root, Err: err}}
		shop, _ = lint.Load(over.below(root, nothing{}), root, nil)
	} else {
		defer closer.Close()
		shop, errs = lint.Load(over.below(root, folder), root, progress.files)
	}
	shop, more := shop.Take(s.beside(over, root))
	errs = append(errs, more...)
	live := lint.NewLive(shop, s.Rules, s.Today())
	live.Settle(nil, math.MaxInt)
	runtime.GC()
	return live, errs
}

// nothing is a file system without files.
type nothing struct{}

func (nothing) Open(name string) (fs.File, error) {
	return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
}

// hasRead takes a shop up that has been read, with what happened meanwhile.
func (s *server) hasRead(shop *shopState, live *lint.Live, errs []lint.ReadError) {
	if s.shops[shop.root] != shop {
		close(shop.ready) // whoever waited for it is answered from what there is now
		return            // no longer wanted
	}
	for _, e := range errs {
		s.Log("%s: %v", path.Join(shop.root, e.Name), e.Err)
	}
	shop.live = live
	if s.isTaken(shop.root) {
		s.drop(shop) // what is to be said of rules is said where they are taken
		close(shop.ready)
		return
	}
	s.adopt(shop)
	for name := range shop.stale {
		s.reread(shop, name)
	}
	for _, doc := range s.docs {
		if doc.root != shop.root {
			continue
		}
		if f := live.Shop().File(doc.name); f == nil || f.Text.String() != doc.text {
			live.Edit([]*schema.File{schema.Read(doc.name, []byte(doc.text))}, nil)
		}
	}
	s.renew()
	close(shop.ready)
	s.settleOpen(shop)
	for _, f := range live.Shop().Files() {
		s.publish(shop, f.Name, s.isOpen(shop, f.Name))
	}
}

// reread takes a file up as it is on disk, or out where it is gone.
func (s *server) reread(shop *shopState, name string) {
	if shop.live == nil {
		shop.stale[name] = true
		return
	}
	if lint.IsTaken(name) {
		s.take(shop)
		return
	}
	folders := shop.live.Shop().RuleFolders()
	defer func() { s.takeAnew(shop, folders) }()
	f, err := s.fromDisk(shop.root, name)
	if err != nil {
		s.Log("%s: %v", path.Join(shop.root, name), err)
	}
	if f != nil {
		if now := shop.live.Shop().File(name); now == nil || now.Text.String() != f.Text.String() {
			shop.live.Edit([]*schema.File{f}, nil)
		}
		s.renew()
		return
	}
	shop.live.Edit(nil, []string{name})
	s.renew()
	s.publish(shop, name, false)
	delete(shop.sent, name)
}

// fromDisk reads a file of a shop; nil where it is gone.
func (s *server) fromDisk(root, name string) (*schema.File, error) {
	folder, closer, err := s.Folder(root)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	defer closer.Close()
	if _, err := fs.Stat(folder, name); errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	return lint.ReadFile(folder, name)
}

// reading lists what a request has to wait for: the shop of its document, or
// all shops where it is about none, or about what several can share.
func (s *server) reading(method string, params []byte) (wait []<-chan struct{}) {
	root := ""
	everywhere := method == "textDocument/rename" || method == "textDocument/references"
	if p, err := decode[aboutDocument](params); err == nil {
		if doc := s.docs[keyOf(p.TextDocument.URI)]; doc != nil && !everywhere {
			root = doc.root
		}
	}
	for _, shop := range s.shops {
		if shop.live == nil && (root == "" || root == shop.root) {
			wait = append(wait, shop.ready)
		}
	}
	return wait
}

// isOpen is the open document that is that file of the shop, or nil.
func (s *server) docOf(shop *shopState, name string) *document {
	if doc := s.docs[path.Join(shop.root, name)]; doc != nil && doc.root == shop.root {
		return doc
	}
	if doc := s.docs[shop.root]; doc != nil && doc.root == shop.root && doc.name == name {
		return doc
	}
	return nil
}

func (s *server) isOpen(shop *shopState, name string) bool { return s.docOf(shop, name) != nil }

// needed says whether some workspace folder or open document still needs a
// shop.
func (s *server) needed(shop *shopState) bool {
	for _, doc := range s.docs {
		if doc.root == shop.root {
			return true
		}
	}
	for _, folder := range s.folders {
		if within(folder, shop.root) || within(shop.root, folder) {
			return true
		}
	}
	return false
}

// within says whether a path is a folder itself or lies below it.
func within(folder, p string) bool {
	return folder == "." || p == folder || strings.HasPrefix(p, folder+"/")
}

// drop forgets a shop, and has the client forget its findings.
func (s *server) drop(shop *shopState) {
	for name := range shop.sent {
		s.clear(shop, name)
	}
	delete(s.shops, shop.root)
	s.renew()
}

// rehome finds out anew which file belongs to which shop: a shop file came or
// went.
func (s *server) rehome() {
	for _, shop := range s.shops {
		s.drop(shop)
	}
	for _, doc := range s.docs {
		doc.root, doc.name = s.homeOf(doc.key)
		s.put(doc)
	}
	for _, folder := range s.folders {
		s.readFolder(folder)
	}
}

// readFolder reads every shop in a workspace folder.
func (s *server) readFolder(folder string) {
	over := s.disk()
	s.calls.run(func() {
		asked, _ := lint.Discover(over, []string{folder})
		s.inbox.put(func() {
			for _, a := range asked {
				s.shopAt(a.Root)
			}
		})
	})
}
