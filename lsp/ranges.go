package lsp

import (
	"context"

	protocol "github.com/tliron/glsp/protocol_3_16"
)

func (h *here) foldingRanges(_ context.Context, _ *protocol.FoldingRangeParams) ([]protocol.FoldingRange, error) {
	return []protocol.FoldingRange{}, nil
}

func (h *here) selectionRanges(_ context.Context, p *protocol.SelectionRangeParams) ([]protocol.SelectionRange, error) {
	return []protocol.SelectionRange{}, nil
}
