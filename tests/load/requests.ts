/** What the load is made of. */
import type { Request } from 'autocannon';
import { DEMO_SITE } from '../../model/index.ts';

const json = { 'content-type': 'application/json' };

const rank = (site: unknown): Request => ({
  method: 'POST',
  path: '/api/rank',
  headers: json,
  body: JSON.stringify({ site }),
});

/** Nobody asks for the same place all the time, or the server would answer from what it remembers; usual boxes come again. */
export const PLACES = 50;
export const BOXES = 5;

const site = (k: number): typeof DEMO_SITE => ({
  ...DEMO_SITE,
  place: { ...DEMO_SITE.place, latitudeDeg: 33 + 0.01 * k },
  box: { ...DEMO_SITE.box, depthM: 0.1 + 0.02 * (k % BOXES) },
});

export const RANKS: readonly Request[] = Array.from({ length: PLACES }, (_, k) => rank(site(k)));

/** One wall: what a test has time for. */
export const SMALL_RANKS: readonly Request[] = Array.from({ length: PLACES }, (_, k) =>
  rank({ ...site(k), walls: DEMO_SITE.walls.slice(0, 1) }),
);

const BAD_SITE = rank({ ...DEMO_SITE, walls: [], colour: 'white' });
const BAD_JSON: Request = { ...BAD_SITE, body: '{"site": ' };
const RANK = rank(DEMO_SITE);
const HEALTH: Request = { method: 'GET', path: '/api/health' };
const SCHEMA: Request = { method: 'GET', path: '/api/schema' };
const NOWHERE: Request = { method: 'GET', path: '/api/nowhere' };

const times = (count: number, request: Request) => Array.from({ length: count }, () => request);

/** Of a hundred requests one is a ranking; bad sites cross to the threads, too. */
const HUNDRED: readonly Request[] = [
  ...times(49, HEALTH),
  ...times(20, BAD_SITE),
  ...times(15, SCHEMA),
  ...times(10, BAD_JSON),
  ...times(5, NOWHERE),
  RANK,
];

/** Shuffled by a step that has no divisor in common with a hundred. */
export const MIX: readonly Request[] = HUNDRED.map((_, index) => HUNDRED[(index * 37) % HUNDRED.length] ?? RANK);

export const MIX_WORDS = '49 % health, 20 % bad sites, 15 % schema, 10 % bad JSON, 5 % unknown paths, 1 % rankings';
