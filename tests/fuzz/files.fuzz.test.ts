/** Weather files, tables and links that were harmed on their way: read, or refused in the words of their reader, soon. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import {
  DEMO_SITE,
  parseSite,
  readWeather,
  SiteError,
  SiteLinkError,
  siteLinkFragment,
  siteOfLink,
  WeatherFileError,
} from '../../model/index.ts';
import { BadInput } from '../../server/bad-input.ts';
import { matchColumns } from '../../server/screening/columns.ts';
import { checkRows } from '../../server/screening/first-rows.ts';
import { sniffTable } from '../../server/screening/sniff.ts';
import { tableSource } from '../../server/screening/source.ts';
import { epwLines, pvgisLines, textOf, tmy3Lines } from '../model/climate/weather/invented-files.ts';
import { LONGEST_MS, processorMs, share } from './odd-values.ts';
import { PATIENCE_MS, rounds } from './rounds.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const ODD_CELLS = [
  '',
  ' ',
  '１２',
  '1e308',
  '-0',
  '5e-324',
  'NaN',
  '9999',
  '"',
  '""',
  '"a',
  '=1+1',
  '\u0000',
  '\ufeff',
  '12,5',
];

/** A change of a text, at a share of its length. */
const harm = fc.array(
  fc.record({
    at: share,
    cut: fc.oneof(fc.nat({ max: 5 }), fc.nat({ max: 5000 })),
    put: fc.oneof(
      fc.constantFrom(...ODD_CELLS, '\n', '\r\n', ',', ';', '\t'),
      fc.string({ unit: 'binary', maxLength: 30 }),
    ),
  }),
  { minLength: 1, maxLength: 5 },
);

function harmed(text: string, harms: readonly { at: number; cut: number; put: string }[]): string {
  return harms.reduce((now, { at, cut, put }) => {
    const from = Math.floor(at * now.length);
    return now.slice(0, from) + put + now.slice(from + cut);
  }, text);
}

describe('a weather file', () => {
  const files = [epwLines(), tmy3Lines(), pvgisLines()].map((lines) => textOf(lines));
  test.each(['EPW', 'TMY3', 'PVGIS'])('of %s that was harmed is a year of numbers or is refused', (name) => {
    const text = files[['EPW', 'TMY3', 'PVGIS'].indexOf(name)] ?? '';
    fc.assert(
      fc.property(fc.oneof(harm, headHarm), (harms) => {
        const ms = processorMs(() => {
          try {
            const year = readWeather(harmed(text, harms));
            expect(year.length).toBeGreaterThan(0);
            for (const i of [0, year.length - 1]) expect(Number.isFinite(year.at(i).airC)).toBe(true);
          } catch (error) {
            if (!(error instanceof WeatherFileError)) throw error;
            expect(error.message).not.toBe('');
          }
        });
        expect(ms).toBeLessThan(LONGEST_MS);
      }),
      rounds(25),
    );
  });

  test('that is no weather file is refused', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: 'binary' }), fc.array(fc.constantFrom(...ODD_CELLS, ',', '\n'))),
        (input) => {
          const text = typeof input === 'string' ? input : input.join('');
          expect(() => readWeather(text)).toThrow(WeatherFileError);
        },
      ),
    );
  });
});

/** Most of what a reader decides stands in the first lines. */
const headHarm = harm.map((harms) => harms.map(({ at, cut, put }) => ({ at: at * 0.002, cut: cut % 40, put })));

describe('a table of addresses', () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'shadeside-fuzz-'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const right = ['id,latitude,longitude,power,finish,note', '1,33.1,-112.2,15 W,white,"a, b"', '2,31.5,-110,20,,']
    .concat(Array.from({ length: 20 }, (_, k) => `${k + 3},${30 + k / 10},-111,12,light grey,x`))
    .join('\n');

  test('that was harmed is checked row by row or refused', async () => {
    const path = join(folder, 'table.csv');
    await fc.assert(
      fc.asyncProperty(harm, fc.constantFrom(',', ';', '\t'), async (harms, delimiter) => {
        writeFileSync(path, harmed(right.replaceAll(',', delimiter), harms.map(small)));
        try {
          const source = tableSource(await sniffTable(path));
          const columns = matchColumns(source.header, {});
          const settings = { header: source.header, columns, base: {}, climate: { named: undefined, stations: [] } };
          for (const { problems } of checkRows(source.first, settings)) {
            for (const { reason } of problems) expect(reason).not.toBe('');
          }
          let rows = 0;
          for await (const records of source.records()) rows += records.length;
          expect(rows).toBeGreaterThanOrEqual(source.first.length);
        } catch (error) {
          if (!(error instanceof BadInput)) throw error;
          expect(error.lines.length).toBeGreaterThan(0);
        }
      }),
      rounds(300),
    );
  });

  const small = <H extends { cut: number }>({ cut, ...rest }: H) => ({ ...rest, cut: cut % 60 });
});

describe('a link', () => {
  const link = siteLinkFragment(DEMO_SITE);
  test('that was harmed opens the same site, another one that is checked, or is refused', () => {
    fc.assert(
      fc.property(harm, (harms) => {
        try {
          parseSite(siteOfLink(harmed(link, harms)));
        } catch (error) {
          if (!(error instanceof SiteLinkError) && !(error instanceof SiteError)) throw error;
        }
      }),
      rounds(500),
    );
  });
});
