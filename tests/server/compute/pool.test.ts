/** The app with threads: same answers, and it stays up whatever happens to a thread. */
import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import request from 'supertest';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { createApp } from '../../../server/app.ts';
import type { Compute } from '../../../server/compute/compute.ts';
import { openComputePool, type PoolOptions } from '../../../server/compute/pool.ts';
import { FULL_BOX, SMALL_SITE } from '../sites.ts';

const odd = fileURLToPath(new URL('odd-worker.mjs', import.meta.url));

describe('threads', () => {
  let compute: Compute;
  beforeAll(() => {
    compute = openComputePool({ threads: 1, room: 4, limitS: 60 });
  });
  afterAll(() => compute.close());

  it.each([
    ['/api/rank', { site: FULL_BOX, units: 'us' }],
    ['/api/day', { site: SMALL_SITE, wall: 'south' }],
    ['/api/advice', { site: SMALL_SITE, wall: 'south', samples: 2 }],
    ['/api/rank', { site: { ...SMALL_SITE, walls: [], place: { latitudeDeg: 95, longitudeDeg: 'far east' } } }],
    ['/api/rank', { site: SMALL_SITE, rules: { checks: {} } }],
    ['/api/day', { site: SMALL_SITE, wall: 'carport' }],
    ['/api/day', { site: SMALL_SITE }],
  ])('answer %s byte by byte as without them (case %#)', async (path, body) => {
    const alone = await request(createApp({ webDir: 'none' }))
      .post(path)
      .send(body);
    const pooled = await request(createApp({ webDir: 'none', compute }))
      .post(path)
      .send(body);
    expect(pooled.text).toBe(alone.text);
    for (const part of ['content-type', 'etag', 'content-length', 'cache-control']) {
      expect(pooled.headers[part]).toBe(alone.headers[part]);
    }
    expect(pooled.status).toBe(alone.status);
  });
});

describe('a thread in trouble', () => {
  const open: { compute: Compute; close(): void }[] = [];
  afterEach(async () => {
    for (const { compute, close } of open.splice(0)) {
      close();
      await compute.close();
    }
  });

  async function serveOdd(options: Partial<PoolOptions> = {}) {
    const compute = openComputePool({ threads: 1, room: 1, limitS: 60, filename: odd, ...options });
    const server = createApp({ webDir: 'none', compute }).listen(0, '127.0.0.1');
    await once(server, 'listening');
    open.push({ compute, close: () => server.close() });
    const base = `http://127.0.0.1:${(server.address() as AddressInfo).port}/api`;
    const ask = (title: string, signal?: AbortSignal) =>
      fetch(`${base}/rank`, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({ site: { title } }),
        ...(signal && { signal }),
      });
    return { compute, base, ask };
  }

  it.each(['exit', 'throw', 'exhaust'])(
    'that does "%s" fails one request, and the next one is served',
    async (what) => {
      const log = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
      const { ask, compute } = await serveOdd();
      const [failed, next] = await Promise.all([ask(what), ask('well')]);
      log.mockRestore();
      expect(failed.status).toBe(500);
      expect(await failed.json()).toEqual({
        error: 'something failed here that is not the fault of the request',
        problems: [],
      });
      expect([next.status, await next.json()]).toEqual([200, { what: 'well' }]);
      expect(compute.load()).toEqual({ threads: 1, running: 0, waiting: 0 });
    },
  );

  it('is ended at the time limit', async () => {
    const { ask } = await serveOdd({ limitS: 0.2 });
    const late = await ask('spin 60000');
    expect(late.status).toBe(503);
    expect((await late.json()).error).toMatch(/took longer than 0.2 s .*fewer walls/);
    expect((await ask('well')).status).toBe(200);
  });

  it('leaves room for as many to wait as there are places, and tells the others when to come again', async () => {
    const { ask, base } = await serveOdd();
    const answers = await Promise.all(Array.from({ length: 6 }, () => ask('spin 300')));
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 200, 503, 503, 503, 503]);
    const refused = answers.find(({ status }) => status === 503);
    expect(Number(refused?.headers.get('retry-after'))).toBeGreaterThanOrEqual(1);
    expect(await refused?.json()).toMatchObject({ problems: [], error: expect.stringMatching(/try again/) });
    expect((await fetch(`${base}/health`)).status).toBe(200);
  });

  it('is freed of what nobody waits for, be it at work or in the line', async () => {
    const { ask, compute } = await serveOdd();
    const gone = new AbortController();
    const asked = [ask('spin 60000', gone.signal), ask('well', gone.signal)];
    await vi.waitFor(() => expect(compute.load()).toMatchObject({ running: 1, waiting: 1 }));
    gone.abort();
    for (const one of asked) await expect(one).rejects.toThrow();
    await vi.waitFor(() => expect(compute.load()).toMatchObject({ running: 0, waiting: 0 }), { timeout: 5000 });
    expect((await ask('well')).status).toBe(200);
  });
});
