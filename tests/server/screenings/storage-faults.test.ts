/** Screenings while the database takes nothing, and stops that come together. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { openStore, type Store } from '../../../server/data/store.ts';
import { openScreenings, type Screenings } from '../../../server/screenings/jobs.ts';

/** Longer than screenings wait until they try again. */
const A_WHILE_MS = 5000;

let folder: string;
let store: Store;
let failures: unknown[];
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
  folder = mkdtempSync(join(tmpdir(), 'shadeside-storage-'));
  store = openStore(folder);
  failures = [];
});
afterEach(() => {
  vi.useRealTimers();
  store.close();
  rmSync(folder, { recursive: true });
});

const opened = () => openScreenings(store, { workers: 0, onFailed: (_id, error) => failures.push(error) });

/** A grid of so many points. */
function added(screenings: Screenings, points: number): Promise<string> {
  const grid = { southDeg: 33, westDeg: -113, northDeg: 33 + (points - 1) / 100, eastDeg: -113, stepDeg: 0.01 };
  const columns = { latitude: 0, longitude: 1 };
  return screenings.add({
    ...{ name: 'points', from: { grid }, columns, base: {} },
    ...{ climate: 'dry-basin', weather: false, workers: undefined },
  });
}

const hasStatus = (screenings: Screenings, id: string, status: string) =>
  vi.waitFor(() => expect(screenings.state(id).status).toBe(status), { timeout: 100_000, interval: 10 });

const takesNothing = (isSo: boolean) => void store.db.pragma(`query_only = ${isSo ? 'ON' : 'OFF'}`);

test('a server starts while the database takes nothing, and goes on with what ran once it does', async () => {
  const first = opened();
  const id = await added(first, 4);
  await first.stop();
  takesNothing(true);
  const second = opened();
  expect(failures).toHaveLength(1);
  await expect(added(second, 2)).rejects.toThrow('another process');
  vi.advanceTimersByTime(A_WHILE_MS);
  expect(second.state(id).status).toBe('running');
  takesNothing(false);
  vi.advanceTimersByTime(A_WHILE_MS);
  await hasStatus(second, id, 'done');
  expect(second.state(id).rows).toMatchObject({ done: 4, total: 4 });
  await second.stop();
}, 120_000);

test('a run that the database fails under is told as failed, begun once, and can be gone on with', async () => {
  const screenings = opened();
  const [id, waiting] = [await added(screenings, 4), await added(screenings, 2)];
  takesNothing(true);
  await hasStatus(screenings, id, 'failed');
  expect(screenings.state(id).error).toContain('SQLITE_READONLY');
  await hasStatus(screenings, waiting, 'failed');
  const begun = failures.length;
  for (let time = 0; time < 5; time += 1) {
    vi.advanceTimersByTime(A_WHILE_MS);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  expect(failures).toHaveLength(begun);

  takesNothing(false);
  vi.advanceTimersByTime(A_WHILE_MS);
  expect(store.db.prepare('SELECT DISTINCT status FROM screening').pluck().all()).toEqual(['failed']);
  screenings.resume(id);
  screenings.resume(waiting);
  await hasStatus(screenings, id, 'done');
  await hasStatus(screenings, waiting, 'done');
  await screenings.stop();
}, 120_000);

test('a screening that is cancelled when the server stops stays cancelled', async () => {
  const first = opened();
  const id = await added(first, 4);
  const cancelled = first.cancel(id);
  await Promise.all([cancelled, first.stop()]);
  const second = opened();
  expect(second.state(id).status).toBe('cancelled');
  await second.stop();
});
