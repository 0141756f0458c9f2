// A long session that calls every method the server announces, at many places
// of every file given and of broken texts made of them. What the server says is
// recorded outside and judged by validate.mjs; here is only asked, and that
// nothing announced is left out.
//
//   node session.mjs SHOP FAULTY BIG
//
// SHOP and FAULTY are folders of recipes to be opened; BIG is one so large that
// reading it takes long enough to be told of.
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { Client, position } from "./client.mjs";
import { able, pulling, plain } from "./abilities.mjs";

const [shop, faulty, big] = process.argv.slice(2);

// What each announced capability lets a client call.
const calls = {
  positionEncoding: [],
  textDocumentSync: ["textDocument/didOpen", "textDocument/didChange", "textDocument/didClose"],
  hoverProvider: ["textDocument/hover"],
  completionProvider: ["textDocument/completion", "completionItem/resolve"],
  signatureHelpProvider: ["textDocument/signatureHelp"],
  definitionProvider: ["textDocument/definition"],
  referencesProvider: ["textDocument/references"],
  documentHighlightProvider: ["textDocument/documentHighlight"],
  documentSymbolProvider: ["textDocument/documentSymbol"],
  workspaceSymbolProvider: ["workspace/symbol"],
  codeActionProvider: ["textDocument/codeAction", "codeAction/resolve"],
  codeLensProvider: ["textDocument/codeLens"],
  documentLinkProvider: ["textDocument/documentLink"],
  colorProvider: ["textDocument/documentColor", "textDocument/colorPresentation"],
  documentFormattingProvider: ["textDocument/formatting"],
  documentRangeFormattingProvider: ["textDocument/rangeFormatting"],
  documentOnTypeFormattingProvider: ["textDocument/onTypeFormatting"],
  renameProvider: ["textDocument/prepareRename", "textDocument/rename"],
  foldingRangeProvider: ["textDocument/foldingRange"],
  selectionRangeProvider: ["textDocument/selectionRange"],
  semanticTokensProvider: ["textDocument/semanticTokens/full", "textDocument/semanticTokens/range"],
  inlayHintProvider: ["textDocument/inlayHint"],
  diagnosticProvider: ["textDocument/diagnostic"],
  executeCommandProvider: ["workspace/executeCommand"],
  workspace: ["workspace/didChangeWorkspaceFolders"],
};

// Counts of what was called and of what the server asked and told, over all
// the sessions.
const called = new Map();
const asked = new Map();
const count = (map, what) => map.set(what, (map.get(what) ?? 0) + 1);

class Session extends Client {
  async call(method, params) {
    count(called, method);
    if (method === "workspace/executeCommand") count(called, params.command);
    try {
      return await super.call(method, params);
    } catch (error) {
      // An answer that says why not is an answer. The codes are the protocol's.
      if (![-32602, -32800, -32801, -32803].includes(error.code)) throw new Error(`${method} ${JSON.stringify(params)}: ${error.code} ${error.message}`);
      return undefined;
    }
  }

  async checkAnnounced() {
    for (const [what, value] of Object.entries(this.able)) {
      if (!value) continue;
      if (!(what in calls)) throw new Error(`the server announces ${what}, which this session does not know`);
      if (what === "codeActionProvider" && !value.resolveProvider) continue;
      for (const method of calls[what]) {
        if (method.includes("/did")) continue;
        if (!called.has(method)) throw new Error(`${method} is announced and was never called`);
      }
    }
    for (const command of this.able.executeCommandProvider?.commands ?? []) {
      if (!called.has(command)) throw new Error(`the command ${command} is announced and was never executed`);
    }
    for (const { method } of this.asked) count(asked, method);
  }

  async whole(uri) {
    const textDocument = { uri };
    const text = this.text(uri);
    const all = { start: { line: 0, character: 0 }, end: position(text, text.length) };
    const half = { start: { line: 2, character: 0 }, end: { line: 9, character: 3 } };
    const options = { tabSize: 2, insertSpaces: true };
    const [symbols, colors] = await Promise.all([
      this.call("textDocument/documentSymbol", { textDocument }),
      this.call("textDocument/documentColor", { textDocument }),
      this.call("textDocument/codeLens", { textDocument }),
      this.call("textDocument/documentLink", { textDocument }),
      this.call("textDocument/foldingRange", { textDocument }),
      this.call("textDocument/formatting", { textDocument, options }),
      this.call("textDocument/rangeFormatting", { textDocument, range: half, options }),
      this.call("textDocument/semanticTokens/full", { textDocument }),
      this.call("textDocument/semanticTokens/range", { textDocument, range: half }),
      this.call("textDocument/inlayHint", { textDocument, range: all }),
      this.able.diagnosticProvider && this.call("textDocument/diagnostic", { textDocument }).then((report) =>
        this.call("textDocument/diagnostic", { textDocument, previousResultId: report.resultId })),
      this.call("workspace/symbol", { query: symbols0(text) }),
    ]);
    for (const { range, color } of colors ?? []) await this.call("textDocument/colorPresentation", { textDocument, range, color: { ...color, red: 0.5 } });
    await this.actions(uri, all);
    return symbols;
  }

