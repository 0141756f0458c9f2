// The grammar, run by the editor's own tokenizer (vscode-textmate with
// Oniguruma). `UPDATE=1 npm test` writes the snapshot anew: read the difference.
import assert from 'node:assert/strict';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'node:test';

const require = createRequire(import.meta.url);
const { loadWASM, OnigScanner, OnigString } = require('vscode-oniguruma');
const { Registry, INITIAL, parseRawGrammar } = require('vscode-textmate');

const at = (name) => new URL(name, import.meta.url);
const wasm = readFileSync(require.resolve('vscode-oniguruma/release/onig.wasm'));
const onigLib = loadWASM(wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength)).then(() => ({
  createOnigScanner: (patterns) => new OnigScanner(patterns),
  createOnigString: (text) => new OnigString(text),
}));
const registry = new Registry({
  onigLib,
  loadGrammar: async () => parseRawGrammar(readFileSync(at('../syntaxes/candle.tmLanguage.json')).toString(), 'candle.json'),
});
const grammar = await registry.loadGrammar('source.candle');

// tokens is a text as a list of its pieces with what each is taken for, and how
// deep the tokenizer stands at its end.
function tokens(text) {
  let stack = INITIAL;
  const lines = text.split('\n').map((line) => {
    const result = grammar.tokenizeLine(line, stack);
    stack = result.ruleStack;
    return result.tokens.map((t) => [line.slice(t.startIndex, t.endIndex), t.scopes.slice(1).map((s) => s.replace(/\.candle$/, ''))]).filter(([piece]) => piece.trim() !== '');
  });
  return { lines, depth: stack.depth };
}

const show = (text) =>
  tokens(text)
    .lines.map((line) => line.map(([piece, scopes]) => `${piece}  ${scopes.join(' > ')}`).join('\n'))
    .join('\n\n') + '\n';

test('pieces of each kind are what they were', () => {
  const got = show(readFileSync(at('sample.candle.hcl')).toString());
  const file = at('sample.tokens.txt');
  if (process.env.UPDATE) {
    writeFileSync(file, got);
  }
  assert.equal(got, readFileSync(file).toString());
});

const shop = at('../../../examples/shop/');
const files = readdirSync(shop, { recursive: true }).filter((name) => name.endsWith('.candle.hcl'));

test('each file of the demo shop ends where it began, with every block, amount and comment told', () => {
  assert.ok(files.length > 30);
  for (const name of files) {
    const text = readFileSync(new URL(name, shop)).toString();
    const { lines, depth } = tokens(text);
    assert.equal(depth, tokens('').depth, name);
    text.split('\n').forEach((line, i) => {
      const scopes = lines[i].flatMap(([, list]) => list);
      if (/^\s*#/.test(line)) {
        assert.deepEqual([...new Set(scopes)].at(-1), 'comment.line.number-sign', `${name}:${i + 1}`);
      } else if (/^\s*[a-z_]+ "[^"]+" \{/.test(line)) {
        assert.ok(scopes.includes('keyword.other.block') && scopes.includes('entity.name.section'), `${name}:${i + 1}`);
      } else if (/^\s*\w+\s+= "[0-9.]+ (g|kg|°F|°C|min|h|in|mL|oz|lb)"$/.test(line)) {
        assert.ok(scopes.includes('constant.numeric.amount'), `${name}:${i + 1}: ${line}`);
      }
    });
  }
});
