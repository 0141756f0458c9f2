package lsp

import (
	"context"

	protocol "github.com/tliron/glsp/protocol_3_16"
)

func (h *here) documentSymbols(_ context.Context, _ *protocol.DocumentSymbolParams) (any, error) {
	return []protocol.DocumentSymbol{}, nil
}

func (s *snapshot) workspaceSymbols(_ context.Context, p *protocol.WorkspaceSymbolParams) ([]protocol.SymbolInformation, error) {
	return []protocol.SymbolInformation{}, nil
}