  async actions(uri, range, only) {
    const diagnostics = (this.published.get(uri)?.diagnostics ?? []).filter((d) => d.range.start.line <= range.end.line && d.range.end.line >= range.start.line);
    const list = (await this.call("textDocument/codeAction", { textDocument: { uri }, range, context: { diagnostics, only, triggerKind: only ? 1 : undefined } })) ?? [];
    for (const action of list) {
      if (typeof action.command !== "string" && this.able.codeActionProvider.resolveProvider) await this.call("codeAction/resolve", action);
    }
    return list;
  }

  async place(uri, at) {
    const about = { textDocument: { uri }, position: at };
    const [, items] = await Promise.all([
      this.call("textDocument/hover", about),
      this.call("textDocument/completion", about),
      this.call("textDocument/signatureHelp", about),
      this.call("textDocument/definition", about),
      this.call("textDocument/documentHighlight", about),
      this.call("textDocument/references", { ...about, context: { includeDeclaration: true } }),
      this.call("textDocument/selectionRange", { textDocument: { uri }, positions: [at] }),
      this.call("textDocument/prepareRename", about).then((range) => range && this.call("textDocument/rename", { ...about, newName: "another-name" })),
      this.call("textDocument/onTypeFormatting", { ...about, ch: "\n", options: { tabSize: 2, insertSpaces: true } }),
      this.call("textDocument/onTypeFormatting", { ...about, ch: "}", options: { tabSize: 2, insertSpaces: true } }),
    ]);
    for (const item of (items?.items ?? items ?? []).slice(0, 2)) await this.call("completionItem/resolve", item);
    await this.actions(uri, { start: at, end: at });
  }
}

