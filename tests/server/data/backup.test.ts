/** A copy of a data folder and the way back, and a database of an older program. */
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import request from 'supertest';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { createApp } from '../../../server/app.ts';
import { backUp, restore } from '../../../server/data/backup.ts';
import { MIGRATIONS } from '../../../server/data/migrations.ts';
import { DATABASE_FILE, openStore, type Store, StoreError } from '../../../server/data/store.ts';
import { takeHold } from '../../../server/screenings/ownership.ts';
import { runBuilt } from '../run-built.ts';

const OLD = fileURLToPath(new URL('layout-2.sqlite', import.meta.url));
const ID = '0b7e4a52-58a0-4a6e-9c37-000000000001';

let folder: string;
let dataDir: string;
let copy: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'shadeside-backup-'));
  dataDir = join(folder, 'data');
  copy = join(folder, 'copy');
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

const save = (store: Store, base: number | null, title: string) =>
  request(createApp({ webDir: 'none', store }))
    .put(`/api/sites/${ID}`)
    .send({ base, draft: { title } });
const siteIn = async (dir: string) => {
  const store = openStore(dir);
  try {
    return (await request(createApp({ webDir: 'none', store })).get(`/api/sites/${ID}`)).body;
  } finally {
    store.close();
  }
};

/** A screening as the database and the folder hold it. */
function plantScreening(store: Store, id: string, status: string, files: readonly string[]): void {
  store.db
    .prepare(
      "INSERT INTO screening (id, name, origin, status, created_at, total, tally, job) VALUES (?, 'x', 'table', ?, '', 1, '{}', '{}')",
    )
    .run(id, status);
  mkdirSync(join(dataDir, 'screenings', id), { recursive: true });
  for (const file of files) writeFileSync(join(dataDir, 'screenings', id, file), file);
}

describe('a backup', () => {
  test('is made while a server works, and comes back as it was then under a new name', async () => {
    const store = openStore(dataDir);
    await save(store, null, 'before');
    plantScreening(store, 'finished', 'done', ['table.csv', 'results.csv']);
    plantScreening(store, 'halfway', 'running', ['table.csv', 'results.csv.unfinished']);
    mkdirSync(join(dataDir, 'weather'));
    writeFileSync(join(dataDir, 'weather', 'a.epw'), 'LOCATION');
    expect(await backUp(dataDir, copy)).toEqual({ sites: 1, screenings: 2 });
    await save(store, 1, 'after');
    store.close();
    expect(readdirSync(join(copy, 'screenings', 'finished')).sort()).toEqual(['results.csv', 'table.csv']);
    expect(readdirSync(join(copy, 'screenings', 'halfway'))).toEqual(['table.csv']);
    expect(readFileSync(join(copy, 'weather', 'a.epw'), 'utf8')).toBe('LOCATION');

    const elsewhere = join(folder, 'elsewhere');
    expect(await restore(copy, elsewhere, { replace: false })).toEqual({ sites: 1, screenings: 2, formerly: null });
    const back = await siteIn(elsewhere);
    expect([back.title, back.revision]).toEqual(['before', 1]);
    expect(back.store).not.toBe(store.id);
    expect((await siteIn(dataDir)).title).toBe('after');
  });

  test('leaves out what is deleted while it is made, and all of it', async () => {
    const store = openStore(dataDir);
    plantScreening(store, 'stays', 'done', ['table.csv']);
    plantScreening(store, 'goes', 'done', ['table.csv', 'results.csv']);
    const backup = Database.prototype.backup;
    vi.spyOn(Database.prototype, 'backup').mockImplementation(async function (this: Database.Database, target) {
      const done = await backup.call(this, target);
      store.db.prepare("DELETE FROM screening WHERE id = 'goes'").run();
      // Its files go one after the other.
      rmSync(join(dataDir, 'screenings/goes/table.csv'));
      return done;
    });
    expect(await backUp(dataDir, copy)).toEqual({ sites: 0, screenings: 1 });
    store.close();
    expect(readdirSync(join(copy, 'screenings'))).toEqual(['stays']);
  });

  test('replaces what is there only when asked to, and keeps it', async () => {
    const store = openStore(dataDir);
    await save(store, null, 'before');
    await backUp(dataDir, copy);
    await save(store, 1, 'after');
    store.close();
    await expect(restore(copy, dataDir, { replace: false })).rejects.toThrow(/holds something already; --replace/);
    expect((await siteIn(dataDir)).title).toBe('after');
    const { formerly } = await restore(copy, dataDir, { replace: true });
    expect((await siteIn(dataDir)).title).toBe('before');
    expect((await siteIn(formerly ?? '')).title).toBe('after');
  });

  test('does not come back under the feet of a server', async () => {
    openStore(dataDir).close();
    await backUp(dataDir, copy);
    mkdirSync(join(dataDir, 'screenings'));
    const hold = takeHold(join(dataDir, 'screenings', 'lock.sqlite'));
    await expect(restore(copy, dataDir, { replace: true })).rejects.toThrow(/server is working/);
    hold?.release();
    await restore(copy, dataDir, { replace: true });
  });

  test('is refused where it would write over something, copy nothing, or copy damage', async () => {
    await expect(backUp(dataDir, copy)).rejects.toThrow(/holds no database/);
    openStore(dataDir).close();
    mkdirSync(copy);
    await expect(backUp(dataDir, copy)).rejects.toThrow(/is there already/);
    await expect(restore(copy, join(folder, 'new'), { replace: false })).rejects.toThrow(/is no backup/);
    writeFileSync(
      join(copy, DATABASE_FILE),
      'garbage, and far too little of it to be a database of any kind'.repeat(40),
    );
    await expect(restore(copy, join(folder, 'new'), { replace: false })).rejects.toThrow(StoreError);
    expect(existsSync(join(folder, 'new'))).toBe(false);
    expect(readdirSync(folder).sort()).toEqual(['copy', 'data']);
  });

  test('from the command line, with a line that says what was copied', async () => {
    openStore(dataDir).close();
    const made = await runBuilt(['backup', copy, '--data', dataDir]);
    expect([made.code, made.stderr]).toEqual([0, '']);
    expect(made.stdout).toBe(`Copied 0 sites and 0 screenings to ${copy}\n`);
    const again = await runBuilt(['restore', copy, '--data', dataDir]);
    expect([again.code, again.stdout]).toEqual([1, '']);
    expect(again.stderr).toMatch(/^.* holds something already; --replace .*\n$/);
    expect((await runBuilt(['restore'])).code).toBe(2);
  });
});

test('a database of an older program is brought up to date with all that is in it', async () => {
  mkdirSync(dataDir);
  cpSync(OLD, join(dataDir, DATABASE_FILE));
  const store = openStore(dataDir);
  expect(store.keptAside).toBeNull();
  expect(store.id).toBe('11111111-2222-4333-8444-555555555555');
  expect(store.db.pragma('user_version', { simple: true })).toBe(MIGRATIONS.length);
  const app = createApp({ webDir: 'none', store });
  const { body } = await request(app).get('/api/sites/aaaaaaaa-0000-4000-8000-000000000001/revisions');
  expect(body.revisions.map(({ title }: { title: string }) => title)).toEqual([
    'Shed, white box (invented)',
    'Shed (invented)',
  ]);
  const list = await request(app).get('/api/sites');
  expect(list.body.sites.map(({ deleted }: { deleted: boolean }) => deleted).sort()).toEqual([false, true]);
  store.close();
});
