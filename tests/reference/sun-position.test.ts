/** The sun's place against two independent algorithms from the package registry; worked examples stand in checks/sun.ts. */
import { describe, expect, test } from 'vitest';
import { sunPosition } from '../../model/index.ts';
import { apparentSolarHour, equationOfTimeMin } from '../../model/solar/extraterrestrial.ts';
import { astronomyEngine, CEILING_DEG, compareSun, INSTANTS, nrelSpa } from './sun-comparison.ts';

describe.each([
  ['the NREL solar position algorithm (nrel-spa)', nrelSpa],
  ['astronomy-engine', astronomyEngine],
])('sun position against %s', (_, algorithm) => {
  test(`${INSTANTS} random instants 1990 to 2060, all latitudes, above 5 degrees`, () => {
    const { largestDeg, polar } = compareSun(algorithm);
    expect(polar).toBeGreaterThan(50);
    expect(largestDeg).toBeLessThan(CEILING_DEG);
    expect(largestDeg).toBeGreaterThan(0);
  });
});

test('the equation of time shifts solar time', () => {
  const noon = new Date('2026-11-03T12:00:00Z');
  expect(apparentSolarHour(noon, 15, equationOfTimeMin(noon))).toBeCloseTo(13 + 16.4 / 60, 1);
});

test('solar noon by the equation of time is when the sun crosses the meridian', () => {
  const noon = new Date('2026-11-03T12:00:00Z');
  const crossing = new Date(noon.getTime() - equationOfTimeMin(noon) * 60_000);
  expect(Math.abs(sunPosition(crossing, 45, 0).azimuthDeg - 180)).toBeLessThan(0.3);
});

describe('bad input', () => {
  const day = new Date('2026-07-05T12:00:00Z');
  test.each([
    ['an invalid instant', new Date(Number.NaN), 10, 10],
    ['latitude 95', day, 95, 10],
    ['latitude NaN', day, Number.NaN, 10],
    ['longitude 181', day, 10, 181],
  ])('%s is refused', (_, utc, latitudeDeg, longitudeDeg) => {
    expect(() => sunPosition(utc, latitudeDeg, longitudeDeg)).toThrow(RangeError);
  });
});

test('poles, equator and polar night give finite angles', () => {
  for (const latitudeDeg of [-90, 0, 90]) {
    for (const utc of ['2026-06-21T12:00:00Z', '2026-12-21T12:00:00Z', '2026-03-20T12:00:00Z']) {
      const sun = sunPosition(new Date(utc), latitudeDeg, 0);
      expect(Number.isFinite(sun.elevationDeg) && Number.isFinite(sun.azimuthDeg)).toBe(true);
    }
  }
  expect(sunPosition(new Date('2026-06-21T12:00:00Z'), 90, 0).elevationDeg).toBeCloseTo(23.44, 1);
  expect(sunPosition(new Date('2026-12-21T12:00:00Z'), 90, 0).elevationDeg).toBeLessThan(-22);
});
