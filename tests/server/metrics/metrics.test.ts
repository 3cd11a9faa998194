import request from 'supertest';
import { expect, it } from 'vitest';
import { createApp } from '../../../server/app.ts';
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
