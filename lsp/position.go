package lsp

import (
	"unicode/utf8"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

// encoding is what a character of a position counts.
type encoding string

const (
	utf16 encoding = "utf-16" // the protocol's own, where nothing else was agreed
	utf8s encoding = "utf-8"
	utf32 encoding = "utf-32"
)

// mapper turns byte offsets of one text into the protocol's positions and
// back, in the agreed encoding. A byte that is no UTF-8 counts as the one
// replacement character that an editor shows for it.
type mapper struct {
	text *schema.Text
	by   encoding
}

// units is how much a rune of so many bytes counts.
func (e encoding) units(r rune, size int) int {
	switch {
	case e == utf8s && r == utf8.RuneError && size == 1:
		return len("\uFFFD")
	case e == utf8s:
		return size
	case e == utf16 && r >= 0x10000:
		return 2
	}
	return 1
}

// position is where a byte offset stands.
func (m mapper) position(offset int32) protocol.Position {
	offset = min(max(offset, 0), int32(m.text.Len()))
	line := m.text.Line(offset)
	start := m.text.LineSpan(line).Start
	units := 0
	for s := m.text.Slice(schema.Span{Start: start, End: offset}); s != ""; {
		r, size := utf8.DecodeRuneInString(s)
		units += m.by.units(r, size)
		s = s[size:]
	}
	return protocol.Position{Line: uint32(line - 1), Character: uint32(units)}
}

// offset is the byte offset of a position. One behind the end of a line is at
// its end, one inside a character at its start, one behind the last line at
// the end of the text.
func (m mapper) offset(p protocol.Position) int32 {
	if int64(p.Line) >= int64(m.text.Lines()) {
		return int32(m.text.Len())
	}
	line := m.text.LineSpan(int(p.Line) + 1)
	at, left := line.Start, int64(p.Character)
	for s := m.text.Slice(line); s != ""; {
		r, size := utf8.DecodeRuneInString(s)
		left -= int64(m.by.units(r, size))
		if left < 0 {
			break
		}
		at += int32(size)
		s = s[size:]
	}
	return at
}

// rangeOf is where a span stands.
func (m mapper) rangeOf(s schema.Span) protocol.Range {
	return protocol.Range{Start: m.position(s.Start), End: m.position(s.End)}
}

// span is the bytes of a range. An end before the start is taken as the start.
func (m mapper) span(r protocol.Range) schema.Span {
	start := m.offset(r.Start)
	return schema.Span{Start: start, End: max(start, m.offset(r.End))}
}
