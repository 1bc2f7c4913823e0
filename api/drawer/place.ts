import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the user's own data: what PUPILWALK_DATA says, else where such data is kept by custom. */
export function dataFolder(env: NodeJS.ProcessEnv = process.env): string {
  if (env.PUPILWALK_DATA) return resolve(env.PUPILWALK_DATA);
  // The custom's own rule: a path that is not absolute counts as none.
  const shared = env.XDG_DATA_HOME && isAbsolute(env.XDG_DATA_HOME) ? env.XDG_DATA_HOME : join(homedir(), '.local', 'share');
  return join(shared, 'pupilwalk');
}

/** The program's own folder, from `dist/server.js` and from `api/drawer/place.ts`; undefined where it stands alone. */
function programFolder(here = dirname(fileURLToPath(import.meta.url))): string | undefined {
  return [join(here, '..'), join(here, '..', '..')].find((folder) => existsSync(join(folder, 'package.json')));
}

/** Whether a folder lies inside the program, where the next version of it would sweep the user's data away. */
export function insideProgram(folder: string, program = programFolder()): boolean {
  if (program === undefined) return false;
  const way = relative(program, folder);
  return !(way === '..' || way.startsWith(`..${sep}`) || isAbsolute(way));
}
