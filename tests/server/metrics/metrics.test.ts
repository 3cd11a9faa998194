import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import request from 'supertest';
import { expect, it } from 'vitest';
import { createApp } from '../../../server/app.ts';
import { openStore } from '../../../server/data/store.ts';
import { NO_TALLY } from '../../../server/screening/tally.ts';
import { SMALL_SITE } from '../sites.ts';

const metricsOf = async (app: ReturnType<typeof createApp>) =>
  (await request(app).get('/api/metrics').expect(200)).text;

it('counts answers by route, method and status, and times them', async () => {
  const app = createApp({ webDir: 'none' });
  await request(app).post('/api/rank').send({ site: SMALL_SITE }).expect(200);
  await request(app).post('/api/rank').send({ site: {} }).expect(400);
  const text = await metricsOf(app);
  expect(text).toContain('shadeside_http_requests_total{route="/api/rank",method="POST",status="200"} 1\n');
  expect(text).toContain('shadeside_http_requests_total{route="/api/rank",method="POST",status="400"} 1\n');
  expect(text).toContain('shadeside_http_request_duration_seconds_count{route="/api/rank"} 2\n');
  expect(text).toMatch(/^shadeside_compute_waiting 0$/m);
});

it('has no label for addresses that somebody made up', async () => {
  const app = createApp({ webDir: 'none' });
  for (const path of ['/api/rank/1', '/api/x?y=1', '/deep/er', '/api/%2e%2e/z']) await request(app).get(path);
  await request(app).purge('/api/rank');
  const routes = [...(await metricsOf(app)).matchAll(/requests_total\{route="([^"]*)"/g)].map(([, route]) => route);
  expect(new Set(routes)).toEqual(new Set(['other', 'page', '/api/rank']));
});

it('tells how much is kept', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'shadeside-metrics-'));
  const store = openStore(folder);
  try {
    const app = createApp({ webDir: 'none', store });
    const site = '/api/sites/0b7e4a52-58a0-4a6e-9c37-6a3f0f1d2c3b';
    await request(app).put(site).send({ base: null, draft: SMALL_SITE }).expect(200);
    store.db
      .prepare(
        `INSERT INTO screening (id, name, origin, status, created_at, total, tally, job)
         VALUES ('a', 'a', 'grid', 'done', '', 12, ?, '{}')`,
      )
      .run(JSON.stringify({ ...NO_TALLY, rows: 12 }));
    const kept = await metricsOf(app);
    expect(kept).toMatch(/^shadeside_sites 1$/m);
    expect(kept).toMatch(/^shadeside_screenings 1$/m);
    expect(kept).toMatch(/^shadeside_screening_rows 12$/m);
    await request(app).delete(`${site}?base=1`).expect(200);
    expect(await metricsOf(app)).toMatch(/^shadeside_sites 0$/m);
  } finally {
    store.close();
    rmSync(folder, { recursive: true, force: true });
  }
});
