// Packs the extension into a .vsix: an Open Packaging Conventions archive
// (ISO/IEC 29500-2) with the extension's files in extension/ and a manifest that
// tells the editor about them. No network, no times, no order of the disk: the
// same files make the same bytes. Entries are stored as they are, since a
// compressor's output differs from version to version.
//
//   node build.mjs && node pack.mjs [FILE]

import { readFileSync, writeFileSync, renameSync } from 'node:fs';
import { dirname, extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));

// What is packed, by its name in extension/.
export const packed = {
  'package.json': 'package.json',
  'README.md': 'README.md',
  LICENSE: '../../LICENSE',
  'icon.png': 'icon.png',
  'language-configuration.json': 'language-configuration.json',
  'syntaxes/candle.tmLanguage.json': 'syntaxes/candle.tmLanguage.json',
  'out/extension.js': 'out/extension.js',
  'NOTICES.txt': 'out/NOTICES.txt',
};

const types = { '.json': 'application/json', '.js': 'application/javascript', '.md': 'text/markdown', '.txt': 'text/plain', '.png': 'image/png', '.vsixmanifest': 'text/xml' };

export function pack() {
  const files = new Map();
  for (const [name, from] of Object.entries(packed)) {
    files.set(`extension/${name}`, readFileSync(join(here, from)));
  }
  const about = JSON.parse(files.get('extension/package.json').toString());
  files.set('extension.vsixmanifest', Buffer.from(manifest(about)));
  files.set('[Content_Types].xml', Buffer.from(contentTypes([...files.keys()])));
  return archive(files);
}

const xml = (text) => String(text).replace(/[<>&"']/g, (c) => `&#${c.codePointAt(0)};`);

function manifest(about) {
  const property = (id, value) => `      <Property Id="Microsoft.VisualStudio.Code.${id}" Value="${xml(value)}"/>\n`;
  return `<?xml version="1.0" encoding="utf-8"?>
<PackageManifest Version="2.0.0" xmlns="http://schemas.microsoft.com/developer/vsx-schema/2011">
  <Metadata>
    <Identity Language="en-US" Id="${xml(about.name)}" Version="${xml(about.version)}" Publisher="${xml(about.publisher)}"/>
    <DisplayName>${xml(about.displayName)}</DisplayName>
    <Description xml:space="preserve">${xml(about.description)}</Description>
    <Tags>${xml(about.keywords.join(','))}</Tags>
    <Categories>${xml(about.categories.join(','))}</Categories>
    <License>extension/LICENSE</License>
    <Icon>extension/icon.png</Icon>
    <Properties>
${property('Engine', about.engines.vscode)}${property('ExtensionDependencies', '')}${property('ExtensionKind', 'workspace')}    </Properties>
  </Metadata>
  <Installation>
    <InstallationTarget Id="Microsoft.VisualStudio.Code"/>
  </Installation>
  <Dependencies/>
  <Assets>
    <Asset Type="Microsoft.VisualStudio.Code.Manifest" Path="extension/package.json" Addressable="true"/>
    <Asset Type="Microsoft.VisualStudio.Services.Content.Details" Path="extension/README.md" Addressable="true"/>
    <Asset Type="Microsoft.VisualStudio.Services.Content.License" Path="extension/LICENSE" Addressable="true"/>
    <Asset Type="Microsoft.VisualStudio.Services.Icons.Default" Path="extension/icon.png" Addressable="true"/>
  </Assets>
</PackageManifest>
`;
}

function contentTypes(names) {
  const ends = [...new Set(names.map((name) => extname(name)).filter((end) => end !== ''))].sort();
  const plain = names.filter((name) => extname(name) === '').sort();
  return (
    '<?xml version="1.0" encoding="utf-8"?>\n<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">\n' +
    ends.map((end) => `  <Default Extension="${end.slice(1)}" ContentType="${types[end]}"/>\n`).join('') +
    plain.map((name) => `  <Override PartName="/${name}" ContentType="text/plain"/>\n`).join('') +
    '</Types>\n'
  );
}

// archive is a ZIP file of stored entries, in the order of their names, with
// the content types first.
function archive(files) {
  const names = [...files.keys()].sort((a, b) => (a === '[Content_Types].xml' ? -1 : b === '[Content_Types].xml' ? 1 : a < b ? -1 : 1));
  const bodies = [];
  const index = [];
  let at = 0;
  for (const name of names) {
    const data = files.get(name);
    const label = Buffer.from(name);
    const fields = Buffer.alloc(26);
    fields.writeUInt16LE(20, 0); // version needed
    fields.writeUInt16LE(0x0800, 2); // names are UTF-8
    fields.writeUInt16LE(0, 4); // stored
    fields.writeUInt16LE(0, 6); // midnight
    fields.writeUInt16LE(0x0021, 8); // 1 January 1980
    fields.writeUInt32LE(crc32(data), 10);
    fields.writeUInt32LE(data.length, 14);
    fields.writeUInt32LE(data.length, 18);
    fields.writeUInt16LE(label.length, 22);
    bodies.push(Buffer.from('PK\x03\x04', 'latin1'), fields, label, data);
    const rest = Buffer.alloc(14);
    rest.writeUInt32LE(0o100644 * 0x10000, 6);
    rest.writeUInt32LE(at, 10);
    index.push(Buffer.from('PK\x01\x02\x14\x03', 'latin1'), fields, rest, label);
    at += 30 + label.length + data.length;
  }
  const list = Buffer.concat(index);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 0, 'latin1');
  end.writeUInt16LE(names.length, 8);
  end.writeUInt16LE(names.length, 10);
  end.writeUInt32LE(list.length, 12);
  end.writeUInt32LE(at, 16);
  return Buffer.concat([...bodies, list, end]);
}

const table = Array.from({ length: 256 }, (_, n) => {
  for (let k = 0; k < 8; k++) {
    n = n & 1 ? 0xedb88320 ^ (n >>> 1) : n >>> 1;
  }
  return n >>> 0;
});

function crc32(data) {
  let c = 0xffffffff;
  for (const byte of data) {
    c = table[(c ^ byte) & 255] ^ (c >>> 8);
  }
  return (c ^ 0xffffffff) >>> 0;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { name, version } = JSON.parse(readFileSync(join(here, 'package.json')).toString());
  const file = process.argv[2] ?? join(here, `${name}-${version}.vsix`);
  writeFileSync(`${file}.new`, pack());
  renameSync(`${file}.new`, file);
  console.log(`${file} is packed: install it with the editor's command "Install from VSIX".`);
}
