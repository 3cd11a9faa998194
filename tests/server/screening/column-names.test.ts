import fc from 'fast-check';
import { expect, test } from 'vitest';
import { columnNames, namesBeside } from '../../../server/screening/column-names.ts';

test('a column without a name goes by its number, and by another where that is taken', () => {
  expect(columnNames(['a', '', 'b', '', 'column_4', 'Column_4_2'])).toEqual([
    'a',
    'column_2',
    'b',
    'column_4_3',
    'column_4',
    'Column_4_2',
  ]);
});

test('a name that results have too is told apart, and from what was told apart before', () => {
  expect(namesBeside(['row', 'input_row', 'KIT', 'walls'], ['row', 'kit'])).toEqual([
    'input_row_2',
    'input_row',
    'input_KIT',
    'walls',
  ]);
});

test('a name with the apostrophe before a formula is told apart from the one that will get it', () => {
  expect(namesBeside(['=a', "'=a"], [])).toEqual(['=a', "input_'=a"]);
});

test('whatever the names are, all differ', () => {
  const name = fc.constantFrom(
    '',
    'row',
    'kit',
    'input_row',
    'input_row_2',
    'column_1',
    'column_2',
    'Column_2_2',
    "'kit",
  );
  fc.assert(
    fc.property(fc.uniqueArray(name, { selector: (one) => one.toLowerCase() || Math.random() }), (header) => {
      const own = ['row', 'kit'];
      const names = [...own, ...namesBeside(columnNames(header), own)];
      expect(new Set(names.map((one) => one.toLowerCase())).size).toBe(names.length);
    }),
  );
});
