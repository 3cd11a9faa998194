/** Invented tables for tests of screenings. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll } from 'vitest';
import { matchColumns } from '../../../server/screening/columns.ts';
import { runScreening, type ScreeningJob, type ScreeningOptions } from '../../../server/screening/screening.ts';
import { sniffTable } from '../../../server/screening/sniff.ts';
import { tableSource } from '../../../server/screening/source.ts';

/** A folder that is taken away after the tests of a file. */
export function ownFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'shadeside-screening-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  return folder;
}

/** Rows of one wall each, all of them different, some wrong. */
export function manyRows(count: number, wrongEvery = 0): string {
  const rows = Array.from({ length: count }, (_, k) => {
    const latitude = wrongEvery > 0 && k % wrongEvery === wrongEvery - 1 ? 'n/a' : 33 + k / 1000;
    return `place ${k % 7},${latitude},-113.4,${(k * 37) % 360},35,"a, ""b""\nand c ${k}"`;
  });
  return ['id,lat,lon,bearings,maxC,note', ...rows].join('\n');
}

/** Runs a table through the engine in this thread. */
export async function screened(
  folder: string,
  content: string,
  { options, ...more }: Partial<ScreeningJob> & { options?: ScreeningOptions } = {},
) {
  const path = join(folder, 'table.csv');
  writeFileSync(path, content);
  const source = tableSource(await sniffTable(path));
  const job: ScreeningJob = {
    source,
    columns: matchColumns(source.header),
    base: {},
    climate: { stations: [] },
    format: 'csv',
    out: join(folder, 'results.csv'),
    workers: 0,
    unfinished: 'refuse',
    ...more,
  };
  return runScreening(job, options);
}

/** Rows of a CSV text as objects. */
export function rowsOf(text: string, delimiter = ','): Record<string, string>[] {
  return parse(text, { columns: true, bom: true, delimiter });
}
