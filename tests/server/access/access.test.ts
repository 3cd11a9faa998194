/** The API with tokens, as it listens for others than its own machine. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import request from 'supertest';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { openTokens, type Tokens } from '../../../server/access/tokens.ts';
import { createApp } from '../../../server/app.ts';
import { DATABASE_FILE, openStore, type Store } from '../../../server/data/store.ts';
import { makeLog } from '../../../server/logs/log.ts';
import { ROUTES } from '../../../server/reference/routes.ts';
import { SMALL_SITE } from '../sites.ts';

const folder = mkdtempSync(join(tmpdir(), 'shadeside-access-'));
let store: Store;
let tokens: Tokens;
let token: string;

beforeAll(() => {
  store = openStore(folder);
  tokens = openTokens(store);
  token = tokens.make('first');
});
afterAll(() => {
  store.close();
  rmSync(folder, { recursive: true, force: true });
});

const guardedApp = (more: { https?: boolean } = {}) =>
  createApp({ webDir: 'none', store, access: { tokens, ...more } });

describe('a token', () => {
  it('has 256 random bits, and is kept as nothing but its hash', () => {
    expect(Buffer.from(token, 'base64url')).toHaveLength(32);
    expect(tokens.make('second')).not.toBe(token);
    store.db.pragma('wal_checkpoint(TRUNCATE)');
    expect(readFileSync(join(folder, DATABASE_FILE)).includes(token)).toBe(false);
    expect(JSON.stringify(tokens.list())).not.toContain(token);
  });

  it('opens what is shut without it', async () => {
    const app = guardedApp();
    const shut = await request(app).get('/api/schema');
    expect(shut.status).toBe(401);
    expect(shut.headers['www-authenticate']).toMatch(/^Bearer/);
    expect(shut.body).toEqual({ error: expect.stringMatching(/token is needed/), problems: [] });
    expect((await request(app).get('/api/schema').set('Authorization', `Bearer ${token}`)).status).toBe(200);
    expect((await request(app).get('/api/schema').set('Authorization', `Bearer ${token}x`)).status).toBe(401);
    expect((await request(app).get(`/api/schema?token=${token}`)).status).toBe(401);
  });

  it.each(ROUTES)('is needed by $method $path as the table says', async ({ method, path, open = false }) => {
    const name = method.toLowerCase() as 'get';
    const status = (await request(guardedApp())[name](path.replaceAll(/:\w+/g, 'x'))).status;
    expect(status === 401).toBe(!open);
  });

  it.each([
    '/api',
    '/api/nowhere',
    '/api/health/x',
    '/api//health',
    '/api/%68ealth/..%2fschema',
    '/api/sites/../schema',
  ])('is needed by %s as well', async (path) => {
    expect((await request(guardedApp()).get(path)).status).toBe(401);
  });

  it('ends at once when it is revoked, and the others go on', async () => {
    const app = guardedApp();
    const other = tokens.make('other');
    const { id = 0 } = tokens.list().at(-1) ?? {};
    const ask = () => request(app).get('/api/schema').set('Authorization', `Bearer ${other}`);
    expect((await ask()).status).toBe(200);
    expect([tokens.revoke(id), tokens.revoke(id), tokens.revoke(9999)]).toEqual([true, false, false]);
    expect((await ask()).status).toBe(401);
    expect(tokens.accepts(token)).toBe(true);
  });
});

describe('a session', () => {
  it.each([
    [false, /^shadeside-token=[^;]+; Max-Age=\d+; Path=\/; Expires=[^;]+; HttpOnly; SameSite=Strict$/],
    [true, /; HttpOnly; Secure; SameSite=Strict$/],
  ])('puts the token into a cookie that stands for it (https: %s)', async (https, shape) => {
    const app = guardedApp({ https });
    const begun = await request(app).post('/api/session').send({ token });
    expect(begun.status).toBe(204);
    const [cookie = ''] = begun.headers['set-cookie'] ?? [];
    expect(cookie).toMatch(shape);
    const sent = `theme=dark; ${cookie.split(';')[0]}`;
    expect((await request(app).get('/api/schema').set('Cookie', sent)).status).toBe(200);
    const ended = await request(app).delete('/api/session').set('Cookie', sent);
    expect(ended.headers['set-cookie']?.[0]).toMatch(/^shadeside-token=; .*Expires=Thu, 01 Jan 1970/);
  });

  it('does not begin with a wrong token, and says what is wrong with the body', async () => {
    const wrong = await request(guardedApp()).post('/api/session').send({ token: 'guess' });
    expect([wrong.status, wrong.headers['set-cookie']]).toEqual([401, undefined]);
    const empty = await request(guardedApp()).post('/api/session').send({ tokn: token });
    expect(empty.status).toBe(400);
    expect(empty.body.problems.map(({ path }: { path: string }) => path).sort()).toEqual(['token', 'tokn']);
  });

  it('tells nothing of what was sent back, wherever it stood', async () => {
    const bodies = [
      { token: 'x'.repeat(201) },
      { token: '' },
      { token: 5 },
      { token: ['secret'] },
      { token: 'x', password: 'secret' },
      '"secret"',
      '["secret"]',
    ];
    const found: string[] = [];
    for (const body of bodies) {
      const answer = await request(guardedApp()).post('/api/session').type('json').send(body);
      expect(answer.status).toBe(400);
      expect(answer.text).not.toMatch(/secret|xxx/);
      found.push(answer.body.problems[0].found);
    }
    expect(found).toEqual(['a text', 'an empty text', 'a number', 'a list', '"password"', 'a text', 'a list']);
  });

  it('asks for no token where none is needed', async () => {
    const response = await request(createApp({ webDir: 'none' }))
      .post('/api/session')
      .send({ token: 'any' });
    expect([response.status, response.headers['set-cookie']]).toEqual([204, undefined]);
  });
});

describe('wrong tokens', () => {
  it('are slowed down, and do not shut out who has a right one', async () => {
    const app = guardedApp();
    const statuses = [];
    for (let n = 0; n < 23; n += 1)
      statuses.push(
        (
          await request(app)
            .post('/api/session')
            .send({ token: `guess ${n}` })
        ).status,
      );
    expect(statuses.slice(0, 20)).toEqual(Array(20).fill(401));
    expect(statuses.slice(20)).toEqual([429, 429, 429]);
    const bearer = await request(app).get('/api/schema').set('Authorization', 'Bearer guess');
    expect([bearer.status, Number(bearer.headers['retry-after']) > 0]).toEqual([429, true]);
    expect((await request(app).post('/api/session').send({ token })).status).toBe(204);
  });
});

describe('pages of other sites', () => {
  it.each([
    [{ Origin: 'http://evil.example' }, 403],
    [{ Origin: 'null' }, 403],
    [{ 'Sec-Fetch-Site': 'cross-site', Origin: 'http://127.0.0.1' }, 403],
    [{ 'Sec-Fetch-Site': 'same-site' }, 403],
    [{ 'Sec-Fetch-Site': 'same-origin', Origin: 'https://behind.a.proxy' }, 400],
    [{ Host: 'box.local:8046', Origin: 'http://box.local:8046' }, 400],
    [{ Host: 'box.local:8046', Origin: 'http://box.local:9000' }, 403],
    [{}, 400],
  ])('change nothing: %j is answered with %i', async (headers, status) => {
    const response = await request(createApp({ webDir: 'none' }))
      .post('/api/rank')
      .set(headers)
      .send({ site: {} });
    expect(response.status).toBe(status);
  });
});

describe('a server for its own machine', () => {
  const app = createApp({ webDir: 'none', access: { thisMachineOnly: true } });
  it.each(['localhost', 'localhost:8046', '127.0.0.1:1', '127.3.2.1', '[::1]:8046'])(
    'answers to the name %s',
    async (host) => {
      expect((await request(app).get('/api/health').set('Host', host)).status).toBe(200);
    },
  );

  it.each(['evil.example', '127.0.0.1.evil.example', 'localhost.evil.example:8046', '10.0.0.7', '::1.evil'])(
    'does not to %s',
    async (host) => {
      expect((await request(app).get('/api/health').set('Host', host)).status).toBe(403);
      expect((await request(app).get('/').set('Host', host)).status).toBe(403);
    },
  );

  it.each([
    ['X-Forwarded-For', '10.1.2.3'],
    ['X-Real-IP', '10.1.2.3'],
    ['X-Forwarded-Host', 'shade.example'],
    ['Via', '1.1 shade.example'],
  ])('takes nothing from a proxy that it was not told of: %s', async (name, value) => {
    const response = await request(app).get('/api/health').set(name, value);
    expect(response.status).toBe(403);
    expect(response.body.error).toContain('--proxy');
  });
});

describe('an address that asks too often', () => {
  it('is told to wait, and told apart from others only by a proxy that is known', async () => {
    const ask = (app: ReturnType<typeof createApp>, from: string) =>
      request(app).get('/api/nowhere').set('X-Forwarded-For', from);
    const known = createApp({ webDir: 'none', perMinute: 2, proxies: 1 });
    const statuses = [];
    for (const from of ['10.0.0.1', '10.0.0.1', '10.0.0.1', '10.0.0.2']) statuses.push((await ask(known, from)).status);
    expect(statuses).toEqual([404, 404, 429, 404]);
    const unknown = createApp({ webDir: 'none', perMinute: 2 });
    const forged = [];
    for (const from of ['10.0.0.1', '10.0.0.2', '10.0.0.3']) forged.push(await ask(unknown, from));
    expect(forged.map(({ status }) => status)).toEqual([404, 404, 429]);
    expect(forged[2]?.body).toEqual({ error: expect.stringMatching(/2 requests a minute/), problems: [] });
  });
});

describe('the log', () => {
  it('has a line of JSON for each answer, and nothing that a caller wrote', async () => {
    const write = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    const app = createApp({ webDir: 'none', store, access: { tokens }, log: makeLog('info') });
    await request(app).post('/api/session').send({ token });
    await request(app).post('/api/rank?secret=1').set('Authorization', `Bearer ${token}`).send({ site: SMALL_SITE });
    await request(app).get('/api/secret/path').set('Cookie', `shadeside-token=${token}`);
    const text = write.mock.calls.map(([line]) => String(line)).join('');
    write.mockRestore();
    const lines = text
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(lines.map(({ method, route, status }) => [method, route, status])).toEqual([
      ['POST', '/api/session', 204],
      ['POST', '/api/rank', 200],
      ['GET', 'other', 404],
    ]);
    for (const line of lines) {
      expect(Object.keys(line).sort()).toEqual(['bytes', 'level', 'method', 'ms', 'msg', 'route', 'status', 'time']);
      expect(line.ms).toBeGreaterThan(0);
    }
    expect(lines[1].bytes).toBeGreaterThan(1000);
    expect(text).not.toMatch(/secret|51\.5|127\.0\.0\.1|Two walls/);
    expect(text).not.toContain(token);
  });
});

describe('the headers', () => {
  it('speak of https only where people come by it', async () => {
    const plain = await request(createApp({ webDir: 'none' })).get('/');
    expect(plain.headers).not.toHaveProperty('strict-transport-security');
    expect(plain.headers['content-security-policy']).not.toContain('upgrade');
    expect(plain.headers['x-frame-options']).toBe('DENY');
    const https = await request(createApp({ webDir: 'none', access: { https: true } })).get('/');
    expect(https.headers['strict-transport-security']).toMatch(/^max-age=\d+/);
    expect(https.headers['content-security-policy']).toContain('upgrade-insecure-requests');
  });
});
