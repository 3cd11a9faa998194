/** The database of a data folder: one file of SQLite, its tables made and brought up to date when it is opened. */
import { randomUUID } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { MIGRATIONS } from './migrations.ts';

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
  close(): void;
}

/**
 * Opens the database of a data folder; makes both where they are missing.
 * @throws StoreError
 */
export function openStore(folder: string): Store {
  let db: Database.Database | undefined;
  try {
    mkdirSync(folder, { recursive: true });
    db = new Database(join(folder, DATABASE_FILE), { timeout: 5000 });
    // Readers do not wait for a writer; what was answered with "saved" is on the disk.
    db.pragma('journal_mode = WAL');
    db.pragma('synchronous = FULL');
    db.pragma('foreign_keys = ON');
    const id = broughtUpToDate(db);
    return { id, folder, db, close: () => db?.close() };
  } catch (error) {
    db?.close();
    if (error instanceof StoreError) throw error;
    const { code = '', message } = error as NodeJS.ErrnoException;
    throw new StoreError(
      `The data folder ${folder} cannot be used (${code || message}); choose another with --data DIR.`,
    );
  }
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
