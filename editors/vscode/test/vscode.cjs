// As much of the editor's API as the extension and its client library call: it
// holds documents, takes providers and findings, and answers the built-in
// commands the extension uses. Whatever else is asked for is an empty class or a
// function that does nothing, so that a new feature of the library does not stop
// a test of another.
'use strict';
const { pathToFileURL, fileURLToPath } = require('node:url');

class Disposable {
  constructor(act) { this.act = act; }
  dispose() { this.act?.(); }
  static from(...all) { return new Disposable(() => all.forEach((one) => one.dispose())); }
}
class EventEmitter {
  constructor() {
    this.heard = new Set();
    this.event = (act, self) => {
      const bound = self === undefined ? act : act.bind(self);
      this.heard.add(bound);
      return new Disposable(() => this.heard.delete(bound));
    };
  }
  fire(value) { return Promise.all([...this.heard].map((act) => act(value))); }
  dispose() { this.heard.clear(); }
}
class Uri {
  constructor(scheme, path) { Object.assign(this, { scheme, authority: '', path, query: '', fragment: '' }); }
  get fsPath() { return this.path; }
  toString() { return this.scheme === 'file' ? pathToFileURL(this.path).href : `${this.scheme}:${encodeURI(this.path)}`; }
  toJSON() { return this.toString(); }
  with(change) { return Object.assign(new Uri(this.scheme, this.path), change); }
  static file(path) { return new Uri('file', path); }
  static from({ scheme, path }) { return new Uri(scheme, path); }
  static parse(text) { return text.startsWith('file:') ? Uri.file(fileURLToPath(text)) : new Uri(text.slice(0, text.indexOf(':')), decodeURI(text.slice(text.indexOf(':') + 1))); }
}
class Position {
  constructor(line, character) { Object.assign(this, { line, character }); }
  isBefore(o) { return this.line < o.line || (this.line === o.line && this.character < o.character); }
  isEqual(o) { return this.line === o.line && this.character === o.character; }
}
class Range {
  constructor(a, b, c, d) {
    this.start = typeof a === 'number' ? new Position(a, b) : a;
    this.end = typeof a === 'number' ? new Position(c, d) : b;
  }
  contains(p) { return !p.isBefore(this.start) && !this.end.isBefore(p); }
  get isEmpty() { return this.start.isEqual(this.end); }
}
class Selection extends Range {
  constructor(at) { super(at, at); this.active = at; }
}
class Diagnostic {
  constructor(range, message, severity) { Object.assign(this, { range, message, severity }); }
}
class Document {
  constructor(uri, languageId, text) { Object.assign(this, { uri, languageId, version: 1, text, isUntitled: false, isClosed: false, eol: 1 }); this.fileName = uri.fsPath; }
  offsetAt(p) { return this.text.split('\n').slice(0, p.line).reduce((n, line) => n + line.length + 1, 0) + p.character; }
  positionAt(n) { const before = this.text.slice(0, n).split('\n'); return new Position(before.length - 1, before.at(-1).length); }
  getText(range) { return range === undefined ? this.text : this.text.slice(this.offsetAt(range.start), this.offsetAt(range.end)); }
  get lineCount() { return this.text.split('\n').length; }
  lineAt(line) { const text = this.text.split('\n')[typeof line === 'number' ? line : line.line]; return { text, lineNumber: line, range: new Range(line, 0, line, text.length) }; }
}

const state = {
  documents: [], commands: new Map(), providers: new Map(), findings: new Map(), shown: [], opened: [], settings: {},
  changed: new EventEmitter(), configured: new EventEmitter(), didOpen: new EventEmitter(), willSave: new EventEmitter(),
};
const nothing = () => new Disposable(() => {});
const events = () => new Proxy({}, { get: (_, name) => (String(name).startsWith('on') ? new EventEmitter().event : nothing) });
const registering = (kind) => (selector, provider) => {
  state.providers.set(kind, [...(state.providers.get(kind) ?? []), provider]);
  return new Disposable(() => {});
};
const over = (own) => new Proxy(own, { get: (o, name) => (name in o ? o[name] : String(name).startsWith('on') ? new EventEmitter().event : String(name).startsWith('register') ? registering(String(name)) : nothing) });

