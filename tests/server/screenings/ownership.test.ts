import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openStore } from '../../../server/data/store.ts';
import { openScreenings } from '../../../server/screenings/jobs.ts';
import { takeHold } from '../../../server/screenings/ownership.ts';
import { ownFolder } from '../screening/tables.ts';

const folder = ownFolder();

test('one has a folder at a time', () => {
  const path = join(folder, 'lock.sqlite');
  const first = takeHold(path);
  expect(first).not.toBeNull();
  expect(takeHold(path)).toBeNull();
  first?.release();
  takeHold(path)?.release();
});

test('a process that looks on starts what waits once the other has let go', async () => {
  const [one, two] = [openStore(join(folder, 'data')), openStore(join(folder, 'data'))];
  const first = openScreenings(one, { workers: 0 });
  const second = openScreenings(two, { workers: 0 });
  const grid = { southDeg: 33, westDeg: -113, northDeg: 33.5, eastDeg: -113, stepDeg: 0.5 };
  const columns = { latitude: 0, longitude: 1 };
  const id = await first.add({
    ...{ name: 'two points', from: { grid }, columns, base: {} },
    ...{ climate: 'dry-basin', weather: false, workers: undefined },
  });
  await first.stop();
  expect(second.state(id).status).toBe('running');
  await new Promise<void>((resolve) => {
    const unwatch = second.watch(id, () => {
      if (second.state(id).status !== 'done') return;
      unwatch();
      resolve();
    });
  });
  expect(second.state(id)).toMatchObject({ status: 'done', rows: { done: 2, total: 2 } });
  await second.stop();
  one.close();
  two.close();
});
