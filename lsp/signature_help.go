package lsp

import (
	"slices"
	"strings"

	protocol "github.com/tliron/glsp/protocol_3_16"

	"wickrule/rules/shoprule"
	"wickrule/schema"
)

// signatureHelp is what the function takes in whose brackets the cursor
// stands, and which of that it is at. nil: it stands in none.
func (h *here) signatureHelp(at int32) *protocol.SignatureHelp {
	a := h.asked(at)
	if a.spot == nil || len(a.spot.Calls) == 0 {
		return nil
	}
	call := a.spot.Calls[len(a.spot.Calls)-1]
	f, ok := shoprule.FunctionNamed(call.Name)
	if !ok {
		return nil
	}
	label := f.Name + "(" + f.Takes + ") gives " + f.Gives
	signature := protocol.SignatureInformation{Label: label, Documentation: h.signatureDoc(f.Doc)}
	from := len(f.Name) + 1
	column := func(at int) protocol.UInteger { // in UTF-16, whatever was agreed for texts
		return mapper{schema.NewText(label), utf16}.position(int32(at)).Character
	}
	for _, argument := range f.Arguments() {
		from += strings.Index(label[from:], argument)
		parameter := protocol.ParameterInformation{Label: argument}
		if h.can.TextDocument.SignatureHelp.SignatureInformation.ParameterInformation.LabelOffsetSupport {
			parameter.Label = []protocol.UInteger{column(from), column(from + len(argument))}
		}
		signature.Parameters = append(signature.Parameters, parameter)
		from += len(argument)
	}
	active := protocol.UInteger(min(len(call.Before), len(signature.Parameters)-1))
	first := protocol.UInteger(0)
	return &protocol.SignatureHelp{Signatures: []protocol.SignatureInformation{signature}, ActiveSignature: &first, ActiveParameter: &active}
}

func (h *here) signatureDoc(text string) any {
	if slices.Contains(h.can.TextDocument.SignatureHelp.SignatureInformation.DocumentationFormat, "markdown") {
		return protocol.MarkupContent{Kind: protocol.MarkupKindMarkdown, Value: text}
	}
	return text
}
