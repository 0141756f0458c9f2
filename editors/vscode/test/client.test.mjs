// The extension as it is bundled, with the real client library and the real
// server, in a stand-in for the editor (vscode.cjs). WICKRULE is the program.
import assert from 'node:assert/strict';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import Module, { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';

const require = createRequire(import.meta.url);
const standIn = fileURLToPath(new URL('vscode.cjs', import.meta.url));
const resolve = Module._resolveFilename;
Module._resolveFilename = function (name, ...rest) {
  return name === 'vscode' ? standIn : resolve.call(this, name, ...rest);
};
const vscode = require(standIn);
const { state } = vscode;
const extension = require('../out/extension.js');

const folder = mkdtempSync(join(tmpdir(), 'vscode-'));
const tide = join(folder, 'shop/recipes/tide-pillar.candle.hcl');
let document;

async function eventually(what, holds) {
  for (let i = 0; i < 1000; i++) {
    const value = await holds();
    if (value) {
      return value;
    }
    await new Promise((done) => setTimeout(done, 20));
  }
  assert.fail(`waited in vain for ${what}: ${JSON.stringify(state.shown)}`);
}

const findings = () => state.findings.get(document.uri.toString());

async function type(from, to) {
  const at = document.text.indexOf(from);
  assert.ok(at >= 0, from);
  const range = new vscode.Range(document.positionAt(at), document.positionAt(at + from.length));
  document.text = document.text.replace(from, to);
  document.version++;
  await state.changed.fire({ document, contentChanges: [{ range, rangeOffset: at, rangeLength: from.length, text: to }], reason: undefined });
}

function cursorAt(piece) {
  state.editor = { document, selection: new vscode.Selection(document.positionAt(document.text.indexOf(piece))) };
}

before(async () => {
  cpSync(fileURLToPath(new URL('../../../examples/shop', import.meta.url)), join(folder, 'shop'), { recursive: true });
  state.folder = join(folder, 'shop');
  state.settings = { wickrule: { program: process.env.WICKRULE, level: 'consider', hints: true, lenses: true } };
  document = makeDocument();
  state.documents.push(document);
  cursorAt('recipe');
  await extension.activate({ subscriptions: [], globalStorageUri: vscode.Uri.file(join(folder, 'storage')) });
});

function makeDocument() {
  const text = readFileSync(tide).toString();
  const lines = () => made.text.split('\n');
  const made = {
    uri: vscode.Uri.file(tide), fileName: tide, languageId: 'candle', version: 1, text, isUntitled: false, isClosed: false, eol: 1,
    offsetAt: (p) => lines().slice(0, p.line).reduce((n, line) => n + line.length + 1, 0) + p.character,
    positionAt: (n) => { const head = made.text.slice(0, n).split('\n'); return new vscode.Position(head.length - 1, head.at(-1).length); },
    getText: (r) => (r === undefined ? made.text : made.text.slice(made.offsetAt(r.start), made.offsetAt(r.end))),
    lineAt: (n) => ({ text: lines()[n], range: new vscode.Range(n, 0, n, lines()[n].length) }),
    get lineCount() { return lines().length; },
  };
  return made;
}

after(async () => {
  await extension.deactivate();
  rmSync(folder, { recursive: true, force: true });
});

test('a sound recipe has no finding, and a fault that is typed has one on its characters', async () => {
  assert.deepEqual(state.shown, []);
  assert.deepEqual(await eventually('the first findings', findings), []);
  await type('load = "5 % of wax"', 'load = "7 % of wax"');
  const list = await eventually('the finding', () => findings()?.some((d) => d.code === 'fragrance-over-limit') && findings());
  const over = list.find((d) => d.code === 'fragrance-over-limit');
  assert.equal(document.getText(over.range), '"7 % of wax"');
  assert.equal(over.source, 'wickrule');
});

test('hovers, offers and repairs come through the library', async () => {
  const token = { isCancellationRequested: false, onCancellationRequested: () => ({ dispose() {} }) };
  for (const kind of ['registerHoverProvider', 'registerCompletionItemProvider', 'registerCodeActionsProvider', 'registerRenameProvider', 'registerDocumentFormattingEditProvider', 'registerInlayHintsProvider', 'registerCodeLensProvider']) {
    assert.ok((state.providers.get(kind) ?? []).length > 0, kind);
  }
  const [hover] = state.providers.get('registerHoverProvider');
  const said = await hover.provideHover(document, document.positionAt(document.text.indexOf('7 % of wax')), token);
  assert.match(JSON.stringify(said.contents), /limit/);
});

test('the batch sheet of the recipe at the cursor is shown', async () => {
  cursorAt('step "melt"');
  await vscode.commands.executeCommand('wickrule.showSheet');
  const page = state.shown.at(-1);
  assert.equal(page.title, '/Batch sheet, tide-pillar.md');
  assert.match(page.text, /Tide and thyme pillar/);
});

test('the line above a recipe shows the sheet too', async () => {
  await vscode.commands.executeCommand('wickrule.sheet', document.uri.toString(), 'tide-pillar');
  assert.equal(state.shown.at(-1).title, '/Batch sheet, tide-pillar.md');
});

test('the rule of the finding at the cursor is explained, and its page of the handbook opened', async () => {
  cursorAt('7 % of wax');
  await vscode.commands.executeCommand('wickrule.explainRule');
  assert.equal(state.shown.at(-1).title, '/fragrance-over-limit.md');
  await vscode.commands.executeCommand('wickrule.showHandbookPage');
  assert.equal(state.shown.at(-1).error, undefined, JSON.stringify(state.shown.at(-1)));
  assert.match(state.opened.at(-1), /rule-fragrance-over-limit\.html$/);
  assert.ok(existsSync(state.opened.at(-1)));
});

test('mending goes by the server and comes back as an edit', async () => {
  cursorAt('recipe');
  await type('step "trim base" {}', 'step "trim bsae" {}');
  await eventually('the slip', () => findings()?.some((d) => d.code === 'unknown-step'));
  await vscode.commands.executeCommand('wickrule.mendThisFile');
  assert.ok(document.text.includes('step "trim base"'), JSON.stringify(state.shown.at(-1)));
});

test('without a program it is said what to do', async () => {
  state.settings.wickrule.program = '/nowhere/wickrule';
  await state.configured.fire({ affectsConfiguration: (name) => name === 'wickrule.program' });
  await eventually('what to do', () => state.shown.at(-1)?.error);
  assert.match(state.shown.at(-1).error, /there is no program that can be run/);
  await vscode.commands.executeCommand('wickrule.showSheet');
  assert.match(state.shown.at(-1).error, /does not run/);
});
