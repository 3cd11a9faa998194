import { expect, test } from 'vitest';
import { gridRecords, gridSize, readGrid } from '../../../server/screening/grid.ts';
import type { TableRecord } from '../../../server/screening/records.ts';

async function points(box: string, step: string) {
  const grid = readGrid(box, step);
  const records: TableRecord[] = [];
  for await (const chunk of gridRecords(grid)) records.push(...chunk);
  expect(records).toHaveLength(gridSize(grid));
  expect(records.map(({ row }) => row)).toEqual(records.map((_, k) => k + 1));
  return records.map(({ cells }) => cells.join(' '));
}

test('edges are on the grid, south-west first', async () => {
  expect(await points('-114,33,-113.8,33.1', '0.1')).toEqual([
    '33 -114',
    '33 -113.9',
    '33 -113.8',
    '33.1 -114',
    '33.1 -113.9',
    '33.1 -113.8',
  ]);
});

test('a grid may cross the 180th meridian, or be a point', async () => {
  expect(await points('179,0,-179,0', '1')).toEqual(['0 179', '0 180', '0 -179']);
  expect(await points('5,50,5,50', '1')).toEqual(['50 5']);
});

test.each([
  ['1,2,3', '1', /west,south,east,north/],
  ['1,2,3,x', '1', /west,south,east,north/],
  ['1,40,3,30', '1', /south lies north/],
  ['1,2,3,4', undefined, /--step is needed/],
  ['1,2,3,4', '0', /a step above 0/],
  ['-180,-90,180,90', '0.001', /points; up to/],
])('%s by %s is refused', (box, step, message) => {
  expect(() => readGrid(box, step)).toThrow(message);
});
