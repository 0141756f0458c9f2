package schema

import (
	"sort"
	"strings"
	"sync/atomic"
	"unicode/utf8"
)

// Text is the content of one file as it was given, bytes unchanged, with its
// lines. Lines end at LF, CRLF or a lone CR. A Text must not be copied.
type Text struct {
	content string
	lines   atomic.Pointer[[]int32] // byte offset of the start of each line, made at first use
}

// NewText wraps the content of a file.
func NewText(content string) *Text { return &Text{content: content} }

// String is the whole content.
func (t *Text) String() string { return t.content }

// Len is the size in bytes.
func (t *Text) Len() int { return len(t.content) }

// Slice is the text the span covers; a span that reaches outside is cut to fit.
func (t *Text) Slice(s Span) string {
	end := min(max(int(s.End), 0), len(t.content))
	start := min(max(int(s.Start), 0), end)
	return t.content[start:end]
}

// LineStarts lists the byte offset at which each line starts.
func LineStarts(content string) []int32 {
	starts := make([]int32, 1, 1+strings.Count(content, "\n"))
	for i := 0; i < len(content); i++ {
		switch content[i] {
		case '\n':
			starts = append(starts, int32(i+1))
		case '\r':
			if i+1 < len(content) && content[i+1] == '\n' {
				continue
			}
			starts = append(starts, int32(i+1))
		}
	}
	return starts
}

// Lines counts the lines from one up; an empty file has one.
func (t *Text) Lines() int { return len(t.starts()) }

// Line is the 1-based line on which the byte offset stands.
func (t *Text) Line(offset int32) int {
	starts := t.starts()
	return sort.Search(len(starts), func(i int) bool { return starts[i] > offset })
}

// LineSpan covers the 1-based line without its line end.
func (t *Text) LineSpan(line int) Span {
	starts := t.starts()
	start := starts[line-1]
	end := int32(len(t.content))
	if line < len(starts) {
		end = starts[line]
	}
	for end > start && (t.content[end-1] == '\n' || t.content[end-1] == '\r') {
		end--
	}
	return Span{start, end}
}

// Position is the 1-based line and the 1-based column, in Unicode code
// points, of a byte offset. A byte that is not valid UTF-8 counts as one; a
// byte order mark at the start of the file does not count.
func (t *Text) Position(offset int32) (line, column int) {
	offset = min(max(offset, 0), int32(len(t.content)))
	line = t.Line(offset)
	start := t.starts()[line-1]
	if line == 1 && strings.HasPrefix(t.content, byteOrderMark) && offset >= int32(len(byteOrderMark)) {
		start = int32(len(byteOrderMark))
	}
	return line, 1 + utf8.RuneCountInString(t.content[start:offset])
}

const byteOrderMark = "\uFEFF"

func (t *Text) starts() []int32 {
	if lines := t.lines.Load(); lines != nil {
		return *lines
	}
	lines := LineStarts(t.content)
	t.lines.Store(&lines) // two readers at once make the same
	return lines
}
