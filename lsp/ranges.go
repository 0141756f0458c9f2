package lsp

import (
	"cmp"
	"context"
	"slices"
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

// foldingRanges are what can be folded away: blocks, lists and heredocs of
// several lines, and comments.
func (h *here) foldingRanges(_ context.Context, _ *protocol.FoldingRangeParams) ([]protocol.FoldingRange, error) {
	folds := []protocol.FoldingRange{}
	for _, b := range h.file.Blocks {
		folds = h.foldsIn(b, folds)
	}
	for _, c := range h.commentBlocks() {
		kind := string(protocol.FoldingRangeKindComment)
		if f, ok := h.fold(c, c.End); ok {
			f.Kind = &kind
			folds = append(folds, f)
		}
	}
	slices.SortStableFunc(folds, func(a, b protocol.FoldingRange) int {
		return cmp.Or(cmp.Compare(a.StartLine, b.StartLine), cmp.Compare(b.EndLine, a.EndLine))
	})
	return folds, nil
}

func (h *here) foldsIn(b *schema.Block, folds []protocol.FoldingRange) []protocol.FoldingRange {
	if f, ok := h.fold(b.Body, b.Body.End); ok {
		folds = append(folds, f)
	}
	for v := range b.Attrs() {
		written, span := v.Written(), v.Span()
		inner := schema.Span{Start: span.Start + 1, End: span.End - 1}
		switch {
		case strings.HasPrefix(written, "["):
		case strings.HasPrefix(written, "<<"):
			inner.Start = span.Start + int32(strings.IndexAny(written+"\n", "\r\n"))
			inner.End = span.Start + int32(strings.LastIndexAny(written, "\r\n")) + 1
		default:
			continue
		}
		if inner.End < inner.Start {
			continue
		}
		if f, ok := h.fold(inner, inner.End); ok {
			folds = append(folds, f)
		}
	}
	for _, inner := range b.Blocks() {
		folds = h.foldsIn(inner, folds)
	}
	return folds
}

// fold hides a span that starts behind an opening sign and ends before a
// closing one. For a client that folds whole lines the line of the closing sign
// stays, where nothing else stands before it. False: there is nothing to hide.
func (h *here) fold(s schema.Span, closing int32) (protocol.FoldingRange, bool) {
	start, end := h.position(s.Start), h.position(s.End)
	if !h.can.TextDocument.FoldingRange.LineFoldingOnly {
		return protocol.FoldingRange{StartLine: start.Line, StartCharacter: &start.Character, EndLine: end.Line, EndCharacter: &end.Character}, end.Line > start.Line
	}
	if line := h.text.LineSpan(int(end.Line) + 1); end.Line > 0 && strings.TrimSpace(h.text.Slice(schema.Span{Start: line.Start, End: closing})) == "" {
		end.Line--
	}
	return protocol.FoldingRange{StartLine: start.Line, EndLine: end.Line}, end.Line > start.Line
}

// commentBlocks are the comments of more than one line: lines of comment with
// nothing else between them are one.
func (h *here) commentBlocks() []schema.Span {
	var blocks []schema.Span
	for _, c := range comments(h.text.String()) {
		line := h.text.LineSpan(h.text.Line(c.Start))
		alone := strings.TrimSpace(h.text.Slice(schema.Span{Start: line.Start, End: c.Start})) == ""
		if n := len(blocks); n > 0 && alone && h.text.Line(c.Start) == h.text.Line(blocks[n-1].End)+1 && h.startsItsLine(blocks[n-1]) {
			blocks[n-1].End = c.End
			continue
		}
		blocks = append(blocks, c)
	}
	return blocks
}

func (h *here) startsItsLine(s schema.Span) bool {
	line := h.text.LineSpan(h.text.Line(s.Start))
	return strings.TrimSpace(h.text.Slice(schema.Span{Start: line.Start, End: s.Start})) == ""
}

// selectionRanges are, for each position, what is selected as a selection
// grows: what stands in the quotes, the value, the attribute, what its block
// holds, the block, and so on out to the whole text.
func (h *here) selectionRanges(_ context.Context, p *protocol.SelectionRangeParams) ([]protocol.SelectionRange, error) {
	ranges := make([]protocol.SelectionRange, len(p.Positions))
	for i, position := range p.Positions {
		ranges[i] = h.selections(h.offset(position))
	}
	return ranges, nil
}

func (h *here) selections(at int32) protocol.SelectionRange {
	spans := []schema.Span{{Start: 0, End: int32(h.text.Len())}}
	for _, c := range comments(h.text.String()) {
		if c.Touches(at) {
			spans = append(spans, c)
		}
	}
	b := h.blockAt(at)
	for outer := b; outer != nil; outer = outer.Parent {
		spans = append(spans, outer.Span)
		if outer.Body.Touches(at) {
			spans = append(spans, outer.Body, h.trimmed(outer.Body))
		}
	}
	if b != nil && b.Header().Touches(at) {
		spans = append(spans, b.Header())
		if b.LabelSpan.Touches(at) {
			spans = append(spans, b.LabelSpan, unquoted(h.file, b.LabelSpan))
		}
	}
	if v, ok := valueAt(b, at); ok {
		spans = append(spans, schema.Span{Start: v.NameSpan().Start, End: v.Span().End}, v.NameSpan(), v.Span(), unquoted(h.file, v.Span()))
		for _, item := range v.Items() {
			spans = append(spans, item.Span, unquoted(h.file, item.Span))
		}
	}
	// Those that hold the place, from the widest to the narrowest, each inside
	// of the one before.
	slices.SortStableFunc(spans, func(a, b schema.Span) int { return b.Len() - a.Len() })
	var grown *protocol.SelectionRange
	last := spans[0]
	for i, s := range spans {
		if !s.Touches(at) || i > 0 && (s == last || !last.Contains(s)) {
			continue
		}
		grown, last = &protocol.SelectionRange{Range: h.rangeOf(s), Parent: grown}, s
	}
	return *grown
}

// trimmed is a span without the white space at its ends.
func (h *here) trimmed(s schema.Span) schema.Span {
	text := h.text.Slice(s)
	left := strings.TrimLeft(text, " \t\r\n")
	s.Start += int32(len(text) - len(left))
	s.End = s.Start + int32(len(strings.TrimRight(left, " \t\r\n")))
	return s
}
