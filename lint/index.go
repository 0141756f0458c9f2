package lint

import (
	"cmp"
	"slices"
	"strings"

	"wickrule/schema"
)

// blocks is a sorted list of blocks. A change of it is a new list: what has
// been handed out stays as it was.
type blocks []*schema.Block

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

// burnsOf is the part of a list sorted by recipe that is of that one.
func (l blocks) burnsOf(recipe string) blocks {
	from, _ := slices.BinarySearchFunc(l, recipe, func(b *schema.Block, key string) int { return strings.Compare(b.Get("recipe").Text(), key) })
	to := from
	for to < len(l) && l[to].Get("recipe").Text() == recipe {
		to++
	}
	return l[from:to]
}

// swap is the list without the blocks gone and with the blocks come, both of
// which it may reorder.
func (l blocks) swap(order func(a, b *schema.Block) int, gone, come []*schema.Block) blocks {
	slices.SortFunc(gone, order)
	slices.SortFunc(come, order)
	list := make(blocks, 0, max(0, len(l)-len(gone))+len(come))
	rest := l
	for len(gone) > 0 || len(come) > 0 {
		takeOut := len(come) == 0 || len(gone) > 0 && order(gone[0], come[0]) <= 0
		next := come
		if takeOut {
			next = gone
		}
		i, found := slices.BinarySearchFunc(rest, next[0], order)
		list, rest = append(list, rest[:i]...), rest[i:]
		if takeOut {
			if found {
				rest = rest[1:]
			}
			gone = gone[1:]
			continue
		}
		list, come = append(list, come[0]), come[1:]
	}
	return append(list, rest...)
}

// named is the part of a list sorted by key that has that key, in the order
// of places.
func (l blocks) named(key string) blocks {
	from, _ := slices.BinarySearchFunc(l, key, func(b *schema.Block, key string) int { return strings.Compare(b.Label, key) })
	to := from
	for to < len(l) && l[to].Label == key {
		to++
	}
	return l[from:to]
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

// uses is sorted by key and kinds, and has no entry without a count. Like
// blocks it never changes.
type uses []use

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
	list := make(uses, 0, len(l)+len(change))
	rest := l
	for len(change) > 0 {
		sum := change[0]
		for change = change[1:]; len(change) > 0 && compareUses(change[0], sum) == 0; change = change[1:] {
			sum.recipes += change[0].recipes
			sum.others += change[0].others
		}
		i, found := slices.BinarySearchFunc(rest, sum, compareUses)
		list, rest = append(list, rest[:i]...), rest[i:]
		if found {
			sum.recipes += rest[0].recipes
			sum.others += rest[0].others
			rest = rest[1:]
		}
		if sum.recipes > 0 || sum.others > 0 {
			list = append(list, sum)
		}
	}
	return append(list, rest...)
}

// named is the part of the list about one key.
func (l uses) named(key string) uses {
	from, _ := slices.BinarySearchFunc(l, key, func(u use, key string) int { return strings.Compare(u.key, key) })
	to := from
	for to < len(l) && l[to].key == key {
		to++
	}
	return l[from:to]
}
