package lsp

import (
	"context"

	protocol "github.com/tliron/glsp/protocol_3_16"
)

func (h *here) prepareRename(at int32) *protocol.RangeWithPlaceholder { return nil }

func (h *here) rename(_ context.Context, p *protocol.RenameParams) (*protocol.WorkspaceEdit, error) {
	return nil, nil
}
