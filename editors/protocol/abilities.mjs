// What three kinds of client say they can do.

const formats = ["markdown", "plaintext"];

// A client that can do everything the server looks at, and is sent the findings.
export const able = {
  general: { positionEncodings: ["utf-16"] },
  window: { workDoneProgress: true, showDocument: { support: true } },
  workspace: {
    applyEdit: true, configuration: true, workspaceFolders: true, executeCommand: {},
    didChangeWatchedFiles: { dynamicRegistration: true }, didChangeConfiguration: { dynamicRegistration: true },
    workspaceEdit: { documentChanges: true, resourceOperations: ["create", "rename", "delete"] },
    codeLens: { refreshSupport: true }, inlayHint: { refreshSupport: true }, diagnostics: { refreshSupport: true },
  },
  textDocument: {
    publishDiagnostics: { relatedInformation: true, tagSupport: { valueSet: [1, 2] }, versionSupport: true, dataSupport: true, codeDescriptionSupport: true },
    codeAction: {
      codeActionLiteralSupport: { codeActionKind: { valueSet: ["quickfix", "refactor", "refactor.rewrite", "source", "source.fixAll"] } },
      isPreferredSupport: true, disabledSupport: true, dataSupport: true, resolveSupport: { properties: ["edit"] },
    },
    completion: {
      completionItem: {
        snippetSupport: true, documentationFormat: formats, labelDetailsSupport: true, insertReplaceSupport: true, insertTextModeSupport: { valueSet: [1, 2] },
        resolveSupport: { properties: ["documentation", "detail"] },
      },
    },
    hover: { contentFormat: formats },
    signatureHelp: { signatureInformation: { documentationFormat: formats, parameterInformation: { labelOffsetSupport: true } } },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    definition: { linkSupport: true },
    rename: { prepareSupport: true },
    foldingRange: { lineFoldingOnly: false },
    inlayHint: {},
  },
};

// One that asks for the findings itself.
export const pulling = { ...able, textDocument: { ...able.textDocument, diagnostic: { relatedInformation: true, tagSupport: { valueSet: [1, 2] } } } };

// One that says next to nothing, but for letting the server change texts.
export const plain = { workspace: { applyEdit: true } };
