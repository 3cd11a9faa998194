import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { RecordCutter, type TableRecord } from '../../../server/screening/records.ts';

function cut(text: string, delimiter = ',', chunk = text.length || 1): TableRecord[] {
  const cutter = new RecordCutter(delimiter);
  const records: TableRecord[] = [];
  for (let at = 0; at < text.length; at += chunk) records.push(...cutter.push(text.slice(at, at + chunk)));
  return [...records, ...cutter.end()];
}

const cellsOf = (text: string, delimiter?: string) => cut(text, delimiter).map(({ cells }) => cells);

describe('records', () => {
  test('line ends of every kind, quotes, delimiters and line ends in quotes', () => {
    expect(cellsOf('a,b\r\n1,"x, ""y"""\n2,"p\nq"\r3,4')).toEqual([
      ['a', 'b'],
      ['1', 'x, "y"'],
      ['2', 'p\nq'],
      ['3', '4'],
    ]);
    expect(cellsOf('a;b\n1,5;"x;y"\n', ';')).toEqual([
      ['a', 'b'],
      ['1,5', 'x;y'],
    ]);
  });

  test('a quote inside a cell stands for itself', () => {
    expect(cellsOf('a,b\n1,5" pipe\n2,"x" y\n3,4')).toEqual([
      ['a', 'b'],
      ['1', '5" pipe'],
      ['2', '"x" y'],
      ['3', '4'],
    ]);
  });

  test('rows count as in a spreadsheet, lines as in an editor', () => {
    const records = cut('a,b\n1,"x\ny"\n\n2,3\n');
    expect(records.map(({ row, line }) => [row, line])).toEqual([
      [1, 1],
      [2, 2],
      [3, 4],
      [4, 5],
    ]);
  });

  test('a quote that is never closed costs its own row and no other', () => {
    const records = cut('a,b\n1,"open\n2,3\n4,5\n');
    expect(records.map(({ cells, fault }) => (fault ? 'fault' : cells.join()))).toEqual(['a,b', 'fault', '2,3', '4,5']);
  });

  test('a stray quote that a later one closes swallows nothing, either', () => {
    const records = cut('a,b\n1,"open\n2,3\n4,"x"\n6,7\n');
    expect(records.map(({ cells, fault }) => (fault ? 'fault' : cells.join()))).toEqual([
      'a,b',
      'fault',
      '2,3',
      '4,x',
      '6,7',
    ]);
  });

  test('however the text is cut into chunks, the records are the same', () => {
    const line = fc.constantFrom('1,2', '"a,b",3', '"x\ny",4', '5,"open', '"p""q",6', '', 'only', '7,8"', ',');
    fc.assert(
      fc.property(fc.array(line, { maxLength: 20 }), fc.integer({ min: 1, max: 9 }), (lines, chunk) => {
        const text = ['h,i', ...lines].join('\r\n');
        expect(cut(text, ',', chunk)).toEqual(cut(text));
      }),
    );
  });

  test('no line gets lost: every one is in a record or refused', () => {
    const line = fc.constantFrom('1,2', '3,"open', '"x",4', '5"6,7', '""",8', '9,"a""');
    fc.assert(
      fc.property(fc.array(line, { maxLength: 30 }), (lines) => {
        const records = cut(['h,i', ...lines].join('\n'));
        const inside = records.reduce((sum, { cells }) => sum + 1 + cells.join('').split('\n').length - 1, 0);
        expect(inside).toBe(lines.length + 1);
      }),
    );
  });

  test('a line without end is cut and refused', () => {
    const records = cut(`a,b\n${'x'.repeat(450_000)}\n1,2\n`, ',', 64 * 1024);
    expect(records.filter(({ fault }) => fault !== undefined).length).toBeGreaterThan(0);
    expect(records.at(-1)?.cells).toEqual(['1', '2']);
  });
});
