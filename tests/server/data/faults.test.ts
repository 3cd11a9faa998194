/** What happens to sites when disk, database, clock or process fail: nothing that was acknowledged is lost. */
import {
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import request from 'supertest';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { DEMO_SITE } from '../../../model/index.ts';
import { createApp } from '../../../server/app.ts';
import { DATABASE_FILE, openStore, type Store } from '../../../server/data/store.ts';
import { startServing } from '../serving.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'shadeside-faults-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const idOf = (k: number) => `0b7e4a52-58a0-4a6e-9c37-${String(k).padStart(12, '0')}`;
const put = (store: Store, k: number, base: number | null, title = `site ${k}`) =>
  request(createApp({ webDir: 'none', store }))
    .put(`/api/sites/${idOf(k)}`)
    .send({ base, draft: { ...DEMO_SITE, title } });
const titles = async (store: Store): Promise<string[]> => {
  const { body } = await request(createApp({ webDir: 'none', store })).get('/api/sites');
  return body.sites.map(({ title }: { title: string }) => title).sort();
};

describe('a damaged database', () => {
  test('that is none at all is kept aside as it was, and a new one begun', async () => {
    const garbage = Buffer.from('this is no database, however long it is '.repeat(500));
    writeFileSync(join(folder, DATABASE_FILE), garbage);
    const store = openStore(folder);
    expect(store.keptAside).toBe(join(folder, 'damaged-1.sqlite'));
    expect(readFileSync(store.keptAside ?? '').equals(garbage)).toBe(true);
    expect((await put(store, 1, null)).status).toBe(200);
    store.close();
  });

  test('with a page overwritten in its midst is found when it is opened, and never written over', async () => {
    const first = openStore(folder);
    for (let k = 0; k < 30; k += 1) expect((await put(first, k, null)).status).toBe(200);
    first.close();
    const path = join(folder, DATABASE_FILE);
    const { size } = statSync(path);
    const file = openSync(path, 'r+');
    writeSync(file, Buffer.alloc(12_288, 0xa5), 0, 12_288, Math.floor(size / 8192) * 4096);
    const damaged = readFileSync(path);

    const second = openStore(folder);
    expect(readFileSync(second.keptAside ?? '').equals(damaged)).toBe(true);
    expect(second.id).not.toBe(first.id);
    expect(await titles(second)).toEqual([]);
    second.close();
    const third = openStore(folder);
    expect([third.keptAside, third.id]).toEqual([null, second.id]);
    third.close();
    writeFileSync(path, 'damaged again');
    openStore(folder).close();
    expect(readdirSync(folder)).toEqual(expect.arrayContaining(['damaged-1.sqlite', 'damaged-2.sqlite']));
  });

  test('that was cut short is kept aside, too', async () => {
    const first = openStore(folder);
    for (let k = 0; k < 30; k += 1) await put(first, k, null);
    first.close();
    truncateSync(join(folder, DATABASE_FILE), Math.floor(statSync(join(folder, DATABASE_FILE)).size / 2));
    const store = openStore(folder);
    expect(store.keptAside).not.toBeNull();
    store.close();
  });
});

describe('a disk that takes no more', () => {
  test('saves nothing by halves, says so, keeps what was acknowledged, and goes on when there is room', async () => {
    const store = openStore(folder);
    expect((await put(store, 1, null)).status).toBe(200);
    const pages = store.db.pragma('page_count', { simple: true }) as number;
    store.db.pragma(`max_page_count = ${pages}`);
    let k = 2;
    let answer = await put(store, k, null);
    while (answer.status === 200 && k < 50) {
      k += 1;
      answer = await put(store, k, null);
    }
    expect(answer.status).toBe(507);
    expect(answer.body).toEqual({ error: 'the disk of the server is full. Nothing of it was saved.', problems: [] });
    const kept = Array.from({ length: k - 1 }, (_, n) => `site ${n + 1}`).sort();
    expect(await titles(store)).toEqual(kept);
    store.db.pragma('max_page_count = 1000000');
    expect((await put(store, k, null)).status).toBe(200);
    expect(await titles(store)).toEqual([...kept, `site ${k}`].sort());
    store.close();
  });

  test('that may only be read goes on showing what it holds', async () => {
    const store = openStore(folder);
    await put(store, 1, null);
    store.db.pragma('query_only = ON');
    const answer = await put(store, 2, null);
    expect([answer.status, answer.body.error]).toEqual([
      503,
      'the data folder of the server cannot be written to. Nothing of it was saved.',
    ]);
    expect(await titles(store)).toEqual(['site 1']);
    store.close();
  });
});

test('a clock that jumps back does not turn revisions round', async () => {
  const store = openStore(folder);
  try {
    vi.useFakeTimers({ toFake: ['Date'], now: new Date('2026-07-01T12:00:00Z') });
    const first = await put(store, 1, null, 'first');
    vi.setSystemTime(new Date('2019-01-01T00:00:00Z'));
    const second = await put(store, 1, first.body.revision, 'second');
    expect(second.body.revision).toBe(first.body.revision + 1);
    const list = await request(createApp({ webDir: 'none', store })).get('/api/sites?since=1');
    expect(list.body.sites).toHaveLength(1);
    expect(await titles(store)).toEqual(['second']);
  } finally {
    vi.useRealTimers();
    store.close();
  }
});

test('killed in the midst of saving, the server has all that it acknowledged', { timeout: 60_000 }, async () => {
  const serving = await startServing(['serve', '--port', '0', '--data', folder, '--workers', '1']);
  const acknowledged = new Map<string, number>();
  const saving = Array.from({ length: 4 }, async (_, lane) => {
    const id = idOf(lane);
    let base: number | null = null;
    for (let count = 0; ; count += 1) {
      const body = JSON.stringify({ base, draft: { ...DEMO_SITE, title: `${lane}-${count}` } });
      const headers = { 'Content-Type': 'application/json' };
      const response: Response = await fetch(`${serving.url}api/sites/${id}`, { method: 'PUT', headers, body });
      base = ((await response.json()) as { revision: number }).revision;
      acknowledged.set(id, base);
    }
  });
  const ended = Promise.allSettled(saving);
  while ([...acknowledged.values()].reduce((sum, revision) => sum + revision, 0) < 60) {
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
  await serving.stop('SIGKILL');
  await ended;
  const store = openStore(folder);
  expect(store.keptAside).toBeNull();
  const app = createApp({ webDir: 'none', store });
  for (const [id, revision] of acknowledged) {
    const { body } = await request(app).get(`/api/sites/${id}`);
    // One more may have been saved whose answer never came.
    expect([revision, revision + 1]).toContain(body.revision);
  }
  store.close();
});
