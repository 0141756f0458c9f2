package lsp

import protocol "github.com/tliron/glsp/protocol_3_16"

func (h *here) hover(at int32) *protocol.Hover { return nil }
