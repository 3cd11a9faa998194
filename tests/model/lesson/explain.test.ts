/** Every figure that opens: the shown values put into the shown equation give the shown figure. */
import { describe, expect, test } from 'vitest';
import { type Explanation, explain, explainable, type MathNode, playDay, shippedLesson } from '../../../model/index.ts';
import { evaluate, formulaText, power, product, quotient, sum } from '../../../model/lesson/explain/formula.ts';
import { siteWith, wallFacing } from '../sites.ts';

const DAYS = {
  'a plain box on a west wall': siteWith(),
  'south of the equator, high up, with a hood, vents, a battery and two rooms': siteWith({
    place: { latitudeDeg: -22, longitudeDeg: -66, altitudeM: 3400, timeZone: 'America/Argentina/Jujuy' },
    climate: { sample: 'high-plateau' },
    box: {
      hood: {},
      vents: { lowAreaM2: 0.003, highAreaM2: 0.003 },
      battery: { massKg: 8, powerW: 1 },
      compartments: { lowerShare: 0.4, lowerPowerW: 2 },
      duty: 'dayAndNight',
    },
    walls: wallFacing(10, { eave: { depthM: 0.5, heightAboveBoxM: 0.4 } }),
  }),
  "on a post in a standard's cycle, a polished wall behind": siteWith({
    climate: { cycle: 'mil-std-810h-a1', windMs: 3 },
    box: { mount: 'post', postDistanceM: 1.5 },
    limits: { refersTo: 'componentCase' },
    walls: wallFacing(120, { emittance: 0.3, obstructions: [{ kind: 'front', distanceM: 4, heightM: 2 }] }),
  }),
  'near the pole': siteWith({
    place: { latitudeDeg: 68, longitudeDeg: 20, altitudeM: 400, timeZone: 'Europe/Stockholm' },
    climate: { sample: 'continental' },
    walls: wallFacing(0),
  }),
};

/** What rounding may hide: this share of the figure, or of the largest value that stands in a sum. */
const MOST_HIDDEN = 0.02;

describe.each(Object.entries(DAYS))('%s', (_, site) => {
  const played = playDay(site, 'wall');
  const steps = [0, 60, 100, 130, 150, 180, 210, 250].filter((step) => step < played.suns.length);
  const figures = explainable(played);

  test('has the figures of a lesson', () => {
    const names = figures.map(({ what }) => what);
    for (const what of [
      'insideAir',
      'margin',
      'path:convection',
      'path:storage',
      'absorbed:front',
      'sunHeight',
      'batteryYears',
    ]) {
      expect(names).toContain(what);
    }
    expect(new Set(names).size).toBe(names.length);
  });

  test.each(figures)('$what', ({ what }) => {
    let opened = 0;
    for (const step of steps) {
      const one = explain(played, what, step);
      if (one === null) continue;
      opened++;
      checkSum(one);
      expect(one.source).not.toBe('');
      for (const symbol of one.symbols) {
        expect(symbol.name).not.toBe('');
        expect(Number.isFinite(symbol.value)).toBe(true);
        expect(one.equation).toContain(symbol.symbol);
        expect(textOf(one.math)).toContain(symbol.symbol.split('_')[0]);
        // What a value refers to opens in its turn.
        if (symbol.what !== null) expect(figures.map((figure) => figure.what)).toContain(symbol.what);
      }
    }
    // On a tabulated day there is no clear sky to open.
    const clear = site.climate.cycle === undefined;
    expect(opened).toBeGreaterThan(clear || !['direct', 'global', 'outsideAir'].includes(what) ? 0 : -1);
  });
});

function checkSum(one: Explanation): void {
  const terms = one.symbols.map(({ value }) => Math.abs(value));
  expect(Math.abs(one.evaluated - one.value), `${one.what}: ${one.check}, shown ${one.shown}`).toBeLessThanOrEqual(
    one.within,
  );
  expect(one.within).toBeLessThanOrEqual(MOST_HIDDEN * Math.max(Math.abs(one.value), 1, ...terms));
}

/** The text of MathML, its marks left out. */
const textOf = ({ text = '', children = [] }: MathNode): string => text + children.map(textOf).join('');

test('an unknown figure and a step that there is none of', () => {
  const played = playDay(siteWith(), 'wall');
  expect(() => explain(played, 'colour')).toThrow('there is no figure "colour"; allowed: insideAir, margin');
  expect(() => explain(played, 'insideAir', 4000)).toThrow('0 to 287');
});

test('the figures of the lessons', () => {
  const { site } = shippedLesson('four-walls');
  const peak = explain(playDay(site, 'west'), 'insideAir') as Explanation;
  expect(peak.value).toBe(playDay(site, 'west').result.peakInsideAirC);
});

test('a formula reads the same as text and as a number', () => {
  const formula = quotient(product(sum('a', -2), power('b', 4)), product(2, 'c'));
  expect(formulaText(formula)).toBe('(a + −2) · b⁴ / (2 · c)');
  expect(evaluate(formula, new Map(Object.entries({ a: 5, b: 2, c: 3 })))).toBe(8);
  expect(() => evaluate(formula, new Map())).toThrow('no value for a');
});
