package lsp

import (
	"context"

	protocol "github.com/tliron/glsp/protocol_3_16"
)

// onTypeTriggers are the characters after which the line is laid out.
var onTypeTriggers = []string{"}", "\n"}

func (h *here) formatting(_ context.Context, _ *protocol.DocumentFormattingParams) ([]protocol.TextEdit, error) {
	return []protocol.TextEdit{}, nil
}

func (h *here) rangeFormatting(_ context.Context, p *protocol.DocumentRangeFormattingParams) ([]protocol.TextEdit, error) {
	return []protocol.TextEdit{}, nil
}

func (h *here) onTypeFormatting(_ context.Context, p *protocol.DocumentOnTypeFormattingParams) ([]protocol.TextEdit, error) {
	return []protocol.TextEdit{}, nil
}
