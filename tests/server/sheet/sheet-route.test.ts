import request from 'supertest';
import { expect, test } from 'vitest';
import { parseSite, rankWalls } from '../../../model/index.ts';
import { createApp } from '../../../server/app.ts';
import { PAPERS } from '../../../server/sheet/paper.ts';
import { SMALL_SITE } from '../sites.ts';
import { pagesOf, textOf } from './pdf-text.ts';

const app = createApp({ webDir: 'none' });

const post = (body: object) => request(app).post('/api/sheet').send(body).buffer(true).parse(bytes);

function bytes(response: request.Response, done: (error: Error | null, body: Buffer) => void): void {
  const chunks: Buffer[] = [];
  response.on('data', (chunk: Buffer) => chunks.push(chunk));
  response.on('end', () => done(null, Buffer.concat(chunks)));
}

test('answers with a PDF to keep, under a name that every system takes', async () => {
  const title = '../Stra\u00dfe 7; filename="x"\r\nSet-Cookie: a=b';
  const response = await post({ site: { ...SMALL_SITE, title }, units: 'us' });
  expect(response.status).toBe(200);
  expect(response.headers['content-type']).toBe('application/pdf');
  expect(response.headers['content-disposition']).toBe(
    'attachment; filename="site-sheet-stra-e-7-filename-x-set-cookie-a-b.pdf"',
  );
  expect(response.headers['set-cookie']).toBeUndefined();
  expect(pagesOf(response.body)).toEqual([PAPERS.letter]);
  expect(textOf(response.body)).toContain(rankWalls(parseSite(SMALL_SITE), { units: 'us' }).decision);
});

test('takes a bare site, and the paper and the wall that are asked for', async () => {
  expect(pagesOf((await post(SMALL_SITE)).body)).toEqual([PAPERS.a4]);
  const { body } = await post({ site: SMALL_SITE, paper: 'letter', wall: 'south', linkBase: 'https://page.example/x' });
  expect(pagesOf(body)).toEqual([PAPERS.letter]);
  expect(textOf(body)).toMatch(/wall "south"/i);
});

test('every wrong field is named', async () => {
  const wrong = { site: SMALL_SITE, paper: 'a3', units: 'feet', linkBase: 'javascript:alert(1)', odd: 1 };
  const response = await request(app).post('/api/sheet').send(wrong);
  expect(response.status).toBe(400);
  expect(response.body.problems.map(({ path }: { path: string }) => path).sort()).toEqual([
    'linkBase',
    'odd',
    'paper',
    'units',
  ]);
  const site = await request(app)
    .post('/api/sheet')
    .send({ site: { ...SMALL_SITE, walls: [] } });
  expect([site.status, site.body.problems[0].path]).toEqual([400, 'walls']);
  const wall = await request(app).post('/api/sheet').send({ site: SMALL_SITE, wall: 'moon' });
  expect([wall.status, wall.body.problems[0].path]).toEqual([400, 'wall']);
  expect((await request(app).get('/api/sheet')).status).toBe(405);
});
