import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Column, table } from '../../../server/terminal/table.ts';

const columns: Column<{ name: string; value: number }>[] = [
  { head: 'name', align: 'left', shrinks: true, text: ({ name }) => name },
  { head: 'value', text: ({ value }) => value.toFixed(1) },
];

test('columns line up, numbers at their right', () => {
  const rows = [
    { name: 'north', value: 3 },
    { name: 'Südwand', value: 12.5 },
  ];
  expect(table(rows, columns)).toBe(['name     value', 'north      3.0', 'Südwand   12.5'].join('\n'));
});

test('a long name gives way to the width of the terminal', () => {
  const [, row = ''] = table([{ name: 'n'.repeat(200), value: 1 }], columns).split('\n');
  expect(row).toHaveLength(80);
  expect(row).toMatch(/^n+… {4}1\.0$/);
});

test('a last column that wraps goes on under itself', () => {
  const wrapping: Column<{ name: string; value: number }>[] = [
    { head: 'value', text: ({ value }) => value.toFixed(1) },
    { head: 'name', align: 'left', wraps: true, text: ({ name }) => name },
  ];
  const [head, first = '', second = '', ...rest] = table([{ name: 'word '.repeat(20), value: 1 }], wrapping).split(
    '\n',
  );
  expect(head).toBe('value  name');
  expect(first).toMatch(/^ {2}1\.0 {2}word/);
  expect(first.length).toBeLessThanOrEqual(80);
  expect(second).toMatch(/^ {7}word/);
  expect(rest).toEqual([]);
});

test('no table is wider than the terminal, and every row ends alike', () => {
  const row = fc.record({
    name: fc.string({ minLength: 1, maxLength: 300, unit: 'grapheme-ascii' }),
    value: fc.integer(),
  });
  fc.assert(
    fc.property(fc.array(row, { minLength: 1 }), (rows) => {
      const lengths = table(rows, columns)
        .split('\n')
        .map((line) => line.length);
      expect(Math.max(...lengths)).toBeLessThanOrEqual(80);
      expect(new Set(lengths).size).toBe(1);
    }),
  );
});
