package lsp

import "slices"

// client is what the editor at the other end can do, as far as it matters
// here: the part of the protocol's client capabilities that is looked at.
type client struct {
	General struct {
		PositionEncodings []encoding `json:"positionEncodings"`
	} `json:"general"`
	Window struct {
		WorkDoneProgress bool                   `json:"workDoneProgress"`
		ShowDocument     struct{ Support bool } `json:"showDocument"`
	} `json:"window"`
	Workspace struct {
		ApplyEdit             bool `json:"applyEdit"`
		Configuration         bool `json:"configuration"`
		DidChangeWatchedFiles struct {
			DynamicRegistration bool `json:"dynamicRegistration"`
		} `json:"didChangeWatchedFiles"`
		DidChangeConfiguration struct {
			DynamicRegistration bool `json:"dynamicRegistration"`
		} `json:"didChangeConfiguration"`
		WorkspaceEdit struct {
			DocumentChanges    bool     `json:"documentChanges"`
			ResourceOperations []string `json:"resourceOperations"`
		} `json:"workspaceEdit"`
		ExecuteCommand *struct{} `json:"executeCommand"`
		CodeLens       refreshes `json:"codeLens"`
		InlayHint      refreshes `json:"inlayHint"`
		Diagnostics    refreshes `json:"diagnostics"`
	} `json:"workspace"`
	TextDocument struct {
		PublishDiagnostics struct {
			RelatedInformation     bool           `json:"relatedInformation"`
			TagSupport             *valueSet[int] `json:"tagSupport"`
			CodeDescriptionSupport bool           `json:"codeDescriptionSupport"`
			DataSupport            bool           `json:"dataSupport"`
			VersionSupport         bool           `json:"versionSupport"`
		} `json:"publishDiagnostics"`
		Diagnostic *struct {
			RelatedInformation bool           `json:"relatedInformation"`
			TagSupport         *valueSet[int] `json:"tagSupport"`
		} `json:"diagnostic"`
		CodeAction struct {
			CodeActionLiteralSupport *struct{}   `json:"codeActionLiteralSupport"`
			IsPreferredSupport       bool        `json:"isPreferredSupport"`
			DisabledSupport          bool        `json:"disabledSupport"`
			DataSupport              bool        `json:"dataSupport"`
			ResolveSupport           *properties `json:"resolveSupport"`
		} `json:"codeAction"`
		Completion *completionSupport `json:"completion"` // nil: it says nothing of it
		Hover      struct {
			ContentFormat []string `json:"contentFormat"`
		} `json:"hover"`
		SignatureHelp struct {
			SignatureInformation struct {
				DocumentationFormat  []string `json:"documentationFormat"`
				ParameterInformation struct {
					LabelOffsetSupport bool `json:"labelOffsetSupport"`
				} `json:"parameterInformation"`
			} `json:"signatureInformation"`
		} `json:"signatureHelp"`
		DocumentSymbol struct {
			HierarchicalDocumentSymbolSupport bool `json:"hierarchicalDocumentSymbolSupport"`
		} `json:"documentSymbol"`
		Definition linked `json:"definition"`
		Rename     struct {
			PrepareSupport bool `json:"prepareSupport"`
		} `json:"rename"`
		FoldingRange struct {
			LineFoldingOnly bool `json:"lineFoldingOnly"`
		} `json:"foldingRange"`
	} `json:"textDocument"`
}

// completionSupport is what the client can do with an item of completion.
type completionSupport struct {
	CompletionItem struct {
		SnippetSupport        bool           `json:"snippetSupport"`
		DocumentationFormat   []string       `json:"documentationFormat"`
		LabelDetailsSupport   bool           `json:"labelDetailsSupport"`
		InsertReplaceSupport  bool           `json:"insertReplaceSupport"`
		InsertTextModeSupport *valueSet[int] `json:"insertTextModeSupport"`
		ResolveSupport        *properties    `json:"resolveSupport"`
	} `json:"completionItem"`
}

type refreshes struct {
	RefreshSupport bool `json:"refreshSupport"`
}

type linked struct {
	LinkSupport bool `json:"linkSupport"`
}

type valueSet[T any] struct {
	ValueSet []T `json:"valueSet"`
}

type properties struct {
	Properties []string `json:"properties"`
}

// encoding is the encoding of positions to be used: the first offered that is
// known here, UTF-16 where none was offered.
func (c *client) encoding() encoding {
	for _, e := range c.General.PositionEncodings {
		if e == utf16 || e == utf8s || e == utf32 {
			return e
		}
	}
	return utf16
}

// pulls says whether the client asks for the findings of open documents
// itself; they are then not sent to it as well.
func (c *client) pulls() bool { return c.TextDocument.Diagnostic != nil }

// completion is what it can do with an item of completion: nothing, where it
// says nothing.
func (c *client) completion() *completionSupport {
	if c.TextDocument.Completion == nil {
		return &completionSupport{}
	}
	return c.TextDocument.Completion
}

// replacesWords says whether the client is taken to replace the word at the
// cursor by what it is offered, and nothing else: a client that says nothing of
// completion may know nothing of edits (Kate 22.12 reads their text and not
// their place).
func (c *client) replacesWords() bool { return c.TextDocument.Completion == nil }

// markdown says whether hovers may be written in Markdown.
func (c *client) markdown() bool {
	return slices.Contains(c.TextDocument.Hover.ContentFormat, "markdown")
}
