package lsp

import (
	"context"

	protocol "github.com/tliron/glsp/protocol_3_16"
)

// codeActionKinds are the kinds of code action that are offered.
var codeActionKinds = []protocol.CodeActionKind{protocol.CodeActionKindQuickFix}

func (h *here) codeActions(_ context.Context, p *codeActionParams) ([]protocol.CodeAction, error) {
	return []protocol.CodeAction{}, nil
}
