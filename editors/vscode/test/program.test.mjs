// Where the program is looked for, on each system.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { build } from 'esbuild';
import { fileURLToPath } from 'node:url';

const bundled = await build({ entryPoints: [fileURLToPath(new URL('../src/program.ts', import.meta.url))], bundle: true, platform: 'node', format: 'esm', write: false });
const { findProgram } = await import('data:text/javascript;base64,' + Buffer.from(bundled.outputFiles[0].contents).toString('base64'));
const there = (...files) => (file) => files.includes(file);

test('along the PATH, the first that can be run', () => {
  assert.deepEqual(findProgram('', '/bin:/usr/local/bin', 'linux', there('/usr/local/bin/wickrule')), { program: '/usr/local/bin/wickrule' });
  assert.deepEqual(findProgram('', 'C:\\tools;D:\\Our shop', 'win32', there('D:\\Our shop\\wickrule.exe')), { program: 'D:\\Our shop\\wickrule.exe' });
});

test('never out of the folder that is open', () => {
  for (const path of [':.', '.:bin', '']) {
    assert.match(findProgram('', path, 'linux', () => true).trouble, /no program wickrule on the PATH/);
  }
});

test('the setting counts, and what is wrong with it is said', () => {
  assert.deepEqual(findProgram(' /opt/wickrule ', '', 'linux', () => true), { program: '/opt/wickrule' });
  assert.match(findProgram('wickrule', '/bin', 'linux', () => true).trouble, /write the whole path/);
  assert.match(findProgram('/opt/none', '/bin', 'linux', () => false).trouble, /no program that can be run/);
});
