/**
 * The rows of one screening in a file of SQLite of its own: written as the run goes, for sorting, filtering and the map. Taking its
 * folder away takes the rows away.
 */
import { existsSync, rmSync } from 'node:fs';
import Database from 'better-sqlite3';
import { KIT_CLASSES } from '../../model/index.ts';
import type { RowResult } from '../screening/output.ts';
import { packRow } from './kept-row.ts';

/** What lists are made of is kept apart from what only one row is asked for, so that a list reads little. */
const SCHEMA = `
  CREATE TABLE IF NOT EXISTS address (
    row INTEGER PRIMARY KEY,
    label TEXT NOT NULL,
    latitude REAL NOT NULL,
    longitude REAL NOT NULL,
    wall TEXT,
    azimuth REAL,
    peak REAL,
    margin REAL,
    share REAL NOT NULL,
    remedy TEXT,
    kit INTEGER NOT NULL,
    search TEXT NOT NULL
  ) STRICT;
  CREATE TABLE IF NOT EXISTS detail (row INTEGER PRIMARY KEY, cells TEXT NOT NULL, result TEXT NOT NULL) STRICT;
  CREATE TABLE IF NOT EXISTS kit (number INTEGER PRIMARY KEY, name TEXT NOT NULL) STRICT;
  CREATE INDEX IF NOT EXISTS by_margin ON address (margin);
  CREATE INDEX IF NOT EXISTS by_peak ON address (peak);
  CREATE INDEX IF NOT EXISTS by_azimuth ON address (azimuth);
  CREATE INDEX IF NOT EXISTS by_kit ON address (kit);
`;

const KITS: readonly string[] = KIT_CLASSES.map(({ name }) => name);

export interface RowWriter {
  add(rows: readonly RowResult[]): void;
  /** Makes safe what was added. */
  commit(): void;
  /** Gives up what was not made safe. */
  close(): void;
}

/** Takes the rows of a run away. */
export function removeRows(path: string): void {
  for (const end of ['', '-wal', '-shm', '-journal']) rmSync(`${path}${end}`, { force: true });
}

/** Opens the rows of a run for writing; `label` is the number of the column that names an address. */
export function openRowWriter(path: string, { label }: { readonly label: number | undefined }): RowWriter {
  const db = new Database(path, { timeout: 5000 });
  try {
    db.pragma('journal_mode = WAL');
    // The checkpoint of the run relies on what was committed here.
    db.pragma('synchronous = FULL');
    db.exec(SCHEMA);
    const kit = db.prepare('INSERT OR REPLACE INTO kit VALUES (?, ?)');
    for (const [number, name] of KITS.entries()) kit.run(number, name);
  } catch (error) {
    db.close();
    throw error;
  }
  const address = db.prepare('INSERT OR REPLACE INTO address VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)');
  const detail = db.prepare('INSERT OR REPLACE INTO detail VALUES (?, ?, ?)');
  const insert = (kept: RowResult): void => {
    const { record, place, result } = kept;
    const { best, insideShare, remedy } = result;
    address.run(
      ...[record.row, record.cells[label ?? -1] ?? '', place.latitudeDeg, place.longitudeDeg],
      ...[best?.name ?? null, best?.azimuthDeg ?? null, best?.peakInsideAirC ?? null, best?.marginK ?? null],
      ...[insideShare, remedy?.text ?? null, KITS.indexOf(result.kit), searchText(kept)],
    );
    detail.run(record.row, JSON.stringify(record.cells), packRow(kept));
  };
  return {
    add(rows) {
      if (rows.length === 0) return;
      if (!db.inTransaction) db.exec('BEGIN');
      for (const row of rows) insert(row);
    },
    commit() {
      if (db.inTransaction) db.exec('COMMIT');
    },
    close() {
      if (!db.open) return;
      if (db.inTransaction) db.exec('ROLLBACK');
      db.close();
    },
  };
}

/** What a search looks through. */
const searchText = ({ record, result }: RowResult): string =>
  [...record.cells, result.best?.name ?? ''].join('\n').toLowerCase();

/** Looks something up in the rows of a run; gives back `none` where there are none yet. */
export function withRows<Answer>(path: string, none: Answer, look: (db: Database.Database) => Answer): Answer {
  const db = openRows(path);
  if (db === null) return none;
  try {
    return look(db);
  } finally {
    db.close();
  }
}

/** Opens the rows of a run for reading; whoever does closes them. Null where there are none yet. */
export function openRows(path: string): Database.Database | null {
  if (!existsSync(path)) return null;
  const db = new Database(path, { timeout: 5000, fileMustExist: true });
  db.pragma('query_only = ON');
  return db;
}
