/** The same site gives the same answer through the model and over HTTP. */
import request from 'supertest';
import { describe, expect, test } from 'vitest';
import {
  choiceConfidence,
  evaluateColdNight,
  evaluateDay,
  finished,
  parseSite,
  rankWalls,
  remediesFor,
  type SiteInput,
  type SitingRules,
  siteJsonSchema,
  type UnitSystem,
  USUAL_SITING_RULES,
  wallConfidence,
  worstMonth,
} from '../../model/index.ts';
import packageFile from '../../package.json';
import { createApp } from '../../server/app.ts';
import { SITES, SMALL_SITE } from './sites.ts';

const app = createApp({ webDir: 'none' });

/** What a value looks like once it has been JSON. */
function overTheWire(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value));
}

describe.each(SITES)('%s', (_title, input) => {
  test('POST /api/rank answers with the ranking', async () => {
    const response = await request(app).post('/api/rank').send({ site: input });
    expect(response.status).toBe(200);
    expect(response.body).toEqual(overTheWire(rankWalls(parseSite(input))));
  });

  test('POST /api/day answers with the day of the wall', async () => {
    const wall = input.walls.at(-1)?.name ?? '';
    const response = await request(app).post('/api/day').send({ site: input, wall });
    expect(response.status).toBe(200);
    expect(response.body).toEqual(overTheWire(evaluateDay(parseSite(input), wall)));
  });

  test('POST /api/advice answers with what follows for the wall', async () => {
    const wall = input.walls.at(-1)?.name ?? '';
    const response = await request(app).post('/api/advice').send({ site: input, wall, samples: 3, seed: 5 });
    expect(response.status).toBe(200);
    expect(response.body).toEqual(overTheWire(adviceOfModel(input, wall, { samples: 3, seed: 5 })));
  });
});

test('advice without a wall is about the one that the ranking puts first', async () => {
  const first = rankWalls(parseSite(SMALL_SITE)).walls[0]?.name ?? '';
  const response = await request(app).post('/api/advice').send({ site: SMALL_SITE, units: 'us', samples: 2 });
  expect(response.body).toEqual(overTheWire(adviceOfModel(SMALL_SITE, first, { samples: 2, units: 'us' })));
});

test('advice tries a hundred sets where nobody says how many', async () => {
  const site = { ...SMALL_SITE, walls: SMALL_SITE.walls.slice(0, 1) };
  const { body } = await request(app).post('/api/advice').send({ site });
  expect(Object.keys(body).sort()).toEqual(['choice', 'cold', 'confidence', 'remedies', 'touch', 'worstMonth']);
  expect([body.confidence.samples, body.choice.samples]).toEqual([100, 100]);
});

test('a bare site file is ranked, too, and its problems named', async () => {
  const response = await request(app).post('/api/rank').send(SMALL_SITE);
  expect(response.body).toEqual(overTheWire(rankWalls(parseSite(SMALL_SITE))));
  const wrong = await request(app)
    .post('/api/rank')
    .send({ ...SMALL_SITE, walls: [] });
  expect(wrong.status).toBe(400);
  expect(wrong.body.problems[0].path).toBe('walls');
});

test('units choose those of the sentences', async () => {
  const site = parseSite(SMALL_SITE);
  const verdicts = [];
  for (const units of ['metric', 'us'] as const) {
    const response = await request(app).post('/api/rank').send({ site: SMALL_SITE, units });
    expect(response.body).toEqual(overTheWire(rankWalls(site, { units })));
    verdicts.push(response.body.verdict);
  }
  expect(verdicts[0]).not.toBe(verdicts[1]);
});

test("a company's rules decide, and are refused by path", async () => {
  const site = { ...SMALL_SITE, box: { ...SMALL_SITE.box, mountHeightM: 2.2 } };
  const rules = structuredClone(USUAL_SITING_RULES);
  Object.assign(rules.checks.mountHeight, { hard: false });
  const response = await request(app).post('/api/rank').send({ site, rules });
  expect(response.body).toEqual(overTheWire(rankWalls(parseSite(site), { rules })));
  const advice = await request(app).post('/api/advice').send({ site, rules, samples: 2 });
  const first = rankWalls(parseSite(site), { rules }).walls[0]?.name ?? '';
  expect(advice.body).toEqual(overTheWire(adviceOfModel(site, first, { samples: 2, rules })));
  expect(advice.body.choice.walls).toHaveLength(2);
  const wrong = await request(app)
    .post('/api/rank')
    .send({ site, rules: { ...rules, checks: {} } });
  expect(wrong.status).toBe(400);
  expect(wrong.body.problems[0].path).toBe('rules.checks.electrode');
});

test('instants are ISO 8601 in UTC', async () => {
  const { body } = await request(app).post('/api/day').send({ site: SMALL_SITE, wall: 'north' });
  // London keeps summer time in July: its civil day starts at 23:00 UTC.
  expect(body.stepsUtc[0]).toMatch(/^2026-07-0[45]T23:|^2026-07-05T/);
  expect(body.peakAtUtc).toMatch(/^2026-07-05T\d\d:\d\d:00\.000Z$/);
  expect(body.insideAirC).toHaveLength(body.stepsUtc.length);
});

test('a site that went through the program before gives the same ranking', async () => {
  const filledIn = overTheWire(parseSite(SMALL_SITE));
  const first = await request(app).post('/api/rank').send({ site: SMALL_SITE });
  const again = await request(app).post('/api/rank').send({ site: filledIn });
  expect(again.status).toBe(200);
  expect(again.body).toEqual(first.body);
});

test('GET /api/schema gives the JSON Schema of a site', async () => {
  const response = await request(app).get('/api/schema').buffer(true).parse(text);
  expect(response.status).toBe(200);
  expect(response.headers['content-type']).toBe('application/schema+json; charset=utf-8');
  expect(JSON.parse(response.body)).toEqual(overTheWire(siteJsonSchema()));
});

test('GET /api/health says which version runs', async () => {
  const response = await request(app).get('/api/health');
  expect(response.body).toEqual({ status: 'ok', version: packageFile.version, storage: false });
});

function adviceOfModel(
  input: SiteInput,
  wall: string,
  { units, ...options }: { samples: number; seed?: number; units?: UnitSystem; rules?: SitingRules },
) {
  const site = parseSite(input);
  const worded = { ...options, ...(units !== undefined && { units }) };
  return {
    remedies: remediesFor(site, wall, worded),
    confidence: finished(wallConfidence(site, wall, worded)),
    choice: finished(choiceConfidence(site, worded)),
    cold: evaluateColdNight(site, wall),
    touch: evaluateDay(site, wall).touch,
    worstMonth: finished(worstMonth(site, wall)),
  };
}

/** supertest knows no parser for the content type of a JSON Schema. */
function text(response: request.Response, done: (error: Error | null, body: string) => void): void {
  let body = '';
  response.on('data', (chunk: Buffer) => {
    body += chunk.toString();
  });
  response.on('end', () => done(null, body));
}
