// Bundles the extension into out/extension.js, and the licenses of what is
// bundled into out/NOTICES.txt. Run without a network.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));

const { metafile } = await build({
  absWorkingDir: here,
  entryPoints: ['src/extension.ts'],
  outfile: 'out/extension.js',
  bundle: true,
  platform: 'node',
  format: 'cjs',
  target: 'node20',
  external: ['vscode'],
  minify: true,
  legalComments: 'none',
  metafile: true,
  logLevel: 'warning',
});

const libraries = new Set();
for (const input of Object.keys(metafile.inputs)) {
  const name = /(?:.*\/)?node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(input)?.[0];
  if (name !== undefined) {
    libraries.add(name);
  }
}
let notices = 'The extension contains these libraries.\n';
for (const library of [...libraries].sort()) {
  const folder = join(here, library);
  const { name, version } = JSON.parse(readFileSync(join(folder, 'package.json')).toString());
  const license = readdirSync(folder).find((file) => /^licen[cs]e/i.test(file));
  notices += `\n${'-'.repeat(72)}\n${name} ${version}\n\n${license === undefined ? 'See its package.' : readFileSync(join(folder, license)).toString().trim()}\n`;
}
writeFileSync(join(here, 'out/NOTICES.txt'), notices);
