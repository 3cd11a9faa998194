/** Pages of the rows of a screening, and single ones. */
import type { Database } from 'better-sqlite3';
import type { RowResult } from '../screening/output.ts';
import { unpackRow } from './kept-row.ts';
import type { RowsQuery } from './requests.ts';

const ORDER_OF: Record<RowsQuery['sort'], string> = {
  row: 'row',
  margin: 'margin',
  peak: 'peak',
  bestWall: 'azimuth',
  kit: 'kit',
};

export interface Listed {
  readonly row: number;
  readonly id: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly bestWall: string | null;
  readonly peakInsideAirC: number | null;
  readonly marginK: number | null;
  readonly shareInside: number;
  readonly remedy: string | null;
  readonly kit: string;
  readonly cells: string;
}

const LISTED = `address.row, label AS id, latitude AS latitudeDeg, longitude AS longitudeDeg, wall AS bestWall,
      peak AS peakInsideAirC, margin AS marginK, share AS shareInside, remedy, kit.name AS kit, cells`;

/** One page of rows and how many there are in all. */
export function pageOfRows(db: Database, query: RowsQuery): { total: number; rows: Listed[] } {
  const { sort, order, kit, maxMarginK, text, offset, limit } = query;
  const conditions: string[] = [];
  const values: (string | number)[] = [];
  if (kit !== undefined) {
    conditions.push('kit = (SELECT number FROM kit WHERE name = ?)');
    values.push(kit);
  }
  if (maxMarginK !== undefined) {
    // Where no wall is permitted there is no margin at all, which is worse than any.
    conditions.push('(margin <= ? OR margin IS NULL)');
    values.push(maxMarginK);
  }
  if (text !== undefined) {
    conditions.push('instr(search, ?) > 0');
    values.push(text.toLowerCase());
  }
  const where = conditions.length === 0 ? '' : `WHERE ${conditions.join(' AND ')}`;
  const count = db.prepare<unknown[], { total: number }>(`SELECT count(*) AS total FROM address ${where}`);
  const direction = order === 'desc' ? 'DESC' : 'ASC';
  const by = sort === 'row' ? `row ${direction}` : `${ORDER_OF[sort]} ${direction}, row`;
  // The page is picked before anything is looked up for its rows.
  const page = db.prepare<unknown[], Listed>(`
    SELECT ${LISTED}
    FROM (SELECT row, row_number() OVER () AS place FROM (SELECT row FROM address ${where} ORDER BY ${by} LIMIT ? OFFSET ?)) AS picked
    JOIN address ON address.row = picked.row
    JOIN detail ON detail.row = picked.row
    JOIN kit ON kit.number = address.kit
    ORDER BY picked.place`);
  return { total: count.get(...values)?.total ?? 0, rows: page.all(...values, limit, offset) };
}

/** One row as it stands in a page; null where it was not screened. */
export function listedRow(db: Database, row: number): Listed | null {
  const found = db.prepare<[number], Listed>(`
    SELECT ${LISTED}
    FROM address JOIN detail ON detail.row = address.row JOIN kit ON kit.number = address.kit
    WHERE address.row = ?`);
  return found.get(row) ?? null;
}

interface Kept {
  readonly row: number;
  readonly cells: string;
  readonly result: string;
}

const unpacked = ({ row, cells, result }: Kept): RowResult => unpackRow(row, JSON.parse(cells) as string[], result);

/** A row as it was screened; null where it was not. */
export function keptRow(db: Database, row: number): RowResult | null {
  const found = db.prepare<[number], Kept>('SELECT row, cells, result FROM detail WHERE row = ?').get(row);
  return found === undefined ? null : unpacked(found);
}

/** The row that was screened first. */
export function firstRow(db: Database): RowResult | null {
  const found = db.prepare<[], Kept>('SELECT row, cells, result FROM detail ORDER BY row LIMIT 1').get();
  return found === undefined ? null : unpacked(found);
}

/** All rows in their order. */
export function* allRows(db: Database): Generator<RowResult> {
  const rows = db.prepare<[], Kept>('SELECT row, cells, result FROM detail ORDER BY row').iterate();
  for (const row of rows) yield unpacked(row);
}
