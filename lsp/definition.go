package lsp

import (
	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
)

// definition is where what the cursor names is written down: the block that
// counts first, then others of the same key. A client that can is told which
// characters lead there and how far the block goes.
func (h *here) definition(at int32) any {
	locations, links := []protocol.Location{}, []protocol.LocationLink{}
	m, ok := h.mentionAt(at)
	if !ok {
		return locations
	}
	from := h.rangeOf(m.inside())
	to := h.resolve(&m)
	if !to.found {
		return locations
	}
	blocks := h.defined(to.kinds[0], to.key, to.example)
	if m.defines && len(blocks) == 0 { // a shop block, of which no list is kept
		blocks = append(blocks, m.block)
	}
	for _, b := range blocks {
		label := h.location(lint.Place{File: b.File, Span: unquoted(b.File, b.LabelSpan)})
		locations = append(locations, label)
		links = append(links, protocol.LocationLink{
			OriginSelectionRange: &from, TargetURI: label.URI,
			TargetRange:          h.location(lint.Place{File: b.File, Span: b.Span}).Range,
			TargetSelectionRange: label.Range,
		})
	}
	if h.can.TextDocument.Definition.LinkSupport {
		return links
	}
	return locations
}
