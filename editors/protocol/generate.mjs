// Makes JSON Schemas of every message of the protocol from the types of the
// protocol authors' own client library: generated/tolerant.json, which lets
// unknown keys pass, and generated/strict.json, which does not.
//
//   node generate.mjs
import fs from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { createGenerator } from "ts-json-schema-generator";

const here = path.dirname(fileURLToPath(import.meta.url));
const library = path.join(here, "node_modules/vscode-languageserver-protocol/lib/common/api.d.ts");
const out = path.join(here, "generated");

// Every exported namespace with a method and a type is a message; the type's
// arguments say what it carries.
function messages() {
  // Without strict the checker drops "| null" from every result.
  const program = ts.createProgram([library], { strict: true, skipLibCheck: true, module: ts.ModuleKind.Node16, moduleResolution: ts.ModuleResolutionKind.Node16, target: ts.ScriptTarget.ES2022 });
  const checker = program.getTypeChecker();
  const source = program.getSourceFile(library);
  const exported = checker.getExportsOfModule(checker.getSymbolAtLocation(source));
  const names = new Set(exported.map((symbol) => symbol.name));
  // The checker names where a type comes from; messages.ts imports it by name.
  const text = (type) => checker.typeToString(type, undefined, ts.TypeFormatFlags.NoTruncation).replace(/import\("[^"]*"\)\./g, "");
  const found = [];
  for (let symbol of exported) {
    if (symbol.flags & ts.SymbolFlags.Alias) symbol = checker.getAliasedSymbol(symbol);
    if (!(symbol.flags & ts.SymbolFlags.ValueModule)) continue;
    const members = new Map(checker.getExportsOfModule(symbol).map((s) => [s.name, s]));
    if (!members.has("method") || !members.has("type")) continue;
    const method = checker.getTypeOfSymbol(members.get("method"));
    const type = checker.getTypeOfSymbol(members.get("type"));
    const kind = type.symbol.name;
    const args = checker.getTypeArguments(type).map(text);
    // ProtocolRequestType<P, R, PR, E, RO>, …Type0<R, PR, E, RO>,
    // ProtocolNotificationType<P, RO>, …Type0<RO>, RegistrationType<RO>
    const shape = {
      ProtocolRequestType: ["params", "result", "partial", "error", "options"],
      ProtocolRequestType0: ["result", "partial", "error", "options"],
      ProtocolNotificationType: ["params", "options"],
      ProtocolNotificationType0: ["options"],
      RegistrationType: ["options"],
    }[kind];
    if (!shape) throw new Error(`${symbol.name}: a kind of message that this program does not know: ${kind}`);
    const message = { method: method.value, kind };
    shape.forEach((part, i) => (message[part] = args[i]));
    found.push(message);
  }
  if (found.length < 80) throw new Error(`only ${found.length} messages found in ${library}`);
  return { found, names };
}

// The interfaces of all messages, as TypeScript: one property a method.
function written({ found, names }) {
  const parts = { Params: [], Results: [], Errors: [], Options: [] };
  for (const m of found) {
    const add = (part, type) => type !== undefined && type !== "void" && type !== "never" && parts[part].push(`  ${JSON.stringify(m.method)}: ${type};`);
    add("Params", m.params);
    if (m.kind.startsWith("ProtocolRequest")) parts.Results.push(`  ${JSON.stringify(m.method)}: ${m.result === "void" ? "null" : m.result};`);
    add("Errors", m.error);
    add("Options", m.options);
  }
  // Not among the library's typed messages, but sent.
  parts.Params.push('  "$/progress": { token: ProgressToken; value: WorkDoneProgressBegin | WorkDoneProgressReport | WorkDoneProgressEnd };');
  const body = Object.entries(parts).map(([name, lines]) => `export interface ${name} {\n${lines.join("\n")}\n}\n`).join("\n");
  const used = [...new Set(body.replace(/"[^"]*"/g, "").match(/\b[A-Za-z]\w*\b/g))].filter((name) => names.has(name)).sort();
  return `import type { ${used.join(", ")} } from "vscode-languageserver-protocol";\n\n${body}`;
}

// The library's types call whole numbers number. The protocol does not.
function wholeNumbers(schema) {
  schema.definitions.uinteger = { type: "integer", minimum: 0, maximum: 2 ** 31 - 1 };
  schema.definitions.integer = { type: "integer", minimum: -(2 ** 31), maximum: 2 ** 31 - 1 };
  return schema;
}

fs.mkdirSync(out, { recursive: true });
const all = messages();
const entry = path.join(out, "messages.ts");
fs.writeFileSync(entry, written(all));
fs.writeFileSync(path.join(out, "tsconfig.json"), JSON.stringify({
  compilerOptions: { strict: true, skipLibCheck: true, module: "node16", moduleResolution: "node16", target: "es2022", types: [] }, files: ["messages.ts"],
}));
for (const [name, additionalProperties] of [["tolerant", true], ["strict", false]]) {
  const schema = createGenerator({ path: entry, tsconfig: path.join(out, "tsconfig.json"), type: "*", skipTypeCheck: true, additionalProperties, expose: "all" }).createSchema("*");
  fs.writeFileSync(path.join(out, name + ".json"), JSON.stringify(wholeNumbers(schema), null, 1));
}
fs.writeFileSync(path.join(out, "methods.json"), JSON.stringify(all.found, null, 1));
console.log(`${all.found.length} messages`);
