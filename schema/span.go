package schema

// Span is a half-open range of byte offsets in one file's text.
type Span struct{ Start, End int32 }

// Len is the number of bytes the span covers.
func (s Span) Len() int { return int(s.End - s.Start) }

// Contains says whether the other span lies wholly inside s.
func (s Span) Contains(o Span) bool { return s.Start <= o.Start && o.End <= s.End }

// Touches says whether the offset lies in the span or at either of its ends,
// as a cursor does.
func (s Span) Touches(offset int32) bool { return s.Start <= offset && offset <= s.End }

// Overlaps says whether the two spans share a byte, or one is empty and lies
// within the other.
func (s Span) Overlaps(o Span) bool {
	if s.Start == s.End || o.Start == o.End {
		return s.Start <= o.End && o.Start <= s.End
	}
	return s.Start < o.End && o.Start < s.End
}
