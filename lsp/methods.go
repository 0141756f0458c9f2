package lsp

import (
	"context"
	"encoding/json"
	"fmt"

	"github.com/sourcegraph/jsonrpc2"
	protocol "github.com/tliron/glsp/protocol_3_16"
)

// request answers one request. It runs on a goroutine of its own.
type request func(ctx context.Context, s *server, now *snapshot, params json.RawMessage) (any, error)

// requests lists every request that is served, by method. The features that
// are announced for them stand in capabilities.go.
func requests() map[string]request {
	return map[string]request{
		"textDocument/codeAction":           inDocument((*here).codeActions),
		"textDocument/codeLens":             inDocument((*here).codeLenses),
		"textDocument/colorPresentation":    inDocument((*here).colorPresentations),
		"textDocument/completion":           inDocument((*here).completionAsked),
		"textDocument/definition":           atPosition((*here).definition),
		"textDocument/documentColor":        inDocument((*here).colors),
		"textDocument/documentHighlight":    atPosition((*here).highlights),
		"textDocument/documentLink":         inDocument((*here).links),
		"textDocument/documentSymbol":       inDocument((*here).documentSymbols),
		"textDocument/foldingRange":         inDocument((*here).foldingRanges),
		"textDocument/formatting":           inDocument((*here).formatting),
		"textDocument/hover":                atPosition((*here).hover),
		"textDocument/inlayHint":            inDocument((*here).inlayHints),
		"textDocument/onTypeFormatting":     inDocument((*here).onTypeFormatting),
		"textDocument/prepareRename":        inDocument((*here).prepareRename),
		"textDocument/rangeFormatting":      inDocument((*here).rangeFormatting),
		"textDocument/references":           inDocument((*here).references),
		"textDocument/rename":               inDocument((*here).rename),
		"textDocument/selectionRange":       inDocument((*here).selectionRanges),
		"textDocument/semanticTokens/full":  inDocument((*here).semanticTokens),
		"textDocument/semanticTokens/range": inDocument((*here).semanticTokensIn),
		"textDocument/signatureHelp":        atPosition((*here).signatureHelp),
		"codeAction/resolve":                anywhere((*snapshot).resolveAction),
		"completionItem/resolve":            anywhere((*snapshot).resolveCompletion),
		"workspace/symbol":                  anywhere((*snapshot).workspaceSymbols),
		"workspace/executeCommand":          executeCommand,
	}
}

// aboutDocument is what the parameters of every request about a document have.
type aboutDocument struct {
	TextDocument protocol.TextDocumentIdentifier `json:"textDocument"`
	Position     protocol.Position               `json:"position"`
}

// atPosition makes a request of a method that wants to know where the cursor
// is and nothing else.
func atPosition[R any](answer func(*here, int32) R) request {
	return func(_ context.Context, _ *server, now *snapshot, params json.RawMessage) (any, error) {
		p, err := decode[aboutDocument](params)
		if err != nil {
			return nil, err
		}
		h, ok := now.at(p.TextDocument.URI)
		if !ok {
			return nil, noDocument(p.TextDocument.URI)
		}
		return answer(h, h.offset(p.Position)), nil
	}
}

// inDocument makes a request of a method about a document that wants all its
// parameters.
func inDocument[P, R any](answer func(*here, context.Context, *P) (R, error)) request {
	return func(ctx context.Context, _ *server, now *snapshot, params json.RawMessage) (any, error) {
		about, err := decode[aboutDocument](params)
		if err != nil {
			return nil, err
		}
		p, err := decode[P](params)
		if err != nil {
			return nil, err
		}
		h, ok := now.at(about.TextDocument.URI)
		if !ok {
			return nil, noDocument(about.TextDocument.URI)
		}
		return answer(h, ctx, p)
	}
}

// anywhere makes a request of a method that is about no single document.
func anywhere[P, R any](answer func(*snapshot, context.Context, *P) (R, error)) request {
	return func(ctx context.Context, _ *server, now *snapshot, params json.RawMessage) (any, error) {
		p, err := decode[P](params)
		if err != nil {
			return nil, err
		}
		return answer(now, ctx, p)
	}
}

func decode[P any](params json.RawMessage) (*P, error) {
	var p P
	if len(params) == 0 {
		return nil, &jsonrpc2.Error{Code: jsonrpc2.CodeInvalidParams, Message: "the parameters are missing"}
	}
	if err := json.Unmarshal(params, &p); err != nil {
		return nil, &jsonrpc2.Error{Code: jsonrpc2.CodeInvalidParams, Message: err.Error()}
	}
	return &p, nil
}

func noDocument(uri string) error {
	return &jsonrpc2.Error{Code: requestFailed, Message: fmt.Sprintf("%s is not open, and in no shop that is", uri)}
}
