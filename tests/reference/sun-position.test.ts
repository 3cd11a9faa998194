/** The sun's place against two independent algorithms from the package registry, and a worked example. */
import { Equator, Horizon, Observer } from 'astronomy-engine';
import { getSpa, SPA_ZA } from 'nrel-spa';
import { describe, expect, test } from 'vitest';
import { type SunPosition, sunPosition } from '../../model/index.ts';
import { cosDeg, degrees, sinDeg } from '../../model/solar/angles.ts';
import { apparentSolarHour, equationOfTimeMin } from '../../model/solar/extraterrestrial.ts';
import { randomFrom } from './random.ts';

/** Largest separation allowed, degrees. Refraction of 1010 hPa and 10 degC differs by less than 0.001 above 5 degrees. */
const CEILING_DEG = 0.02;
const INSTANTS = 1000;

/** Angle between two directions: azimuth alone loses its meaning towards the zenith and the poles. */
function separationDeg(a: SunPosition, b: SunPosition): number {
  const cosine =
    sinDeg(a.elevationDeg) * sinDeg(b.elevationDeg) +
    cosDeg(a.elevationDeg) * cosDeg(b.elevationDeg) * cosDeg(a.azimuthDeg - b.azimuthDeg);
  return degrees(Math.acos(Math.min(1, cosine)));
}

/** Reda and Andreas 2004, Solar Energy 76:577, as ported in nrel-spa. */
function nrelSpa(utc: Date, latitudeDeg: number, longitudeDeg: number): SunPosition {
  const options = { pressure: 1010, temperature: 10, function: SPA_ZA };
  const { zenith, azimuth } = getSpa(utc, latitudeDeg, longitudeDeg, 0, options);
  return { elevationDeg: 90 - zenith, azimuthDeg: azimuth };
}

/** VSOP87 based, independent of both others. */
function astronomyEngine(utc: Date, latitudeDeg: number, longitudeDeg: number): SunPosition {
  const observer = new Observer(latitudeDeg, longitudeDeg, 0);
  const { ra, dec } = Equator('Sun' as Parameters<typeof Equator>[0], utc, observer, true, true);
  const { altitude, azimuth } = Horizon(utc, observer, ra, dec, 'normal');
  return { elevationDeg: altitude, azimuthDeg: azimuth };
}

describe.each([
  ['the NREL solar position algorithm (nrel-spa)', nrelSpa],
  ['astronomy-engine', astronomyEngine],
])('sun position against %s', (_, reference) => {
  test(`${INSTANTS} random instants 1990 to 2060, all latitudes, above 5 degrees`, () => {
    const random = randomFrom(20260705);
    let compared = 0;
    let polar = 0;
    let largest = 0;
    while (compared < INSTANTS) {
      const utc = new Date(Date.UTC(1990, 0, 1) + random() * 71 * 365.25 * 86_400_000);
      const latitudeDeg = -90 + 180 * random();
      const longitudeDeg = -180 + 360 * random();
      const ours = sunPosition(utc, latitudeDeg, longitudeDeg);
      if (ours.elevationDeg < 5) continue;
      compared += 1;
      if (Math.abs(latitudeDeg) > 66.6) polar += 1;
      largest = Math.max(largest, separationDeg(ours, reference(utc, latitudeDeg, longitudeDeg)));
    }
    expect(polar).toBeGreaterThan(50);
    expect(largest).toBeLessThan(CEILING_DEG);
    expect(largest).toBeGreaterThan(0);
  });
});

test('worked example of NREL/TP-560-34302, table A5.1 (verified through a library test)', () => {
  // 2003-10-17 12:30:30 at UTC-7, 39.742476 N 105.1786 W; apparent elevation there with 820 hPa and 11 degC.
  const sun = sunPosition(new Date('2003-10-17T19:30:30Z'), 39.742476, -105.1786);
  expect(separationDeg(sun, { elevationDeg: 90 - 50.11162, azimuthDeg: 194.34024 })).toBeLessThan(CEILING_DEG);
});

test.each([
  // Extremes of the equation of time, minutes (almanac, value from memory): Spencer's series is within 0.6.
  ['2026-02-11', -14.2],
  ['2026-05-14', 3.7],
  ['2026-07-26', -6.5],
  ['2026-11-03', 16.4],
])('the equation of time on %s is %f min, and shifts solar time', (date, minutes) => {
  const noon = new Date(`${date}T12:00:00Z`);
  expect(Math.abs(equationOfTimeMin(noon) - minutes)).toBeLessThan(0.6);
  expect(apparentSolarHour(noon, 15, equationOfTimeMin(noon))).toBeCloseTo(13 + minutes / 60, 1);
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
