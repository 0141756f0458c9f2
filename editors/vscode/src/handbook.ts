import { execFile } from 'node:child_process';
import * as fs from 'node:fs';
import * as path from 'node:path';

// pageOf makes the handbook of a shop and is the path of a rule's page in it, or
// of its first page where the rule has none.
export async function pageOf(program: string, shop: string, into: string, rule: string | undefined): Promise<string> {
  await new Promise<void>((done, failed) => {
    execFile(program, ['handbook', shop, '--into', into], (error, _out, complaint) => {
      if (error) {
        failed(new Error(complaint.trim().replace(/^wickrule: /, '') || error.message));
      } else {
        done();
      }
    });
  });
  for (const page of rule === undefined ? [] : [`rule-${rule}.html`, `own-${rule}.html`]) {
    if (fs.existsSync(path.join(into, page))) {
      return path.join(into, page);
    }
  }
  return path.join(into, 'index.html');
}

// shopOf is the folder of the shop that a file belongs to: the nearest with a
// shop file, else the file's own.
export function shopOf(file: string): string {
  for (let folder = path.dirname(file); ; folder = path.dirname(folder)) {
    if (fs.existsSync(path.join(folder, 'shop.candle.hcl'))) {
      return folder;
    }
    if (path.dirname(folder) === folder) {
      return path.dirname(file);
    }
  }
}
