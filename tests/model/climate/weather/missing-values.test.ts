import { describe, expect, test } from 'vitest';
import { readWeather } from '../../../../model/index.ts';
import { pressureAtAltitude } from '../../../../model/solar/atmosphere.ts';
import { epwLines, type InventedRow, type Planted, textOf, tmy3Lines } from './invented-files.ts';

const NOON = 4379;
const MIDNIGHT = 4392;

/** A file with some fields of some rows set. */
const withRows = (first: number, count: number, fields: Partial<InventedRow>): Planted => ({
  change: (row, index) => {
    if (index >= first && index < first + count) Object.assign(row, fields);
  },
});
const epwWith = (...args: Parameters<typeof withRows>) => readWeather(textOf(epwLines(withRows(...args))));
const PLAIN = readWeather(textOf(epwLines()));

describe('short gaps', () => {
  test.each([
    ['99.9', 'a code'],
    ['99.90', 'with another decimal'],
    ['999', 'above it'],
    ['', 'nothing'],
  ])('air temperature %s (%s) is interpolated and said', (airC) => {
    const year = epwWith(NOON, 3, { airC });
    const [before, after] = [PLAIN.at(NOON - 1).airC, PLAIN.at(NOON + 3).airC];
    expect(year.at(NOON + 1).airC).toBeCloseTo((before + after) / 2, 9);
    expect(year.at(NOON).airC).toBeCloseTo(before + (after - before) / 4, 9);
    expect(year.notes).toEqual(['Air temperature interpolated: 3 hours in 1 gap.']);
  });

  test('at either end of the year the neighbour stands in', () => {
    expect(epwWith(0, 2, { windMs: '999' }).at(0).windMs).toBe(PLAIN.at(2).windMs);
    expect(epwWith(8759, 1, { windMs: '999' }).at(8759).windMs).toBe(PLAIN.at(8758).windMs);
  });

  test('six hours are bridged, seven refused with the line of the first', () => {
    expect(epwWith(NOON, 6, { airC: '99.9' }).notes).toHaveLength(1);
    expect(() => epwWith(NOON, 7, { airC: '99.9' })).toThrow(
      `line ${NOON + 9}: air temperature is missing for 7 hours from here on; allowed: gaps of up to 6 hours`,
    );
  });

  test('-9900 and blanks of TMY3', () => {
    const year = readWeather(textOf(tmy3Lines(withRows(NOON, 2, { windMs: '-9900', dewPointC: '' }))));
    expect(year.notes).toEqual([
      'Wind interpolated: 2 hours in 1 gap.',
      'Dew point made of air temperature and relative humidity: 2 hours.',
    ]);
  });
});

describe('what another quantity gives', () => {
  test('dew point, without humidity too', () => {
    expect(epwWith(0, 8760, { dewPointC: '99.9', humidity: '100' }).at(NOON).dewPointC).toBeCloseTo(
      PLAIN.at(NOON).airC,
      6,
    );
    expect(() => epwWith(NOON, 7, { dewPointC: '99.9', humidity: '999' })).toThrow(`line ${NOON + 9}: dew point`);
  });

  test('pressure', () => {
    const year = epwWith(0, 8760, { pressurePa: '999999' });
    expect(year.at(5).pressurePa).toBe(pressureAtAltitude(900));
    expect(year.notes).toEqual([expect.stringMatching(/^Pressure taken from the altitude, 9097\d Pa: 8760 hours\.$/)]);
  });

  test('infrared is bridged or left out, never made up', () => {
    expect(epwWith(NOON, 6, { infrared: '9999' }).at(NOON).horizontalInfraredWm2).toBe(310);
    expect('horizontalInfraredWm2' in epwWith(0, 8760, { infrared: '9999' }).at(NOON)).toBe(false);
    expect('horizontalInfraredWm2' in epwWith(0, 8760, { infrared: '0' }).at(NOON)).toBe(false);
    const partly = epwWith(NOON, 7, { infrared: '9999' });
    expect('horizontalInfraredWm2' in partly.at(0)).toBe(false);
    expect(partly.notes).toEqual(['Infrared from the sky is missing for too many hours and not used.']);
  });
});

