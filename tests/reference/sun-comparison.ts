/** The sun's place against two algorithms from the package registry, at random instants. */
import { Equator, Horizon, Observer } from 'astronomy-engine';
import { getSpa, SPA_ZA } from 'nrel-spa';
import { type SunPosition, sunPosition } from '../../model/index.ts';
import { cosDeg, degrees, sinDeg } from '../../model/solar/angles.ts';
import { randomFrom } from './random.ts';

/** Largest separation allowed, degrees. Refraction of 1010 hPa and 10 degC differs by less than 0.001 above 5 degrees. */
export const CEILING_DEG = 0.02;
export const INSTANTS = 1000;

type Algorithm = (utc: Date, latitudeDeg: number, longitudeDeg: number) => SunPosition;

/** Angle between two directions: azimuth alone loses its meaning towards the zenith and the poles. */
export function separationDeg(a: SunPosition, b: SunPosition): number {
  const cosine =
    sinDeg(a.elevationDeg) * sinDeg(b.elevationDeg) +
    cosDeg(a.elevationDeg) * cosDeg(b.elevationDeg) * cosDeg(a.azimuthDeg - b.azimuthDeg);
  return degrees(Math.acos(Math.min(1, cosine)));
}

/** Reda and Andreas 2004, Solar Energy 76:577, as ported in nrel-spa. */
export const nrelSpa: Algorithm = (utc, latitudeDeg, longitudeDeg) => {
  const options = { pressure: 1010, temperature: 10, function: SPA_ZA };
  const { zenith, azimuth } = getSpa(utc, latitudeDeg, longitudeDeg, 0, options);
  return { elevationDeg: 90 - zenith, azimuthDeg: azimuth };
};

/** VSOP87 based, independent of both others. */
export const astronomyEngine: Algorithm = (utc, latitudeDeg, longitudeDeg) => {
  const observer = new Observer(latitudeDeg, longitudeDeg, 0);
  const { ra, dec } = Equator('Sun' as Parameters<typeof Equator>[0], utc, observer, true, true);
  const { altitude, azimuth } = Horizon(utc, observer, ra, dec, 'normal');
  return { elevationDeg: altitude, azimuthDeg: azimuth };
};

/** Largest separation from an algorithm over the random instants, degrees, and how many of them were within a polar circle. */
export function compareSun(algorithm: Algorithm): { largestDeg: number; polar: number } {
  const random = randomFrom(20260705);
  let compared = 0;
  let polar = 0;
  let largestDeg = 0;
  while (compared < INSTANTS) {
    const utc = new Date(Date.UTC(1990, 0, 1) + random() * 71 * 365.25 * 86_400_000);
    const latitudeDeg = -90 + 180 * random();
    const longitudeDeg = -180 + 360 * random();
    const ours = sunPosition(utc, latitudeDeg, longitudeDeg);
    if (ours.elevationDeg < 5) continue;
    compared += 1;
    if (Math.abs(latitudeDeg) > 66.6) polar += 1;
    largestDeg = Math.max(largestDeg, separationDeg(ours, algorithm(utc, latitudeDeg, longitudeDeg)));
  }
  return { largestDeg, polar };
}