const symbols0 = (text) => (text.match(/^\w+ "(\w{3})/m) ?? ["", ""])[1];

// files are those of a folder whose names end as recipes' do.
function files(folder) {
  return fs.readdirSync(folder, { recursive: true }).map(String).sort().filter((name) => name.endsWith(".candle.hcl")).map((name) => path.join(folder, name));
}

// places are some of those where a line starts or ends and where a name, a label
// and a value begin: as many as asked for, others in each file.
let turn = 0;
function places(text, some) {
  const all = text.split("\n").flatMap((line, i) => {
    const found = new Set([0, line.length]);
    for (const m of line.matchAll(/[\w"]+/g)) found.add(m.index + 1);
    return [...found].map((character) => ({ line: i, character: Math.min(character, line.length) }));
  });
  const step = Math.max(1, Math.floor(all.length / some));
  turn++;
  return all.filter((_, i) => (i + turn) % step === 0);
}

// broken are texts as they stand in the middle of typing.
function* broken(text) {
  for (let part = 1; part < 12; part++) yield text.slice(0, Math.floor((text.length * part) / 12));
  yield text.replace('"', "");
  yield text.replaceAll("}", "");
  yield text.replace("=", "= 🕯 \u00b0 e\u0301");
  yield text.replaceAll("\n", "\r\n");
  yield text.replace(/"([^"]*)"/, '"$1');
  yield text + '\nrecipe "';
  yield text + "\n" + "{".repeat(300);
  yield "";
}

async function session(capabilities, folder, some) {
  const s = new Session();
  await s.start(folder, capabilities);
  const pushed = (uri) => s.able.diagnosticProvider || s.findings(uri);
  for (const file of files(folder)) {
    const uri = await s.open(file);
    await pushed(uri);
    await s.whole(uri);
    for (const at of places(s.text(uri), some)) await s.place(uri, at);
    await s.actions(uri, { start: { line: 0, character: 0 }, end: position(s.text(uri), s.text(uri).length) }, ["source.fixAll", "quickfix"]);
    await s.close(uri);
  }
  const first = files(folder).find((name) => name.includes("recipes"));
  const uri = await s.open(first);
  for (const text of broken(s.text(uri))) {
    await s.edit(uri, null, text);
    await pushed(uri);
    await s.whole(uri);
    for (const at of places(s.text(uri), some / 4)) await s.place(uri, at);
  }
  await s.close(uri);

  // Typed, character by character.
  const typed = await s.open(first);
  const line = s.text(typed).split("\n").length - 1;
  let at = 0;
  for (const ch of 'recipe "neu" {\n  wax "\u00b0🕯" {\n    weight = "1 kg"\n  }\n}\n') {
    const here = position(s.text(typed), s.text(typed).length);
    await s.edit(typed, { start: here, end: here }, ch);
    if (at++ % 3 === 0) await s.call("textDocument/completion", { textDocument: { uri: typed }, position: position(s.text(typed), s.text(typed).length), context: { triggerKind: 1 } });
  }
  await pushed(typed);
  await s.actions(typed, { start: { line, character: 0 }, end: { line: line + 4, character: 0 } });
  await s.close(typed);

  await commands(s, folder);
  await world(s, folder);
  await s.checkAnnounced();
  if ((await s.stop()) !== 0) throw new Error("the server did not end well");
}

// commands executes every command, rightly and wrongly. The commands that a
// client without code actions gets are among them.
async function commands(s, folder) {
  const command = (command, ...args) => s.call("workspace/executeCommand", { command, arguments: args });
  for (const file of files(folder)) {
    const uri = await s.open(file);
    s.able.diagnosticProvider || (await s.findings(uri));
    const text = s.text(uri);
    for (const [, key] of text.matchAll(/^recipe "([^"]+)"/gm)) await command("wickrule.sheet", uri, key);
    await command("wickrule.sheet", uri, "no-such-recipe");
    await command("wickrule.mendFile", uri);
    const all = { start: { line: 0, character: 0 }, end: position(s.text(uri), s.text(uri).length) };
    const list = await s.actions(uri, all);
    for (const action of list.filter((a) => typeof a.command === "string").slice(0, 1)) await command(action.command, ...action.arguments);
    if (s.texts.get(uri).version > 1) s.able.diagnosticProvider || (await s.findings(uri));
    await s.close(uri);
  }
  const uri = await s.open(files(folder)[0]);
  await command("wickrule.explain", "fragrance-over-limit");
  await command("wickrule.explain", "no-such-rule");
  await command("wickrule.mendShop", uri);
  await command("wickrule.mendShop");
  await command("wickrule.apply", "title", { changes: {} }, {});
  await command("wickrule.apply", "title", { changes: {} }, { [uri]: 99 });
  await command("no-such-command");
  await s.close(uri);
}

// world tells the server what happens around the open texts: settings, folders,
// files on disk; and asks wrongly, and takes questions back.
async function world(s, folder) {
  const tell = (method, params) => (count(called, method), s.connection.sendNotification(method, params));
  const uri = await s.open(files(folder).find((name) => /recipes.*(tide-pillar|load-over-of-wax)/.test(name)));
  s.settings = { level: "should", hints: false, lenses: false };
  await tell("workspace/didChangeConfiguration", { settings: null });
  await tell("workspace/didChangeConfiguration", { settings: { wickrule: { level: "consider" } } });
  const extra = path.join(folder, "recipes", "from-outside.candle.hcl");
  fs.writeFileSync(extra, 'recipe "from-outside" {\n  wax "no-such-wax" {\n    weight = "1 kg"\n  }\n}\n');
  const change = (type) => tell("workspace/didChangeWatchedFiles", { changes: [{ uri: pathToFileURL(extra).href, type }] });
  await change(1);
  if (!s.able.diagnosticProvider) await s.until("the findings of a new file", () => (s.published.get(pathToFileURL(extra).href)?.diagnostics.length ? true : undefined));
  // A shelf that changes under an open recipe: what is shown there is asked for anew.
  const shelf = await s.open(files(folder).find((name) => name.endsWith("waxes.candle.hcl")));
  const limit = s.text(shelf).indexOf('"6 % of wax"');
  const here = position(s.text(shelf), limit + 1);
  if (s.able.diagnosticProvider) await s.call("textDocument/diagnostic", { textDocument: { uri } });
  await s.edit(shelf, { start: here, end: { line: here.line, character: here.character + 1 } }, "2");
  await s.call("textDocument/hover", { textDocument: { uri: shelf }, position: here });
  await new Promise((done) => setTimeout(done, 300));
  fs.rmSync(extra);
  await change(3);
  const added = { uri: pathToFileURL(big).href, name: "big" };
  await tell("workspace/didChangeWorkspaceFolders", { event: { added: [added], removed: [] } });
  await s.call("workspace/symbol", { query: "" });
  await new Promise((done) => setTimeout(done, 2000));
  await tell("workspace/didChangeWorkspaceFolders", { event: { added: [], removed: [added] } });
  await s.call("textDocument/hover", { textDocument: { uri: "file:///no/such.candle.hcl" }, position: here });
  await s.connection.sendRequest("no/such", {}).catch((error) => {
    if (error.code !== -32601) throw error;
  });
  await s.close(shelf);
  await s.close(uri);
}

for (const [capabilities, folder, some] of [[able, shop, 14], [able, faulty, 8], [pulling, shop, 4], [plain, faulty, 4]]) {
  // What a session does to the files is not to be met by the next one.
  const own = fs.mkdtempSync(path.join(path.dirname(shop), "session-"));
  fs.cpSync(folder, own, { recursive: true });
  await session(capabilities, own, some);
}
const must = ["textDocument/publishDiagnostics", "client/registerCapability", "workspace/configuration", "workspace/applyEdit", "window/workDoneProgress/create", "$/progress",
  "workspace/diagnostic/refresh", "workspace/inlayHint/refresh", "workspace/codeLens/refresh", "window/showMessage"];
for (const [what, times] of [...called, ...asked].sort()) console.log(`${String(times).padStart(7)}  ${what}`);
const missing = must.filter((method) => !asked.has(method) && method !== "textDocument/publishDiagnostics");
if (missing.length) throw new Error(`the server never sent ${missing.join(", ")}`);
