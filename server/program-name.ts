/** The command line as its user calls it, for hints that can be typed or pasted. */
import { basename, dirname, join, relative } from 'node:path';

/** By that name `npm link` puts it on the path. */
const LINKED = 'shadeside';

const ENTRY = 'shadeside.mjs';

/** Entries of which a user calls the first; `npm start` runs the other. */
const ENTRIES = [ENTRY, 'start.mjs'];

/** How the program was started: by its name on the path, or by the file that stands in `script`. */
export function programName(script = process.argv[1] ?? '', folder = process.cwd()): string {
  if (!ENTRIES.includes(basename(script))) return LINKED;
  const file = join(dirname(script), ENTRY);
  const near = relative(folder, file);
  return `node ${shellWord(near.length < file.length ? near : file)}`;
}

/** A word as a POSIX shell reads it: in quotes where it would be read otherwise. */
export function shellWord(word: string): string {
  return /^[\w@%+:,./-][\w@%+=:,./-]*$/.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`;
}
