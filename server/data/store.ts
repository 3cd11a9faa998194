/**
 * The database of a data folder: one file of SQLite, its tables made and brought up to date when it is opened. One that is damaged is
 * kept aside, for someone who can save what is in it, and a new one is begun: browsers hold their own sites and send them again.
 */
import { randomUUID } from 'node:crypto';
import { existsSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { makeFolders } from '../make-folders.ts';
import { SCREENINGS_FOLDER, TABLES_FOLDER } from './folders.ts';
import { MIGRATIONS } from './migrations.ts';
import { isDamage } from './storage-failure.ts';

export const DATABASE_FILE = 'shadeside.sqlite';

/** Thrown when a data folder cannot be used; the message says why and what to do. */
export class StoreError extends Error {
  override readonly name = 'StoreError';
}

export interface Store {
  /**
   * The store's own name, made with it: revisions of another store mean nothing here. A store that is set back to an earlier
   * state counts revisions anew from there and has to take another name.
   */
  readonly id: string;
  /** The data folder, for files beside the database. */
  readonly folder: string;
  readonly db: Database.Database;
  /** Where a damaged database was put when this one was begun in its place; null where none was. */
  readonly keptAside: string | null;
  close(): void;
}

/**
 * Opens the database of a data folder; makes both where they are missing.
 * @throws StoreError
 */
export function openStore(folder: string): Store {
  try {
    makeFolders(folder);
    try {
      return opened(folder, null);
    } catch (error) {
      if (!isDamage(error)) throw error;
      return opened(folder, putAside(folder));
    }
  } catch (error) {
    if (error instanceof StoreError) throw error;
    const { code = '', message } = error as NodeJS.ErrnoException;
    throw new StoreError(
      `The data folder ${folder} cannot be used (${code || message}); choose another with --data DIR.`,
    );
  }
}

function opened(folder: string, keptAside: string | null): Store {
  const db = new Database(join(folder, DATABASE_FILE), { timeout: 5000 });
  try {
    // Readers do not wait for a writer; what was answered with "saved" is on the disk.
    db.pragma('journal_mode = WAL');
    db.pragma('synchronous = FULL');
    db.pragma('foreign_keys = ON');
    refuseDamaged(db);
    const id = broughtUpToDate(db);
    return { id, folder, db, keptAside, close: () => db.close() };
  } catch (error) {
    db.close();
    throw error;
  }
}

/**
 * A damaged page may lie where nothing reads for months.
 * @throws an error with code SQLITE_CORRUPT
 */
export function refuseDamaged(db: Database.Database): void {
  const found = db.pragma('quick_check(1)', { simple: true });
  if (found !== 'ok') throw Object.assign(new Error(String(found)), { code: 'SQLITE_CORRUPT' });
}

/** Gives the files of a database another name, the first that is free, and tells it. */
function putAside(folder: string): string {
  const name = (count: number) => join(folder, `damaged-${count}.sqlite`);
  let count = 1;
  while (existsSync(name(count))) count += 1;
  for (const end of ['', '-wal', '-shm']) {
    const file = join(folder, `${DATABASE_FILE}${end}`);
    if (existsSync(file)) renameSync(file, `${name(count)}${end}`);
  }
  // What the new database does not know of would be tidied away.
  for (const inside of [SCREENINGS_FOLDER, TABLES_FOLDER]) {
    const path = join(folder, inside);
    if (existsSync(path)) renameSync(path, join(folder, `damaged-${count}.${inside}`));
  }
  return name(count);
}

/** Brings the tables to the newest layout, all steps or none, and gives back the store's id. */
function broughtUpToDate(db: Database.Database): string {
  return db
    .transaction(() => {
      const layout = db.pragma('user_version', { simple: true }) as number;
      if (layout > MIGRATIONS.length) {
        throw new StoreError(
          `The database was written by a newer Shadeside (layout ${layout}, this one knows ${MIGRATIONS.length}).`,
        );
      }
      for (const migration of MIGRATIONS.slice(layout)) db.exec(migration);
      db.pragma(`user_version = ${MIGRATIONS.length}`);
      db.prepare("INSERT INTO store (key, value) VALUES ('id', ?) ON CONFLICT DO NOTHING").run(randomUUID());
      return db.prepare<[], { value: string }>("SELECT value FROM store WHERE key = 'id'").get()?.value ?? '';
    })
    .immediate();
}
