import * as vscode from 'vscode';

// A recipe as it is written in a text: its key, and the lines from its first
// brace to its last.
export type Recipe = { key: string; from: number; to: number };

// recipeAt is the recipe that a line lies in; else the first of the text. The
// blocks of the top level are told by their symbols, which the server gives.
export async function recipeAt(document: vscode.TextDocument, line: number): Promise<string | undefined> {
  const symbols = (await vscode.commands.executeCommand<vscode.DocumentSymbol[]>('vscode.executeDocumentSymbolProvider', document.uri)) ?? [];
  let first: string | undefined;
  for (const symbol of symbols) {
    const key = keyOf(document.getText(symbol.selectionRange)) ?? keyOf(document.lineAt(symbol.range.start.line).text);
    if (!/^\s*recipe\b/.test(document.lineAt(symbol.range.start.line).text) || key === undefined) {
      continue;
    }
    first ??= key;
    if (symbol.range.start.line <= line && line <= symbol.range.end.line) {
      return key;
    }
  }
  return first;
}

function keyOf(text: string): string | undefined {
  return /"([^"]+)"/.exec(text)?.[1];
}

// ruleAt is the rule of the finding at a place, the one on the fewest
// characters; else of one on that line.
export function ruleAt(findings: readonly vscode.Diagnostic[], at: vscode.Position): string | undefined {
  const size = (d: vscode.Diagnostic) => (d.range.end.line - d.range.start.line) * 10000 + d.range.end.character - d.range.start.character;
  const ours = findings.filter((d) => d.source === 'wickrule' && typeof d.code === 'string').sort((a, b) => size(a) - size(b));
  const here = ours.find((d) => d.range.contains(at)) ?? ours.find((d) => d.range.start.line <= at.line && at.line <= d.range.end.line);
  return here?.code as string | undefined;
}
