package schema

import "slices"

// Same says whether two blocks say the same: they have the same text, wherever
// it stands, and it was read the same way. Two nil blocks are the same.
func Same(a, b *Block) bool {
	if a == nil || b == nil {
		return a == b
	}
	if a == b {
		return true
	}
	return a.Spec == b.Spec && a.Label == b.Label && a.File.Text.Slice(a.Span) == b.File.Text.Slice(b.Span) && readAlike(a, b)
}

// readAlike compares how two blocks of the same text were read: a fault in
// front of one of them may have spoilt it.
func readAlike(a, b *Block) bool {
	shift := b.Span.Start - a.Span.Start
	alike := func(x, y attribute) bool {
		return x.spec == y.spec && x.state == y.state && x.span.Start+shift == y.span.Start && x.span.End+shift == y.span.End
	}
	return slices.EqualFunc(a.written(), b.written(), alike) &&
		slices.EqualFunc(a.Blocks(), b.Blocks(), func(x, y *Block) bool {
			return x.Spec == y.Spec && x.Label == y.Label && x.Span.Start+shift == y.Span.Start && x.Span.End+shift == y.Span.End && readAlike(x, y)
		})
}
