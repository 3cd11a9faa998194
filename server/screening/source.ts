/** Where the rows of a screening come from, and how they are gathered into batches. */
import type { Batch } from './batch.ts';
import { GRID_HEADER, type Grid, gridRecords, gridSize } from './grid.ts';
import type { TableRecord } from './records.ts';
import { recordsOf, type TableFile } from './sniff.ts';

/** Rows of a table or a grid. */
export interface Source {
  readonly header: readonly string[];
  readonly delimiter: string;
  readonly bom: boolean;
  /** Rows, exact for a grid and about right for a table. */
  readonly rows: number;
  /** Differs when the rows differ. */
  readonly identity: string;
  readonly first: readonly TableRecord[];
  records(): AsyncGenerator<TableRecord[]>;
}

/** Rows of a table, about right: the first ones tell how many lines of the file a row takes. */
export function estimatedRows({ lines, first }: Pick<TableFile, 'lines' | 'first'>): number {
  const last = first.at(-1);
  const rowsPerLine = last === undefined || last.line <= 2 ? 1 : (last.row - 2) / (last.line - 2);
  return Math.max(Math.round((lines - 1) * rowsPerLine), first.length);
}

export function tableSource(file: TableFile): Source {
  const { header, delimiter, bom, hash, first } = file;
  return {
    header,
    delimiter,
    bom,
    rows: estimatedRows(file),
    identity: hash,
    first,
    records: () => recordsOf(file),
  };
}

export function gridSource(grid: Grid): Source {
  return {
    header: GRID_HEADER,
    delimiter: ',',
    bom: false,
    rows: gridSize(grid),
    identity: JSON.stringify(grid),
    first: [],
    records: () => gridRecords(grid),
  };
}

/** Rows of a batch: a fraction of a second of work, and few enough that a stop is prompt. */
export const BATCH_ROWS = 16;

/**
 * The rows of a source in batches, from batch number `from` on. A source is read from its beginning again: reading costs little
 * beside the work, and a quote that is not closed ends where it ended before.
 */
export async function* batchesOf(source: Source, from: number): AsyncGenerator<Batch> {
  let seq = 0;
  let gathered: TableRecord[] = [];
  for await (const records of source.records()) {
    for (const record of records) {
      gathered.push(record);
      if (gathered.length < BATCH_ROWS) continue;
      if (seq >= from) yield { seq, records: gathered };
      seq += 1;
      gathered = [];
    }
  }
  if (gathered.length > 0 && seq >= from) yield { seq, records: gathered };
}
