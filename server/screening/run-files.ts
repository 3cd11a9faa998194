/** Whether the files that a run reads and writes can be what they are meant for: looked at before anything is done. */
import { accessSync, constants, lstatSync, realpathSync, type Stats, statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { BadInput } from '../bad-input.ts';
import { runPaths } from './run-folder.ts';
import { weatherNames } from './stations.ts';

export interface RunFiles {
  readonly table?: string | undefined;
  readonly site?: string | undefined;
  /** A folder of weather files. */
  readonly weather?: string | undefined;
  readonly out: string;
  /** Beside the results where left out. */
  readonly rejects?: string | undefined;
}

/** What is wrong with the places of a run, in words; nothing mostly. */
export function problemsOfFiles({ table, site, weather, out, rejects }: RunFiles): string[] {
  const paths = runPaths(out, rejects);
  const problems = wrongPlace(`--out ${out}`, out);
  if (rejects !== undefined) problems.push(...wrongPlace(`--rejects ${rejects}`, rejects));
  else if (problems.length === 0) {
    const wrong = wrongPlace(`rejected rows go to ${paths.rejects}`, paths.rejects);
    problems.push(...wrong.map((problem) => `${problem}; --rejects names another`));
  }
  const written = [paths.out, paths.rejects, paths.folder].map(identityOf);
  const isWritten = (path: string) => path !== '-' && written.includes(identityOf(path));
  const apart = new Set(written).size === written.length;
  if (!apart || (table !== undefined && isWritten(table))) {
    const where = rejects === undefined ? `; rejected rows go to ${paths.rejects}, --rejects names another file` : '';
    problems.push(`table, results and rejects must be different files${where}`);
  }
  if (site !== undefined && isWritten(site)) problems.push('site file, results and rejects must be different files');
  if (weather !== undefined && weatherFiles(weather).some(isWritten)) {
    problems.push('weather files, results and rejects must be different files');
  }
  const inside = (path: string | undefined) =>
    path !== undefined && identityOf(dirname(resolve(path))) === identityOf(paths.folder);
  if ([table, site, rejects].some(inside)) {
    problems.push(`${paths.folder} is the run's own folder and goes in the end; no other file may lie there`);
  }
  return problems;
}

/** Why a file cannot take its place there, led by `what` it is. */
function wrongPlace(what: string, path: string): string[] {
  const folder = dirname(resolve(path));
  if (!look(folder)?.isDirectory()) return [`${what}: there is no such folder`];
  const there = look(path);
  if (there?.isDirectory()) return [`${what}: this is a folder, a file is needed`];
  if ((there && !there.isFile()) || isDeviceName(path))
    return [`${what}: this is a device or a pipe, a file is needed`];
  try {
    accessSync(folder, constants.W_OK | constants.X_OK);
    return [];
  } catch (error) {
    const { code = '' } = error as NodeJS.ErrnoException;
    return [`${what}: ${code === 'EROFS' ? 'this disk can only be read' : 'no permission to write in this folder'}`];
  }
}

/** Names such as /dev/stdout are links to whatever the output goes to; a file that took its place would cut everybody off. */
function isDeviceName(path: string): boolean {
  const at = resolve(path);
  return at.startsWith('/dev/') && (lstatSync(at, { throwIfNoEntry: false })?.isSymbolicLink() ?? false);
}

function look(path: string): Stats | undefined {
  try {
    return statSync(path, { throwIfNoEntry: false });
  } catch {
    // What cannot even be looked at, such as behind a closed folder, is as good as not there.
    return undefined;
  }
}

/** The same for every name of a file: links lead to it, and a new one is told by its folder. */
function identityOf(path: string): string {
  try {
    const there = statSync(path, { bigint: true, throwIfNoEntry: false });
    return there ? `${there.dev} ${there.ino}` : join(realpathSync(dirname(resolve(path))), basename(path));
  } catch {
    return resolve(path);
  }
}

/** A folder that cannot be read is told by whoever reads it. */
function weatherFiles(folder: string): string[] {
  try {
    return weatherNames(folder).map((name) => join(folder, name));
  } catch (error) {
    if (error instanceof BadInput) return [];
    throw error;
  }
}
