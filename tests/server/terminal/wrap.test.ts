import fc from 'fast-check';
import { expect, test } from 'vitest';
import { wrap } from '../../../server/terminal/wrap.ts';

test('lines after the first stand under it', () => {
  const lines = wrap('word '.repeat(40), '  - ').split('\n');
  expect(lines[0]).toMatch(/^ {2}- word/);
  for (const line of lines.slice(1)) expect(line).toMatch(/^ {4}word/);
});

test('a number keeps its unit', () => {
  // Without care the line would break right before the unit.
  const text = `${'x'.repeat(73)} 149 °F, and on`;
  expect(wrap(text).split('\n')).toEqual(['x'.repeat(73), '149 °F, and on']);
});

test('words stay whole and in order, lines within the width', () => {
  const words = fc.array(fc.stringMatching(/^[a-z]{1,30}$/), { minLength: 1, maxLength: 60 });
  fc.assert(
    fc.property(words, (list) => {
      const wrapped = wrap(list.join(' '), '> ');
      expect(wrapped.slice(2).split(/\s+/)).toEqual(list);
      for (const line of wrapped.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    }),
  );
});
