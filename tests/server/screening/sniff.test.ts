import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { sniffDelimiter, sniffTable } from '../../../server/screening/sniff.ts';

const folder = mkdtempSync(join(tmpdir(), 'shadeside-sniff-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(content: string | Buffer): string {
  const path = join(folder, 'table.csv');
  writeFileSync(path, content);
  return path;
}

test.each([
  ['lat,lon;x\n1;2', ','],
  ['lat;lon;"a,b,c,d"\n', ';'],
  ['lat\tlon\n1,2,3', '\t'],
  ['lat', ','],
])('%j is parted by %j', (text, delimiter) => {
  expect(sniffDelimiter(text)).toBe(delimiter);
});

test('a byte-order mark is no part of the first name', async () => {
  const table = await sniffTable(file('\ufefflat;lon\r\n1;2\r\n'));
  expect(table).toMatchObject({ header: ['lat', 'lon'], bom: true, delimiter: ';', lines: 2 });
  expect(table.first.map(({ cells }) => cells)).toEqual([['1', '2']]);
});

test.each([
  ['an empty file', '', /empty; a table with a header is needed/],
  ['one column', 'latitude\n1\n', /one column only/],
  ['a name twice', 'lat,lon,Lat\n', /"lat" stands in columns 1 and 3/],
  ['UTF-16', Buffer.from('\ufefflat,lon', 'utf16le'), /UTF-16; save it as CSV in UTF-8/],
  ['Latin-1', Buffer.from('lat,lon\n1,M\xfcnchen\n', 'latin1'), /not text in UTF-8/],
  ['a header that never ends', 'lat,"lon\n1,2\n', /row 1 \(the header\): a quote is opened/],
])('%s is refused', async (_, content, message) => {
  await expect(sniffTable(file(content))).rejects.toThrow(message);
});

test('a file that is not there is refused', async () => {
  await expect(sniffTable(join(folder, 'none.csv'))).rejects.toThrow(/there is no such file/);
});
