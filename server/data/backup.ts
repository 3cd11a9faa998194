/** A copy of a data folder in another folder, made while a server works on it, and the way back. */
import { randomUUID } from 'node:crypto';
import { cpSync, existsSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { makeFolders } from '../make-folders.ts';
import { takeHold } from '../screenings/ownership.ts';
import { HOLD_FILE, SCREENINGS_FOLDER, TABLE_FILE, WEATHER_FOLDER } from './folders.ts';
import { MIGRATIONS } from './migrations.ts';
import { isDamage } from './storage-failure.ts';
import { DATABASE_FILE, refuseDamaged, StoreError } from './store.ts';

export interface CopyCounts {
  readonly sites: number;
  readonly screenings: number;
}

/** Screenings in these states have all their files; others begin again from their table. */
const FINISHED = ['done', 'cancelled', 'failed'];

/**
 * Copies database, screenings and weather files to the folder `target`, which must not exist: it appears when everything is in it.
 * @throws StoreError
 */
export async function backUp(dataDir: string, target: string): Promise<CopyCounts> {
  const source = join(dataDir, DATABASE_FILE);
  if (!existsSync(source)) throw new StoreError(`${dataDir} holds no database of Shadeside; there is nothing to copy.`);
  if (existsSync(target)) throw new StoreError(`${target} is there already; a backup wants a new folder.`);
  return appearing(target, async (partial) => {
    const db = new Database(source, { fileMustExist: true, timeout: 5000 });
    try {
      const copied = join(partial, DATABASE_FILE);
      await db.backup(copied);
      const { screenings } = looked(copied);
      copyFiles(screenings, db, [dataDir, partial]);
      const left = idsIn(db);
      const gone = screenings.map(({ id }) => id).filter((id) => !left.has(id));
      forget(gone, partial);
      copy(join(dataDir, WEATHER_FOLDER), join(partial, WEATHER_FOLDER));
      return looked(copied).counts;
    } finally {
      db.close();
    }
  });
}

/** Copies the files of screenings; some may be deleted meanwhile from the database that the server works with. */
function copyFiles(screenings: Contents['screenings'], live: Database.Database, folders: readonly [string, string]) {
  const [from, to] = folders.map((folder) => join(folder, SCREENINGS_FOLDER)) as [string, string];
  for (const { id, status } of screenings) {
    const parts = FINISHED.includes(status) ? [id] : [id, TABLE_FILE];
    try {
      copy(join(from, ...parts), join(to, ...parts));
    } catch (error) {
      if (idsIn(live).has(id)) throw error;
    }
  }
}

/** Takes screenings out of a copy, with what was copied of their files. */
function forget(ids: readonly string[], target: string): void {
  if (ids.length === 0) return;
  const db = new Database(join(target, DATABASE_FILE), { fileMustExist: true });
  const remove = db.prepare('DELETE FROM screening WHERE id = ?');
  for (const id of ids) {
    remove.run(id);
    rmSync(join(target, SCREENINGS_FOLDER, id), { recursive: true, force: true });
  }
  db.close();
}

const idsIn = (db: Database.Database) => new Set(contents(db).screenings.map(({ id }) => id));

/**
 * Makes a data folder of a backup. A folder that holds something already is only replaced when asked to, and then kept beside it.
 * The database gets a new name of its own: browsers then compare what they hold instead of trusting revision numbers.
 * @throws StoreError
 */
export async function restore(
  backup: string,
  dataDir: string,
  { replace }: { replace: boolean },
): Promise<CopyCounts & { formerly: string | null }> {
  const source = join(backup, DATABASE_FILE);
  if (!existsSync(source)) throw new StoreError(`${backup} is no backup of Shadeside: it holds no ${DATABASE_FILE}.`);
  looked(source);
  const taken = existsSync(dataDir) && readdirSync(dataDir).length > 0;
  if (taken && !replace) {
    throw new StoreError(`${dataDir} holds something already; --replace puts it aside and the backup in its place.`);
  }
  refuseInUse(dataDir);
  let formerly: string | null = null;
  const counts = await appearing(
    dataDir,
    async (partial) => {
      cpSync(backup, partial, { recursive: true });
      const db = new Database(join(partial, DATABASE_FILE));
      db.prepare("UPDATE store SET value = ? WHERE key = 'id'").run(randomUUID());
      db.close();
      return looked(join(partial, DATABASE_FILE)).counts;
    },
    () => {
      if (existsSync(dataDir)) formerly = putAside(dataDir, taken);
    },
  );
  return { ...counts, formerly };
}

/** Fills a folder under another name and gives it its own when all is in it; nothing of it stays where that fails. */
async function appearing<Result>(
  target: string,
  fill: (partial: string) => Promise<Result>,
  makeWay = () => {},
): Promise<Result> {
  // A name of its own: what stands under a plain one may be somebody's.
  const partial = `${target}.${randomUUID().slice(0, 8)}.unfinished`;
  try {
    makeFolders(partial);
    const result = await fill(partial);
    makeWay();
    renameSync(partial, target);
    return result;
  } catch (error) {
    rmSync(partial, { recursive: true, force: true });
    if (error instanceof StoreError) throw error;
    const { code = '', message } = error as NodeJS.ErrnoException;
    throw new StoreError(`${target} could not be written (${code || message}); nothing was changed.`);
  }
}

/** What is in a database, which must be whole and of a layout that is known. */
function looked(path: string) {
  try {
    const db = new Database(path, { fileMustExist: true });
    try {
      refuseDamaged(db);
      const layout = db.pragma('user_version', { simple: true }) as number;
      if (layout > MIGRATIONS.length) throw new StoreError(`${path} was written by a newer Shadeside.`);
      return contents(db);
    } finally {
      db.close();
    }
  } catch (error) {
    if (!isDamage(error)) throw error;
    throw new StoreError(`${path} is damaged; it is not copied.`);
  }
}

interface Contents {
  readonly counts: CopyCounts;
  readonly screenings: readonly { readonly id: string; readonly status: string }[];
}

function contents(db: Database.Database): Contents {
  const count = (table: string) =>
    has(db, table) ? (db.prepare<[], { n: number }>(`SELECT count(*) AS n FROM ${table}`).get()?.n ?? 0) : 0;
  const screenings = has(db, 'screening')
    ? db.prepare<[], { id: string; status: string }>('SELECT id, status FROM screening').all()
    : [];
  return { counts: { sites: count('site'), screenings: screenings.length }, screenings };
}

/** An older program kept fewer things. */
function has(db: Database.Database, table: string): boolean {
  return db.prepare("SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = ?").get(table) !== undefined;
}

function copy(from: string, to: string): void {
  if (existsSync(from)) cpSync(from, to, { recursive: true });
}

/** A server that works in the folder would go on writing to what was put aside. */
function refuseInUse(dataDir: string): void {
  const folder = join(dataDir, SCREENINGS_FOLDER);
  if (!existsSync(folder)) return;
  const hold = takeHold(join(folder, HOLD_FILE));
  if (hold === null) throw new StoreError(`A server is working in ${dataDir}; stop it first.`);
  hold.release();
}

/** Gives a folder another name, or takes it away where nothing is in it. */
function putAside(dataDir: string, holdsSomething: boolean): string | null {
  if (!holdsSomething) {
    rmSync(dataDir, { recursive: true });
    return null;
  }
  let count = 1;
  while (existsSync(`${dataDir}.before-restore-${count}`)) count += 1;
  renameSync(dataDir, `${dataDir}.before-restore-${count}`);
  return `${dataDir}.before-restore-${count}`;
}
