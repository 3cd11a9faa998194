/** Errors of time and place, planted in files whose sun is known. */
import { describe, expect, test } from 'vitest';
import { WeatherFileError } from '../../../../model/climate/weather/weather-file-error.ts';
import { readWeather, sunPosition } from '../../../../model/index.ts';
import { epwLines, INVENTED_PLACE, type Planted, pvgisLines, textOf } from './invented-files.ts';

const readPlanted = (planted: Planted) => readWeather(textOf(epwLines(planted)));

function refusalOf(planted: Planted): string {
  try {
    readPlanted(planted);
  } catch (error) {
    if (error instanceof WeatherFileError) return error.message;
    throw error;
  }
  return 'not refused';
}

const TURIN = { latitudeDeg: 45, longitudeDeg: 8, altitudeM: 250 };
const CAPE = { latitudeDeg: -33.9, longitudeDeg: 18.4, altitudeM: 40 };

describe('a shift within the hour', () => {
  test.each([
    [-30, -30, false],
    // Within ten minutes the format is believed.
    [-37, -30, false],
    [-23, -30, false],
    [0, 0, true],
    [10.6, 10.6, true],
    [30, 30, true],
    [-60, -60, true],
    [-45, -45, true],
  ])('sun %f minutes from the label: %f is used, corrected: %s', (sunShiftMin, used, corrected) => {
    const { timeBase, zoneOffsetH } = readPlanted({ sunShiftMin });
    expect(timeBase.foundShiftMin).toBeCloseTo(sunShiftMin, 0);
    expect(Math.abs((timeBase.foundShiftMin ?? Number.NaN) - sunShiftMin)).toBeLessThan(0.3);
    expect(Math.abs(timeBase.usedShiftMin - used)).toBeLessThan(0.3);
    expect(timeBase.corrected).toBe(corrected);
    expect(zoneOffsetH).toBe(-7);
    if (corrected) expect(timeBase.residualWm2).toBeLessThan(1);
  });

  test('what was declared, found and used is told with its figures', () => {
    const { text, declaredRule, declaredShiftMin } = readPlanted({ sunShiftMin: 10.6 }).timeBase;
    expect(declaredRule).toBe('sums over the hour before the label');
    expect(declaredShiftMin).toBe(-30);
    expect(text).toMatch(
      /^Corrected: the format's rule is sums over the hour before the label, but the irradiance closes 10\.6 minutes after the label within 0\.\d W\/m2, 30 minutes before the label within \d+ W\/m2\. The sun is taken 10\.6 minutes after the label\.$/,
    );
  });

  test('south of the equator, and a PVGIS csv from before the offset stood in the header', () => {
    expect(readPlanted({ place: CAPE, zoneH: 2, sunShiftMin: -30 }).timeBase.corrected).toBe(false);
    const old = readWeather(textOf(pvgisLines({ sunShiftMin: 25 }, null))).timeBase;
    expect(old).toMatchObject({ declaredShiftMin: 0, corrected: true });
    expect(old.usedShiftMin).toBeCloseTo(25, 0);
  });
});

describe('a wrong zone is corrected in whole hours', () => {
  test.each([0, -5, 14, -9, 5, -12])('header says UTC%i, labels are in UTC-7', (zoneH) => {
    const year = readPlanted({ header: { zoneH } });
    expect(year.zoneOffsetH).toBe(-7);
    expect(year.timeBase).toMatchObject({ usedShiftMin: -30, corrected: true });
    expect(year.timeBase.text).toMatch(/time zone, UTC[+-]\d+, is taken as UTC-7/);
    expect(year.at(4384).sunUtc.toISOString()).toBe('2026-07-02T23:30:00.000Z');
  });

  test('one hour west is a wrong zone, one hour east an hour named by its start: the sun is right in both', () => {
    const sunOf = (zoneH: number) => readPlanted({ header: { zoneH } }).at(4384).sunUtc;
    for (const zoneH of [-6, -8]) {
      expect(Math.abs(sunOf(zoneH).getTime() - Date.UTC(2026, 6, 2, 23, 30))).toBeLessThan(30_000);
    }
  });
});

