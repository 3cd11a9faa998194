/** Which column of a table stands for which field, while a person sets it. */
import type { Field, Matching, Preview, RowProblem } from './api.ts';

/** Sets a field's column; a column that stood for another field stands for this one alone. */
export function matched(matching: Matching, field: string, column: string | null): Matching {
  const others = Object.entries(matching).map(([key, value]) => [
    key,
    column !== null && value === column ? null : value,
  ]);
  return { ...Object.fromEntries(others), [field]: column };
}

/** Required fields first, then those that have a column, then the rest, each in the server's order. */
export function fieldOrder(fields: readonly Field[], matching: Matching): readonly Field[] {
  const rank = ({ field, required }: Field) => (required ? 0 : (matching[field] ?? null) === null ? 2 : 1);
  return [0, 1, 2].flatMap((wanted) => fields.filter((field) => rank(field) === wanted));
}

/** Required fields without a column. */
export const missing = (fields: readonly Field[], matching: Matching): readonly Field[] =>
  fields.filter(({ field, required }) => required && (matching[field] ?? null) === null);

/** The field that each column stands for, by the column's name. */
export function fieldOfColumn(matching: Matching): ReadonlyMap<string, string> {
  return new Map(Object.entries(matching).flatMap(([field, column]) => (column === null ? [] : [[column, field]])));
}

/** How many of the rows looked at would be rejected: "3 of the first 50 rows". */
export function rejectedOf({ problems, rowsChecked }: Preview): { readonly rows: number; readonly words: string } {
  const rows = new Set(problems.map(({ row }) => row)).size;
  const of = rowsChecked === 1 ? 'the only row looked at' : `the first ${rowsChecked} rows`;
  return { rows, words: `${rows === 0 ? 'None' : rows} of ${of}` };
}

/** Cells that are wrong, as "row column", for marking them in the preview. */
export const wrongCells = (problems: readonly RowProblem[]): ReadonlySet<string> =>
  new Set(problems.map(({ row, column }) => `${row} ${column}`));
