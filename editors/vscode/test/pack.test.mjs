// The packed extension: the same bytes twice, an archive that a reader of its own
// opens, and everything in it that the manifest names.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { pack, packed } from '../pack.mjs';

const read = (bytes, then) => {
  const folder = mkdtempSync(join(tmpdir(), 'vsix-'));
  try {
    const file = join(folder, 'x.vsix');
    writeFileSync(file, bytes);
    return then(file);
  } finally {
    rmSync(folder, { recursive: true });
  }
};
// Python's zipfile checks each entry's sum.
const python = (program, ...args) => execFileSync('python3', ['-c', program, ...args]).toString();
const names = (file) => JSON.parse(python('import json, sys, zipfile\nz = zipfile.ZipFile(sys.argv[1])\nassert z.testzip() is None\nprint(json.dumps(z.namelist()))', file));
const entry = (file, name) => python('import sys, zipfile\nsys.stdout.buffer.write(zipfile.ZipFile(sys.argv[1]).read(sys.argv[2]))', file, name);
const xmlNames = (text) => JSON.parse(python('import json, sys\nfrom xml.dom import minidom\nd = minidom.parseString(sys.argv[1].encode())\nprint(json.dumps([dict(e.attributes.items()) for e in d.getElementsByTagName("*")]))', text));

test('the same files make the same bytes', () => {
  assert.ok(pack().equals(pack()));
});

test('all that is named is in it, and nothing else', () => {
  read(pack(), (file) => {
    const list = names(file);
    assert.equal(list[0], '[Content_Types].xml');
    assert.deepEqual(list.slice(1).sort(), ['extension.vsixmanifest', ...Object.keys(packed).map((name) => `extension/${name}`)].sort());
    const manifest = xmlNames(entry(file, 'extension.vsixmanifest'));
    const about = JSON.parse(readFileSync(new URL('../package.json', import.meta.url)));
    assert.ok(manifest.some((e) => e.Id === about.name && e.Version === about.version && e.Publisher === about.publisher));
    for (const { Path } of manifest.filter((e) => e.Path)) {
      assert.ok(list.includes(Path), Path);
    }
    const types = xmlNames(entry(file, '[Content_Types].xml'));
    for (const name of list.slice(1)) {
      assert.ok(types.some((t) => t.PartName === `/${name}` || name.endsWith(`.${t.Extension}`)), name);
    }
    assert.equal(JSON.parse(entry(file, 'extension/package.json')).main, './out/extension.js');
  });
});
