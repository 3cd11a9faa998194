import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Outcome } from '../../../server/screening/batch.ts';
import { openSqliteQueue, QueueInUse } from '../../../server/screening/sqlite-queue.ts';
import { NO_TALLY } from '../../../server/screening/tally.ts';
import { ownFolder } from './tables.ts';

const folder = ownFolder();
let files = 0;
const place = () => join(folder, `${files++}.sqlite`);
const batch = (seq: number) => ({ seq, records: [{ row: seq + 2, line: seq + 2, cells: [String(seq)] }] });
const outcome = (seq: number): Outcome => ({ seq, results: `r${seq}`, rejects: '', tally: { ...NO_TALLY, rows: 1 } });

/** Whether a promise is settled once everyone who could settle it had a turn. */
async function settled(promise: Promise<unknown>): Promise<boolean> {
  let done = false;
  promise.finally(() => {
    done = true;
  });
  await new Promise((resolve) => setImmediate(resolve));
  return done;
}

describe('the queue', () => {
  test('hands batches out once each, and outcomes in their order, in whatever order they come', async () => {
    const { queue } = openSqliteQueue(place(), { room: 9 });
    for (const seq of [0, 1, 2]) await queue.push(batch(seq));
    await queue.push(null);
    const taken = [await queue.take(), await queue.take(), await queue.take(), await queue.take()];
    expect(taken).toEqual([batch(0), batch(1), batch(2), null]);
    const first = queue.collect();
    await queue.done(outcome(2));
    await queue.done(outcome(1));
    expect(await settled(first)).toBe(false);
    await queue.done(outcome(0));
    expect([await first, await queue.collect(), await queue.collect()]).toEqual([outcome(0), outcome(1), outcome(2)]);
    expect(await queue.collect()).toBeNull();
    queue.close();
  });

  test('lets no more in than there is room for', async () => {
    const { queue } = openSqliteQueue(place(), { room: 2 });
    await queue.push(batch(0));
    await queue.push(batch(1));
    const third = queue.push(batch(2));
    expect(await settled(third)).toBe(false);
    await queue.take();
    await queue.done(outcome(0));
    expect(await settled(third)).toBe(false);
    await queue.collect();
    await third;
    expect(queue.pushed).toBe(3);
    queue.close();
  });

  test('gives work back that was taken and not done, and keeps what was done, after a crash', async () => {
    const path = place();
    const before = openSqliteQueue<string>(path, { room: 9 });
    for (const seq of [0, 1, 2, 3]) await before.queue.push(batch(seq));
    for (let k = 0; k < 3; k++) await before.queue.take();
    await before.queue.done(outcome(0));
    await before.queue.done(outcome(2));
    await before.queue.collect();
    before.queue.commit({ seq: 1, state: 'one is written' });
    before.writeNote('identity', { of: 'a table' });
    // The process ends here: 1 was at work, 2 was done and not written.
    before.queue.close();
    const { queue, note } = openSqliteQueue<string>(path, { room: 9 });
    expect(note('identity')).toEqual({ of: 'a table' });
    expect(queue.checkpoint).toEqual({ seq: 1, state: 'one is written' });
    expect(queue.pushed).toBe(4);
    await queue.push(null);
    expect([await queue.take(), await queue.take(), await queue.take()]).toEqual([batch(1), batch(3), null]);
    await queue.done(outcome(3));
    await queue.done(outcome(1));
    expect([await queue.collect(), await queue.collect(), await queue.collect()]).toEqual([1, 2, 3].map(outcome));
    queue.close();
  });

  test('is of one at a time', () => {
    const path = place();
    const { queue } = openSqliteQueue(path, { room: 1 });
    expect(() => openSqliteQueue(path, { room: 1 })).toThrow(QueueInUse);
    queue.close();
    openSqliteQueue(path, { room: 1 }).queue.close();
  });

  test('that is closed keeps nobody waiting', async () => {
    const { queue } = openSqliteQueue(place(), { room: 1 });
    await queue.push(batch(0));
    await queue.take();
    const waiting = [queue.push(batch(1)), queue.take(), queue.collect()];
    queue.close();
    expect(await Promise.all(waiting)).toEqual([undefined, null, null]);
    await queue.done(outcome(0));
  });
});
