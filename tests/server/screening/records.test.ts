import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lineQuotes } from '../../../server/screening/line-quotes.ts';
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

  test('a line that is too long is refused once, and the next row keeps its number, however the text is cut', () => {
    const long = `${'x'.repeat(400_000)},33.2,-113.4`;
    const text = `name,lat,lon\r\na,33.2,-113.4\r\n${long}\r\nc,33.2,-113.4\r\n`;
    const toldIn = (chunk: number) =>
      cut(text, ',', chunk).map(({ row, line, cells, fault }) => [row, line, fault ?? cells[0]]);
    const wanted = [
      [1, 1, 'name'],
      [2, 2, 'a'],
      [3, 3, 'the line is too long'],
      [4, 4, 'c'],
    ];
    const toTheEnd = text.indexOf(long) + long.length;
    // At once, in parts, and with a border at the limit, before the line end and in the middle of it.
    for (const chunk of [text.length, 64 * 1024, 200_000, 200_028, toTheEnd, toTheEnd + 1]) {
      expect(toldIn(chunk)).toEqual(wanted);
    }
    expect(cut(`a,b\n${'x'.repeat(450_000)}`, ',', 64 * 1024)).toHaveLength(2);
  });

  test('a line that is too long after an open quote costs both and nothing else', () => {
    const text = `a,b\n1,"open\n2,"again\n${'x'.repeat(250_000)}\n3,4\n`;
    for (const chunk of [text.length, 64 * 1024]) {
      const records = cut(text, ',', chunk);
      expect(records.map(({ row, line, fault }) => [row, line, fault?.slice(0, 5) ?? ''])).toEqual([
        [1, 1, ''],
        [2, 2, 'a quo'],
        [3, 3, 'a quo'],
        [4, 4, 'the l'],
        [5, 5, ''],
      ]);
    }
  });

  test('a record over several lines is as wide as the header also where both come in one chunk', () => {
    const text = 'a,b\n1,"open\n2,3"\n4,"x\ny",5\n6,7\n';
    const told = (chunk: number) => cut(text, ',', chunk).map(({ cells, fault }) => (fault ? 'fault' : cells.join()));
    expect(told(text.length)).toEqual(['a,b', '1,open\n2,3', 'fault', 'y",5', '6,7']);
    expect(told(4)).toEqual(told(text.length));
  });

  describe('each line is looked at twice at most', () => {
    const shapes: Record<string, (k: number) => string> = {
      'quotes that close and open again in every line': () => '17","33.2","-113.4","note note note ","b","c","d',
      'quotes alone': () => '"',
      'a quote that is opened in every line': (k) => `${k},"open`,
      'many open lines before one that closes them amiss': (k) => (k % 150 === 149 ? 'x" y,1' : `${k},"open`),
      'long lines': (k) => (k % 40 === 39 ? 'shut"' : `${'x'.repeat(9000)},"open`),
    };

    test.each(Object.entries(shapes))('%s', (_, lineAt) => {
      const lookedAt = (count: number): number => {
        let characters = 0;
        const cutter = new RecordCutter(',', (text, delimiter, inside) => {
          characters += text.length;
          return lineQuotes(text, delimiter, inside);
        });
        const text = `id,lat\n${Array.from({ length: count }, (_unused, k) => lineAt(k)).join('\n')}\n`;
        let records = 0;
        for (let at = 0; at < text.length; at += 65_536) records += cutter.push(text.slice(at, at + 65_536)).length;
        records += cutter.end().length;
        expect(records).toBeGreaterThan(count / 2);
        expect(characters).toBeGreaterThan(text.length / 2);
        expect(characters).toBeLessThanOrEqual(2 * text.length);
        return characters;
      };
      expect(lookedAt(2000) / lookedAt(1000)).toBeLessThan(2.2);
    });
  });
});
