package lsp

import (
	"context"
	"fmt"
	"math"
	"strconv"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/schema"
)

// colors are the colors of dyes, for an editor to show beside them.
func (h *here) colors(_ context.Context, _ *protocol.DocumentColorParams) ([]protocol.ColorInformation, error) {
	found := []protocol.ColorInformation{}
	for _, b := range h.file.Blocks {
		found = h.colorsIn(b, found)
	}
	return found, nil
}

func (h *here) colorsIn(b *schema.Block, found []protocol.ColorInformation) []protocol.ColorInformation {
	for v := range b.Attrs() {
		if v.Spec.Type != schema.Color || !v.Known() {
			continue
		}
		if c, ok := colorOf(v.Text()); ok {
			found = append(found, protocol.ColorInformation{Range: h.rangeOf(unquoted(h.file, v.Span())), Color: c})
		}
	}
	for _, inner := range b.Blocks() {
		found = h.colorsIn(inner, found)
	}
	return found
}

// colorOf is the color that "#b5473c" stands for, as shares of full light.
func colorOf(text string) (protocol.Color, bool) {
	if len(text) != 7 || text[0] != '#' {
		return protocol.Color{}, false
	}
	n, err := strconv.ParseUint(text[1:], 16, 32)
	share := func(shift uint) protocol.Decimal { return protocol.Decimal(n>>shift&0xff) / 255 }
	return protocol.Color{Red: share(16), Green: share(8), Blue: share(0), Alpha: 1}, err == nil
}

// colorPresentations are the ways to write a color: there is one. A dye has no
// transparency, so that is left out.
func (h *here) colorPresentations(_ context.Context, p *protocol.ColorPresentationParams) ([]protocol.ColorPresentation, error) {
	text := writtenColor(p.Color)
	edit := protocol.TextEdit{Range: p.Range, NewText: text}
	if span := h.span(p.Range); unquoted(h.file, span) != span {
		edit.NewText = schema.Quote(text)
	}
	return []protocol.ColorPresentation{{Label: text, TextEdit: &edit}}, nil
}

// writtenColor is a color as the house format writes it.
func writtenColor(c protocol.Color) string {
	part := func(share protocol.Decimal) int {
		return int(math.Round(float64(min(max(share, 0), 1)) * 255))
	}
	return fmt.Sprintf("#%02x%02x%02x", part(c.Red), part(c.Green), part(c.Blue))
}
