// One connection to the server, made with the protocol authors' own library.
import { spawn } from "node:child_process";
import { pathToFileURL } from "node:url";
import fs from "node:fs";
import path from "node:path";
import { createProtocolConnection, StreamMessageReader, StreamMessageWriter } from "vscode-languageserver-protocol/node";

export class Client {
  constructor() {
    this.process = spawn("wickrule", ["lsp"], { stdio: ["pipe", "pipe", "inherit"] });
    this.exited = new Promise((done) => this.process.on("exit", done));
    this.connection = createProtocolConnection(new StreamMessageReader(this.process.stdout), new StreamMessageWriter(this.process.stdin), console);
    this.published = new Map(); // the last findings of each document
    this.texts = new Map(); // open documents: text and version
    this.waiting = [];
    this.asked = []; // what the server asked and told
    const c = this.connection;
    c.onNotification("textDocument/publishDiagnostics", (p) => {
      this.published.set(p.uri, p);
      this.waiting = this.waiting.filter((look) => !look());
    });
    c.onNotification((method, params) => void this.asked.push({ method, params }));
    c.onUnhandledProgress((params) => void this.asked.push({ method: "$/progress", params }));
    c.onRequest("workspace/applyEdit", (p) => (this.asked.push({ method: "workspace/applyEdit", params: p }), { applied: this.apply(p.edit) }));
    c.onRequest((method, params) => {
      this.asked.push({ method, params });
      if (method === "workspace/configuration") return params.items.map(() => this.settings ?? null);
      if (method === "window/showDocument") return { success: true };
      return null;
    });
    c.onError(([error]) => {
      throw error;
    });
    c.listen();
  }

  async start(folder, capabilities) {
    const uri = pathToFileURL(folder).href;
    this.able = (await this.connection.sendRequest("initialize", {
      processId: process.pid, rootUri: uri, capabilities, workspaceFolders: [{ uri, name: path.basename(folder) }],
    })).capabilities;
    await this.connection.sendNotification("initialized", {});
  }

  async stop() {
    await this.connection.sendRequest("shutdown");
    await this.connection.sendNotification("exit");
    return this.exited;
  }

  call(method, params) {
    return this.connection.sendRequest(method, params);
  }

  async open(file) {
    const uri = pathToFileURL(file).href;
    const text = fs.readFileSync(file, "utf8");
    this.texts.set(uri, { text, version: 1, file });
    await this.connection.sendNotification("textDocument/didOpen", { textDocument: { uri, languageId: "candle", version: 1, text } });
    return uri;
  }

  async close(uri) {
    this.texts.delete(uri);
    await this.connection.sendNotification("textDocument/didClose", { textDocument: { uri } });
  }

  // save writes every open text to its file, and tells of it.
  async save() {
    for (const [uri, { text, file }] of this.texts) {
      fs.writeFileSync(file, text);
      await this.connection.sendNotification("textDocument/didSave", { textDocument: { uri } });
    }
  }

  // edit puts a text in place of another, as one change, or the whole text anew.
  async edit(uri, range, text) {
    const doc = this.texts.get(uri);
    doc.version++;
    doc.text = range ? applied(doc.text, [{ range, newText: text }]) : text;
    await this.connection.sendNotification("textDocument/didChange", {
      textDocument: { uri, version: doc.version }, contentChanges: [range ? { range, text } : { text }],
    });
  }

  // apply makes the edit of a workspace: open texts are edited, and files that are
  // not open are written.
  apply(edit) {
    const changes = Object.entries(edit.changes ?? {}).map(([uri, edits]) => ({ textDocument: { uri }, edits }));
    for (const change of edit.documentChanges ?? changes) {
      if (change.kind) {
        fs.writeFileSync(new URL(change.uri), "");
        continue;
      }
      const { uri } = change.textDocument;
      const doc = this.texts.get(uri);
      if (doc) {
        if (change.textDocument.version != null && change.textDocument.version !== doc.version) return false;
        this.edit(uri, null, applied(doc.text, change.edits));
      } else {
        const file = new URL(uri);
        fs.writeFileSync(file, applied(fs.readFileSync(file, "utf8"), change.edits));
        this.connection.sendNotification("workspace/didChangeWatchedFiles", { changes: [{ uri, type: 2 }] });
      }
    }
    return true;
  }

  // findings waits for the findings of the text that stands.
  findings(uri, wanted = () => true) {
    return this.until(`findings of ${uri}`, () => {
      const p = this.published.get(uri);
      return p && p.version === this.texts.get(uri).version && wanted(p.diagnostics) ? p.diagnostics : undefined;
    });
  }

  until(what, look) {
    return new Promise((done, fail) => {
      const first = look();
      if (first !== undefined) return done(first);
      const timer = setTimeout(() => fail(new Error(`waited in vain for ${what}`)), 20000);
      this.waiting.push(() => {
        const now = look();
        if (now === undefined) return false;
        clearTimeout(timer);
        done(now);
        return true;
      });
    });
  }

  text(uri) {
    return this.texts.get(uri).text;
  }

  slice(uri, range) {
    const text = this.text(uri);
    return text.slice(offset(text, range.start), offset(text, range.end));
  }

  // at is the position where a piece of text begins, and so many units further.
  at(uri, piece, further = 0) {
    const text = this.text(uri);
    const i = text.indexOf(piece);
    if (i < 0) throw new Error(`${piece} is not in ${uri}`);
    return position(text, i + further);
  }
}

// JavaScript's strings count UTF-16 units, as the protocol does.
export function offset(text, { line, character }) {
  let start = 0;
  for (let i = 0; i < line; i++) {
    const end = text.indexOf("\n", start);
    if (end < 0) return text.length;
    start = end + 1;
  }
  const end = text.indexOf("\n", start);
  return Math.min(start + character, end < 0 ? text.length : end);
}

export function position(text, offset) {
  const before = text.slice(0, offset);
  return { line: before.split("\n").length - 1, character: offset - (before.lastIndexOf("\n") + 1) };
}

export function applied(text, edits) {
  const places = edits.map((e) => ({ start: offset(text, e.range.start), end: offset(text, e.range.end), text: e.newText }));
  places.sort((a, b) => b.start - a.start || b.end - a.end);
  for (const p of places) text = text.slice(0, p.start) + p.text + text.slice(p.end);
  return text;
}
