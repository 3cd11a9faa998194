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
