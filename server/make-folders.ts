/** Folders together with those above them. */
import { mkdirSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';

/**
 * Makes a folder where there is none. One after the other: Node's own `recursive` never comes back where the system knows the folder
 * above and yet takes no new one for want of a name, as /proc does.
 */
export function makeFolders(path: string): void {
  const folder = resolve(path);
  if (isFolder(folder)) return;
  const above = dirname(folder);
  if (above !== folder) makeFolders(above);
  try {
    mkdirSync(folder);
  } catch (error) {
    // Another process may have made it meanwhile.
    if (!isFolder(folder)) throw error;
  }
}

function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
}
