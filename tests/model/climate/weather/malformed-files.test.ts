/** Files that no year can be made of: each gets one error that names its line. */
import { describe, expect, test } from 'vitest';
import { WeatherFileError } from '../../../../model/climate/weather/weather-file-error.ts';
import { readWeather, readWeatherLines, SiteError } from '../../../../model/index.ts';
import { epwLines, pvgisLines, textOf, tmy3Lines } from './invented-files.ts';

const EPW = epwLines();
const TMY3 = tmy3Lines();
const PVGIS = pvgisLines();
const EPW_HEAD = 8;
const PVGIS_HEAD = 18;

function errorOf(read: () => unknown): WeatherFileError {
  try {
    read();
  } catch (error) {
    if (error instanceof WeatherFileError) return error;
    throw error;
  }
  throw new Error('the file was read');
}

/** A file with one line changed, counted from 1. */
const changed = (lines: readonly string[], line: number, change: (text: string) => string): string =>
  textOf(lines.map((text, k) => (k + 1 === line ? change(text) : text)));

/** The same with one field of a line replaced. */
const withField = (lines: readonly string[], line: number, index: number, text: string): string =>
  changed(lines, line, (old) =>
    old
      .split(',')
      .map((field, k) => (k === index ? text : field))
      .join(','),
  );

const without = (lines: readonly string[], line: number): string => textOf(lines.filter((_, k) => k + 1 !== line));

