package lsp

import (
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"
)

// asWord has an item replace the word at the cursor, letters, digits and _, so
// that the text becomes what taking the offer makes of it. Not everything can
// be written so, since what stands around the word stays. Where only the block
// behind a label is missing then, the label alone is offered.
func (a *asked) asWord(item *completionItem, o *offer) bool {
	start, end := a.at, a.at
	for start > o.span.Start && isOfWord(a.content[start-1]) {
		start--
	}
	for end < o.span.End && isOfWord(a.content[end]) {
		end++
	}
	before, behind := a.content[o.span.Start:start], a.content[end:o.span.End]
	text, ok := strings.CutPrefix(o.text, before)
	if !ok {
		return false
	}
	if inner, ok := strings.CutSuffix(text, behind); ok {
		text = inner
	} else if label, _, ok := strings.Cut(text, behind); ok && a.place == inLabel {
		text = label
	} else {
		return false
	}
	if o.kind == protocol.CompletionItemKindFunction { // such a client writes the brackets of a function itself
		if inner, ok := strings.CutSuffix(text, "("); ok {
			text = inner
		} else {
			o.kind = protocol.CompletionItemKindKeyword // they stand there already
		}
	}
	item.TextEdit, item.InsertText = nil, &text
	if before != "" && text != "" { // the word is held against the label
		detail := o.label
		if item.Detail != nil {
			detail += ": " + *item.Detail
		}
		item.Label, item.Detail = text, &detail
	}
	return true
}

func isOfWord(c byte) bool {
	return c == '_' || '0' <= c && c <= '9' || 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z'
}
