package lsp

import (
	"context"

	protocol "github.com/tliron/glsp/protocol_3_16"
)

func (h *here) references(_ context.Context, p *protocol.ReferenceParams) ([]protocol.Location, error) {
	return []protocol.Location{}, nil
}

func (h *here) highlights(at int32) []protocol.DocumentHighlight {
	return []protocol.DocumentHighlight{}
}
