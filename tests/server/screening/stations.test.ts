import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { parseSite, syntheticYear, writeEpw } from '../../../model/index.ts';
import { readStations } from '../../../server/screening/stations.ts';
import { SMALL_SITE } from '../sites.ts';
import { ownFolder, rowsOf, screened } from './tables.ts';

const folder = ownFolder();
const weather = join(folder, 'weather');

const PLACES = { 'desert.epw': [33, -113, 300], 'isle.EPW': [51, 0, 20] } as const;

beforeAll(() => {
  mkdirSync(weather);
  for (const [name, [latitudeDeg, longitudeDeg, altitudeM]] of Object.entries(PLACES)) {
    const climate = { sample: name === 'isle.EPW' ? 'temperate-maritime' : 'dry-basin' };
    const site = parseSite({ ...SMALL_SITE, place: { latitudeDeg, longitudeDeg, altitudeM }, climate });
    writeFileSync(join(weather, name), writeEpw(syntheticYear(site, { seed: 3 })));
  }
  writeFileSync(join(weather, 'notes.txt'), 'no weather');
});

/** Along a great circle by the spherical law of cosines, km; another formula than the model's. */
function greatCircleKm([lat1, lon1]: readonly number[], [lat2, lon2]: readonly number[]): number {
  const rad = (deg: number | undefined) => ((deg ?? Number.NaN) * Math.PI) / 180;
  const [a, b, d] = [rad(lat1), rad(lat2), rad(lon2) - rad(lon1)];
  return 6371 * Math.acos(Math.sin(a) * Math.sin(b) + Math.cos(a) * Math.cos(b) * Math.cos(d));
}

describe('a folder of weather files', () => {
  test('lends each row the design day of the nearest file and says which and how far', async () => {
    const stations = readStations(weather);
    expect(stations.map(({ name }) => name)).toEqual(Object.keys(PLACES).sort());
    const rows = 'lat,lon,altitude,maxC\n34,-114,,\n49,2,20,\n49,2,1020,\n49,2,20,39\n';
    await screened(folder, rows, { climate: { stations } });
    const found = rowsOf(readFileSync(join(folder, 'results.csv'), 'utf8'));
    expect(found.map((row) => [row['climate_source'], row['climate_used']])).toEqual([
      ['weather file', 'desert.epw'],
      ['weather file', 'isle.EPW'],
      ['weather file', 'isle.EPW'],
      ['columns', 'columns of the row'],
    ]);
    const far = [greatCircleKm([34, -114], PLACES['desert.epw']), greatCircleKm([49, 2], PLACES['isle.EPW'])];
    for (const [k, km] of [far[0], far[1], far[1]].entries()) {
      const told = Number(found[k]?.['climate_distance_km']);
      expect(Math.abs(told / (km ?? 0) - 1)).toBeLessThan(0.005);
    }
    expect(found[3]?.['climate_distance_km']).toBe('');
    // Without an altitude of its own a row stands as high as its station; a kilometre up it is cooler.
    expect(Number(found[0]?.['altitude_used_m'])).toBe(300);
    expect(Number(found[2]?.['best_peak_inside_c'])).toBeLessThan(Number(found[1]?.['best_peak_inside_c']) - 3);
  });

  test.each([
    ['nowhere', /--weather .*nowhere: /],
    ['weather/notes.txt', /this is a file, a folder is needed/],
    ['.', /no \.epw and no \.csv file in this folder/],
  ])('%s is refused', (name, message) => {
    const path = name === '.' ? join(folder, 'empty') : join(folder, name);
    if (name === '.') mkdirSync(path);
    expect(() => readStations(path)).toThrow(message);
  });

  test('with a broken file is refused by its name', () => {
    writeFileSync(join(weather, 'a-broken.csv'), 'a,b\n1,2\n');
    expect(() => readStations(weather)).toThrow(/a-broken\.csv/);
  });
});
