/** Tables and screenings over HTTP. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { request as httpRequest } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import request from 'supertest';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { decidingMarginK, KIT_CLASSES, type Problem, parseSite, rankWalls } from '../../../model/index.ts';
import { createApp } from '../../../server/app.ts';
import { openStore } from '../../../server/data/store.ts';
import { openScreenings } from '../../../server/screenings/jobs.ts';
import type { ScreeningState } from '../../../server/screenings/screening-state.ts';
import { manyRows, rowsOf, screened } from '../screening/tables.ts';

// Screenings take what time a busy machine lets them.
vi.setConfig({ testTimeout: 120_000 });
afterAll(() => vi.resetConfig());

const folder = mkdtempSync(join(tmpdir(), 'shadeside-screenings-'));
const store = openStore(folder);
const screenings = openScreenings(store, { workers: 0, mostTableBytes: 200_000 });
const app = createApp({ webDir: 'none', store, screenings });
afterAll(async () => {
  await screenings.stop();
  store.close();
  rmSync(folder, { recursive: true });
});

function upload(content: string | Buffer, name = 'sites.csv') {
  return request(app).post('/api/tables').query({ name }).type('text/csv').send(content);
}

async function started(body: Record<string, unknown>): Promise<string> {
  const response = await request(app).post('/api/screenings').send(body);
  expect(response.body).toEqual({ id: expect.any(String) });
  expect(response.status).toBe(201);
  return response.body.id;
}

/** Waits until a screening has ended, by its events. */
async function ended(id: string) {
  const response = await request(app).get(`/api/screenings/${id}/events`);
  const states = [...response.text.matchAll(/^data: (.*)$/gm)].map(([, data = '']) => JSON.parse(data));
  return { response, states, last: states.at(-1) };
}

/** Cancels a screening once rows are done. */
function cancelledHalfWay(id: string): Promise<ScreeningState> {
  return new Promise((resolve) => {
    const unwatch = screenings.watch(id, () => {
      const { status, rows } = screenings.state(id);
      if (status !== 'running' || rows.done === 0) return;
      unwatch();
      resolve(screenings.cancel(id));
    });
  });
}

const tablesLeft = () => readdirSync(join(folder, 'tables'));