describe('irradiance', () => {
  test('missing at night is none', () => {
    const year = epwWith(MIDNIGHT - 3, 7, { ghi: '9999', dni: '9999', dhi: '9999' });
    expect(year.at(MIDNIGHT)).toMatchObject({ ghi: 0, dni: 0, dhi: 0 });
    expect(year.notes).toEqual([]);
  });

  test('a day of it missing is refused', () => {
    expect(() => epwWith(NOON - 5, 8, { ghi: '9999', dni: '9999', dhi: '9999' })).toThrow(
      /global irradiance is missing for 8 hours/,
    );
  });

  test.each<[string, Partial<InventedRow>, RegExp]>([
    ['direct', { dni: '9999' }, /Direct irradiance made of global and diffuse: 1 hour\./],
    ['direct and diffuse', { dni: '9999', dhi: '9999' }, /split into direct and diffuse after Erbs 1982: 1 hour\./],
    ['diffuse', { dhi: '9999' }, /Diffuse irradiance made of global and direct: 1 hour\./],
    ['global', { ghi: '9999' }, /Global irradiance made of direct and diffuse: 1 hour\./],
  ])('%s alone missing', (_, fields, note) => {
    const year = epwWith(NOON, 1, fields);
    expect(year.notes.join(' ')).toMatch(note);
    const [hour, plain] = [year.at(NOON), PLAIN.at(NOON)];
    expect(hour.ghi).toBeCloseTo(plain.ghi, 0);
    // Erbs' mean sky is not the clear one.
    for (const part of ['dni', 'dhi'] as const) expect(Math.abs(hour[part] - plain[part])).toBeLessThan(100);
  });

  test('direct light is what the global has beyond the diffuse, which stays as measured', () => {
    const year = epwWith(0, 8760, { dni: '9999' });
    for (let row = 0; row < 8760; row++) expect(year.at(row).dhi).toBe(PLAIN.at(row).dhi);
    expect(Math.abs(year.at(NOON).dni - PLAIN.at(NOON).dni)).toBeLessThan(5);
    const low = epwWith(0, 8760, { dni: '9999', ghi: '1400', dhi: '1' });
    for (let row = 0; row < 8760; row++) expect(low.at(row).dni).toBeLessThan(1420);
  });

  test.each([
    ['direct', 'dni', 'Direct irradiance made of global and diffuse'],
    ['diffuse', 'dhi', 'Diffuse irradiance made of global and direct'],
    ['global', 'ghi', 'Global irradiance made of direct and diffuse'],
  ] as const)('noughts for %s alone all year are no measurement either', (name, key, made) => {
    const year = epwWith(0, 8760, { [key]: '0' });
    expect(year.notes[0]).toBe(
      `${name[0]?.toUpperCase()}${name.slice(1)} irradiance is 0 all year and taken as missing.`,
    );
    expect(year.notes.join(' ')).toContain(made);
    expect(Math.abs(year.at(NOON)[key] - PLAIN.at(NOON)[key])).toBeLessThan(5);
  });

  test('below nothing it is nothing, and said', () => {
    const year = epwWith(MIDNIGHT, 3, { ghi: '-2.5', dhi: '-0.0' });
    expect(year.at(MIDNIGHT).ghi).toBe(0);
    expect(Object.is(year.at(MIDNIGHT).dhi, 0)).toBe(true);
    expect(year.notes).toEqual(['Irradiance below 0 is taken as 0: 3 values.']);
  });

  test('noughts for direct and diffuse all year are no measurement', () => {
    expect(epwWith(0, 8760, { dni: '0', dhi: '0' }).notes.join(' ')).toMatch(/taken as missing.*split/);
    expect(() => epwWith(0, 8760, { ghi: '0', dni: '0', dhi: '0' })).toThrow(/no irradiance in the whole file/);
  });
});
