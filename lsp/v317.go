package lsp

import (
	"encoding/json"

	protocol "github.com/tliron/glsp/protocol_3_16"
)

// What version 3.17 of the protocol added, as far as it is served here. The
// types of the library are those of 3.16.

// Codes of errors.
const (
	serverNotInitialized = -32002
	contentModified      = -32801
	requestCancelled     = -32800
	requestFailed        = -32803
)

// serverCapabilities adds what 3.17 has to those of 3.16.
type serverCapabilities struct {
	protocol.ServerCapabilities
	PositionEncoding   encoding           `json:"positionEncoding,omitempty"`
	InlayHintProvider  any                `json:"inlayHintProvider,omitempty"`
	DiagnosticProvider *diagnosticOptions `json:"diagnosticProvider,omitempty"`
}

type diagnosticOptions struct {
	Identifier            string `json:"identifier,omitempty"`
	InterFileDependencies bool   `json:"interFileDependencies"`
	WorkspaceDiagnostics  bool   `json:"workspaceDiagnostics"`
}

type inlayHintParams struct {
	TextDocument protocol.TextDocumentIdentifier `json:"textDocument"`
	Range        protocol.Range                  `json:"range"`
}

// inlayHint is a figure shown beside the text. Kind is left out: a figure is
// neither a type nor a parameter.
type inlayHint struct {
	Position     protocol.Position `json:"position"`
	Label        string            `json:"label"`
	Tooltip      any               `json:"tooltip,omitempty"` // nil | string | MarkupContent
	PaddingLeft  bool              `json:"paddingLeft,omitempty"`
	PaddingRight bool              `json:"paddingRight,omitempty"`
}

type documentDiagnosticParams struct {
	TextDocument     protocol.TextDocumentIdentifier `json:"textDocument"`
	PreviousResultID string                          `json:"previousResultId"`
}

// documentDiagnosticReport is the findings of one document: "full" with its
// items, or "unchanged".
type documentDiagnosticReport struct {
	Kind     string        `json:"kind"`
	ResultID string        `json:"resultId,omitempty"`
	Items    *[]diagnostic `json:"items,omitempty"`
}

// completionLabelDetails stand beside a completion's label.
type completionLabelDetails struct {
	Detail      string `json:"detail,omitempty"`
	Description string `json:"description,omitempty"`
}

// diagnostic is the protocol's, whose code survives being read back, which
// that of the library does not.
type diagnostic struct {
	Range              protocol.Range                          `json:"range"`
	Severity           protocol.DiagnosticSeverity             `json:"severity,omitempty"`
	Code               string                                  `json:"code,omitempty"`
	Source             string                                  `json:"source,omitempty"`
	Message            string                                  `json:"message"`
	Tags               []protocol.DiagnosticTag                `json:"tags,omitempty"`
	RelatedInformation []protocol.DiagnosticRelatedInformation `json:"relatedInformation,omitempty"`
	Data               any                                     `json:"data,omitempty"`
}

type publishDiagnosticsParams struct {
	URI         string       `json:"uri"`
	Version     *int32       `json:"version,omitempty"`
	Diagnostics []diagnostic `json:"diagnostics"`
}

// codeActionParams is the protocol's, with the diagnostics as they are sent.
type codeActionParams struct {
	TextDocument protocol.TextDocumentIdentifier `json:"textDocument"`
	Range        protocol.Range                  `json:"range"`
	Context      struct {
		Diagnostics []sentBack `json:"diagnostics"`
		Only        []string   `json:"only"`
		TriggerKind int        `json:"triggerKind"` // 1: asked for; 2: offered while the cursor moves
	} `json:"context"`
}

// sentBack is a diagnostic as the client sends it back: its code may be
// anything.
type sentBack struct {
	Range   protocol.Range `json:"range"`
	Code    any            `json:"code,omitempty"`
	Source  string         `json:"source,omitempty"`
	Message string         `json:"message"`
	Data    any            `json:"data,omitempty"`
	raw     json.RawMessage
}
