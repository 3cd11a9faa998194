/** Failures of disks, files and databases in words, by the codes of the system and of SQLite. Any other error is one of the program. */

const FULL = 'the disk is full';
const LOCKED = 'there is no permission for this';
const READ_ONLY = 'this can only be read';

/** Longer codes of SQLite, such as SQLITE_IOERR_WRITE, go by their beginning. */
const WORDS: Readonly<Record<string, string>> = {
  ENOSPC: FULL,
  EDQUOT: FULL,
  SQLITE_FULL: FULL,
  EACCES: LOCKED,
  EPERM: LOCKED,
  SQLITE_PERM: LOCKED,
  EROFS: READ_ONLY,
  SQLITE_READONLY: READ_ONLY,
  ENOENT: 'there is no such file or folder',
  ENOTDIR: 'part of this path is not a folder',
  EISDIR: 'this is a folder, a file is needed',
  EEXIST: 'something else is there already',
  ENOTEMPTY: 'something else is there already',
  ENAMETOOLONG: 'this name is too long',
  ELOOP: 'these links lead round in a circle',
  EXDEV: 'this lies on another disk',
  EBUSY: 'this is in use',
  ETXTBSY: 'this is in use',
  EFBIG: 'the file grows larger than files may be here',
  EMFILE: 'too many files are open',
  ENFILE: 'too many files are open',
  EIO: 'the disk failed',
  SQLITE_IOERR: 'the disk failed',
  SQLITE_CANTOPEN: 'a database cannot be opened',
  SQLITE_BUSY: 'a database is in use',
  SQLITE_LOCKED: 'a database is in use',
  SQLITE_CORRUPT: 'a database is damaged',
  SQLITE_NOTADB: 'a database is damaged',
};

/** What failed of a file, as a sentence with its path where that is known; undefined for any other error. */
export function fileFailure(error: unknown): string | undefined {
  const code = codeOf(error);
  const words = wordsOf(code);
  if (words === undefined) return undefined;
  const { path, dest } = error as { readonly path?: unknown; readonly dest?: unknown };
  const place = [dest, path].find((one) => typeof one === 'string');
  return `${place === undefined ? `${words.charAt(0).toUpperCase()}${words.slice(1)}` : `${place}: ${words}`} (${code}).`;
}

/** Whether the disk, or the share of it that one may use, is full. */
export const isFull = (error: unknown): boolean => wordsOf(codeOf(error)) === FULL;

/** The code of an error of the system or of SQLite; empty where it has none. */
export function codeOf(error: unknown): string {
  const { code } = (error ?? {}) as { code?: unknown };
  return typeof code === 'string' ? code : '';
}

function wordsOf(code: string): string | undefined {
  const known = Object.keys(WORDS).find((one) => code === one || code.startsWith(`${one}_`));
  return WORDS[known ?? ''];
}
