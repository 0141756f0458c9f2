package lsp

import (
	"cmp"
	"context"
	"slices"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/lint"
	"wickrule/schema"
)

// filesBetweenLooks is how many files are gone through before looking whether
// the answer is still wanted.
const filesBetweenLooks = 64

// eachMention visits what every file of the shop mentions. It stops where the
// answer is no longer wanted.
func (h *here) eachMention(ctx context.Context, visit func(*mention)) error {
	for i, f := range h.shop.Files() {
		if i%filesBetweenLooks == 0 && ctx.Err() != nil {
			return ctx.Err()
		}
		for m := range mentionsOf(f) {
			visit(&m)
		}
	}
	return nil
}

// byPlace is the order of files' names, and of places in a file.
func byPlace(a, b lint.Place) int {
	return cmp.Or(cmp.Compare(a.File.Name, b.File.Name), cmp.Compare(a.Span.Start, b.Span.Start))
}

// references is every place in the shop that names what the cursor is on, in
// the order of files and places; then those in other shops that have it too.
func (h *here) references(ctx context.Context, p *protocol.ReferenceParams) ([]protocol.Location, error) {
	locations := []protocol.Location{}
	m, ok := h.mentionAt(h.offset(p.Position))
	if !ok {
		return locations, nil
	}
	to := h.resolve(&m)
	var places []lint.Place
	err := h.eachMention(ctx, func(m *mention) {
		if (p.Context.IncludeDeclaration || !m.defines) && h.leadsTo(m, &to) {
			places = append(places, lint.Place{File: m.block.File, Span: m.inside()})
		}
	})
	slices.SortFunc(places, byPlace)
	for _, place := range places {
		locations = append(locations, h.location(place))
	}
	for _, other := range h.elsewhere(&to) {
		if err == nil {
			err = other.eachMention(ctx, func(m *mention) {
				at := other.location(lint.Place{File: m.block.File, Span: m.inside()})
				if !m.defines && other.leadsTo(m, &other.to) && !slices.Contains(locations, at) {
					locations = append(locations, at)
				}
			})
		}
	}
	return locations, err
}

// highlights are the places in the document that name what the cursor is on:
// where it gets its key is written to, all others are read.
func (h *here) highlights(at int32) []protocol.DocumentHighlight {
	found := []protocol.DocumentHighlight{}
	m, ok := h.mentionAt(at)
	if !ok {
		return found
	}
	to := h.resolve(&m)
	var spans []schema.Span
	kinds := map[schema.Span]protocol.DocumentHighlightKind{}
	for m := range mentionsOf(h.file) {
		if !h.leadsTo(&m, &to) {
			continue
		}
		spans = append(spans, m.inside())
		kinds[m.inside()] = protocol.DocumentHighlightKindRead
		if m.defines {
			kinds[m.inside()] = protocol.DocumentHighlightKindWrite
		}
	}
	slices.SortFunc(spans, func(a, b schema.Span) int { return cmp.Compare(a.Start, b.Start) })
	for _, span := range spans {
		kind := kinds[span]
		found = append(found, protocol.DocumentHighlight{Range: h.rangeOf(span), Kind: &kind})
	}
	return found
}
