// A client that a test steers: it reads a word a line from its standard input,
// as JSON, does it, and answers with a line.
import readline from "node:readline";
import { Client, position } from "./client.mjs";
import { able } from "./abilities.mjs";

const c = new Client();
await c.start(process.argv[2], able);
let uri;
let at;
let undone;

const about = () => ({ textDocument: { uri }, position: at });
const text = () => c.text(uri);
const type = async (new_) => {
  for (const ch of new_) {
    await c.edit(uri, { start: at, end: at }, ch);
    at = { line: at.line, character: at.character + ch.length };
    if (ch === "\n") at = { line: at.line + 1, character: 0 };
  }
};

const words = {
  async open([path]) {
    const known = [...c.texts].find(([, doc]) => doc.file === path);
    uri = known ? known[0] : await c.open(path);
  },
  text,
  cursor: ([piece, further]) => void (at = position(text(), text().indexOf(piece) + [...piece].slice(0, further).join("").length)),
  async replace([old, new_]) {
    words.cursor([old, 0]);
    for (const ch of old) await c.edit(uri, { start: at, end: { line: at.line, character: at.character + ch.length } }, "");
    await type(new_);
  },
  async findings() {
    const list = await c.findings(uri);
    return list.map((d) => ({ text: c.slice(uri, d.range), line: d.range.start.line + 1, code: d.code, message: d.message, severity: d.severity }));
  },
  hover: async () => (await c.call("textDocument/hover", about())).contents.value,
  async complete([after, typed]) {
    undone = text();
    at = position(text(), text().indexOf(after) + after.length);
    await type("\n  " + typed);
    const got = await c.call("textDocument/completion", { ...about(), context: { triggerKind: 1 } });
    // What does not fit what is written so far is left out, as editors do.
    const written = (item) => c.slice(uri, { start: (item.textEdit.range ?? item.textEdit.replace).start, end: at });
    const items = (got?.items ?? got)
      .filter((item) => (item.filterText ?? item.label).startsWith(written(item)))
      .sort((a, b) => ((a.sortText ?? a.label) < (b.sortText ?? b.label) ? -1 : 1));
    const first = await c.call("completionItem/resolve", items[0]);
    const range = first.textEdit.range ?? first.textEdit.replace;
    const plain = first.textEdit.newText.replace(/\$\{\d+:?([^}]*)\}|\$\d+/g, "$1"); // a snippet without its stops
    await c.edit(uri, range, plain);
    return items.map((item) => item.label);
  },
  undo: () => c.edit(uri, null, undone),
  async act([title]) {
    const list = await c.call("textDocument/codeAction", {
      textDocument: { uri }, range: { start: at, end: at },
      context: { diagnostics: (await c.findings(uri)).filter((d) => d.range.start.line === at.line), triggerKind: 1 },
    });
    const chosen = await c.call("codeAction/resolve", list.find((action) => action.title === title));
    if (!c.apply(chosen.edit)) throw new Error("the edit is of another version");
    return list.map((action) => action.title);
  },
  async rename([newName]) {
    await c.call("textDocument/prepareRename", about());
    if (!c.apply(await c.call("textDocument/rename", { ...about(), newName }))) throw new Error("the edit is of another version");
  },
  async layOut() {
    const edits = await c.call("textDocument/formatting", { textDocument: { uri }, options: { tabSize: 2, insertSpaces: true } });
    c.apply({ changes: { [uri]: edits } });
  },
  async hints() {
    const range = { start: { line: 0, character: 0 }, end: position(text(), text().length) };
    const list = await c.call("textDocument/inlayHint", { textDocument: { uri }, range });
    return list.map((h) => `${text().split("\n")[h.position.line].slice(0, h.position.character).trim()} [${h.label}]`);
  },
  lenses: async () => (await c.call("textDocument/codeLens", { textDocument: { uri } })).map((lens) => lens.command.title),
  async symbols() {
    const names = [];
    (function walk(list) {
      for (const s of list) names.push(s.name), walk(s.children ?? []);
    })(await c.call("textDocument/documentSymbol", { textDocument: { uri } }));
    return names;
  },
  save: () => c.save(),
  quit: () => c.stop(),
};

for await (const line of readline.createInterface({ input: process.stdin })) {
  const [word, ...args] = JSON.parse(line);
  console.log(JSON.stringify({ value: (await words[word](args)) ?? null }));
  if (word === "quit") break;
}
