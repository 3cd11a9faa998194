/** A look at the first rows before a run: a table of which no row can be read is refused, not rejected row by row. */
import { BadInput } from '../bad-input.ts';
import type { TableRecord } from './records.ts';
import { parseRowSite, RowError, type RowSettings, rowSite } from './row-site.ts';

/** A row with what is wrong with it; nothing is wrong with most. */
export interface CheckedRow {
  readonly record: TableRecord;
  readonly problems: RowError['problems'];
}

/** Reads rows as sites, without computing anything. */
export function checkRows(records: readonly TableRecord[], settings: RowSettings): CheckedRow[] {
  return records
    .filter(({ cells, fault }) => fault !== undefined || cells.some((cell) => cell.trim() !== ''))
    .map((record) => {
      try {
        parseRowSite(rowSite(record, settings), record, settings);
        return { record, problems: [] };
      } catch (error) {
        if (!(error instanceof RowError)) throw error;
        return { record, problems: error.problems };
      }
    });
}

const TOLD = 5;

/** @throws BadInput where there are rows and none of the first can be read */
export function refuseUnreadable(name: string, records: readonly TableRecord[], settings: RowSettings): void {
  const rows = checkRows(records, settings);
  if (rows.length === 0 || rows.some(({ problems }) => problems.length === 0)) return;
  const lines = rows.flatMap(({ record, problems }) =>
    problems.map(({ column, value, reason }) => {
      const where = column === '' ? '' : `, column ${column}`;
      return `${name}: row ${record.row}${where}: ${value === '' || reason.includes(value) ? '' : `"${value}": `}${reason}`;
    }),
  );
  const more = `${name}: none of the first ${rows.length} rows can be read as an address; nothing was written`;
  throw new BadInput([...lines.slice(0, TOLD), more]);
}
