/** Sites on the server: what is kept, what stands in the way of a change, and what is refused. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Express } from 'express';
import request from 'supertest';
import { afterEach, beforeEach, describe, expect, it, test } from 'vitest';
import { createApp } from '../../../server/app.ts';
import { openStore, type Store } from '../../../server/data/store.ts';
import { SMALL_SITE } from '../sites.ts';

const ID = '0b1c2d3e-4f50-4a6b-8c7d-9e0f1a2b3c4d';
const OTHER_ID = 'ffffffff-4f50-4a6b-8c7d-9e0f1a2b3c4d';

let folder: string;
let store: Store;
let app: Express;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'shadeside-sites-'));
  store = openStore(folder);
  app = createApp({ webDir: 'none', store });
});
afterEach(() => {
  store.close();
  rmSync(folder, { recursive: true, force: true });
});

const put = (base: number | null, draft: unknown, more: object = {}, id = ID) =>
  request(app)
    .put(`/api/sites/${id}`)
    .send({ base, draft, ...more } as object);
const get = (path = '') => request(app).get(`/api/sites${path}`);
const remove = (query: string, id = ID) => request(app).delete(`/api/sites/${id}${query}`);
const rows = () => store.db.prepare<[], { count: number }>('SELECT count(*) AS count FROM site_revision').get()?.count;

describe('a kept site', () => {
  it('comes back as it was sent, complete or not, with all its revisions', async () => {
    const unfinished = { title: ' Yard \ud800 <b>', walls: [{ azimuthDeg: 'about west' }], box: null };
    const first = await put(null, SMALL_SITE);
    expect(first.status).toBe(200);
    expect(first.body).toMatchObject({ store: store.id, id: ID, revision: 1, title: 'Two walls', deleted: false });
    expect((await put(1, unfinished)).body.revision).toBe(2);
    expect((await get(`/${ID}`)).body).toMatchObject({ revision: 2, draft: unfinished });
    const { revisions } = (await get(`/${ID}/revisions`)).body;
    expect(revisions).toMatchObject([{ revision: 2 }, { revision: 1, title: 'Two walls', deleted: false }]);
    expect(Object.keys(revisions[0]).sort()).toEqual(['changedAt', 'deleted', 'id', 'revision', 'title']);
    expect((await get(`/${ID}/revisions/1`)).body).toMatchObject({ store: store.id, revision: 1, draft: SMALL_SITE });
  });

  it('outlasts the server', async () => {
    await put(null, SMALL_SITE);
    const { id } = store;
    store.close();
    store = openStore(folder);
    app = createApp({ webDir: 'none', store });
    expect((await get()).body).toMatchObject({ store: id, sites: [{ id: ID, revision: 1 }] });
  });

  it('is listed once, without its draft, and again only after a change', async () => {
    await put(null, SMALL_SITE);
    await put(1, { title: 'Shed' });
    await put(null, SMALL_SITE, {}, OTHER_ID);
    const { latest, sites } = (await get()).body;
    expect(sites).toMatchObject([
      { id: ID, title: 'Shed', revision: 2 },
      { id: OTHER_ID, title: 'Two walls', revision: 1 },
    ]);
    expect(sites[0]).not.toHaveProperty('draft');
    expect((await get(`?since=${latest}`)).body).toEqual({ store: store.id, latest, sites: [] });
    await remove('?base=2');
    expect((await get(`?since=${latest}`)).body.sites).toMatchObject([{ id: ID, revision: 3, deleted: true }]);
    // A number that this store never gave out.
    expect((await get('?since=999')).body.sites).toHaveLength(2);
  });

  it('takes numbers twice once that JSON writes in another way', async () => {
    const send = () =>
      request(app).put(`/api/sites/${ID}`).type('json').send('{"base": null, "draft": {"tilt": -0, "far": 1e999}}');
    expect((await send()).body.draft).toEqual({ tilt: 0, far: null });
    const again = await send();
    expect([again.status, again.body.revision]).toEqual([200, 1]);
  });

  it('takes what is sent twice once, whatever the order of its fields', async () => {
    const first = await put(null, { title: 'Shed', box: { powerW: 5, widthM: 0.3 } });
    const again = await put(null, { box: { widthM: 0.3, powerW: 5 }, title: 'Shed' });
    expect(again.status).toBe(200);
    expect(again.body.revision).toBe(1);
    expect(again.body.changedAt).toBe(first.body.changedAt);
    expect(rows()).toBe(1);
  });
});

describe('a change of a state that is not the current one', () => {
  it('is answered with the current one and changes nothing', async () => {
    await put(null, { title: 'one' });
    await put(1, { title: 'two' });
    for (const base of [null, 1, 3]) {
      const answer = await put(base, { title: 'three' });
      expect(answer.status).toBe(409);
      expect(answer.body).toMatchObject({
        problems: [],
        store: store.id,
        current: { revision: 2, draft: { title: 'two' } },
      });
    }
    expect((await remove('?base=1')).body.current).toMatchObject({ revision: 2 });
    expect(rows()).toBe(2);
  });

  it('is refused where the base is from another store, even if the number fits', async () => {
    await put(null, { title: 'one' });
    const elsewhere = { store: 'another' };
    expect((await put(1, { title: 'two' }, elsewhere)).status).toBe(409);
    expect((await remove('?base=1&store=another')).status).toBe(409);
    expect((await put(1, { title: 'one' }, elsewhere)).body.revision).toBe(1);
    expect((await put(1, { title: 'two' }, { store: store.id })).body.revision).toBe(2);
    // What this store never had is new here.
    expect((await put(7, { title: 'shed' }, elsewhere, OTHER_ID)).body.revision).toBe(1);
  });

  it('of a site that the store ought to know but does not is a conflict with nothing', async () => {
    const answer = await put(3, { title: 'one' });
    expect(answer.status).toBe(409);
    expect(answer.body.current).toBeNull();
  });

  it('has one winner among many at once', async () => {
    await put(null, { title: 'start' });
    const answers = await Promise.all(Array.from({ length: 12 }, (_, index) => put(1, { title: `change ${index}` })));
    const won = answers.filter(({ status }) => status === 200);
    expect(won).toHaveLength(1);
    expect(answers.filter(({ status }) => status === 409)).toHaveLength(11);
    expect((await get(`/${ID}`)).body).toMatchObject({ revision: 2, draft: won[0]?.body.draft });
    expect(rows()).toBe(2);
  });
});

describe('a deleted site', () => {
  it('leaves a mark, once, and its revisions', async () => {
    await put(null, SMALL_SITE);
    expect((await remove('?base=1')).body).toMatchObject({ revision: 2, deleted: true, draft: null, title: '' });
    expect((await remove('?base=1')).body.revision).toBe(2);
    expect((await get(`/${ID}`)).body).toMatchObject({ revision: 2, deleted: true, draft: null });
    expect((await get(`/${ID}/revisions/1`)).body.draft).toEqual(SMALL_SITE);
    expect(rows()).toBe(2);
  });

  it('comes back only for who saw that it was deleted', async () => {
    await put(null, SMALL_SITE);
    await remove('?base=1');
    for (const base of [null, 1]) {
      const answer = await put(base, { title: 'edited' });
      expect(answer.status).toBe(409);
      expect(answer.body.current).toMatchObject({ revision: 2, deleted: true, draft: null });
    }
    expect((await put(2, { title: 'edited' })).body.revision).toBe(3);
  });

  it('that never was here is not found', async () => {
    expect((await remove('?base=1')).status).toBe(404);
    expect((await get(`/${ID}`)).status).toBe(404);
    expect((await get(`/${ID}/revisions`)).status).toBe(404);
    await put(null, SMALL_SITE);
    expect((await get(`/${ID}/revisions/2`)).status).toBe(404);
    expect(rows()).toBe(1);
  });
});

describe('bad input', () => {
  const nested = (levels: number): unknown => (levels === 0 ? 1 : { inner: nested(levels - 1) });
  const bodies: [what: string, body: string, paths: string[]][] = [
    ['nothing', '{}', ['base', 'draft']],
    ['no object', '[]', ['']],
    ['null', 'null', ['']],
    ['everything wrong', '{"base":0,"store":7,"draft":[],"drafts":{}}', ['base', 'draft', 'drafts', 'store']],
    ['a broken revision', '{"base":1.5,"draft":{}}', ['base']],
    ['a text for a site', '{"base":null,"draft":"site"}', ['draft']],
    ['no site', '{"base":null,"draft":null}', ['draft']],
    ['depth', JSON.stringify({ base: null, draft: nested(21) }), ['draft']],
    ['great depth', `{"base":null,"draft":{"a":${'['.repeat(60)}${']'.repeat(60)}}}`, ['draft']],
    ['a long title', JSON.stringify({ base: null, draft: { title: 'x'.repeat(1001) } }), ['draft']],
    ['a prototype', '{"base":null,"draft":{"walls":[{"__proto__":{"admin":true}}]}}', ['draft']],
    ['a prototype around it', '{"base":null,"draft":{},"__proto__":{"store":"x"}}', ['__proto__']],
  ];

  test.each(bodies)('%s is refused with every field', async (_what, body, paths) => {
    const answer = await request(app).put(`/api/sites/${ID}`).set('Content-Type', 'application/json').send(body);
    expect(answer.status).toBe(400);
    expect(Object.keys(answer.body).sort()).toEqual(['error', 'problems']);
    expect(answer.body.problems.map(({ path }: { path: string }) => path).sort()).toEqual(paths);
    for (const { allowed } of answer.body.problems) expect(allowed).not.toBe('');
    expect(rows()).toBe(0);
  });

  it('of id and body is named together', async () => {
    const answer = await request(app).put('/api/sites/constructor').send({ base: 'x', draft: {} });
    expect(answer.body.problems.map(({ path }: { path: string }) => path)).toEqual(['id', 'base']);
  });

  test.each([
    'constructor',
    '__proto__',
    '1',
    ID.toUpperCase(),
    `${ID}0`,
    `${ID}%0A`,
    ID.replace('-4a', '-1a'),
    "' OR 1=1 --",
  ])('the id %s is refused', async (id) => {
    const path = `/api/sites/${encodeURI(id)}`;
    for (const answer of [
      await request(app).get(path),
      await request(app).put(path).send({ base: null, draft: {} }),
      await request(app).delete(`${path}?base=1`),
      await request(app).get(`${path}/revisions`),
      await request(app).get(`${path}/revisions/1`),
    ]) {
      expect(answer.status).toBe(400);
      expect(answer.body.problems).toMatchObject([{ path: 'id' }]);
    }
  });

  test.each(['', '?base=', '?base=x', '?base=-1', '?base=1&base=2', '?base=1&more=1'])(
    'deleting with "%s" is refused',
    async (query) => {
      await put(null, SMALL_SITE);
      expect((await remove(query)).status).toBe(400);
      expect(rows()).toBe(1);
    },
  );

  it('in a list, a revision or a method is refused', async () => {
    for (const query of ['?since=x', '?since=-1', '?since=1e3', '?from=1']) expect((await get(query)).status).toBe(400);
    for (const revision of ['x', '-1', '1.0']) expect((await get(`/${ID}/revisions/${revision}`)).status).toBe(400);
    expect((await request(app).post(`/api/sites/${ID}`).send({})).headers['allow']).toBe('GET, HEAD, PUT, DELETE');
    expect((await request(app).post('/api/sites').send({})).status).toBe(405);
    const text = await request(app).put(`/api/sites/${ID}`).set('Content-Type', 'text/plain').send('{}');
    expect(text.status).toBe(415);
  });

  it('ends at 2 MB', async () => {
    expect((await put(null, { note: 'x'.repeat(2 * 1024 * 1024) })).status).toBe(413);
    expect((await put(null, { note: 'x'.repeat(2 * 1024 * 1024 - 100) })).status).toBe(200);
  });
});

describe('the health of a server', () => {
  it('names its store', async () => {
    expect((await request(app).get('/api/health')).body).toMatchObject({ storage: true, store: store.id });
  });

  it('without a store says so, and that no sites are kept', async () => {
    const bare = createApp({ webDir: 'none' });
    const health = (await request(bare).get('/api/health')).body;
    expect(health.storage).toBe(false);
    expect(health).not.toHaveProperty('store');
    for (const path of ['', `/${ID}`, `/${ID}/revisions`]) {
      const answer = await request(bare).get(`/api/sites${path}`);
      expect(answer.status).toBe(503);
      expect(answer.body.error).toMatch(/keeps no sites/);
    }
  });
});
