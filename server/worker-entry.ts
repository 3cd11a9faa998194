import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Where built entries lie: beside the built program, or, run from the sources, in the last build. */
const FOLDERS = ['./', '../.build/server/'];

/** The file of a worker thread's entry, by its name in the build (server/vite.config.ts). */
export function workerEntry(name: string): string {
  const file = FOLDERS.map((folder) => fileURLToPath(new URL(`${folder}${name}.js`, import.meta.url))).find(existsSync);
  if (file === undefined) throw new Error('the program is not built; npm run build does that');
  return file;
}
