package lint

import (
	"slices"

	"wickrule/schema"
)

// difference is what an edit of some files changed in a shop.
type difference struct {
	before, after *Shop
	names         []string // of the files
}

// rules says whether the shop's own rules, or the shop block that tunes them,
// are others than they were.
func (d difference) rules() bool {
	return !sameBlocks(d.before.Rules(), d.after.Rules()) || !sameBlocks(d.before.configs.list(), d.after.configs.list())
}

// sameBlocks says whether two lists say the same, in the same order and files.
func sameBlocks(a, b []*schema.Block) bool {
	return slices.EqualFunc(a, b, func(x, y *schema.Block) bool {
		return x == y || x.File.Name == y.File.Name && schema.Same(x, y)
	})
}

// each tells of everything that a check may have looked at and that would not
// look the same now.
func (d difference) each(changed func(look)) {
	if (d.before.broken == 0) != (d.after.broken == 0) {
		changed(look{at: anyBroken})
	}
	if (len(d.before.recipes.pages) == 0) != (len(d.after.recipes.pages) == 0) {
		changed(look{at: anyRecipe})
	}
	for _, name := range d.names {
		a, b := d.before.File(name), d.after.File(name)
		if a != nil && b != nil && a.Whole != b.Whole {
			changed(look{aWhole, "", name})
		}
		for _, f := range []*schema.File{a, b} {
			if f != nil {
				d.file(f, changed)
			}
		}
	}
}

// file looks at what one of the two states of a file defines and names.
func (d difference) file(f *schema.File, changed func(look)) {
	for _, b := range f.Blocks {
		switch {
		case b.Is("test_burn"):
			key := b.Get("recipe").Text()
			if !sameBlocks(d.before.burns.burnsOf(key), d.after.burns.burnsOf(key)) {
				changed(look{burnsOf, "", key})
			}
		case b.Spec.Label == schema.Defines && !b.Is("shop"):
			d.key(b.Name(), b.Label, changed)
		}
		if b.Is("trial") {
			changed(look{trialsOf, "", b.Get("tried").Text()})
		}
	}
	for ref := range References(f) {
		for _, kind := range ref.Kinds {
			d.use(kind, ref.Key, changed)
		}
	}
}

// key looks at what has that key.
func (d difference) key(kind, key string, changed func(look)) {
	before, after := d.before.Same(kind, key), d.after.Same(kind, key)
	if !sameBlocks(before, after) {
		changed(look{sameKey, kind, key})
	}
	if len(before) > 0 && len(after) > 0 && sameBlocks(before[:1], after[:1]) {
		return
	}
	changed(look{aBlock, kind, key})
	changed(look{aShelf, kind, ""})
	if (len(before) == 0) == (len(after) == 0) {
		return
	}
	changed(look{aKey, kind, key})
	changed(look{allKeys, kind, ""})
	for other := range d.after.shelves { // a name that may be of several kinds leads elsewhere now
		d.use(other, key, changed)
	}
}

// use looks at whether something with that key is named.
func (d difference) use(kind, key string, changed func(look)) {
	if used(d.before, kind, key) != used(d.after, kind, key) {
		changed(look{usesOfKey, kind, key})
	}
}

func used(s *Shop, kind, key string) bool {
	b := s.Find(kind, key)
	if b == nil {
		return false
	}
	recipes, others := s.Uses(b)
	return recipes+others > 0
}
