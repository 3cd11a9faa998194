/** A short load on the built server; `npm run load` is the long one. */
import { expect, test } from 'vitest';
import { startServing } from '../server/serving.ts';
import { drive, percentile } from './drive.ts';
import { probeHealth } from './health-probe.ts';
import { MIX, SMALL_RANKS } from './requests.ts';

test('percentiles are values that were measured', () => {
  expect([0, 0.5, 0.95, 1].map((share) => percentile([5, 1, 4, 2, 3], share))).toEqual([1, 3, 5, 5]);
  expect(percentile([], 0.5)).toBeNaN();
});

test('while rankings are worked on, the server answers others; too many are told to come again', async () => {
  const server = await startServing(['serve', '--port', '0', '--workers', '1', '--waiting', '16', '--rate', '0']);
  try {
    const probe = probeHealth(server.url);
    const driven = await drive(server.url, { clients: 16, amount: 32, requests: SMALL_RANKS });
    const health = await probe.stop();
    expect([...driven.timesMs.keys()]).toEqual([200]);
    expect(driven.errors).toBe(0);
    // Sixteen in a line wait for each other; health waits for none of them.
    expect(percentile(health, 0.5)).toBeLessThan(percentile(driven.timesMs.get(200) ?? [], 0.5) / 4);

    const crowd = await drive(server.url, { clients: 32, amount: 40, requests: SMALL_RANKS });
    expect([...crowd.timesMs.keys()].sort()).toEqual([200, 503]);
    const mixed = await drive(server.url, { clients: 4, amount: 400, requests: MIX });
    expect([...mixed.timesMs.keys()].sort()).toEqual([200, 400, 404]);
    expect([crowd.errors, mixed.errors]).toEqual([0, 0]);
  } finally {
    expect(await server.stop('SIGTERM')).toBe(0);
  }
});
