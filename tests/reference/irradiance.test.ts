/** Clear sky, split and transposition against a reference library; the papers' own cases stand in checks/clear-sky.ts. */
import { describe, expect, test } from 'vitest';
import { splitGlobal } from '../../model/index.ts';
import { IRRADIANCE_CASES, incidenceErrorDeg, irradiancePairs, planeOf, shareOfAllowed } from './irradiance-cases.ts';

describe('60 cases computed with pvlib-python (its version and functions stand in the file)', () => {
  test('there are sixty of them, down to a sun of 2.4 degrees', () => {
    expect(IRRADIANCE_CASES).toHaveLength(60);
    expect(Math.min(...IRRADIANCE_CASES.map((c) => c.sun_apparent_elevation_deg))).toBeLessThan(3);
  });

  test.each(IRRADIANCE_CASES.map((c, i) => [i, c] as const))('case %i', (_, c) => {
    const pairs = irradiancePairs(c);
    expect(pairs).toHaveLength(11);
    for (const pair of pairs) {
      // Within 0.5 % or 1 W/m2, whichever is larger.
      expect(shareOfAllowed(pair), `${pair.what}: ${pair.ours} against ${pair.theirs}`).toBeLessThan(1);
    }
    expect(incidenceErrorDeg(c)).toBeLessThan(0.05);
    const { total, beam, circumsolar, isotropic, horizon, ground } = planeOf(c);
    expect(total).toBeCloseTo(beam + circumsolar + isotropic + horizon + ground, 6);
  });
});

test('night, negative noise and a sun on the horizon leave no beam and lose no light', () => {
  const utc = new Date('2026-06-20T12:00:00Z');
  expect(splitGlobal({ utc, elevationDeg: -10, ghi: 0 })).toEqual({ dni: 0, dhi: 0 });
  expect(splitGlobal({ utc, elevationDeg: 40, ghi: -3 })).toEqual({ dni: 0, dhi: 0 });
  expect(splitGlobal({ utc, elevationDeg: 1, ghi: 20 })).toEqual({ dni: 0, dhi: 20 });
});
