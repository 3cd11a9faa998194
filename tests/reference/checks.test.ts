/** The gate: every check against the outside, measured as `npm run validate` measures it. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Check, isBand, measure } from './check.ts';
import { CHECKS } from './checks/index.ts';
import { idsOnPage } from './page.ts';
import { PUBLISHED_SKIES, PUBLISHED_SKY_VALUES } from './published-skies.ts';

/** So that a list that loses its rows does not pass in silence. */
const COUNT = 237;
const BANDS = 95;

test(`there are ${COUNT} checks, ${BANDS} of them bands, each with an id of its own`, () => {
  expect(CHECKS).toHaveLength(COUNT);
  expect(CHECKS.filter(isBand)).toHaveLength(BANDS);
  expect(new Set(CHECKS.map(({ id }) => id)).size).toBe(COUNT);
});

describe('figures with one right answer', () => {
  test.each(CHECKS.filter((check) => !isBand(check)).map((check) => [check.id, check] as const))('%s', (_, check) => {
    const { ours, verdict } = measure(check);
    expect(verdict, `${ours} ${check.unit}: ${check.what}`).toBe('holds');
  });
});

test('the comparisons that lie outside their bands are those that say why', () => {
  const bands = CHECKS.filter(isBand).map(measure);
  expect(bands.filter(({ verdict }) => verdict === 'fails')).toEqual([]);
  const outside = bands.filter(({ verdict }) => verdict === 'outside').map(({ check }) => check.id);
  const told = CHECKS.filter((check) => isBand(check) && check.outside !== undefined).map(({ id }) => id);
  expect(outside).toEqual(told);
});

test('the page lists the same checks; `npm run validate` writes it anew', () => {
  const page = readFileSync(new URL('./VALIDATION.md', import.meta.url), 'utf8');
  expect(idsOnPage(page)).toEqual(CHECKS.map(({ id }) => id));
});

describe('the measure itself', () => {
  const about = { id: 'x', what: '', source: '', status: 'verified', unit: '', reason: '' } as const;
  const value = (ours: number): Check => ({ ...about, value: 10, allowed: 1, ours: () => ours });
  const band = (ours: number): Check => ({ ...about, low: 10, high: 12, ours: () => ours });

  test.each([
    [value(10.9), 'holds'],
    [value(11.1), 'fails'],
    [value(8.9), 'fails'],
    [value(Number.NaN), 'fails'],
    [band(10), 'inside'],
    [band(12.1), 'outside'],
    [band(9.9), 'outside'],
    [band(Number.NaN), 'fails'],
    [band(Number.POSITIVE_INFINITY), 'fails'],
  ] as const)('%o: %s', (check, verdict) => {
    expect(measure(check).verdict).toBe(verdict);
  });
});

test.each(PUBLISHED_SKY_VALUES)(
  'the formula of %s, as typed here, gives its published value',
  (name, air, published) => {
    const sky = PUBLISHED_SKIES.find((one) => one.name === name);
    // Berdahl and Martin's altitude term counts from 1000 hPa in one code and from 1013 in another.
    expect(Math.abs((sky?.emissivity({ ...air, pressureHPa: 1013.25 }) ?? 0) - published)).toBeLessThan(0.001);
  },
);