describe('a table', () => {
  test('is told by its columns, first rows and what would be rejected', async () => {
    const { status, body } = await upload(
      '\ufeffid;lat;lon;;Power (W)\n1;33.5;-113;x;15\n2;120;-33;y;much\n',
      'a/b.csv',
    );
    expect(status).toBe(201);
    expect(body).toMatchObject({
      name: 'b.csv',
      separator: ';',
      encoding: 'UTF-8 with byte-order mark',
      columns: ['id', 'lat', 'lon', 'column_4', 'Power (W)'],
      matching: { latitude: 'lat', longitude: 'lon', power: 'Power (W)', finish: null },
      firstRows: [
        ['1', '33.5', '-113', 'x', '15'],
        ['2', '120', '-33', 'y', 'much'],
      ],
      problems: [{ row: 3, column: 'lat', reason: expect.stringContaining('swapped') }],
      rowsChecked: 2,
      rowsEstimated: 2,
      unmatched: [],
    });
    const check = await request(app)
      .post(`/api/tables/${body.table}/check`)
      .send({ matching: { latitude: null, power: 'column_4' } });
    expect(check.body).toMatchObject({ unmatched: ['latitude'], problems: [] });
    const other = await request(app)
      .post(`/api/tables/${body.table}/check`)
      .send({ matching: { power: 'column_4' } });
    expect(other.body.problems.map(({ row, column }: { row: number; column: string }) => [row, column])).toEqual([
      [2, ''],
      [3, 'lat'],
    ]);
  });

  test('matched wrongly is refused with every wrong field', async () => {
    const { body } = await upload('id,lat,lon\n1,33,-113\n');
    const matching = { watt: 'id', power: 'heat', latitude: 'lat', longitude: 'lat' };
    const check = await request(app).post(`/api/tables/${body.table}/check`).send({ matching });
    expect(check.status).toBe(400);
    expect(check.body.problems.map(({ path }: { path: string }) => path)).toEqual([
      'matching.watt',
      'matching.power',
      'matching.longitude',
    ]);
    const none = await request(app)
      .post(`/api/tables/${'0'.repeat(36)}/check`)
      .send({ matching });
    expect(none.status).toBe(404);
  });

  test.each<[string, string | Buffer, RegExp]>([
    ['decimal commas', 'lat;lon\n33,5;-113\n34,5;-113\n', /decimal comma; write 33\.5/],
    ['nothing', '', /empty; a table with a header is needed/],
    ['no header', '33.5,-113\n34.5,-113\n', /numbers only; a row with the names of the columns/],
    ['bytes', Buffer.from('lat,lon\n\0\x01\x02'), /this is no text/],
    ['a spreadsheet file', Buffer.from([0x50, 0x4b, 3, 4, 0xff, 0xfe, 0x81]), /not text in UTF-8/],
  ])('of %s is refused and leaves nothing', async (_, content, message) => {
    const before = tablesLeft();
    const { status, body } = await upload(content);
    expect(status).toBe(400);
    expect(body.problems[0].message).toMatch(message);
    expect(JSON.stringify(body)).not.toContain(folder);
    expect(tablesLeft()).toEqual(before);
  });

  test('too large, broken off, or of another type leaves nothing', async () => {
    const before = tablesLeft();
    const large = await upload(`lat,lon\n${'33,-113\n'.repeat(30_000)}`);
    expect(large.status).toBe(413);
    expect(large.body.error).toMatch(/larger than 0\.2 MB/);
    const typed = await request(app).post('/api/tables').type('application/xml').send('<a/>');
    expect(typed.status).toBe(415);
    const server = app.listen(0);
    try {
      const { port } = server.address() as AddressInfo;
      const headers = { 'Content-Type': 'text/csv', 'Content-Length': 1000 };
      const half = httpRequest({ port, path: '/api/tables', method: 'POST', headers });
      half.on('error', () => {});
      half.write('lat,lon\n33,');
      while (!tablesLeft().some((name) => name.endsWith('.part')))
        await new Promise((resolve) => setTimeout(resolve, 5));
      half.destroy();
      while (tablesLeft().some((name) => name.endsWith('.part')))
        await new Promise((resolve) => setTimeout(resolve, 5));
    } finally {
      server.close();
    }
    expect(tablesLeft()).toEqual(before);
  });

  test('can be matched to what a screening reads', async () => {
    const { body } = await request(app).get('/api/tables/fields');
    expect(body[0]).toEqual({ field: 'latitude', required: true, what: 'latitude, north positive' });
    expect(body.filter(({ required }: { required: boolean }) => required)).toHaveLength(2);
  });
});

