package lsp

import (
	"context"
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

// onTypeTriggers are the characters after which the line is laid out.
var onTypeTriggers = []string{"}", "\n"}

// formatting gives the document the house layout, which is the same in every
// editor: what the client wants of tabs and spaces is not asked. A text that
// does not read as it stands is left alone.
func (h *here) formatting(_ context.Context, _ *protocol.DocumentFormattingParams) ([]protocol.TextEdit, error) {
	return h.layout(h.file, schema.Span{Start: 0, End: int32(h.text.Len())}), nil
}

// rangeFormatting is what of it lies wholly in a range.
func (h *here) rangeFormatting(_ context.Context, p *protocol.DocumentRangeFormattingParams) ([]protocol.TextEdit, error) {
	return h.layout(h.file, h.span(p.Range)), nil
}

// layout is the edits that lay out a part of a text. The file is the
// document's, or one that has the same text up to the end of that part.
func (h *here) layout(f *schema.File, part schema.Span) []protocol.TextEdit {
	list := []protocol.TextEdit{}
	edits, err := schema.Format(f)
	if err != nil {
		return list
	}
	for _, e := range edits {
		if part.Contains(e.Span) {
			list = append(list, protocol.TextEdit{Range: h.rangeOf(e.Span), NewText: e.Text})
		}
	}
	return list
}

// onTypeFormatting lays out what has just been finished: the block that a brace
// closed, or the lines above the one that was begun. The cursor's own line is
// never touched behind the cursor, nor is anything after it.
func (h *here) onTypeFormatting(_ context.Context, p *protocol.DocumentOnTypeFormattingParams) ([]protocol.TextEdit, error) {
	at := h.offset(p.Position)
	switch p.Ch {
	case "}":
		return h.layoutClosed(at), nil
	case "\n":
		return h.layoutAbove(int(p.Position.Line)), nil
	}
	return []protocol.TextEdit{}, nil
}

// layoutClosed lays out the block whose closing brace ends at an offset.
func (h *here) layoutClosed(at int32) []protocol.TextEdit {
	b := h.blockAt(at)
	for b != nil && b.Span.End != at {
		b = b.Parent
	}
	if b == nil || b.Body.End != at-1 {
		return []protocol.TextEdit{}
	}
	line := h.text.LineSpan(h.text.Line(b.Span.Start))
	return h.layout(h.file, schema.Span{Start: line.Start, End: at})
}

// layoutAbove lays out the lines right above a line that was just begun (from
// 0 up), back to a blank line or a brace. It is judged without the new line
// where that is blank, or the lines above would be moved as if they had nothing
// to do with those below, and moved back when something is typed between them.
func (h *here) layoutAbove(line int) []protocol.TextEdit {
	if line < 1 || line >= h.text.Lines() {
		return []protocol.TextEdit{}
	}
	begun := h.text.LineSpan(line + 1)
	from := line // from 1 up, so the line above
	for from > 1 {
		above := strings.TrimSpace(h.text.Slice(h.text.LineSpan(from - 1)))
		if above == "" || strings.HasSuffix(above, "{") || strings.HasSuffix(above, "}") {
			break
		}
		from--
	}
	file := h.file
	if strings.TrimSpace(h.text.Slice(begun)) == "" && line+1 < h.text.Lines() {
		text := h.text.String()
		file = schema.Read(h.file.Name, []byte(text[:begun.Start]+text[h.text.LineSpan(line+2).Start:]))
	}
	return h.layout(file, schema.Span{Start: h.text.LineSpan(from).Start, End: h.text.LineSpan(line).End})
}