test.each<[string, string, number, RegExp]>([
  ['empty', '', 0, /is empty/],
  ['one blank line', '\n', 1, /first line is blank/],
  ['binary', '\x7fELF\x02\x01\x00\x00\x00\n\x00', 1, /binary/],
  ['two bytes a character', textOf(EPW).slice(0, 2000).replace(/./g, '$&\0'), 1, /binary or not in UTF-8/],
  ['binary in the middle', changed(EPW, 500, (l) => `${l.slice(0, 40)}\0\0`), 500, /binary/],
  ['something else', 'name,value\na,1\n', 1, /"name,value" starts no weather file.*EPW, TMY3, PVGIS csv/],
  ['a web page', '<!doctype html>\n<html>\n', 1, /starts no weather file/],
  ['json', `{"inputs": ${'1'.repeat(500)}}`, 1, /starts no weather file/],
  ['commas', ',,,,,\n,,,,,\n', 1, /first line is blank/],

  ['EPW: header cut', textOf(EPW.slice(0, 4)), 4, /ends within its header/],
  ['EPW: no rows', textOf(EPW.slice(0, 8)), 8, /ends after 0 of 8760 hours/],
  [
    'EPW: cut in a row',
    textOf(EPW.slice(0, 5000)).slice(0, -60),
    5000,
    /columns in the last line: is the file cut off\?/,
  ],
  [
    'EPW: cut between rows',
    textOf(EPW.slice(0, 5000)),
    5000,
    /ends after 4992 of 8760 hours; 28 July 01:00 is to follow/,
  ],
  ['EPW: 8,759 rows', textOf(EPW.slice(0, -1)), 8767, /ends after 8759 of 8760 hours; 31 December 24:00/],
  ['EPW: a row missing', without(EPW, 1000), 1000, /11 February 09:00 stands where 11 February 08:00 belongs/],
  ['EPW: a row twice', textOf([...EPW.slice(0, 1000), ...EPW.slice(999)]), 1001, /11 February 08:00 stands where/],
  ['EPW: a row too many', textOf([...EPW, EPW[8] as string]), 8769, /after the last hour of the year/],
  ['EPW: two files in one', textOf([...EPW, ...EPW]), 8769, /"LOCATION,.*stands where a row belongs/],
  ['EPW: two first lines', textOf([EPW[0] as string, ...EPW]), 2, /header "LOCATION"; allowed: "DESIGN CONDITIONS"/],
  ['EPW: two headers', textOf([...EPW.slice(0, 8), ...EPW]), 9, /"LOCATION,.*stands where a row belongs/],
  [
    'EPW: headers in another order',
    textOf([EPW[0] as string, EPW[2] as string, ...EPW.slice(1)]),
    2,
    /header "TYPICAL/,
  ],
  ['EPW: latitude of text', withField(EPW, 1, 6, 'north'), 1, /latitude "north"; allowed: -90 to 90/],
  ['EPW: latitude 134', withField(EPW, 1, 6, '134.5'), 1, /latitude "134.5"/],
  ['EPW: longitude blank', withField(EPW, 1, 7, ''), 1, /longitude ""/],
  ['EPW: zone in minutes', withField(EPW, 1, 8, '-420'), 1, /time zone "-420"; allowed: -12 to 14/],
  ['EPW: two records an hour', withField(EPW, 8, 2, '2'), 8, /2 records per hour; allowed: 1/],
  ['EPW: two periods', withField(EPW, 8, 1, '2'), 8, /2 data periods/],
  ['EPW: a column short', changed(EPW, 700, (l) => l.replace(/,[^,]*$/, '')), 700, /34 columns; allowed: 35/],
  ['EPW: a column more', changed(EPW, 700, (l) => `${l},7`), 700, /36 columns; allowed: 35/],
  [
    'EPW: 20 columns',
    textOf(EPW.map((l, k) => (k < 8 ? l : l.split(',').slice(0, 20).join(',')))),
    9,
    /20 columns; allowed: 32 to 35/,
  ],
  [
    'EPW: text in a number',
    withField(EPW, 700, 6, 'warm'),
    700,
    /air temperature "warm" is not a number; allowed: -90 to 65 degC/,
  ],
  ['EPW: NaN', withField(EPW, 700, 13, 'NaN'), 700, /global irradiance "NaN" is not a number/],
  ['EPW: Infinity', withField(EPW, 700, 13, 'Infinity'), 700, /"Infinity" is not a number/],
  ['EPW: a decimal comma', withField(EPW, 700, 6, '"12,5"'), 700, /"12,5" is not a number/],
  ['EPW: hexadecimal', withField(EPW, 700, 6, '0x10'), 700, /"0x10" is not a number/],
  ['EPW: kelvin', withField(EPW, 700, 6, '89.1'), 700, /air temperature 89.1 degC cannot be/],
  [
    'EPW: beyond the sun',
    withField(EPW, 700, 14, '1800'),
    700,
    /direct irradiance 1800 W\/m2 cannot be; allowed: -30 to 1420/,
  ],
  ['EPW: below nothing', withField(EPW, 700, 13, '-400'), 700, /global irradiance -400/],
  ['EPW: hurricane', withField(EPW, 700, 21, '400'), 700, /wind 400 m\/s/],
  ['EPW: pressure in millibars', withField(EPW, 700, 9, '909'), 700, /pressure 909 Pa cannot be/],
  ['EPW: month 13', withField(EPW, 700, 1, '13'), 700, /month 13; allowed: 1 to 12/],
  ['EPW: 31 April', withField(EPW, 3000, 2, '31'), 3000, /day 31; allowed: 1 to 30 in (April|June)|stands where/],
  ['EPW: hour 25', withField(EPW, 700, 3, '25'), 700, /hour 25; allowed: 0 to 24/],
  ['EPW: hour of text', withField(EPW, 700, 3, 'ten'), 700, /hour "ten" is not a whole number/],
  [
    'EPW: days and months swapped',
    textOf(EPW.map((l) => l.replace(/^2003,(\d+),(\d+),/, '2003,$2,$1,'))),
    33,
    /are day and month swapped\?/,
  ],
  ['EPW: text after the rows', textOf([...EPW, 'made with care']), 8769, /"made with care" stands where a row belongs/],

  ['TMY3: first line without numbers', changed(TMY3, 1, () => 'somewhere'), 1, /time zone ""/],
  [
    'TMY3: no wind',
    textOf(TMY3.map((l, k) => (k === 0 ? l : l.replace(/,[^,]*$/, '')))),
    2,
    /column "wspd" is missing; allowed: columns ghi, dry-bulb, wspd/,
  ],
  [
    'TMY3: a column twice',
    changed(TMY3, 2, (l) => l.replace('DNI source', 'GHI (W/m^2)')),
    2,
    /column "ghi" stands there twice/,
  ],
  ['TMY3: no names', without(TMY3, 2), 1, /starts no weather file/],
  ['TMY3: 8,759 rows', textOf(TMY3.slice(0, -1)), 8761, /ends after 8759/],
  ['TMY3: date of text', withField(TMY3, 50, 0, 'Monday'), 50, /"Monday.* stands where a row belongs/],
  ['TMY3: date turned', withField(TMY3, 50, 0, '1991-01-02'), 50, /date "1991-01-02"; allowed: MM\/DD\/YYYY/],
  [
    'TMY3: days and months swapped',
    textOf(TMY3.map((l) => l.replace(/^(\d\d)\/(\d\d)/, '$2/$1'))),
    27,
    /are day and month swapped\?/,
  ],
  ['TMY3: time of text', withField(TMY3, 50, 1, 'noon'), 50, /time "noon"; allowed: HH:MM/],
  ['TMY3: half hours between', withField(TMY3, 50, 1, '24:30'), 50, /stands where 2 January 24:00 belongs/],
  ['TMY3: two headers', textOf([...TMY3.slice(0, 2), ...TMY3]), 3, /3 columns|7 columns/],
  ['TMY3: half-open quote', changed(TMY3, 50, (l) => `"${l}`), 50, /columns/],

  ['PVGIS: no elevation', without(PVGIS, 3), PVGIS_HEAD - 1, /elevation is missing in the header/],
  ['PVGIS: no names', without(PVGIS, PVGIS_HEAD), 41, /no line with the names of the columns/],
  ['PVGIS: header alone', textOf(PVGIS.slice(0, 3)), 3, /no line with the names of the columns/],
  [
    'PVGIS: no beam',
    changed(PVGIS, PVGIS_HEAD, (l) => l.replace('Gb(n)', 'Gx')),
    PVGIS_HEAD,
    /column "gb\(n\)" is missing/,
  ],
  [
    'PVGIS: an hourly series',
    changed(PVGIS, PVGIS_HEAD, () => 'time,G(i),H_sun,T2m,WS10m,Int'),
    PVGIS_HEAD,
    /is missing/,
  ],
  [
    'PVGIS: 8,759 rows, then the legend',
    without(PVGIS, PVGIS_HEAD + 8760),
    PVGIS_HEAD + 8761,
    /"T2m.*stands where a row belongs \(31 December 23:00\)/,
  ],
  [
    'PVGIS: time of text',
    changed(PVGIS, 60, (l) => l.replace(':', ' ')),
    60,
    /time "\d{8} \d{4}"; allowed: YYYYMMDD:HHMM/,
  ],
  [
    'PVGIS: offset of text',
    withField(PVGIS, 4, 0, 'Irradiance Time Offset (h): soon'),
    4,
    /irradiance time offset "soon"/,
  ],
])('%s', (_, text, line, message) => {
  const error = errorOf(() => readWeather(text));
  expect(error.message).toMatch(message);
  expect(error.message).not.toMatch(/\n/);
  expect(error.problems).toHaveLength(1);
  expect(error.problems[0]).toMatchObject({ line, path: line === 0 ? 'weather file' : `line ${line}` });
  expect(error.name).toBe('WeatherFileError');
  // Whoever tells people about bad input tells them about this, too.
  expect(error).toBeInstanceOf(SiteError);
});

test('files read to the row before their error are otherwise good', () => {
  expect(EPW).toHaveLength(EPW_HEAD + 8760);
  for (const lines of [EPW, TMY3, PVGIS]) expect(() => readWeather(textOf(lines))).not.toThrow();
});

describe('a hundred megabytes are not swallowed', () => {
  const BYTES = 100_000_000;
  const COMMAS = ','.repeat(34);

  function* endless(head: readonly string[], row: string, taken: { lines: number }): Generator<string> {
    for (const line of head) yield line;
    for (let bytes = 0; bytes < BYTES; bytes += row.length + 1) {
      taken.lines++;
      yield row;
    }
  }

  test.each<[string, readonly string[], string, number]>([
    ['rows of commas', [], COMMAS, 2],
    ['rows of commas after a good header', EPW.slice(0, EPW_HEAD), COMMAS, 2],
    ['rows of commas after a whole year', EPW, COMMAS, 20_000],
    ['blank lines after a header', PVGIS.slice(0, PVGIS_HEAD), '', 20_000],
    ['header lines', PVGIS.slice(0, 3), '1,2005', 50],
    ['one row again and again', EPW.slice(0, EPW_HEAD), EPW[EPW_HEAD] as string, 3],
    ['a good year a hundred times', EPW, EPW[EPW_HEAD] as string, 2],
  ])('%s', (_, head, row, most) => {
    const taken = { lines: 0 };
    const start = performance.now();
    errorOf(() => readWeatherLines(endless(head, row, taken)));
    expect(taken.lines).toBeLessThanOrEqual(most);
    expect(performance.now() - start).toBeLessThan(2000);
  });

  test('one line of commas, as text and as a line', () => {
    const commas = ','.repeat(BYTES);
    const before = process.memoryUsage().rss;
    const start = performance.now();
    for (const read of [() => readWeather(commas), () => readWeatherLines([commas])]) {
      expect(errorOf(read).message).toMatch(/^line 1: a line of 100000000 characters/);
    }
    expect(performance.now() - start).toBeLessThan(2000);
    expect(process.memoryUsage().rss - before).toBeLessThan(300_000_000);
  });
});

test('what is quoted from a file is short and prints', () => {
  const { message } = errorOf(() => readWeather(`\u001b[31mred\u0007${'x'.repeat(5000)}\n`));
  expect(message.length).toBeLessThan(250);
  expect(message).toMatch(/^[\x20-\x7e…·]+$/);
});
