import { createHash } from 'node:crypto';
import * as path from 'node:path';
import * as vscode from 'vscode';
import { ExecuteCommandRequest, LanguageClient, type LanguageClientOptions } from 'vscode-languageclient/node';
import { pageOf, shopOf } from './handbook';
import { recipeAt, ruleAt } from './place';
import { Pages } from './preview';
import { findProgram } from './program';

let client: LanguageClient | undefined;
let program: string | undefined;

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const pages = new Pages();
  context.subscriptions.push(vscode.workspace.registerTextDocumentContentProvider(Pages.scheme, pages));

  const command = (name: string, act: (editor: vscode.TextEditor) => Promise<void>) =>
    context.subscriptions.push(
      vscode.commands.registerCommand(`wickrule.${name}`, async () => {
        const editor = vscode.window.activeTextEditor;
        if (editor === undefined || editor.document.languageId !== 'candle') {
          void vscode.window.showInformationMessage('Open a recipe file first: its name ends in .candle.hcl.');
          return;
        }
        try {
          await act(editor);
        } catch (error) {
          void vscode.window.showErrorMessage(error instanceof Error ? error.message : String(error));
        }
      }),
    );

  command('showSheet', async (editor) => {
    running();
    const key = await recipeAt(editor.document, editor.selection.active.line);
    if (key === undefined) {
      throw new Error('There is no recipe in this file.');
    }
    await showSheet(pages, editor.document.uri.toString(), key);
  });
  command('explainRule', async (editor) => {
    const rule = ruleHere(editor);
    if (rule === undefined) {
      throw new Error('There is no finding here: put the cursor on one.');
    }
    await pages.show(rule, await ask('wickrule.explain', [rule]));
  });
  command('showHandbookPage', async (editor) => {
    if (program === undefined) {
      throw new Error('The program wickrule was not found, which makes the handbook.');
    }
    const shop = shopOf(editor.document.uri.fsPath);
    const into = path.join(context.globalStorageUri.fsPath, 'handbook-' + createHash('sha256').update(shop).digest('hex').slice(0, 12));
    await vscode.workspace.fs.createDirectory(context.globalStorageUri);
    await vscode.env.openExternal(vscode.Uri.file(await pageOf(program, shop, into, ruleHere(editor))));
  });
  command('mendThisFile', async (editor) => {
    await ask('wickrule.mendFile', [editor.document.uri.toString()]);
  });
  command('mendThisShop', async (editor) => {
    await ask('wickrule.mendShop', [editor.document.uri.toString()]);
  });
  context.subscriptions.push(
    vscode.commands.registerCommand('wickrule.restart', async () => {
      await stop();
      await start(pages);
    }),
    vscode.workspace.onDidChangeConfiguration(async (change) => {
      if (change.affectsConfiguration('wickrule.program')) {
        await stop();
        await start(pages);
      }
    }),
  );
  await start(pages);
}

export async function deactivate(): Promise<void> {
  await stop();
}

async function start(pages: Pages): Promise<void> {
  const said = vscode.workspace.getConfiguration('wickrule').get<string>('program', '');
  const found = findProgram(said, process.env['PATH'] ?? '', process.platform);
  if ('trouble' in found) {
    program = undefined;
    void vscode.window.showErrorMessage(found.trouble);
    return;
  }
  program = found.program;
  const options: LanguageClientOptions = {
    documentSelector: [{ language: 'candle' }],
    synchronize: { configurationSection: 'wickrule' },
    middleware: {
      // The line above a recipe asks the server for its batch sheet: what comes
      // back is shown.
      executeCommand: async (name, args, next) => {
        const answer: unknown = await next(name, args);
        if (name === 'wickrule.sheet' && typeof answer === 'string') {
          await pages.show(`Batch sheet, ${String(args[1])}`, answer);
        }
        return answer;
      },
    },
  };
  client = new LanguageClient('wickrule', 'Wickrule', { command: program, args: ['lsp'] }, options);
  await client.start();
}

async function stop(): Promise<void> {
  const was = client;
  client = undefined;
  await was?.stop();
}

function running(): LanguageClient {
  if (client === undefined) {
    throw new Error('The language server does not run: see the output of Wickrule.');
  }
  return client;
}

// ask has the server execute a command.
async function ask(command: string, args: unknown[]): Promise<string> {
  return (await running().sendRequest(ExecuteCommandRequest.type, { command, arguments: args })) as string;
}

async function showSheet(pages: Pages, uri: string, key: string): Promise<void> {
  await pages.show(`Batch sheet, ${key}`, await ask('wickrule.sheet', [uri, key]));
}

function ruleHere(editor: vscode.TextEditor): string | undefined {
  return ruleAt(vscode.languages.getDiagnostics(editor.document.uri), editor.selection.active);
}
