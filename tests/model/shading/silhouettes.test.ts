/** Silhouettes against the rays that shade: what one sees hidden is what the sun cannot get past. */
import { describe, expect, test } from 'vitest';
import { type Body, meets, type WallPoint } from '../../../model/shading/bodies.ts';
import { silhouetteOf, skylineSilhouette, wallSilhouette } from '../../../model/shading/silhouettes.ts';
import { cosDeg, sinDeg } from '../../../model/solar/angles.ts';

const EYE: WallPoint = [0, 0.1, 1.4];
const AZIMUTH = 200;

const body = (low: WallPoint, high: WallPoint, shape: Body['shape']): Body => ({ low, high, shape, transmittance: 0 });

const BODIES: [string, Body][] = [
  ['a fence', body([-3, 4, 0], [5, 4, 2.2], 'box')],
  ['a house', body([4, 6, 0], [12, 14, 7], 'box')],
  ['an eave above the eye', body([-4, 0, 2.2], [4, 0.8, 2.2], 'box')],
  ['an eave to the side', body([1, 0, 2.2], [4, 0.8, 2.2], 'box')],
  ['a crown', body([-6, 3, 2], [-1, 8, 7], 'crown')],
  ['a crown overhead', body([-2, -1.5, 2], [2, 2.5, 6], 'crown')],
  ['a wing that leaves the wall at an angle', body([2, 0, 0], [6, 3, 5], 'risingSheet')],
  ['a wing on the other side', body([-6, 0, 0], [-2, 3, 5], 'fallingSheet')],
];

describe.each(BODIES)('%s', (_, thing) => {
  const runs = silhouetteOf(thing, EYE, AZIMUTH);
  const bands = runs.flat();
  const hides = (bearingDeg: number, elevationDeg: number) => {
    const apart = bearingDeg - AZIMUTH;
    const level = cosDeg(elevationDeg);
    return meets(thing, EYE, [-sinDeg(apart) * level, cosDeg(apart) * level, sinDeg(elevationDeg)], 1e9);
  };

  test('hides what lies within its bands, and nothing above them', () => {
    expect(bands.length).toBeGreaterThan(10);
    for (const { bearingDeg, lowDeg, highDeg } of bands) {
      expect(highDeg).toBeLessThanOrEqual(90);
      if (highDeg - lowDeg > 0.2) expect(hides(bearingDeg, (lowDeg + highDeg) / 2)).toBe(true);
      if (highDeg < 89.7) expect(hides(bearingDeg, highDeg + 0.2)).toBe(false);
      if (lowDeg > 0.2) expect(hides(bearingDeg, lowDeg - 0.2)).toBe(false);
    }
  });

  test('hides nothing at the bearings between its runs', () => {
    const seen = new Set(bands.map(({ bearingDeg }) => bearingDeg));
    for (let bearing = AZIMUTH - 180; bearing <= AZIMUTH + 180; bearing++) {
      if (seen.has(bearing) || seen.has(bearing - 1) || seen.has(bearing + 1)) continue;
      for (let elevation = 1; elevation < 90; elevation += 4) expect(hides(bearing, elevation)).toBe(false);
    }
  });

  test('neighbours in a run are neighbours', () => {
    for (const run of runs) {
      run.forEach(({ bearingDeg }, k) => {
        if (k > 0) expect(bearingDeg - (run[k - 1]?.bearingDeg as number)).toBeCloseTo(1, 9);
      });
    }
  });
});

test('straight below the rim of a crown nothing is undefined', () => {
  const rim: WallPoint = [0, 0.0625, 1.5];
  const bands = silhouetteOf(body([-1, 0.0625, 2], [1, 2.0625, 6], 'crown'), rim, 180).flat();
  expect(bands.length).toBeGreaterThan(100);
  for (const { lowDeg, highDeg } of bands) expect(Number.isFinite(lowDeg + highDeg)).toBe(true);
});

test('a fence of 2.2 m seen from 1.4 m at 3.9 m stands atan(0.8 / 3.9) high straight ahead', () => {
  const ahead = silhouetteOf(BODIES[0]?.[1] as Body, EYE, AZIMUTH)
    .flat()
    .find(({ bearingDeg }) => bearingDeg === AZIMUTH);
  expect(ahead?.highDeg).toBeCloseTo((Math.atan2(0.8, 3.9) * 180) / Math.PI, 9);
});

test('the wall itself stands behind, to the zenith nearly, and ends where it ends', () => {
  const endless = wallSilhouette({ heightM: 3, leftEndM: -1e9, rightEndM: 1e9 }, EYE, AZIMUTH).flat();
  expect(Math.min(...endless.map(({ bearingDeg }) => Math.abs(bearingDeg - AZIMUTH)))).toBeGreaterThan(90);
  const behind = endless.find(({ bearingDeg }) => bearingDeg === AZIMUTH + 180);
  expect(behind?.highDeg).toBeCloseTo((Math.atan2(1.6, 0.1) * 180) / Math.PI, 9);
  const short = wallSilhouette({ heightM: 3, leftEndM: -0.5, rightEndM: 0.5 }, EYE, AZIMUTH).flat();
  // Its right end stands 0.5 m to the right and 0.1 m behind.
  const mostAside = Math.max(...short.map(({ bearingDeg }) => 180 - Math.abs(bearingDeg - AZIMUTH)));
  expect(Math.abs(mostAside - (Math.atan2(0.5, 0.1) * 180) / Math.PI)).toBeLessThan(1);
});

test('a skyline is its own silhouette, and a level one is none', () => {
  const hill = skylineSilhouette((bearing) => (Math.abs(((bearing + 360) % 360) - 250) < 20 ? 12 : 0), AZIMUTH);
  expect(hill.flat().every(({ lowDeg, highDeg }) => lowDeg === 0 && highDeg === 12)).toBe(true);
  expect(hill.flat().map(({ bearingDeg }) => bearingDeg)).toContain(250);
  expect(skylineSilhouette(() => 0, AZIMUTH)).toEqual([]);
});
