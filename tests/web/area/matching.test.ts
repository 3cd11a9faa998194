import { describe, expect, test } from 'vitest';
import { fieldOfColumn, matched, missing, parted, rejectedWords } from '../../../web/area/matching.ts';

const FIELDS = [
  { field: 'latitude', required: true, what: 'latitude' },
  { field: 'longitude', required: true, what: 'longitude' },
  { field: 'altitude', required: false, what: 'altitude' },
  { field: 'power', required: false, what: 'power' },
];
const MATCHING = { latitude: null, longitude: 'x', altitude: null, power: 'watts' };

describe('matching', () => {
  test('a column stands for one field only', () => {
    expect(matched(MATCHING, 'latitude', 'x')).toEqual({
      latitude: 'x',
      longitude: null,
      altitude: null,
      power: 'watts',
    });
    expect(matched(MATCHING, 'power', null)).toMatchObject({ power: null, longitude: 'x', altitude: null });
  });

  test('what the table must say and does say comes first, nothing is lost', () => {
    const { here, others } = parted(FIELDS, MATCHING);
    expect(here.map(({ field }) => field)).toEqual(['latitude', 'longitude', 'power']);
    expect(others.map(({ field }) => field)).toEqual(['altitude']);
    expect(missing(FIELDS, MATCHING).map(({ field }) => field)).toEqual(['latitude']);
    expect(fieldOfColumn(MATCHING)).toEqual(
      new Map([
        ['x', 'longitude'],
        ['watts', 'power'],
      ]),
    );
  });
});

test('a row with two problems is one row', () => {
  const problem = (row: number) => ({ row, column: 'x', value: '', reason: 'wrong' });
  const words = (rows: number[], rowsChecked: number) =>
    rejectedWords({ firstRows: [], rowsChecked, problems: rows.map(problem) });
  expect(words([3, 3, 9], 50)).toMatch(/^2 of the first 50 rows would be rejected\. The others are screened/);
  expect(words([], 50)).toBe('None of the first 50 rows would be rejected.');
  expect(words([2, 3], 2)).toBe('All of the first 2 rows would be rejected.');
  expect([words([], 1), words([2], 1)]).toEqual([
    'The only row looked at would be screened.',
    'The only row looked at would be rejected.',
  ]);
});
