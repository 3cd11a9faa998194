import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FIELDS, fieldAt, toDisplay } from '../../model/index.ts';
import { rangeText, shortQuantity, shownText, typedValue } from '../../web/site/quantity-text.ts';

describe('typedValue', () => {
  test.each([
    ['', 'smallLength', 'us', undefined],
    ['  ', 'smallLength', 'us', undefined],
    ['12', 'smallLength', 'us', 0.3048],
    ['300', 'smallLength', 'metric', 0.3],
    ['-40', 'temperature', 'us', -40],
    ['.5', 'ratio', 'metric', 0.5],
    ['0,5', 'ratio', 'metric', 0.5],
    ['12,25', 'smallLength', 'metric', 0.01225],
    ['12 in', 'smallLength', 'metric', '12 in'],
    ['SW', 'bearing', 'us', 'SW'],
    ['abc', 'power', 'us', 'abc'],
    ['0x10', 'power', 'us', '0x10'],
  ] as const)('%j of a %s in %s units is %j', (text, kind, units, value) => {
    expect(typedValue(text, kind, units)).toBe(value);
  });

  test('a comma before three digits may part thousands and is left to the model to refuse', () => {
    expect(typedValue('1,083', 'length', 'us')).toBe('1,083');
  });
});

describe('shownText', () => {
  test.each([
    [0.28, 'smallLength', 'metric', '280'],
    [0.28, 'smallLength', 'us', '11.02'],
    [0.314325, 'smallLength', 'us', '12.375'],
    [15.24, 'length', 'us', '50'],
    [330, 'length', 'us', '1083'],
    [-113.4567, 'angle', 'us', '-113.4567'],
    ['12 in', 'smallLength', 'us', '12 in'],
    [undefined, 'ratio', 'us', ''],
    [null, 'ratio', 'us', ''],
    [Number.NaN, 'ratio', 'us', ''],
  ] as const)('%j of a %s in %s units reads %j', (value, kind, units, text) => {
    expect(shownText(value, kind, units)).toBe(text);
  });

  test('what a person types in a unit comes back as typed in that unit', () => {
    const typed = fc.integer({ min: -99_999, max: 99_999 }).map((hundredths) => hundredths / 100);
    const kinds = fc.constantFrom('smallLength', 'length', 'temperature', 'speed', 'mass', 'ratio' as const);
    fc.assert(
      fc.property(typed, kinds, fc.constantFrom('us', 'metric' as const), (number, kind, units) => {
        const si = typedValue(String(number), kind, units);
        expect(Number(shownText(si, kind, units))).toBe(number);
        expect(toDisplay(kind, Number(si), units)).toBeCloseTo(number, 6);
      }),
    );
  });
});

test('quantities and ranges are written short, with their unit', () => {
  expect(shortQuantity(-113.4, 'angle', 'us')).toBe('-113.4°');
  expect(shortQuantity(14, 'power', 'us')).toBe('14\u00a0W');
  const width = fieldAt('box.widthM');
  expect(width && rangeText(width, 'metric')).toBe('20 to 3000\u00a0mm');
  expect(rangeText(FIELDS['ground.albedo'], 'us')).toBe('0 to 1');
});