const workspace = over({
  get textDocuments() { return state.documents; },
  get workspaceFolders() { return state.folder === undefined ? undefined : [{ uri: Uri.file(state.folder), name: 'shop', index: 0 }]; },
  notebookDocuments: [],
  getWorkspaceFolder: () => undefined,
  getConfiguration: (section) => ({
    get: (name, otherwise) => (section === undefined ? { ...state.settings }[name] : state.settings[section]?.[name]) ?? otherwise,
    has: () => true, inspect: () => undefined, ...(section === undefined ? state.settings : state.settings[section]),
  }),
  onDidChangeTextDocument: state.changed.event,
  onDidOpenTextDocument: state.didOpen.event,
  onDidChangeConfiguration: state.configured.event,
  onWillSaveTextDocument: state.willSave.event,
  registerTextDocumentContentProvider: (scheme, provider) => { state.pages = provider; return new Disposable(() => {}); },
  createFileSystemWatcher: () => ({ ...Object.fromEntries(['onDidCreate', 'onDidChange', 'onDidDelete'].map((n) => [n, new EventEmitter().event])), dispose() {} }),
  fs: { createDirectory: async (uri) => require('node:fs').mkdirSync(uri.fsPath, { recursive: true }) },
  applyEdit: async (edit) => {
    state.applied = edit;
    for (const [uri, edits] of edit.list ?? []) {
      const document = state.documents.find((d) => d.uri.toString() === uri.toString());
      if (document === undefined) { continue; }
      const sorted = [...edits].sort((a, b) => document.offsetAt(b.range.start) - document.offsetAt(a.range.start));
      const changes = [];
      for (const e of sorted) {
        const from = document.offsetAt(e.range.start), to = document.offsetAt(e.range.end);
        changes.push({ range: e.range, rangeOffset: from, rangeLength: to - from, text: e.newText });
        document.text = document.text.slice(0, from) + e.newText + document.text.slice(to);
      }
      document.version++;
      await state.changed.fire({ document, contentChanges: changes, reason: undefined });
    }
    return true;
  },
});
const languages = over({
  match: (selector, document) => ([selector].flat().some((s) => (s.language ?? s) === document.languageId) ? 10 : 0),
  createDiagnosticCollection: () => ({
    set: (uri, list) => (Array.isArray(uri) ? uri.forEach(([u, l]) => state.findings.set(u.toString(), l)) : state.findings.set(uri.toString(), list)),
    delete: (uri) => state.findings.delete(uri.toString()), clear: () => state.findings.clear(), dispose() {}, has: () => false, get: () => undefined, forEach() {},
  }),
  getDiagnostics: (uri) => state.findings.get(uri.toString()) ?? [],
});
const token = { isCancellationRequested: false, onCancellationRequested: new EventEmitter().event };
const commands = {
  registerCommand: (name, act) => {
    if (state.commands.has(name)) { throw new Error(`command '${name}' already exists`); }
    state.commands.set(name, act);
    return new Disposable(() => state.commands.delete(name));
  },
  executeCommand: async (name, ...args) => {
    if (name === 'vscode.executeDocumentSymbolProvider') {
      const document = state.documents.find((d) => d.uri.toString() === args[0].toString());
      return (await Promise.all((state.providers.get('registerDocumentSymbolProvider') ?? []).map((p) => p.provideDocumentSymbols(document, token)))).flat().filter((symbol) => symbol);
    }
    if (name === 'markdown.showPreviewToSide') {
      state.shown.push({ title: args[0].path, text: state.pages.provideTextDocumentContent(args[0]) });
      return undefined;
    }
    const act = state.commands.get(name);
    return act?.(...args);
  },
};
const window = over({
  get activeTextEditor() { return state.editor; },
  get visibleTextEditors() { return state.editor === undefined ? [] : [state.editor]; },
  tabGroups: { all: [], onDidChangeTabs: new EventEmitter().event, onDidChangeTabGroups: new EventEmitter().event },
  createOutputChannel: () => ({ append() {}, appendLine() {}, show() {}, clear() {}, dispose() {}, replace() {}, hide() {}, error() {}, warn() {}, info() {}, debug() {}, trace() {}, name: 'x', logLevel: 1, onDidChangeLogLevel: new EventEmitter().event }),
  showErrorMessage: async (text) => { state.shown.push({ error: text }); },
  showInformationMessage: async (text) => { state.shown.push({ said: text }); },
  showWarningMessage: async (text) => { state.shown.push({ said: text }); },
  withProgress: (options, act) => act({ report() {} }, token),
});
class WorkspaceEdit {
  constructor() { this.list = []; }
  set(uri, edits) { this.list.push([uri, edits.map((e) => (Array.isArray(e) ? e[0] : e))]); }
  replace(uri, range, newText) { this.list.push([uri, [{ range, newText }]]); }
  insert(uri, at, newText) { this.replace(uri, new Range(at, at), newText); }
  delete(uri, range) { this.replace(uri, range, ''); }
  createFile() {}
  renameFile() {}
  deleteFile() {}
}
const env = { openExternal: async (uri) => { state.opened.push(uri.fsPath); return true; }, appName: 'a stand-in', language: 'en', logLevel: 1, onDidChangeLogLevel: new EventEmitter().event };
const plain = {
  Disposable, EventEmitter, Uri, Position, Range, Selection, Diagnostic, WorkspaceEdit, workspace, languages, commands, window, env, version: '1.91.0',
  TextEdit: class TextEdit { constructor(range, newText) { Object.assign(this, { range, newText }); } static replace(r, t) { return new this(r, t); } },
  Location: class Location { constructor(uri, range) { Object.assign(this, { uri, range }); } },
  Hover: class Hover { constructor(contents, range) { Object.assign(this, { contents, range }); } },
  MarkdownString: class MarkdownString { constructor(value) { this.value = value ?? ''; } appendCodeblock(text) { this.value += text; return this; } appendMarkdown(text) { this.value += text; return this; } },
  DocumentSymbol: class DocumentSymbol { constructor(name, detail, kind, range, selectionRange) { Object.assign(this, { name, detail, kind, range, selectionRange, children: [] }); } },
  CancellationTokenSource: class { constructor() { this.token = token; } cancel() {} dispose() {} },
  CancellationError: class extends Error {},
  extensions: { getExtension: () => undefined, all: [], onDidChange: new EventEmitter().event },
  DiagnosticSeverity: { Error: 0, Warning: 1, Information: 2, Hint: 3 },
  EndOfLine: { LF: 1, CRLF: 2 },
  state,
};
// Whatever else the types declare: enumerations with their values, and classes
// that keep what they are made with.
const types = require('node:fs').readFileSync(require.resolve('@types/vscode/index.d.ts')).toString();
for (const [, sort, name, body] of types.matchAll(/^\texport (class|enum) (\w+)[^{]*\{([\s\S]*?)^\t\}/gm)) {
  if (name in plain) { continue; }
  plain[name] = sort === 'class'
    ? class { constructor(...args) { Object.assign(this, { made: args }); } }
    : Object.fromEntries([...body.replace(/\/\*[\s\S]*?\*\//g, '').matchAll(/(\w+)(?:\s*=\s*(-?\d+))?/g)].map(([, member, value], n) => [member, Number(value ?? n)]));
}
plain.CodeActionKind = class CodeActionKind { constructor(value) { this.value = value; } append(more) { return new CodeActionKind(`${this.value}.${more}`); } };
for (const [kind, value] of Object.entries({ Empty: '', QuickFix: 'quickfix', Refactor: 'refactor', RefactorExtract: 'refactor.extract', RefactorInline: 'refactor.inline', RefactorMove: 'refactor.move', RefactorRewrite: 'refactor.rewrite', Source: 'source', SourceOrganizeImports: 'source.organizeImports', SourceFixAll: 'source.fixAll', Notebook: 'notebook' })) {
  plain.CodeActionKind[kind] = new plain.CodeActionKind(value);
}
module.exports = plain;