describe('what no shift mends is refused with its figures', () => {
  test("the longitude's sign, by the zone that contradicts it", () => {
    expect(refusalOf({ header: { longitudeDeg: -INVENTED_PLACE.longitudeDeg } })).toMatch(
      /^line 1: longitude 112\.25 and time zone UTC-7 contradict each other: .* with longitude -112\.25 .* W\/m2|signs is wrong/,
    );
    // By the sun alone this is the same file.
    expect(refusalOf({ header: { zoneH: 8 } })).toMatch(
      /longitude -112\.25 and time zone UTC\+8 contradict each other/,
    );
    expect(refusalOf({ place: TURIN, zoneH: 1, header: { longitudeDeg: -8 } })).toMatch(
      /One of the two signs is wrong/,
    );
  });

  test("near Greenwich, where the zone says nothing, the longitude's sign is named as another cause", () => {
    const { timeBase } = readPlanted({ place: { ...TURIN, longitudeDeg: -3 }, zoneH: 0, header: { longitudeDeg: 3 } });
    expect(timeBase.corrected).toBe(true);
    expect(timeBase.text).toMatch(/wrong sign of the longitude would look the same/);
  });

  test('a longitude that is off by no whole hour', () => {
    expect(refusalOf({ place: TURIN, zoneH: 1, header: { longitudeDeg: 80 } })).toMatch(
      /^line 1: the sun does not fit the labels: .* minutes before the label within .* W\/m2, 30 minutes before/,
    );
  });

  test("the latitude's sign, which is named", () => {
    expect(refusalOf({ header: { latitudeDeg: -INVENTED_PLACE.latitudeDeg } })).toMatch(
      /^weather file: the irradiance fits no place of the sun within a day: .* With latitude 34\.5 it closes within .*: its sign is wrong/,
    );
  });

  test('days and months swapped in the sun alone', () => {
    expect(refusalOf({ swappedSun: true })).toMatch(/fits no place of the sun.*day and month swapped\?/);
  });

  test('irradiance that follows no sun', () => {
    const change: Planted['change'] = (row, index) => {
      row.ghi = String((index * 7919) % 900);
      row.dni = String((index * 104_729) % 800);
    };
    expect(refusalOf({ change })).toMatch(/fits no place of the sun/);
  });
});

test('noise does not move the format', () => {
  const change: Planted['change'] = (row, index) => {
    // Some five per cent, without pattern.
    row.ghi = (Number(row.ghi) * (1 + ((index * 7919) % 101) / 600 - 1 / 12)).toFixed(1);
  };
  const { timeBase } = readPlanted({ change });
  expect(timeBase).toMatchObject({ usedShiftMin: -30, corrected: false });
  expect(timeBase.text).toMatch(/fit each other poorly/);
});

test('a file with global irradiance alone is taken by the rule of its format and split, and both are said', () => {
  const change: Planted['change'] = (row) => {
    row.dni = '9999';
    row.dhi = '9999';
  };
  const year = readPlanted({ change });
  expect(year.timeBase).toMatchObject({ foundShiftMin: null, residualWm2: null, usedShiftMin: -30, corrected: false });
  expect(year.timeBase.text).toMatch(/Not checked/);
  expect(year.notes.join(' ')).toMatch(/split into direct and diffuse after Erbs 1982: \d{4} hours/);
  for (let row = 0; row < 8760; row += 11) {
    const { ghi, dni, dhi, sunUtc } = year.at(row);
    const { elevationDeg } = sunPosition(sunUtc, year.latitudeDeg, year.longitudeDeg);
    const level = dni * Math.sin((Math.max(elevationDeg, 0) * Math.PI) / 180);
    expect(Math.abs(ghi - level - dhi)).toBeLessThan(0.1);
  }
});
