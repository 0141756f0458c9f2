package schema

import (
	"slices"
	"strings"
)

// Laid is the edits with what the house layout asks for after them: the lines
// around a new or a missing attribute get their equals signs one below the
// other. All edits are of the file. Where it is not in the house layout, or
// what comes out cannot be laid out, the edits are as they were.
func Laid(f *File, edits []Edit) []Edit {
	if before, err := Format(f); err != nil || len(before) > 0 {
		return edits
	}
	edits = slices.Clone(edits)
	slices.SortStableFunc(edits, func(a, b Edit) int { return int(a.Span.Start - b.Span.Start) })
	out, err := Apply(f.Text.content, edits)
	if err != nil {
		return edits
	}
	more, err := Format(Read(f.Name, []byte(out)))
	if err != nil || len(more) == 0 {
		return edits
	}
	return both(f, edits, out, more)
}

// both are the edits that do what edits and then, in the text out that came of
// them, more do. The edits are in order and do not overlap.
func both(f *File, edits []Edit, out string, more []Edit) []Edit {
	var changed []Span // in out, in order; those that touch are one
	join := func(s Span) {
		if n := len(changed); n > 0 && s.Start <= changed[n-1].End {
			changed[n-1].End = max(changed[n-1].End, s.End)
			return
		}
		changed = append(changed, s)
	}
	written := make([]Span, len(edits)) // where in out each edit's text stands
	grown := int32(0)
	for i, e := range edits {
		start := e.Span.Start + grown
		written[i] = Span{start, start + int32(len(e.Text))}
		grown += int32(len(e.Text)) - int32(e.Span.Len())
	}
	for i, j := 0, 0; i < len(written) || j < len(more); {
		if j == len(more) || i < len(written) && written[i].Start <= more[j].Span.Start {
			join(written[i])
			i++
			continue
		}
		join(more[j].Span)
		j++
	}
	joined := make([]Edit, len(changed))
	for n, span := range changed {
		joined[n] = Edit{f, Span{given(edits, written, span.Start, false), given(edits, written, span.End, true)}, partOf(out, span, more)}
	}
	return joined
}

// given turns an offset in the edited text into one of the text before. after
// says whether an edit made right there comes before the offset.
func given(edits []Edit, written []Span, at int32, after bool) int32 {
	back := at
	for i, e := range edits {
		if written[i].Start < at || after && written[i].Start == at {
			back -= int32(written[i].Len() - e.Span.Len())
		}
	}
	return back
}

// partOf is a stretch of a text after the edits that lie in it.
func partOf(text string, part Span, edits []Edit) string {
	var b strings.Builder
	at := part.Start
	for _, e := range edits {
		if part.Contains(e.Span) {
			b.WriteString(text[at:e.Span.Start])
			b.WriteString(e.Text)
			at = e.Span.End
		}
	}
	b.WriteString(text[at:part.End])
	return b.String()
}
