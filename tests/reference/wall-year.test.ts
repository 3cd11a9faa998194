/** Sun on walls over a whole year of real files against a reference library. */
import { beforeEach, expect, test } from 'vitest';
import { irradianceOnPlane, readWeather, sunPosition } from '../../model/index.ts';
import { NO_WEATHER, realFile, WEATHER_FOLDER } from './real-weather.ts';
import reference from './wall-year-pvlib.json' with { type: 'json' };

if (WEATHER_FOLDER === '') console.info(`Skipped: ${NO_WEATHER}.`);
beforeEach(({ skip }) => skip(WEATHER_FOLDER === '', NO_WEATHER));

/** As the note of the reference has it. */
const ALBEDO = 0.2;
const PLANES = [
  { name: 'N', tiltDeg: 90, azimuthDeg: 0 },
  { name: 'E', tiltDeg: 90, azimuthDeg: 90 },
  { name: 'S', tiltDeg: 90, azimuthDeg: 180 },
  { name: 'W', tiltDeg: 90, azimuthDeg: 270 },
  { name: 'NE', tiltDeg: 90, azimuthDeg: 37.5 },
  { name: 'top', tiltDeg: 0, azimuthDeg: 0 },
] as const;

/** Yearly global and direct insolation of the planes, kWh/m2. */
function wallYear(text: string) {
  const year = readWeather(text);
  const sums = new Map(PLANES.map(({ name }) => [name, { global: 0, direct: 0 }]));
  for (let row = 0; row < year.length; row++) {
    const { sunUtc: utc, ghi, dni, dhi } = year.at(row);
    const sun = sunPosition(utc, year.latitudeDeg, year.longitudeDeg);
    for (const { name, tiltDeg, azimuthDeg } of PLANES) {
      const { total, beam } = irradianceOnPlane({ utc, sun, ghi, dni, dhi, tiltDeg, azimuthDeg, albedo: ALBEDO });
      const sum = sums.get(name) ?? { global: 0, direct: 0 };
      sum.global += total / 1000;
      sum.direct += beam / 1000;
    }
  }
  return sums;
}

const PVGIS = 'tmy_45.000_8.000_2005_2023.csv (and the epw, read right)';

test.each([
  ['tmy3', 'sand-point-ak-703165-tmy3.csv'],
  ['pvgisCsv', PVGIS],
  ['pvgisEpw', PVGIS],
] as const)('%s: sun on six planes within 0.5 %%', (file, key) => {
  const ours = wallYear(realFile(file));
  for (const { name } of PLANES) {
    const { global_kwh_m2, direct_kwh_m2 } = reference.files[key].walls[name];
    const { global = Number.NaN, direct = Number.NaN } = ours.get(name) ?? {};
    expect(Math.abs(global / global_kwh_m2 - 1), `global on ${name}`).toBeLessThan(0.005);
    // The sun grazes a north wall: there half a kilowatt-hour is more than 0.5 %.
    const allowed = Math.max(0.005 * direct_kwh_m2, 0.5);
    expect(Math.abs(direct - direct_kwh_m2), `direct on ${name}`).toBeLessThan(allowed);
  }
});
