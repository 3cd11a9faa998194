/** What only real files can show; skipped, and said, without them. */
import { beforeEach, expect, test } from 'vitest';
import { readWeather } from '../../../../model/index.ts';
import { NO_WEATHER, realFile, WEATHER_FOLDER } from '../../../reference/real-weather.ts';

if (WEATHER_FOLDER === '') console.info(`Skipped: ${NO_WEATHER}.`);
beforeEach(({ skip }) => skip(WEATHER_FOLDER === '', NO_WEATHER));

test.each([
  ['tmy3', -30, -30, false],
  ['pvgisCsv', 10.57, 10.6, false],
  // Hour-ending by its format, snapshots in truth.
  ['pvgisEpw', -30, 10.6, true],
] as const)('%s: declared %f, found %f minutes, corrected: %s', (name, declared, found, corrected) => {
  const year = readWeather(realFile(name));
  const { timeBase } = year;
  expect(timeBase.declaredShiftMin).toBe(declared);
  expect(Math.abs((timeBase.foundShiftMin ?? Number.NaN) - found)).toBeLessThan(0.15);
  expect(Math.abs(timeBase.usedShiftMin - found)).toBeLessThan(0.15);
  expect(timeBase.corrected).toBe(corrected);
  expect(timeBase.residualWm2).toBeLessThan(1.5);
});

test('two layouts of one year give the same rows', () => {
  const csv = readWeather(realFile('pvgisCsv'));
  const epw = readWeather(realFile('pvgisEpw'));
  for (const key of ['latitudeDeg', 'longitudeDeg', 'altitudeM', 'zoneOffsetH', 'length', 'windHeightM'] as const) {
    expect(epw[key]).toBe(csv[key]);
  }
  for (let row = 0; row < csv.length; row++) {
    const [a, b] = [csv.at(row), epw.at(row)];
    expect(Math.abs(a.sunUtc.getTime() - b.sunUtc.getTime())).toBeLessThan(10_000);
    for (const key of ['airC', 'ghi', 'dni', 'dhi', 'pressurePa', 'horizontalInfraredWm2'] as const) {
      expect(Math.abs((a[key] ?? Number.NaN) - (b[key] ?? Number.NaN)), `${key} of row ${row}`).toBeLessThan(0.011);
    }
    // The wind of the EPW has one decimal.
    expect(Math.abs(a.windMs - b.windMs)).toBeLessThan(0.051);
    // Where two months of different years meet, PVGIS blends humidity in one layout and dew point in the other.
    const blended = Math.abs(a.sunUtc.getUTCDate() - 15.5) > 14;
    expect(Math.abs(a.dewPointC - b.dewPointC), `dew point of row ${row}`).toBeLessThan(blended ? 2 : 0.3);
  }
});
