import { describe, expect, test } from 'vitest';
import type { WeatherYear } from '../../../../model/climate/weather/weather-year.ts';
import { readWeather, readWeatherLines, sunPosition } from '../../../../model/index.ts';
import { epwLines, INVENTED_PLACE, pvgisLines, textOf, tmy3Lines } from './invented-files.ts';

const EPW = epwLines();
const TMY3 = tmy3Lines();
const PVGIS = pvgisLines();

/** 2 July in the afternoon, where all columns have something to say. */
const ROW = 4384;

describe('the three formats, told apart by what stands in them', () => {
  test('EPW', () => {
    const year = readWeather(textOf(EPW));
    expect(year).toMatchObject({ ...INVENTED_PLACE, format: 'EPW', title: 'Invented Wells, NIL', length: 8760 });
    expect(year).toMatchObject({ source: 'made for tests', zoneOffsetH: -7, windHeightM: 10, notes: [] });
    expect(year.timeBase).toMatchObject({ declaredShiftMin: -30, usedShiftMin: -30, corrected: false });
    const fields = (EPW[8 + ROW] as string).split(',').map(Number);
    expect(year.at(ROW)).toEqual({
      sunUtc: new Date('2026-07-02T23:30:00Z'),
      airC: fields[6],
      dewPointC: 2,
      ghi: fields[13],
      dni: fields[14],
      dhi: fields[15],
      windMs: fields[21],
      pressurePa: 90_900,
      horizontalInfraredWm2: 310,
    });
  });

  test('TMY3: a quoted name with a comma, millibars, no infrared', () => {
    const year = readWeather(textOf(TMY3));
    expect(year).toMatchObject({ ...INVENTED_PLACE, format: 'TMY3', title: 'WELLS, INVENTED, XX', zoneOffsetH: -7 });
    const { horizontalInfraredWm2, ...hour } = readWeather(textOf(EPW)).at(ROW);
    expect(horizontalInfraredWm2).toBe(310);
    expect(year.at(ROW)).toEqual(hour);
  });

  test('PVGIS csv: UTC, snapshots by the header, a legend after the rows', () => {
    const year = readWeather(textOf(PVGIS));
    expect(year).toMatchObject({ ...INVENTED_PLACE, format: 'PVGIS csv', zoneOffsetH: -7, windHeightM: 10 });
    expect(year.timeBase.usedShiftMin).toBeCloseTo(10.566, 9);
    expect(year.timeBase.corrected).toBe(false);
    expect(year.at(0).sunUtc.toISOString()).toBe('2026-01-01T00:10:33.960Z');
    expect(year.at(8759).sunUtc.toISOString()).toBe('2026-12-31T23:10:33.960Z');
    // 40 % at 20 degC is 6.0 degC by any psychrometric table.
    const hour = Array.from({ length: 8760 }, (_, k) => year.at(k)).find(({ airC }) => airC === 20);
    expect(hour?.dewPointC).toBeCloseTo(6, 1);
    expect(year.notes.join(' ')).toMatch(/different years, 2005 to 2016.*Dew point made .* 8760 hours/);
  });

  test('there is no hour before the first and after the last', () => {
    const year = readWeather(textOf(EPW));
    for (const row of [-1, 8760, 0.5, Number.NaN]) expect(() => year.at(row)).toThrow(RangeError);
  });
});

