/** What is told when the disk or the database would not take something: nothing of it was saved, and why. */
import { codeOf } from '../file-failure.ts';

export interface StorageFailure {
  readonly status: number;
  readonly error: string;
  /** Whether it may well go through a little later. */
  readonly passing: boolean;
}

const NOTHING_SAVED = 'Nothing of it was saved.';

/** By the code of SQLite or of the system; longer ones of SQLite, such as SQLITE_IOERR_WRITE, go by their beginning. */
const FAILURES: Readonly<Record<string, StorageFailure>> = {
  SQLITE_FULL: told(507, 'the disk of the server is full'),
  ENOSPC: told(507, 'the disk of the server is full'),
  EDQUOT: told(507, 'the disk of the server is full'),
  SQLITE_READONLY: told(503, 'the data folder of the server cannot be written to'),
  EROFS: told(503, 'the data folder of the server cannot be written to'),
  EACCES: told(503, 'the data folder of the server cannot be written to'),
  SQLITE_CANTOPEN: told(503, 'the data folder of the server is gone or cannot be opened'),
  SQLITE_IOERR: told(503, 'the disk of the server failed'),
  EIO: told(503, 'the disk of the server failed'),
  SQLITE_CORRUPT: told(503, 'the database of the server is damaged; it is set aside when the server starts again'),
  SQLITE_NOTADB: told(503, 'the database of the server is damaged; it is set aside when the server starts again'),
  SQLITE_BUSY: { ...told(503, 'the database of the server is busy; try again a little later'), passing: true },
  SQLITE_LOCKED: { ...told(503, 'the database of the server is busy; try again a little later'), passing: true },
};

function told(status: number, what: string): StorageFailure {
  return { status, error: `${what}. ${NOTHING_SAVED}`, passing: false };
}

/** What an error of the storage means; undefined for any other error. */
export function storageFailure(error: unknown): StorageFailure | undefined {
  const code = codeOf(error);
  return FAILURES[Object.keys(FAILURES).find((known) => code.startsWith(known)) ?? ''];
}

/** Whether an error says that a file is no database, or no whole one. */
export function isDamage(error: unknown): boolean {
  return /^SQLITE_(CORRUPT|NOTADB)/.test(codeOf(error));
}
