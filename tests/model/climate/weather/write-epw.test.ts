/** A written EPW: read back it is the same year, and it has the layout of the format. */
import { expect, test } from 'vitest';
import { evaluateYear, readWeather, syntheticYear, type WeatherYear, writeEpw } from '../../../../model/index.ts';
import { siteWith } from '../../sites.ts';
import { pvgisLines, textOf, tmy3Lines } from './invented-files.ts';

const kathmandu = { latitudeDeg: 27.71, longitudeDeg: 85.32, altitudeM: 1350, timeZone: 'Asia/Kathmandu' };
const sites = [
  siteWith({}),
  siteWith({ place: kathmandu, climate: { sample: 'high-plateau' } }),
  siteWith({
    place: { latitudeDeg: -34.2, longitudeDeg: 18.6, altitudeM: 20, timeZone: 'Africa/Johannesburg' },
    climate: { sample: 'mediterranean' },
  }),
];

/** Rows in which two years differ at all. */
const differing = (a: WeatherYear, b: WeatherYear): number[] =>
  Array.from({ length: 8760 }, (_, row) => row).filter(
    (row) => JSON.stringify(a.at(row)) !== JSON.stringify(b.at(row)),
  );

test.each(sites)('written and read back it is the same year: $place.timeZone', (site) => {
  const year = syntheticYear(site, { seed: 4 });
  const back = readWeather(writeEpw(year));
  const { latitudeDeg, longitudeDeg, altitudeM, zoneOffsetH, windHeightM, title, source } = year;
  expect(back).toMatchObject({ latitudeDeg, longitudeDeg, altitudeM, zoneOffsetH, windHeightM, title, source });
  expect(back.format).toBe('EPW');
  expect(back.timeBase).toEqual(year.timeBase);
  expect(differing(back, year)).toEqual([]);
});

test('and a wall has the same hours in it', () => {
  const site = sites[0] as (typeof sites)[0];
  const year = syntheticYear(site);
  const of = (weather: WeatherYear) => evaluateYear(site, 'wall', weather, { shadeReference: false });
  expect(of(readWeather(writeEpw(year)))).toEqual(of(year));
});

test('eight header lines and rows of 35 fields; hours 1 to 24; nothing in quotes; what is not known is coded missing', () => {
  const lines = writeEpw(syntheticYear(sites[0] as (typeof sites)[0])).split('\n');
  expect(lines).toHaveLength(8 + 8760 + 1);
  expect(lines[0]).toBe(
    'LOCATION,Dry desert basin,-,-,synthetic year 1 of the invented climate dry-basin,unknown,33,-112,-7,300',
  );
  expect(lines[5]).toMatch(/^COMMENTS 1,Invented year 1 .*no record of the place/);
  // 1 January 2026 is a Thursday.
  expect(lines[7]).toBe('DATA PERIODS,1,1,Data,Thursday, 1/ 1,12/31');
  expect(lines.join('')).not.toContain('"');
  expect(lines.slice(8, -1).filter((line) => line.split(',').length !== 35)).toEqual([]);
  expect(lines[8]).toMatch(/^2026,1,1,1,60,\?,/);
  expect(lines[8 + 23]).toMatch(/^2026,1,1,24,60,/);
  expect(lines[8 + 59 * 24]).toMatch(/^2026,3,1,1,60,/);
  const noon = (lines[8 + 12] as string).split(',');
  expect([noon[10], noon[16], noon[20], noon[22], noon[30]]).toEqual(['9999', '999999', '999', '99', '999']);
});

test('a TMY3 year can be written as an EPW, to the decimals that are written', () => {
  const year = readWeather(textOf(tmy3Lines()));
  const back = readWeather(writeEpw({ ...year, windHeightM: 10 }));
  for (let row = 0; row < 8760; row += 101) {
    const [a, b] = [back.at(row), year.at(row)];
    expect(a.sunUtc).toEqual(b.sunUtc);
    expect(a.airC).toBeCloseTo(b.airC, 2);
    expect(a.dni).toBeCloseTo(b.dni, 1);
  }
});

test('rows that an EPW would tell wrongly are refused: instants of their own, another zone, another height of the wind', () => {
  const pvgis = readWeather(textOf(pvgisLines()));
  expect(() => writeEpw({ ...pvgis, windHeightM: 10 })).toThrow(/writeEpw: /);
  const year = syntheticYear(sites[0] as (typeof sites)[0]);
  expect(() => writeEpw({ ...year, zoneOffsetH: 3 })).toThrow(/no hour of the year in its zone/);
  expect(() => writeEpw({ ...year, windHeightM: 2 })).toThrow(/wind at 2 m/);
});