describe('the same year, written in other ways', () => {
  const plain = readWeather(textOf(EPW));
  const tmy3 = readWeather(textOf(TMY3));
  const pvgis = readWeather(textOf(PVGIS));
  const first = (lines: readonly string[], line: string) => [line, ...lines.slice(1)];
  /** Every row's date and time through a function. */
  const relabelled = (label: (date: string, hour: number) => string) =>
    TMY3.map((line) => line.replace(/^(\d\d\/\d\d\/\d{4}),(\d\d):00/, (_, date, hour) => label(date, Number(hour))));

  test.each<[string, WeatherYear, string | Iterable<string>]>([
    ['byte order mark', plain, `\uFEFF${textOf(EPW)}`],
    ['carriage returns', plain, textOf(EPW, '\r\n')],
    ['no end of the last line', plain, EPW.join('\n')],
    ['blank lines and blank rows at the end', plain, `${textOf(EPW)}\n\n,,,,,\n`],
    ['lines with their ends', plain, EPW.map((line) => `${line}\r\n`)],
    ['SAVING for SAVINGS', plain, textOf(EPW).replace('SAVINGS', 'SAVING')],
    ['codes without decimals and with', plain, textOf(EPW).replaceAll('999.000', '999.')],
    ['blank columns at the end', tmy3, textOf(TMY3.map((line) => `${line},,`))],
    [
      'blank columns at the end of the rows alone',
      tmy3,
      textOf([...TMY3.slice(0, 2), ...TMY3.slice(2).map((l) => `${l},`)]),
    ],
    ['a bracket too many', tmy3, textOf(TMY3).replace('DNI (W/m^2)', 'DNI (W/m^2))')],
    ['a byte that is no UTF-8', tmy3, textOf(first(TMY3, (TMY3[0] as string).replace('INVENTED"', 'INVENTED"')))],
    [
      'midnight as 00:00 of the day that ends',
      tmy3,
      textOf(relabelled((d, h) => `${d},${String(h % 24).padStart(2, '0')}:00`)),
    ],
    [
      'midnight as 00:00 of the next day',
      tmy3,
      textOf(relabelled((d, h) => (h < 24 ? `${d},${h}:00` : `${nextDay(d)},0:00`))),
    ],
    ['quoted fields', pvgis, textOf(PVGIS.map((line) => line.replace(/^(\d{8}:\d{4}),/, '"$1",')))],
    ['tabs in the header', pvgis, textOf(PVGIS.map((line) => line.replace('): ', '):\t')))],
  ])('%s', (_, expected, file) => {
    const year = typeof file === 'string' ? readWeather(file) : readWeatherLines(file);
    expect(year).toMatchObject({ latitudeDeg: expected.latitudeDeg, longitudeDeg: expected.longitudeDeg });
    expect(year.timeBase).toEqual(expected.timeBase);
    expect(year.notes).toEqual(expected.notes);
    for (let row = 0; row < 8760; row += 7) expect(year.at(row)).toEqual(expected.at(row));
  });

  test('old EPW files without albedo and rain', () => {
    const short = EPW.map((line, k) => (k < 8 ? line : line.split(',').slice(0, 32).join(',')));
    expect(readWeather(textOf(short)).at(ROW)).toEqual(plain.at(ROW));
  });

  test('hours named by their start: the sun is found half an hour after the label', () => {
    const year = readWeather(textOf(relabelled((date, hour) => `${date},${hour - 1}:00`)));
    expect(year.timeBase.usedShiftMin).toBeCloseTo(30, 0);
    expect(year.timeBase.corrected).toBe(true);
    expect(year.at(ROW).ghi).toBe(tmy3.at(ROW).ghi);
    expect(Math.abs(year.at(ROW).sunUtc.getTime() - tmy3.at(ROW).sunUtc.getTime())).toBeLessThan(30_000);
  });
});

function nextDay(date: string): string {
  const [month, day, year] = date.split('/').map(Number) as [number, number, number];
  const next = new Date(Date.UTC(year, month - 1, day + 1));
  const two = (number: number) => String(number).padStart(2, '0');
  return `${two(next.getUTCMonth() + 1)}/${two(next.getUTCDate())}/${next.getUTCFullYear()}`;
}

describe('a leap day', () => {
  const leapDay = (last: string, ghi: string) =>
    Array.from({ length: 24 }, (_, k) => last.replace(/^2003,2,28,24/, `2004,2,29,${k + 1}`).replace('310', ghi));

  test('is left out of a real year of 8784 rows, and that is said', () => {
    const at = EPW.findIndex((line) => line.startsWith('2003,3,1,1,'));
    const lines = [...EPW.slice(0, at), ...leapDay(EPW[at - 1] as string, '333'), ...EPW.slice(at)];
    expect(lines).toHaveLength(8 + 8784);
    const year = readWeather(textOf(lines.map((line) => line.replace(/^2003,/, '2004,'))));
    expect(year.length).toBe(8760);
    expect(year.notes).toEqual(['29 February left out: 24 hours.']);
    const plain = readWeather(textOf(EPW));
    for (let row = 1400; row < 1440; row++) expect(year.at(row)).toEqual(plain.at(row));
  });

  test('that midnight of 28 February is written as stays', () => {
    const lines = TMY3.map((line) => line.replace(/^02\/28\/1991,24:00/, '02/29/1992,00:00'));
    expect(readWeather(textOf(lines)).notes).toEqual([]);
  });
});

test('the sun of an hour in which it rises or sets is that of the part it is up', () => {
  const { latitudeDeg, longitudeDeg } = INVENTED_PLACE;
  const isUp = (ms: number) => sunPosition(new Date(ms), latitudeDeg, longitudeDeg).elevationDeg > 0;
  const year = readWeather(textOf(EPW));
  let partial = 0;
  for (let row = 0; row < 8760; row += row < 1000 ? 1 : 7) {
    const sunMs = year.at(row).sunUtc.getTime();
    const end = Date.UTC(2026, 0, 1, 8 + row);
    if (isUp(end) === isUp(end - 3_600_000)) {
      expect(sunMs).toBe(end - 1_800_000);
      continue;
    }
    partial++;
    const up = Array.from({ length: 241 }, (_, k) => end - 3_600_000 + k * 15_000).filter(isUp);
    expect(Math.abs(sunMs - ((up[0] as number) + (up.at(-1) as number)) / 2)).toBeLessThan(150_000);
  }
  expect(partial).toBeGreaterThan(100);
});
