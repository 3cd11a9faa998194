import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { matchColumns } from '../../../server/screening/columns.ts';
import { checkRows } from '../../../server/screening/first-rows.ts';
import { sniffTable } from '../../../server/screening/sniff.ts';
import { exampleTable } from '../../../web/area/example-table.ts';

test('every row of the example can be screened, and its columns are known by their names', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'shadeside-example-'));
  const path = join(folder, 'example.csv');
  writeFileSync(path, exampleTable());
  const { header, first } = await sniffTable(path);
  rmSync(folder, { recursive: true });
  const columns = matchColumns(header);
  expect(Object.keys(columns)).toEqual(
    expect.arrayContaining([
      'latitude',
      'longitude',
      'altitude',
      'finish',
      'power',
      'bearings',
      'eaveDepth',
      'designMax',
    ]),
  );
  expect(first).toHaveLength(40);
  const settings = { header, columns, base: {}, climate: { stations: [] } };
  expect(checkRows(first, settings).flatMap(({ problems }) => problems)).toEqual([]);
});
