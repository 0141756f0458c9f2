import * as fs from 'node:fs';
import * as path from 'node:path';

// Where the program is, or what to do about it.
export type Found = { program: string } | { trouble: string };

export const howToGetIt =
  'Put the program wickrule on the PATH, or say where it is in the setting "wickrule.program". The project\'s README says how to install it.';

// findProgram looks at the setting, then along the PATH. Given are what the
// setting says, the PATH, the system, and a test of whether a file can be run.
export function findProgram(said: string, searched: string, system: NodeJS.Platform, runs: (file: string) => boolean = canRun): Found {
  const names = system === 'win32' ? ['wickrule.exe', 'wickrule.cmd', 'wickrule.bat'] : ['wickrule'];
  said = said.trim();
  if (said !== '') {
    if (!path.isAbsolute(said) && !path.win32.isAbsolute(said)) {
      return { trouble: `The setting "wickrule.program" is "${said}": write the whole path of the program, or leave it empty to look along the PATH.` };
    }
    if (!runs(said)) {
      return { trouble: `The setting "wickrule.program" is "${said}", and there is no program that can be run.` };
    }
    return { program: said };
  }
  const join = system === 'win32' ? path.win32.join : path.posix.join;
  for (const folder of searched.split(system === 'win32' ? ';' : ':')) {
    for (const name of names) {
      // What is relative would be a program out of the folder that is open.
      const file = join(folder, name);
      if ((path.posix.isAbsolute(folder) || path.win32.isAbsolute(folder)) && runs(file)) {
        return { program: file };
      }
    }
  }
  return { trouble: `There is no program wickrule on the PATH. ${howToGetIt}` };
}

function canRun(file: string): boolean {
  try {
    fs.accessSync(file, fs.constants.X_OK);
    return fs.statSync(file).isFile();
  } catch {
    return false;
  }
}
