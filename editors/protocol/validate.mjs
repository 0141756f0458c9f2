// Checks every message that the server sent in recorded sessions against the
// schemas that generate.mjs made.
//
//   node validate.mjs FILE...
//
// A recording is a message a line: {"from": "client" | "server", "message": …}.
// Each message is checked twice. Tolerant: what stands in it is as the protocol
// says. Strict: and nothing else stands in it, but for the keys written down in
// unknown-keys.json, each with its reason.
import fs from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import Ajv from "ajv";

const here = path.dirname(fileURLToPath(import.meta.url));
const read = (name) => JSON.parse(fs.readFileSync(path.join(here, name), "utf8"));

const allowed = read("unknown-keys.json").map((entry) => ({ ...entry, met: false }));
const schemas = { tolerant: read("generated/tolerant.json"), strict: read("generated/strict.json") };
const methods = new Set(read("generated/methods.json").map((m) => m.method));
const compiled = new Map();

// check says what is wrong with a part of a message, or nothing.
function check(mode, part, method, value) {
  const key = `${mode} ${part} ${method}`;
  if (!compiled.has(key)) {
    const known = schemas[mode].definitions[part].properties[method];
    compiled.set(key, known && new Ajv({ strict: false, allErrors: false }).compile({ definitions: schemas[mode].definitions, ...known }));
  }
  const validate = compiled.get(key);
  if (!validate) return `the protocol has no ${part.toLowerCase()} for ${method}`;
  if (validate(value)) return undefined;
  return validate.errors.map((e) => `${e.instancePath || "(all of it)"} ${e.message}${e.params.additionalProperty ? ": " + e.params.additionalProperty : ""}`).join("; ");
}

// without is a value without the keys that are written down for a method.
function without(method, value) {
  const mine = allowed.filter((entry) => entry.method === method);
  if (mine.length === 0) return value;
  const copy = structuredClone(value);
  for (const entry of mine) {
    const steps = entry.at.split("/");
    (function drop(at, i) {
      if (at === null || typeof at !== "object") return;
      if (i === steps.length - 1) {
        if (Object.hasOwn(at, steps[i])) (entry.met = true), delete at[steps[i]];
      } else if (steps[i] === "*") Object.values(at).forEach((below) => drop(below, i + 1));
      else drop(at[steps[i]], i + 1);
    })(copy, 0);
  }
  return copy;
}

// Beyond the types: ranges do not run backwards, edits of one text do not
// overlap, and a list of tokens is made of fives.
function sense(value, found = []) {
  if (Array.isArray(value)) {
    const edits = value.filter((v) => v && typeof v === "object" && v.range?.start && typeof v.newText === "string" && v.label === undefined);
    if (edits.length === value.length && edits.length > 1) {
      const places = edits.map((e) => e.range).sort((a, b) => order(a.start, b.start) || order(a.end, b.end));
      places.slice(1).forEach((r, i) => order(places[i].end, r.start) > 0 && found.push(`edits overlap at line ${r.start.line}`));
    }
    value.forEach((v) => sense(v, found));
  } else if (value && typeof value === "object") {
    if (value.start?.line !== undefined && value.end?.line !== undefined && order(value.start, value.end) > 0) found.push(`a range runs backwards: ${JSON.stringify(value)}`);
    Object.values(value).forEach((v) => sense(v, found));
  }
  return found;
}
const order = (a, b) => a.line - b.line || a.character - b.character;

function checked(part, method, value) {
  const wrong = [];
  const tolerant = check("tolerant", part, method, value);
  if (tolerant) wrong.push("tolerant: " + tolerant);
  const strict = check("strict", part, method, without(method, value));
  if (strict) wrong.push("strict: " + strict);
  wrong.push(...sense(value));
  if (method.startsWith("textDocument/semanticTokens/") && part === "Results" && value) value.data.length % 5 && wrong.push("tokens are not made of fives");
  return wrong;
}

const counts = new Map();
const complaints = new Map();
let messages = 0;
for (const file of process.argv.slice(2)) {
  const asked = { client: new Map(), server: new Map() };
  for (const line of fs.readFileSync(file, "utf8").split("\n").filter(Boolean)) {
    const { from, message: m } = JSON.parse(line);
    if (m.id !== undefined && m.method) asked[from].set(m.id, m.method);
    if (from !== "server") continue;
    messages++;
    const wrong = [];
    let what;
    if (m.jsonrpc !== "2.0") wrong.push("jsonrpc is not 2.0");
    const known = m.method ? ["jsonrpc", "id", "method", "params"] : ["jsonrpc", "id", "result", "error"];
    wrong.push(...Object.keys(m).filter((key) => !known.includes(key)).map((key) => `a message has no ${key}`));
    if (m.method) {
      what = `${m.id === undefined ? "notification" : "request"} ${m.method}`;
      if (schemas.strict.definitions.Params.properties[m.method]) wrong.push(...checked("Params", m.method, m.params));
      else if (!methods.has(m.method)) wrong.push(`the protocol has no ${m.method}`);
      else if (m.params !== undefined && m.params !== null) wrong.push(`${m.method} takes no parameters`);
      for (const r of m.method === "client/registerCapability" ? m.params.registrations : []) {
        if (r.registerOptions !== undefined) wrong.push(...checked("Options", r.method, r.registerOptions));
      }
    } else {
      const method = asked.client.get(m.id);
      what = `answer to ${method}`;
      if (("result" in m) === ("error" in m)) wrong.push("an answer has a result or an error, one of them");
      else if ("error" in m) {
        what = `error to ${method ?? "what could not be read"}`;
        const { code, message, ...rest } = m.error;
        if (!Number.isInteger(code) || typeof message !== "string" || Object.keys(rest).some((key) => key !== "data")) wrong.push("not an error: " + JSON.stringify(m.error));
      } else if (!method) wrong.push(`an answer to nothing that was asked: id ${m.id}`);
      else wrong.push(...checked("Results", method, m.result));
    }
    counts.set(what, (counts.get(what) ?? 0) + 1);
    for (const w of wrong) {
      const text = `${what}: ${w}`;
      if (!complaints.has(text)) complaints.set(text, { times: 0, example: JSON.stringify(m).slice(0, 600) });
      complaints.get(text).times++;
    }
  }
}

for (const [what, times] of [...counts].sort()) console.log(`${String(times).padStart(7)}  ${what}`);
console.log(`${messages} messages of the server`);
for (const [text, { times, example }] of complaints) console.log(`WRONG ${times} times: ${text}\n      ${example}`);
for (const entry of allowed) if (!entry.met && process.env.EVERY_KEY_MET) console.log(`WRONG unknown-keys.json: ${entry.method} ${entry.at} is not sent any more`), complaints.set(entry.at, {});
process.exitCode = complaints.size || !messages ? 1 : 0;
