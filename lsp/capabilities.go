package lsp

import protocol "github.com/tliron/glsp/protocol_3_16"

// capabilities is what the server tells the client it can do.
func (s *server) capabilities() serverCapabilities {
	yes, incremental := true, protocol.TextDocumentSyncKindIncremental
	c := serverCapabilities{PositionEncoding: s.enc, InlayHintProvider: true}
	c.TextDocumentSync = protocol.TextDocumentSyncOptions{OpenClose: &yes, Change: &incremental}
	c.HoverProvider = true
	c.CompletionProvider = &protocol.CompletionOptions{TriggerCharacters: completionTriggers, ResolveProvider: &yes}
	c.SignatureHelpProvider = &protocol.SignatureHelpOptions{TriggerCharacters: []string{"("}, RetriggerCharacters: []string{","}}
	c.DefinitionProvider = true
	c.ReferencesProvider = true
	c.DocumentHighlightProvider = true
	c.DocumentSymbolProvider = true
	c.WorkspaceSymbolProvider = true
	c.CodeActionProvider = true
	if s.can.TextDocument.CodeAction.CodeActionLiteralSupport != nil {
		c.CodeActionProvider = protocol.CodeActionOptions{CodeActionKinds: codeActionKinds, ResolveProvider: &yes}
	}
	c.CodeLensProvider = &protocol.CodeLensOptions{}
	c.DocumentLinkProvider = &protocol.DocumentLinkOptions{}
	c.ColorProvider = true
	c.DocumentFormattingProvider = true
	c.DocumentRangeFormattingProvider = true
	c.DocumentOnTypeFormattingProvider = &protocol.DocumentOnTypeFormattingOptions{FirstTriggerCharacter: onTypeTriggers[0], MoreTriggerCharacter: onTypeTriggers[1:]}
	c.RenameProvider = true
	if s.can.TextDocument.Rename.PrepareSupport {
		c.RenameProvider = protocol.RenameOptions{PrepareProvider: &yes}
	}
	c.FoldingRangeProvider = true
	c.SelectionRangeProvider = true
	c.SemanticTokensProvider = protocol.SemanticTokensOptions{Legend: tokenLegend, Full: true, Range: true}
	c.ExecuteCommandProvider = &protocol.ExecuteCommandOptions{Commands: commandNames()}
	c.Workspace = &protocol.ServerCapabilitiesWorkspace{WorkspaceFolders: &protocol.WorkspaceFoldersServerCapabilities{Supported: &yes, ChangeNotifications: &protocol.BoolOrString{Value: true}}}
	if s.can.pulls() {
		c.DiagnosticProvider = &diagnosticOptions{Identifier: "wickrule", InterFileDependencies: true}
	}
	return c
}
