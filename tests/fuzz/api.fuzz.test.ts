/** Whatever is sent to the API: an answer in JSON that says what is wrong, never a failure of the server's own. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import request from 'supertest';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { DEMO_SITE } from '../../model/index.ts';
import { createApp } from '../../server/app.ts';
import { openStore, type Store } from '../../server/data/store.ts';
import { openScreenings, type Screenings } from '../../server/screenings/jobs.ts';
import { changesOf, oddJson, planted, share } from './odd-values.ts';
import { PATIENCE_MS, rounds } from './rounds.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

let folder: string;
let store: Store;
let screenings: Screenings;
let app: ReturnType<typeof createApp>;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'shadeside-api-'));
  store = openStore(folder);
  screenings = openScreenings(store);
  app = createApp({ webDir: 'none', store, screenings, perMinute: 1e6 });
});
afterAll(async () => {
  await screenings.stop();
  store.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Bodies that are right, by route. */
const RIGHT: readonly (readonly [method: 'post' | 'put' | 'delete' | 'get', path: string, body: unknown])[] = [
  ['post', '/api/rank', { site: DEMO_SITE, units: 'us' }],
  ['post', '/api/rank', DEMO_SITE],
  ['post', '/api/day', { site: DEMO_SITE, wall: 'west' }],
  ['post', '/api/advice', { site: DEMO_SITE, wall: 'west', samples: 1, seed: 1 }],
  ['put', '/api/sites/0b7e4a52-58a0-4a6e-9c37-6a3f0f1d2c3b', { base: null, draft: DEMO_SITE }],
  ['post', '/api/sheet', { site: DEMO_SITE, wall: 'west', units: 'us' }],
  ['post', '/api/session', { token: 'x' }],
  ['post', '/api/tables', 'id,latitude,longitude\n1,33,-112\n'],
  ['post', '/api/tables/none/check', { matching: { latitude: 'a', longitude: 'b' } }],
  [
    'post',
    '/api/screenings',
    { name: 'x', table: 'none', matching: { latitude: 'a' }, settings: { climate: 'dry-basin' } },
  ],
  ['post', '/api/screenings', { name: 'x', grid: { south: 33, west: -112, north: 33, east: -112, stepDeg: 1 } }],
  ['get', '/api/screenings/none/rows?sort=margin&order=asc&offset=0&limit=50&maxMarginK=3', undefined],
  ['delete', '/api/sites/0b7e4a52-58a0-4a6e-9c37-6a3f0f1d2c3b?base=1', undefined],
];

const ODD_SEGMENTS = [
  '..',
  '%2e%2e%2f',
  '%00',
  '%',
  '__proto__',
  'constructor',
  '1e308',
  '-0',
  '',
  ' ',
  'x'.repeat(3000),
  '１',
  '%ff',
  '*',
];

/** What every answer must be. */
function check(response: request.Response): void {
  expect(response.status).not.toBe(500);
  if (response.status < 400) return;
  expect(response.type).toBe('application/json');
  expect(response.body.error).toMatch(/\S/);
  expect(Array.isArray(response.body.problems)).toBe(true);
  // Nothing of the inside gets out: no stack, no path of this machine.
  expect(response.text).not.toMatch(/\n {4}at |node_modules|\.ts:\d/);
}

describe('a route', () => {
  test('answers odd bodies', async () => {
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...RIGHT), changesOf(oddJson), async ([method, path, right], changes) => {
        const body = right === undefined ? undefined : (planted(right, changes) as object);
        check(await request(app)[method](path).set('Content-Type', 'application/json').send(JSON.stringify(body)));
      }),
      rounds(250),
    );
  });

  test('answers bodies that are no JSON, and odd types of them', async () => {
    const types = fc.constantFrom('application/json', 'text/csv', 'text/plain', 'application/json; charset=utf-7', 'x');
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...RIGHT),
        fc.oneof(
          fc.string({ unit: 'binary' }),
          share.map((at) => JSON.stringify(DEMO_SITE).slice(0, at * 1200)),
        ),
        types,
        async ([method, path], body, type) => {
          check(await request(app)[method](path).set('Content-Type', type).send(body));
        },
      ),
      rounds(150),
    );
  });

  test('answers odd addresses, queries and methods', async () => {
    const segment = fc.oneof(
      fc.constantFrom(...ODD_SEGMENTS),
      fc.constantFrom(
        'sites',
        'rank',
        'screenings',
        'tables',
        'health',
        'rows',
        'points',
        'results.csv',
        'revisions',
        'docs',
      ),
    );
    await fc.assert(
      fc.asyncProperty(
        fc.array(segment, { minLength: 1, maxLength: 4 }),
        fc.constantFrom(
          '',
          '?base=',
          '?base=1e308',
          '?base=-1&base=2',
          '?sort=x&limit=1e9&offset=-1',
          '?kit[]=1&text=%00',
          '?maxMarginK=NaN',
          '?since[]=1',
          '?__proto__=1',
          '?%',
        ),
        fc.constantFrom('get', 'post', 'put', 'patch', 'delete', 'options', 'head'),
        async (segments, query, method) => {
          const path = `/api/${segments.join('/')}${query}`.replaceAll(' ', '%20');
          const response = await request(app)[method as 'get'](path);
          if (method === 'head') expect(response.status).not.toBe(500);
          else check(response);
        },
      ),
      rounds(250),
    );
  });
});
