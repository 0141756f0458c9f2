package lsp

import (
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"

	"wickrule/lint"
	"wickrule/schema"
)

// Rules that a shop takes from a folder beside it are read with the shop, and
// anew whenever something in that folder changes, on disk or in an editor. A
// document of such a folder is at home in the first shop that takes it, and
// that shop alone says what is found in it.

// beside is what a shop can take rules from, as the editor has it.
func (s *server) beside(over overlay, root string) lint.Beside {
	return lint.Beside{Disk: over, Root: root, Repository: lint.Repository(over, root), Open: func(folder string) (fs.FS, io.Closer, error) {
		disk, closer, err := s.Folder(folder)
		if err != nil {
			return nil, nil, err
		}
		return over.below(folder, disk), closer, nil
	}}
}

// take takes the rules of a shop's folders anew.
func (s *server) take(shop *shopState) {
	for _, e := range shop.live.Take(s.beside(s.disk(), shop.root)) {
		s.Log("%s: %v", path.Join(shop.root, e.Name), e.Err)
	}
	s.renew()
}

// takeAnew takes the rules where the shop names other folders than it did.
func (s *server) takeAnew(shop *shopState, before []schema.Item) {
	same := func(a, b schema.Item) bool { return a.Text == b.Text }
	if !slices.EqualFunc(before, shop.live.Shop().RuleFolders(), same) {
		s.take(shop)
		s.adopt(shop)
	}
}

// takes says whether a shop takes rules from the folder that a path lies in,
// and below from one below that path.
func (shop *shopState) takes(key string) (it, below bool) {
	if shop.live == nil {
		return false, false
	}
	for _, t := range shop.live.Shop().Taken() {
		if t.Path != "" {
			it, below = it || within(t.Path, key), below || within(key, t.Path)
		}
	}
	return it, below
}

// rulesChanged has every shop take the rules anew that it takes from where
// something changed, but for the one that knows of it.
func (s *server) rulesChanged(key string, knows *shopState) {
	for _, shop := range s.shops {
		if it, below := shop.takes(key); shop != knows && (it || below) {
			s.take(shop)
		}
	}
}

// takerOf is the first shop, by its root, that takes the rules of a file; nil:
// none does.
func (s *server) takerOf(key string) (first *shopState) {
	for _, shop := range s.shops {
		if it, _ := shop.takes(key); it && (first == nil || strings.Compare(shop.root, first.root) < 0) {
			first = shop
		}
	}
	return first
}

// isTaken says whether a folder is no shop and another one takes its rules.
func (s *server) isTaken(root string) bool {
	if _, ok := lint.ShopAbove(s.disk(), root); ok {
		return false
	}
	taker := s.takerOf(root)
	return taker != nil && taker.root != root
}

// speaksFor says whether it is this shop that says what is found in a file that
// it took.
func (s *server) speaksFor(shop *shopState, name string) bool {
	root, _ := s.homeOf(path.Join(shop.root, name))
	return root == shop.root
}

// adopt moves open documents, and what was read of their folders by itself, to
// the shop that takes them.
func (s *server) adopt(shop *shopState) {
	for _, doc := range s.docs {
		if root, name := s.homeOf(doc.key); root != doc.root {
			doc.root, doc.name = root, name
		}
	}
	for root, other := range s.shops {
		if other != shop && other.live != nil && s.isTaken(root) {
			s.drop(other)
		}
	}
}
