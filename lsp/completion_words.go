package lsp

import (
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"
)

// asWord has an item replace the word around the cursor, letters, digits and _,
// so that the text becomes what taking the offer makes of it. Not everything
// can be written so, since what stands beside the word stays. Where only the
// block behind a label is missing then, the label alone is offered.
func (a *asked) asWord(item *completionItem, o *offer) bool {
	start, end := a.at, a.at
	for start > 0 && isOfWord(a.content[start-1]) {
		start--
	}
	for int(end) < len(a.content) && isOfWord(a.content[end]) {
		end++
	}
	// What of the word the offer leaves alone is written again.
	text := a.content[min(start, o.span.Start):o.span.Start] + o.text + a.content[o.span.End:max(end, o.span.End)]
	before, behind := a.content[min(start, o.span.Start):start], a.content[end:max(end, o.span.End)]
	text, ok := strings.CutPrefix(text, before)
	if !ok {
		return false
	}
	if inner, ok := strings.CutSuffix(text, behind); ok {
		text = inner
	} else if label, rest, ok := strings.Cut(text, behind); ok && a.place == inLabel && strings.HasPrefix(strings.TrimLeft(rest, " "), "{") {
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
	if label, _, _ := strings.Cut(text, `"`); before != "" && label != "" { // the word is held against the label
		detail := o.label
		if item.Detail != nil {
			detail += ": " + *item.Detail
		}
		item.Label, item.Detail = label, &detail
	}
	return true
}

func isOfWord(c byte) bool {
	return c == '_' || '0' <= c && c <= '9' || 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z'
}
