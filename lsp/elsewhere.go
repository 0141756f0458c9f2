package lsp

import (
	"maps"
	"path"
	"slices"

	"wickrule/lint"
	"wickrule/schema"
)

// What is written in a folder that several shops take their rules from has its
// mentions in all of them: each has its own tunes, concessions and trials.

// elsewhere is what a name leads to as the other shops see it that have been
// read and have the same file.
func (h *here) elsewhere(to *named) []seenFrom {
	self := first(h.defined(to.kinds[0], to.key, to.example))
	if self == nil {
		return nil
	}
	full := path.Join(h.shop.Root, self.File.Name)
	var others []seenFrom
	for _, root := range slices.Sorted(maps.Keys(h.shops)) {
		shop := h.shops[root]
		if shop.Root == h.shop.Root {
			continue
		}
		there, ok := h.in(shop, nameIn(shop, full))
		if !ok {
			continue
		}
		for m := range mentionsOf(there.file) {
			if m.defines && m.span == self.LabelSpan && m.key == to.key {
				others = append(others, seenFrom{there, m, there.resolve(&m)})
				break
			}
		}
	}
	return others
}

// seenFrom is where another shop has what is spoken of.
type seenFrom struct {
	*here
	mention mention
	to      named
}

// nameIn is what a shop calls a file: one of its own, or one that it took. ""
// where it has none there.
func nameIn(shop *lint.Shop, full string) string {
	if within(shop.Root, full) {
		return lint.Below(shop.Root, full)
	}
	for _, f := range shop.Files() {
		if !lint.IsTaken(f.Name) {
			break // those taken come first
		}
		if path.Join(shop.Root, f.Name) == full {
			return f.Name
		}
	}
	return ""
}

// called is the shop as others speak of it.
func (h *here) called() string {
	if h.shop.Config != nil && h.shop.Config.Label != "" {
		return schema.Quote(h.shop.Config.Label)
	}
	return path.Base(h.shop.Root)
}
