package lint

import (
	"iter"
	"slices"
	"sort"
)

// pages is a sorted list in pages, which never changes. A change is a new list
// that shares the pages it left alone: a shop of many thousands of recipes is
// edited one letter after the other.
type pages[T any] [][]T

// pageSize is how long a page is made; one grows to twice that before it is
// parted.
const pageSize = 128

// swap is the list without what is gone and with what has come. Both are in
// order; so is the list.
func (p pages[T]) swap(order func(a, b T) int, gone, come []T) pages[T] {
	if len(gone) == 0 && len(come) == 0 {
		return p
	}
	next := make(pages[T], 0, len(p)+1+len(come)/pageSize)
	for i, page := range p {
		if len(gone) == 0 && len(come) == 0 {
			return append(next, p[i:]...)
		}
		g, c := len(gone), len(come)
		if i+1 < len(p) {
			first := p[i+1][0]
			before := func(list []T) int {
				return sort.Search(len(list), func(j int) bool { return order(list[j], first) >= 0 })
			}
			g, c = before(gone), before(come)
		}
		if g == 0 && c == 0 {
			next = append(next, page)
			continue
		}
		next = next.added(merged(order, page, gone[:g], come[:c]))
		gone, come = gone[g:], come[c:]
	}
	return next.added(come)
}

// added is the list with more at its end, cut into pages.
func (p pages[T]) added(more []T) pages[T] {
	if len(more) <= 2*pageSize {
		if len(more) == 0 {
			return p
		}
		return append(p, more)
	}
	for page := range slices.Chunk(more, pageSize) {
		p = append(p, page)
	}
	return p
}

// merged is one page without what is gone and with what has come.
func merged[T any](order func(a, b T) int, page, gone, come []T) []T {
	list := make([]T, 0, max(0, len(page)-len(gone))+len(come))
	for len(gone) > 0 || len(come) > 0 {
		takeOut := len(come) == 0 || len(gone) > 0 && order(gone[0], come[0]) <= 0
		next := come
		if takeOut {
			next = gone
		}
		i, found := slices.BinarySearchFunc(page, next[0], order)
		list, page = append(list, page[:i]...), page[i:]
		if !takeOut {
			list, come = append(list, come[0]), come[1:]
			continue
		}
		if found {
			page = page[1:]
		}
		gone = gone[1:]
	}
	return append(list, page...)
}

// since yields the list from the first on that is not below.
func (p pages[T]) since(below func(T) bool) iter.Seq[T] {
	return func(yield func(T) bool) {
		at := sort.Search(len(p), func(i int) bool { return !below(p[i][len(p[i])-1]) })
		for ; at < len(p); at++ {
			from := sort.Search(len(p[at]), func(j int) bool { return !below(p[at][j]) })
			for _, v := range p[at][from:] {
				if !yield(v) {
					return
				}
			}
		}
	}
}

// list is everything, in one piece.
func (p pages[T]) list() []T { return slices.Concat(p...) }
