package lint

import (
	"cmp"
	"slices"
	"strings"

	"wickrule/schema"
)

// blocks is a sorted list of blocks.
type blocks struct{ pages[*schema.Block] }

// byPlace is the order of files' names, and of places in a file.
func byPlace(a, b *schema.Block) int {
	return cmp.Or(strings.Compare(a.File.Name, b.File.Name), cmp.Compare(a.Span.Start, b.Span.Start))
}

// byKey is the order of keys; of those with one key, that of places.
func byKey(a, b *schema.Block) int {
	return cmp.Or(strings.Compare(a.Label, b.Label), byPlace(a, b))
}

// byRecipe is the order of the recipes that test burns are of; of those of one
// recipe, that of places.
func byRecipe(a, b *schema.Block) int {
	return cmp.Or(strings.Compare(a.Get("recipe").Text(), b.Get("recipe").Text()), byPlace(a, b))
}

// swap is the list without the blocks gone and with the blocks come, both of
// which it may reorder.
func (l blocks) swap(order func(a, b *schema.Block) int, gone, come []*schema.Block) blocks {
	slices.SortFunc(gone, order)
	slices.SortFunc(come, order)
	return blocks{l.pages.swap(order, gone, come)}
}

// named is the part of a list sorted by key that has that key, in the order
// of places.
func (l blocks) named(key string) []*schema.Block {
	return l.equal(key, func(b *schema.Block) string { return b.Label })
}

// burnsOf is the part of a list sorted by recipe that is of that one.
func (l blocks) burnsOf(recipe string) []*schema.Block {
	return l.equal(recipe, func(b *schema.Block) string { return b.Get("recipe").Text() })
}

func (l blocks) equal(key string, of func(*schema.Block) string) (list []*schema.Block) {
	for b := range l.since(func(b *schema.Block) bool { return of(b) < key }) {
		if of(b) != key {
			break
		}
		list = append(list, b)
	}
	return list
}

// first is the first of a list sorted by key that has that key, or nil.
func (l blocks) first(key string) *schema.Block {
	for b := range l.since(func(b *schema.Block) bool { return b.Label < key }) {
		if b.Label == key {
			return b
		}
		break
	}
	return nil
}

// use counts who names a key that may be of several kinds.
type use struct {
	key     string
	kinds   []string
	recipes int // recipes that name it, each once
	others  int // places outside recipes
}

func compareUses(a, b use) int {
	return cmp.Or(strings.Compare(a.key, b.key), slices.Compare(a.kinds, b.kinds))
}

// uses is sorted by key and kinds, and has no entry without a count.
type uses struct{ pages[use] }

// usesOf counts what a file names, sign times.
func usesOf(f *schema.File, sign int, add func(use)) {
	var recipe *schema.Block // whose references are in seen
	var seen []Reference
	for ref := range References(f) {
		u := use{key: ref.Key, kinds: ref.Kinds, others: sign}
		if top := topOf(ref.From); top.Is("recipe") {
			if top != recipe {
				recipe, seen = top, seen[:0]
			}
			if slices.ContainsFunc(seen, func(s Reference) bool { return s.Key == ref.Key && slices.Equal(s.Kinds, ref.Kinds) }) {
				continue
			}
			seen = append(seen, ref)
			u.others, u.recipes = 0, sign
		}
		add(u)
	}
}

func topOf(b *schema.Block) *schema.Block {
	for b.Parent != nil {
		b = b.Parent
	}
	return b
}

// with adds counts, which may be below nothing, and leaves out what nobody
// names any more.
func (l uses) with(change []use) uses {
	slices.SortFunc(change, compareUses)
	var gone, come []use
	for len(change) > 0 {
		sum := change[0]
		for change = change[1:]; len(change) > 0 && compareUses(change[0], sum) == 0; change = change[1:] {
			sum.recipes += change[0].recipes
			sum.others += change[0].others
		}
		if sum.recipes == 0 && sum.others == 0 {
			continue
		}
		for u := range l.since(func(u use) bool { return compareUses(u, sum) < 0 }) {
			if compareUses(u, sum) == 0 {
				gone = append(gone, u)
				sum.recipes += u.recipes
				sum.others += u.others
			}
			break
		}
		if sum.recipes > 0 || sum.others > 0 {
			come = append(come, sum)
		}
	}
	return uses{l.pages.swap(compareUses, gone, come)}
}

// named is the part of the list about one key.
func (l uses) named(key string) (list []use) {
	for u := range l.since(func(u use) bool { return u.key < key }) {
		if u.key != key {
			break
		}
		list = append(list, u)
	}
	return list
}
