import * as vscode from 'vscode';

// Pages shows Markdown that the server makes, beside the text, in the editor's
// own preview.
export class Pages implements vscode.TextDocumentContentProvider {
  static readonly scheme = 'wickrule';
  private readonly texts = new Map<string, string>();
  private readonly changed = new vscode.EventEmitter<vscode.Uri>();
  readonly onDidChange = this.changed.event;

  provideTextDocumentContent(uri: vscode.Uri): string {
    return this.texts.get(uri.path) ?? '';
  }

  async show(title: string, markdown: string): Promise<void> {
    const uri = vscode.Uri.from({ scheme: Pages.scheme, path: `/${title}.md` });
    this.texts.set(uri.path, markdown);
    this.changed.fire(uri);
    await vscode.commands.executeCommand('markdown.showPreviewToSide', uri);
  }
}
