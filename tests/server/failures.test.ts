/** What the server answers when the request is wrong: a status, plain words, and nothing from inside. */
import request, { type Response } from 'supertest';
import { describe, expect, test, vi } from 'vitest';
import { createApp } from '../../server/app.ts';
import { SMALL_SITE } from './sites.ts';

const app = createApp({ webDir: 'none' });

function post(path: string, body: string, type = 'application/json'): Promise<Response> {
  return request(app)
    .post(path)
    .set('Content-Type', type)
    .send(body)
    .then((response) => response);
}

function expectPlain(response: Response): void {
  expect(response.headers['content-type']).toMatch(/^application\/json/);
  expect(Object.keys(response.body).sort()).toEqual(['error', 'problems']);
  expect(response.text).not.toMatch(/node_modules|\.ts:|\.js:|\bat .*\(/);
}

describe('a bad site', () => {
  test('is answered with every problem, path and all', async () => {
    const site = {
      ...SMALL_SITE,
      place: { latitudeDeg: 95, longitudeDeg: 'far east' },
      walls: [{ name: 'north', azimuthDeg: 0, colour: 'white' }],
    };
    const response = await request(app).post('/api/rank').send({ site });
    expect(response.status).toBe(400);
    expectPlain(response);
    const { problems } = response.body;
    expect(problems.map(({ path }: { path: string }) => path).sort()).toEqual([
      'place.latitudeDeg',
      'place.longitudeDeg',
      'walls.0.colour',
    ]);
    for (const problem of problems) {
      expect(Object.keys(problem).sort()).toEqual(['allowed', 'found', 'message', 'path', 'wrong']);
      expect(problem.message).toContain(problem.path);
    }
  });

  test.each([[null], [7], ['site'], [[]], [{}]])('%j is refused by every route', async (site) => {
    for (const path of ['/api/rank', '/api/day', '/api/advice']) {
      const response = await request(app).post(path).send({ site, wall: 'north' });
      expect(response.status).toBe(400);
      expectPlain(response);
      expect(response.body.problems.length).toBeGreaterThan(0);
    }
  });
});

describe('a bad body', () => {
  const bodies: [body: string, paths: string[]][] = [
    ['{}', ['site', 'wall']],
    ['[]', ['']],
    ['null', ['']],
    ['3', ['']],
    ['"text"', ['']],
    [JSON.stringify({ site: SMALL_SITE }), ['wall']],
    [JSON.stringify({ site: SMALL_SITE, wall: 7 }), ['wall']],
    [JSON.stringify({ site: SMALL_SITE, wall: 'north', wal: 1 }), ['wal']],
    [JSON.stringify(SMALL_SITE), ['box', 'climate', 'place', 'site', 'title', 'wall', 'walls']],
  ];

  test.each(bodies)('number %# names what is missing or unknown', async (body, paths) => {
    const response = await post('/api/day', body);
    expect(response.status).toBe(400);
    expectPlain(response);
    expect(response.body.problems.map(({ path }: { path: string }) => path).sort()).toEqual(paths);
  });

  test('unknown units are refused', async () => {
    const response = await request(app).post('/api/rank').send({ site: SMALL_SITE, units: 'imperial' });
    expect(response.status).toBe(400);
    expect(response.body.problems).toMatchObject([{ path: 'units', found: '"imperial"', allowed: 'metric, us' }]);
  });

  test.each([
    ['samples', 0],
    ['samples', 1001],
    ['samples', 1.5],
    ['samples', '100'],
    ['seed', -1],
    ['seed', 2 ** 32],
    ['seed', null],
  ])('advice with %s %j is refused with the range', async (path, value) => {
    const response = await request(app)
      .post('/api/advice')
      .send({ site: SMALL_SITE, [path]: value });
    expect(response.status).toBe(400);
    expectPlain(response);
    const range = path === 'samples' ? '1 to 1000' : '0 to 4294967295';
    expect(response.body.problems).toMatchObject([
      { path, wrong: 'is no whole number in the range', allowed: `whole numbers from ${range}` },
    ]);
  });

  test('what was found is told, cut short', async () => {
    const wall = 'w'.repeat(100_000);
    const response = await request(app).post('/api/rank').send({ site: SMALL_SITE, units: wall, wal: wall });
    expect(response.body.problems).toMatchObject([
      { path: 'units', found: expect.stringMatching(/^"w{50,60}…$/) },
      { path: 'wal', found: '"wal"' },
    ]);
    const missing = await request(app).post('/api/day').send({});
    expect(missing.body.problems.map(({ found }: { found: string }) => found)).toEqual(['nothing', 'nothing']);
  });

  test('advice names every fault of its body at once', async () => {
    const body = { site: SMALL_SITE, wall: 7, units: 'imperial', samples: 0, sample: 1 };
    const response = await request(app).post('/api/advice').send(body);
    expect(response.status).toBe(400);
    expect(response.body.problems.map(({ path }: { path: string }) => path).sort()).toEqual([
      'sample',
      'samples',
      'units',
      'wall',
    ]);
  });

  test.each(['{"site": ', '{site: 1}', 'site', "{'site': 1}"])('%s is no JSON', async (body) => {
    const response = await post('/api/rank', body);
    expect(response.status).toBe(400);
    expectPlain(response);
    expect(response.body.error).toBe('the body is no valid JSON');
  });

  test('another content type or none is refused', async () => {
    for (const type of ['text/plain', 'application/x-www-form-urlencoded']) {
      const response = await post('/api/rank', 'site=1', type);
      expect(response.status).toBe(415);
      expectPlain(response);
    }
    expect((await request(app).post('/api/rank')).status).toBe(415);
    expect((await post('/api/rank', '{}', 'application/json; charset=latin7')).status).toBe(415);
  });

  test.each([
    ['nested without end', `{"site": ${'['.repeat(500_000)}${']'.repeat(500_000)}}`],
    ['with rules nested without end', `{"site": {}, "rules": ${'{"a":'.repeat(200_000)}1${'}'.repeat(200_000)}}`],
    ['with more entries than any list has', `{"site": {"walls": [${'1,'.repeat(1000)}1]}}`],
    ['with walls without end', `{"site": {"walls": [${'1,'.repeat(900_000)}1]}}`],
    ['with lists in lists without end', `{"site": {"walls": [${`[${'1,'.repeat(900)}1],`.repeat(900)}1]}}`],
    ['with fields without end', `{${Array.from({ length: 100_000 }, (_, k) => `"k${k}":1`).join()}}`],
  ])('one %s is refused at once', async (_what, body) => {
    for (const path of ['/api/rank', '/api/session']) {
      const response = await post(path, body);
      expect([response.status, response.text.length < 1000]).toEqual([400, true]);
      expect(response.body.error).toContain('nested too deep or has too many fields or entries');
      expectPlain(response);
    }
  });

  test('more than 2 MB is refused', async () => {
    const response = await post('/api/rank', JSON.stringify({ site: 'x'.repeat(2.1 * 1024 * 1024) }));
    expect(response.status).toBe(413);
    expectPlain(response);
  });
});

test('an unknown wall is answered with the walls that there are', async () => {
  for (const path of ['/api/day', '/api/advice']) {
    const response = await request(app).post(path).send({ site: SMALL_SITE, wall: 'carport' });
    expect(response.status).toBe(400);
    expectPlain(response);
    expect(response.body.problems).toEqual([
      {
        path: 'wall',
        found: '"carport"',
        wrong: 'there is no wall "carport"',
        allowed: 'north, south',
        message: 'wall: there is no wall "carport"; allowed: north, south',
      },
    ]);
  }
});

test.each(['/api', '/api/', '/api/ranks', '/api/rank/north', '/api/%E0%A4%A'])(
  'GET %s is JSON and not found',
  async (path) => {
    const response = await request(app).get(path);
    expect(response.status).toBe(404);
    expectPlain(response);
  },
);

test.each([
  ['get', '/api/rank', 'POST'],
  ['put', '/api/day', 'POST'],
  ['delete', '/api/rank', 'POST'],
  ['get', '/api/advice', 'POST'],
  ['post', '/api/schema', 'GET, HEAD'],
  ['post', '/api/health', 'GET, HEAD'],
] as const)('%s %s names the methods allowed', async (method, path, allow) => {
  const response = await request(app)[method](path);
  expect(response.status).toBe(405);
  expect(response.headers['allow']).toBe(allow);
  expectPlain(response);
});

test('HEAD of what can be read is answered', async () => {
  expect((await request(app).head('/api/health')).status).toBe(200);
  expect((await request(app).head('/api/schema')).status).toBe(200);
});

test('a failure inside goes to the log and not to the caller', async () => {
  const log = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  const parse = vi.spyOn(JSON, 'stringify').mockImplementationOnce(() => {
    throw new Error('secret of the house');
  });
  const response = await request(app).get('/api/schema');
  parse.mockRestore();
  expect(log.mock.calls.join()).toContain('secret of the house');
  log.mockRestore();
  expect(response.status).toBe(500);
  expect(response.text).not.toContain('secret');
  expectPlain(response);
});

test('every answer carries the protective headers and does not name the server', async () => {
  for (const response of [await request(app).get('/api/health'), await request(app).get('/nowhere')]) {
    expect(response.headers['x-content-type-options']).toBe('nosniff');
    expect(response.headers['content-security-policy']).toContain("default-src 'self'");
    expect(response.headers['content-security-policy']).not.toContain('unsafe');
    expect(response.headers).not.toHaveProperty('x-powered-by');
  }
});
