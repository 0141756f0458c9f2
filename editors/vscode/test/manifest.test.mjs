// The manifest against the sources: what is declared is there, what is there is
// declared.
import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import { test } from 'node:test';

const read = (name) => readFileSync(new URL(`../${name}`, import.meta.url)).toString();
const about = JSON.parse(read('package.json'));
const sources = ['extension.ts', 'handbook.ts', 'place.ts', 'preview.ts', 'program.ts'].map((name) => read(`src/${name}`)).join('\n');

test('every command that is declared is registered, and the reverse', () => {
  const declared = about.contributes.commands.map((c) => c.command).sort();
  const registered = [...sources.matchAll(/command\('(\w+)'/g), ...sources.matchAll(/registerCommand\('wickrule\.(\w+)'/g)].map((m) => `wickrule.${m[1]}`).sort();
  assert.deepEqual(registered, declared);
  for (const menu of Object.values(about.contributes.menus)) {
    for (const entry of menu) {
      assert.ok(declared.includes(entry.command), entry.command);
    }
  }
});

test('no command has the name of one of the server, which the client registers itself', () => {
  const server = readFileSync(new URL('../../../lsp/commands.go', import.meta.url)).toString();
  const theirs = [...server.matchAll(/"(wickrule\.\w+)"/g)].map((m) => m[1]);
  assert.ok(theirs.length > 3);
  for (const { command } of about.contributes.commands) {
    assert.ok(!theirs.includes(command), command);
  }
  for (const asked of sources.matchAll(/ask\('(wickrule\.\w+)'/g)) {
    assert.ok(theirs.includes(asked[1]), asked[1]);
  }
});

test('every setting is used: by the extension, or by the server', () => {
  const server = readFileSync(new URL('../../../lsp/settings.go', import.meta.url)).toString();
  for (const name of Object.keys(about.contributes.configuration.properties)) {
    const last = name.replace('wickrule.', '');
    assert.ok(sources.includes(`'${last}'`) || new RegExp(`"${last}"|json:"${last}`).test(server), name);
  }
});

test('every file that is named is there', () => {
  const named = [about.icon, about.contributes.grammars[0].path, about.contributes.languages[0].configuration, about.contributes.languages[0].icon.light];
  for (const file of named) {
    assert.ok(existsSync(new URL(`../${file}`, import.meta.url)), file);
  }
  assert.ok(existsSync(new URL(`../${about.main}`, import.meta.url)), 'run node build.mjs first');
});

test('the icon is a PNG of 128 by 128', () => {
  const png = readFileSync(new URL(`../${about.icon}`, import.meta.url));
  assert.equal(png.subarray(1, 4).toString(), 'PNG');
  assert.deepEqual([png.readUInt32BE(16), png.readUInt32BE(20)], [128, 128]);
});

test('the types are those of the oldest editor that is said to do', () => {
  assert.equal(about.engines.vscode, `^${about.devDependencies['@types/vscode']}`);
  const client = JSON.parse(read('node_modules/vscode-languageclient/package.json'));
  assert.equal(client.engines.vscode, about.engines.vscode, 'and the client library wants no newer');
});

test('README lists every command and setting', () => {
  const page = read('README.md');
  for (const { title } of about.contributes.commands) {
    assert.ok(page.includes(title), title);
  }
  for (const name of Object.keys(about.contributes.configuration.properties)) {
    assert.ok(page.includes(`\`${name}\``), name);
  }
});
