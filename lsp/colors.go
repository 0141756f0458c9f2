package lsp

import (
	"context"

	protocol "github.com/tliron/glsp/protocol_3_16"
)

func (h *here) colors(_ context.Context, _ *protocol.DocumentColorParams) ([]protocol.ColorInformation, error) {
	return []protocol.ColorInformation{}, nil
}

func (h *here) colorPresentations(_ context.Context, p *protocol.ColorPresentationParams) ([]protocol.ColorPresentation, error) {
	return []protocol.ColorPresentation{}, nil
}