describe('a screening of a table', () => {
  const table = manyRows(60, 10);
  let id = '';

  test('runs to its end, told by events', async () => {
    const { body } = await upload(table, 'invented places.csv');
    id = await started({ table: body.table, name: 'July' });
    const { response, states, last } = await ended(id);
    expect(response.headers['content-type']).toBe('text/event-stream');
    expect(response.headers['cache-control']).toBe('no-cache, no-transform');
    expect(states[0].status).toMatch(/waiting|running/);
    expect(last).toMatchObject({ id, name: 'July', status: 'done', error: null, origin: 'table' });
    expect(last.rows).toEqual({ done: 60, rejected: 6, total: 60 });
    expect(Date.parse(last.endedAt)).toBeGreaterThanOrEqual(Date.parse(last.startedAt));
    const eventId = /^id: (.*)$/m.exec(response.text.split('\n\n').at(-2) ?? '')?.[1] ?? '';
    const again = await request(app).get(`/api/screenings/${id}/events`).set('Last-Event-ID', eventId);
    expect(again.status).toBe(204);
    expect((await request(app).get('/api/screenings')).body.screenings[0]).toEqual(last);
    expect((await request(app).get(`/api/screenings/${id}`)).body).toEqual(last);
  });

  test('has the files of the command line', async () => {
    const own = mkdtempSync(join(tmpdir(), 'shadeside-screenings-'));
    const { out, rejects } = await screened(own, table);
    const { out: geojson } = await screened(own, table, { format: 'geojson', out: join(own, 'results.geojson') });
    for (const [what, path] of [
      ['results.csv', out],
      ['rejects.csv', rejects],
      ['results.geojson', geojson],
    ] as const) {
      const download = await request(app).get(`/api/screenings/${id}/${what}`).buffer();
      expect(download.headers['content-disposition']).toBe(`attachment; filename=July.${what}`);
      expect(download.text ?? JSON.stringify(download.body)).toEqual(readFileSync(path, 'utf8'));
    }
    rmSync(own, { recursive: true });
  });

  test('sorts, filters and pages its rows', async () => {
    const list = async (query: string) => (await request(app).get(`/api/screenings/${id}/rows?${query}`)).body;
    const all = await list('limit=200');
    expect(all.total).toBe(54);
    expect(all.rows[0]).toMatchObject({ row: 2, id: 'place 0', latitudeDeg: 33, longitudeDeg: -113.4 });
    expect(all.rows[0].extra).toEqual({ note: 'a, "b"\nand c 0' });
    const margins = all.rows.map(({ marginK }: { marginK: number }) => marginK);
    for (const [sort, field] of [
      ['margin', 'marginK'],
      ['peak', 'peakInsideAirC'],
    ]) {
      for (const order of ['asc', 'desc']) {
        const { rows } = await list(`sort=${sort}&order=${order}&limit=200`);
        const found = rows.map((row: Record<string, number>) => row[field ?? ''] ?? Number.NaN);
        const sorted = [...found].sort((a, b) => (order === 'asc' ? a - b : b - a));
        expect(found).toEqual(sorted);
      }
    }
    const paged = await list('sort=margin&offset=10&limit=5');
    expect(paged.rows.map(({ marginK }: { marginK: number }) => marginK)).toEqual(
      margins.sort((a: number, b: number) => a - b).slice(10, 15),
    );
    const few = await list(`maxMarginK=${margins[9]}&text=PLACE%203`);
    expect(few.total).toBeGreaterThan(0);
    expect(
      few.rows.every((row: { id: string; marginK: number }) => row.id === 'place 3' && row.marginK <= margins[9]),
    ).toBe(true);
    expect((await list('kit=standard&text=')).total).toBe(54);
    expect((await list('kit=hood')).total).toBe(0);
    const wrong = await request(app).get(`/api/screenings/${id}/rows?sort=x&limit=201&maxMarginK=a`);
    expect(wrong.status).toBe(400);
    expect(wrong.body.problems.map(({ path }: { path: string }) => path).sort()).toEqual([
      'limit',
      'maxMarginK',
      'sort',
    ]);
  });

  test('says of a filter that it knows nothing of what was found', async () => {
    const problems = async (query: string) => {
      const { status, body } = await request(app).get(`/api/screenings/${id}/rows?${query}`);
      expect(status).toBe(400);
      return body.problems;
    };
    const kits = KIT_CLASSES.map(({ name }) => name).join(', ');
    expect(await problems('kit=nonsense')).toEqual([
      {
        ...{ path: 'kit', found: '"nonsense"', wrong: 'is not allowed', allowed: kits },
        message: `kit: is not allowed; allowed: ${kits}`,
      },
    ]);
    expect(await problems('text=a&text=b&limit=0')).toMatchObject([
      { path: 'limit', found: '0' },
      { path: 'text', found: 'a list', message: 'text: was given more than once; allowed: one value' },
    ]);
    expect(await problems('token=secret&tokens=a&tokens=b')).toMatchObject([
      { found: '"token"' },
      { found: '"tokens"' },
    ]);
    expect(await problems(`sort=${'x'.repeat(5000)}`)).toMatchObject([
      { found: expect.stringMatching(/^"x{50,60}…$/) },
    ]);
  });

  test('sums up, draws its points, and opens a row as a site', async () => {
    const { body: summary } = await request(app).get(`/api/screenings/${id}/summary`);
    expect(summary.counts).toMatchObject({ rows: 60, addresses: 54, rejected: 6 });
    const sum = (counts: number[]) => counts.reduce((a, b) => a + b, 0);
    expect(sum(summary.kitClasses.map(({ count }: { count: number }) => count))).toBe(54);
    expect(sum(summary.marginHistogram.counts)).toBe(54);
    expect(summary.marginHistogram.edgesK).toHaveLength(summary.marginHistogram.counts.length + 1);
    expect(summary.climates).toEqual([{ used: 'columns', text: expect.any(String), count: 54 }]);
    // 0.3 m by 0.35 m, in the units of the place.
    const grounds = ({ assumptions, example }: typeof summary) => JSON.stringify([assumptions, example]);
    expect(grounds(summary)).toMatch(/11\.8 in by 13\.8 in.*no hood/);
    expect(summary.example.row).toBe(2);
    const { body: metric } = await request(app).get(`/api/screenings/${id}/summary?units=metric`);
    expect(grounds(metric)).toMatch(/300 mm by 350 mm.*no hood/);
    expect(grounds(metric)).not.toMatch(/°F|11\.8 in/);
    const refused = await request(app).get(`/api/screenings/${id}/summary?units=feet`);
    expect([refused.status, refused.body.problems[0]?.path]).toEqual([400, 'units']);
    const { body: points } = await request(app).get(`/api/screenings/${id}/points`);
    expect(points.row).toHaveLength(54);
    expect(points.thinned).toBe(false);
    expect(points.kits[points.kit[0]]).toBe('standard');

    const { body: rows } = await request(app).get(`/api/screenings/${id}/rows?limit=1&sort=margin`);
    const [row] = rows.rows;
    expect((await request(app).get(`/api/screenings/${id}/rows/${row.row}`)).body).toEqual(row);
    const { body: site } = await request(app).get(`/api/screenings/${id}/rows/${row.row}/site`);
    const ranking = rankWalls(parseSite(site));
    expect(ranking.best).toBe(row.bestWall);
    const best = ranking.walls.find(({ name }) => name === ranking.best);
    expect(best && decidingMarginK(best.day)).toBe(row.marginK);
    expect(site.title).toBe(`July, row ${row.row}: ${row.id}`);
    expect((await request(app).get(`/api/screenings/${id}/rows/11/site`)).status).toBe(404);
    for (const none of ['11', '0', '-1', '1e3', 'first']) {
      expect((await request(app).get(`/api/screenings/${id}/rows/${none}`)).status).toBe(404);
    }
  });

  test('goes with all its files', async () => {
    expect((await request(app).delete(`/api/screenings/${id}`)).status).toBe(204);
    expect((await request(app).get(`/api/screenings/${id}`)).status).toBe(404);
    expect(readdirSync(join(folder, 'screenings'))).not.toContain(id);
  });
});

describe('screenings', () => {
  test('wait for each other, are cancelled and gone on with, and end the same', async () => {
    const { body } = await upload(manyRows(100, 9));
    // In a thread, so that requests are answered while it runs.
    const first = await started({ table: body.table, workers: 1 });
    const halfWay = cancelledHalfWay(first);
    const second = await started({ grid: { south: 33, west: -113, north: 33.5, east: -113, stepDeg: 0.5 } });
    expect((await request(app).get(`/api/screenings/${second}`)).body.status).toBe('waiting');
    expect((await request(app).post(`/api/screenings/${second}/cancel`)).body.status).toBe('cancelled');
    const cancelled = await halfWay;
    expect(cancelled.status).toBe('cancelled');
    expect(cancelled.rows.done).toBeGreaterThan(0);
    expect(cancelled.rows.done).toBeLessThan(100);
    expect((await request(app).post(`/api/screenings/${first}/cancel`)).status).toBe(409);
    expect((await request(app).get(`/api/screenings/${first}/results.csv`)).status).toBe(409);
    expect((await request(app).post(`/api/screenings/${first}/resume`)).body.status).toBe('running');
    expect((await request(app).post(`/api/screenings/${second}/resume`)).body.status).toBe('waiting');
    expect((await ended(first)).last).toMatchObject({ status: 'done', rows: { done: 100, rejected: 11 } });
    expect((await ended(second)).last).toMatchObject({ status: 'done', origin: 'grid', rows: { done: 2, total: 2 } });
    const download = await request(app).get(`/api/screenings/${first}/results.csv`);
    expect(rowsOf(download.text)).toHaveLength(89);
  });

  test('asked for wrongly are refused with every wrong field, and nothing is kept', async () => {
    const { body } = await upload('id,a,b\n1,33,-113\n');
    const before = readdirSync(join(folder, 'screenings'));
    const wrong = async (sent: unknown) => {
      const response = await request(app)
        .post('/api/screenings')
        .send(sent as object);
      expect(response.status).toBe(400);
      return response.body.problems.map(({ path }: { path: string }) => path).sort();
    };
    expect(await wrong({})).toEqual(['table']);
    expect(await wrong({ name: '', workers: 0, color: 1, grid: { south: 91, west: 0, north: 1, stepDeg: 0 } })).toEqual(
      ['color', 'grid.east', 'grid.south', 'grid.stepDeg', 'name', 'workers'],
    );
    expect(await wrong({ table: body.table, matching: { power: 'x' }, settings: { climate: 'moon' } })).toEqual([
      'settings.climate',
    ]);
    expect(await wrong({ table: body.table, matching: { power: 'x', latitude: 'a' } })).toEqual([
      'matching.longitude',
      'matching.power',
    ]);
    expect(await wrong({ table: body.table, matching: { latitude: 'id', longitude: 'id' } })).toEqual([
      'matching.longitude',
      'matching.longitude',
    ]);
    expect(await wrong({ table: 'none', settings: { site: { walls: [] } } })).toContain('table');
    expect(await wrong({ grid: { south: -90, west: -180, north: 90, east: 180, stepDeg: 0.001 } })).toEqual([
      'grid.stepDeg',
    ]);
    expect(
      await wrong({ grid: { south: 1, west: 0, north: 2, east: 1, stepDeg: 1 }, settings: { weather: true } }),
    ).toEqual(['settings.weather']);
    expect(readdirSync(join(folder, 'screenings'))).toEqual(before);
    const sent = { name: 5, workers: 1.5, password: 'secret', grid: { south: 'a', west: 0, north: 1, east: 1 } };
    const { body: told } = await request(app).post('/api/screenings').send(sent);
    const found = told.problems.map(({ path, found, wrong }: Problem) => `${path}: ${found} ${wrong}`);
    expect(found.sort()).toEqual([
      'grid.south: "a" is not allowed',
      'grid.stepDeg: nothing is missing',
      'name: 5 is not allowed',
      'password: "password" unknown field',
      'workers: 1.5 is not allowed',
    ]);
    const { body: matched } = await request(app)
      .post('/api/screenings')
      .send({ table: body.table, matching: { power: 'x' } });
    expect(matched.problems[0]).toMatchObject({ path: 'matching.power', found: '"x"' });
  });

  test('are of one process: another that shares the folder looks on, until the first lets go', async () => {
    const otherStore = openStore(folder);
    const others = openScreenings(otherStore, { workers: 0 });
    const other = createApp({ webDir: 'none', store: otherStore, screenings: others });
    const { body } = await request(other).get('/api/screenings');
    expect(body).toEqual((await request(app).get('/api/screenings')).body);
    const refused = await request(other).post('/api/screenings').send({});
    expect(refused.status).toBe(503);
    expect(refused.body.error).toMatch(/another process/);
    await others.stop();
    otherStore.close();
  });

  test('need a data folder', async () => {
    const bare = createApp({ webDir: 'none' });
    expect((await request(bare).get('/api/screenings')).status).toBe(503);
    expect((await request(bare).post('/api/tables').type('text/csv').send('a')).status).toBe(503);
  });
});
