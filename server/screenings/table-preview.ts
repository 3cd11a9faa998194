/** What a table looks like before it is screened: its columns, first rows, and what a run would reject of them. */
import { HttpError } from '../errors.ts';
import type { ClimateSettings } from '../screening/climate-choice.ts';
import { columnNames } from '../screening/column-names.ts';
import type { ColumnMatch } from '../screening/columns.ts';
import { checkRows } from '../screening/first-rows.ts';
import type { BaseSite } from '../screening/row-site.ts';
import { estimatedRows } from '../screening/source.ts';
import { matchingOf, readMatching, unmatched } from './matching.ts';
import { problemAt } from './problems.ts';
import type { StoredTable } from './tables.ts';

const SHOWN_ROWS = 20;

/** The answer to an upload. */
export function tablePreview(table: StoredTable) {
  const { id, name, bytes, file } = table;
  const { columns } = readMatching(file.header);
  refuseDecimalCommas(table, columns);
  return {
    ...{ table: id, name, bytes },
    separator: file.delimiter,
    encoding: file.bom ? 'UTF-8 with byte-order mark' : 'UTF-8',
    columns: columnNames(file.header),
    matching: matchingOf(file.header, columns),
    ...checkedRows(table, columns),
    rowsEstimated: estimatedRows(file),
  };
}

/** First rows, and the problems a run would have with them under a matching. */
export function checkedRows({ file }: StoredTable, columns: ColumnMatch) {
  const missing = unmatched(columns);
  const firstRows = file.first.slice(0, SHOWN_ROWS).map(({ cells }) => cells);
  // Without a place every row is wrong in the same way; `unmatched` says it once.
  if (missing.length > 0) return { firstRows, problems: [], rowsChecked: 0, unmatched: missing };
  const rows = checkRows(file.first, rowSettings(file.header, columns));
  const problems = rows.flatMap(({ record: { row, line }, problems: found }) =>
    found.map(({ column, value, reason }) => ({ row, line, column, value, reason })),
  );
  return { firstRows, problems, rowsChecked: rows.length, unmatched: missing };
}

export function rowSettings(
  header: readonly string[],
  columns: ColumnMatch,
  base: BaseSite = {},
  climate: ClimateSettings = { stations: [] },
) {
  return { header, columns, base, climate };
}

/** A table written with decimal commas is wrong as a whole, however its columns are matched. */
function refuseDecimalCommas({ name, file }: StoredTable, columns: ColumnMatch): void {
  if (unmatched(columns).length > 0) return;
  const rows = checkRows(file.first, rowSettings(file.header, columns));
  const problems = rows.flatMap(({ record, problems: found }) => found.map((one) => ({ row: record.row, ...one })));
  const commas = problems.filter(({ reason }) => reason.includes('decimal comma'));
  if (rows.length === 0 || new Set(commas.map(({ row }) => row)).size < rows.length) return;
  const shown = commas.slice(0, 3).map(({ row, column, value, reason }) => {
    return problemAt(`row ${row}${column === '' ? '' : `, column ${column}`}`, value, reason);
  });
  throw new HttpError(400, `${name}: none of the first ${rows.length} rows can be read as an address`, shown);
}
