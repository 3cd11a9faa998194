import { describe, expect, test } from 'vitest';
import { compassPoint, compassPointDeg, wrapDegrees } from '../../model/compass.ts';
import {
  formatQuantity,
  fromDisplay,
  type QuantityKind,
  toDisplay,
  unitSymbol,
  usualUnits,
} from '../../model/index.ts';
import { readQuantityText } from '../../model/unit-text.ts';
import { QUANTITY_KINDS, readNumberText } from '../../model/units.ts';

const KINDS = Object.keys(QUANTITY_KINDS) as QuantityKind[];

describe('reading text with a unit', () => {
  test.each([
    ['12 in', 'smallLength', 0.3048],
    ['12"', 'smallLength', 0.3048],
    ["5'", 'length', 1.524],
    ['140 cm', 'length', 1.4],
    ['50 ft', 'length', 15.24],
    ['115 degF', 'temperature', 46.1111111111],
    ['115 °F', 'temperature', 46.1111111111],
    ['46°C', 'temperature', 46],
    ['319.15 K', 'temperature', 46],
    ['25 degF', 'temperatureDifference', 13.8888888889],
    ['14 degC', 'temperatureDifference', 14],
    ['14 K', 'temperatureDifference', 14],
    ['2 mph', 'speed', 0.89408],
    ['10 km/h', 'speed', 2.77777777778],
    ['20 W', 'power', 20],
    ['7 lb', 'mass', 3.17514659],
    ['40 %', 'ratio', 0.4],
    ['-8', 'angle', -8],
    ['30°', 'angle', 30],
    ['WNW', 'bearing', 292.5],
    ['.5', 'ratio', 0.5],
  ] as const)('%s as %s', (text, kind, si) => {
    expect(readQuantityText(text, kind)).toBeCloseTo(si, 9);
  });

  test.each([
    ['12 kg', 'length'],
    ['in', 'length'],
    ['', 'length'],
    ['north-ish', 'bearing'],
    ['1e999', 'length'],
    ['12 in in', 'length'],
    ['1;2', 'length'],
    ['import("x")', 'length'],
    ['3 * 4', 'length'],
    ['NaN', 'power'],
    ['Infinity', 'power'],
    ['１２', 'length'],
    ['5 W', 'ratio'],
    ['9'.repeat(50), 'length'],
  ] as const)('%j is no %s', (text, kind) => {
    expect(readQuantityText(text, kind)).toBeNull();
  });

  test('without the unit library plain numbers are read, units are not', () => {
    expect(readNumberText('0.3', 'length')).toBe(0.3);
    expect(readNumberText('12 in', 'length')).toBeNull();
  });
});

describe('showing', () => {
  test.each(KINDS)('%s: there and back in both systems', (kind) => {
    for (const system of ['metric', 'us'] as const) {
      expect(fromDisplay(kind, toDisplay(kind, 12.34, system), system)).toBeCloseTo(12.34, 9);
    }
  });

  test('a temperature has an offset, a difference has none', () => {
    expect(formatQuantity('temperature', 46.1, 'us')).toBe('115 °F');
    expect(formatQuantity('temperatureDifference', 10, 'us')).toBe('18 °F');
    expect(formatQuantity('temperature', -0.04, 'metric')).toBe('0.0 °C');
    expect(formatQuantity('length', 15.24, 'us')).toBe('50.0 ft');
    expect(formatQuantity('bearing', 225, 'metric')).toBe('225°');
    expect(formatQuantity('ratio', 0.4, 'us')).toBe('0.40');
  });

  test('each unit has one spelling', () => {
    const allowed = new Set([
      '',
      '°',
      '°C',
      '°F',
      'K',
      'W',
      'W/m²',
      'kg',
      'lb',
      'm',
      'mm',
      'ft',
      'in',
      'cm²',
      'in²',
      'mm²',
      'm/s',
      'mph',
    ]);
    for (const kind of KINDS)
      for (const system of ['metric', 'us'] as const) expect(allowed).toContain(unitSymbol(kind, system));
  });

  test('units follow the place', () => {
    expect(usualUnits('America/Phoenix')).toBe('us');
    expect(usualUnits('America/Indiana/Knox')).toBe('us');
    expect(usualUnits('Pacific/Honolulu')).toBe('us');
    expect(usualUnits('America/Hermosillo')).toBe('metric');
    expect(usualUnits('Europe/Madrid')).toBe('metric');
  });
});

test('compass points', () => {
  expect(compassPoint(8)).toBe('N');
  expect(compassPoint(200)).toBe('SSW');
  expect(compassPoint(359)).toBe('N');
  expect(compassPoint(-45)).toBe('NW');
  expect(compassPointDeg('sse')).toBe(157.5);
  expect(compassPointDeg('X')).toBeNull();
  expect(wrapDegrees(-1e-20)).toBe(0);
  expect(wrapDegrees(-90)).toBe(270);
  expect(wrapDegrees(720)).toBe(0);
});
