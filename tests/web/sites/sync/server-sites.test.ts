/** The page's way to the server, against the real server over HTTP and against what is no such server. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createApp } from '../../../../server/app.ts';
import { openStore, type Store } from '../../../../server/data/store.ts';
import { type Listening, listenOnFirst } from '../../../../server/listen.ts';
import { type ServerSites, serverSites } from '../../../../web/sites/sync/server-sites.ts';
import { siteId } from './places.ts';

let folder: string;
let store: Store;
let listening: Listening;
let server: ServerSites;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'shadeside-server-sites-'));
  store = openStore(folder);
  listening = await listenOnFirst(createApp({ webDir: 'none', store }), { host: '127.0.0.1', ports: [0] });
  server = serverSites(fetch, `${listening.url}api/`);
});
afterAll(async () => {
  await listening.stop();
  store.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('the real server', () => {
  it('answers everything that the page asks', async () => {
    const id = siteId(0);
    const name = store.id;
    expect(await server.store()).toBe(name);
    expect(await server.list(0)).toEqual({ store: name, latest: 0, sites: [] });
    expect(await server.read(id)).toBeNull();
    expect(await server.revisions(id)).toEqual([]);
    const first = await server.send(id, { base: null, store: name, draft: { title: 'one' } });
    expect(first).toMatchObject({ kind: 'kept', site: { store: name, revision: 1, draft: { title: 'one' } } });
    const second = await server.send(id, { base: null, store: name, draft: { title: 'two' } });
    expect(second).toMatchObject({ kind: 'conflict', site: { store: name, revision: 1, draft: { title: 'one' } } });
    expect(await server.send(id, { base: 1, store: 'other', draft: null })).toMatchObject({ kind: 'conflict' });
    expect(await server.send(id, { base: 1, store: name, draft: null })).toMatchObject({
      kind: 'kept',
      site: { revision: 2, draft: null },
    });
    expect(await server.list(1)).toMatchObject({ latest: 2, sites: [{ id, revision: 2, deleted: true }] });
    expect(await server.read(id)).toMatchObject({ revision: 2, draft: null });
    expect(await server.revisions(id)).toMatchObject([{ revision: 2 }, { revision: 1, title: 'one' }]);
    expect(await server.revision(id, 1)).toMatchObject({ draft: { title: 'one' } });
  });

  it('knows nothing of a site that is to be deleted, or of a base', async () => {
    const nothing = { kind: 'conflict', site: null };
    expect(await server.send(siteId(1), { base: 4, store: store.id, draft: null })).toEqual(nothing);
    expect(await server.send(siteId(1), { base: null, store: store.id, draft: null })).toEqual(nothing);
    expect(await server.send(siteId(1), { base: 4, store: store.id, draft: {} })).toEqual(nothing);
  });

  it('refuses what it will never take, and says why', async () => {
    const send = (draft: Record<string, unknown>) => server.send(siteId(2), { base: null, store: store.id, draft });
    expect(await send({ title: 'x'.repeat(2000) })).toMatchObject({
      kind: 'refused',
      why: expect.stringMatching(/title/),
    });
    expect(await send({ note: 'x'.repeat(2_200_000) })).toMatchObject({ why: expect.stringMatching(/too large/) });
  });
});

describe('what is no server that keeps sites', () => {
  const answering = (body: string, init: ResponseInit = {}) => serverSites(async () => new Response(body, init));

  it.each([
    ['a folder of files', '<!doctype html>', 200],
    ['nothing there', 'not found', 404],
    ['another program', '{"status":"ok"}', 200],
    ['a server without storage', '{"status":"ok","storage":false}', 200],
    ['a list', '[]', 200],
  ])('%s keeps none', async (_what, body, status) => {
    expect(await answering(body, { status }).store()).toBeNull();
  });

  it.each([401, 403, 429, 500, 502, 503])('status %i is a failure that may pass', async (status) => {
    const failing = answering('{}', { status, headers: { 'Retry-After': '7' } });
    await expect(failing.store()).rejects.toMatchObject({ name: 'ServerFailure' });
    if (status >= 429) await expect(failing.list(0)).rejects.toMatchObject({ retryAfterS: 7 });
  });

  it('no connection is a failure', async () => {
    const gone = serverSites(async () => {
      throw new TypeError('fetch failed');
    });
    await expect(gone.list(0)).rejects.toThrow('the server cannot be reached');
  });

  it.each(['null', '{}', '{"store":1,"latest":1,"sites":[]}', '{"store":"a","latest":1,"sites":[{"id":1}]}', '<p>'])(
    'the list %s is not believed',
    async (body) => {
      await expect(answering(body).list(0)).rejects.toThrow(/does not understand/);
    },
  );

  it('a site without its revision is not believed', async () => {
    const body = '{"store":"a","draft":{},"changedAt":"x"}';
    await expect(answering(body).read(siteId(0))).rejects.toThrow(/does not understand/);
    await expect(answering(body, { status: 409 }).send(siteId(0), { base: 1, store: 'a', draft: {} })).resolves.toEqual(
      { kind: 'conflict', site: null },
    );
  });
});
