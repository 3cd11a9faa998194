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

/** Fields that a table has or must have, required ones first; and the rest; each in the server's order. */
export function parted(
  fields: readonly Field[],
  matching: Matching,
): { readonly here: readonly Field[]; readonly others: readonly Field[] } {
  const has = ({ field }: Field) => (matching[field] ?? null) !== null;
  return {
    here: [...fields.filter(({ required }) => required), ...fields.filter((field) => !field.required && has(field))],
    others: fields.filter((field) => !field.required && !has(field)),
  };
}

/** Required fields without a column. */
export const missing = (fields: readonly Field[], matching: Matching): readonly Field[] =>
  fields.filter(({ field, required }) => required && (matching[field] ?? null) === null);

/** The field that each column stands for, by the column's name. */
export function fieldOfColumn(matching: Matching): ReadonlyMap<string, string> {
  return new Map(Object.entries(matching).flatMap(([field, column]) => (column === null ? [] : [[column, field]])));
}

/** What would become of the rows looked at: "3 of the first 50 rows would be rejected. The others are screened all the same." */
export function rejectedWords({ problems, rowsChecked }: Preview): string {
  const rows = new Set(problems.map(({ row }) => row)).size;
  if (rowsChecked === 1) return `The only row looked at would ${rows === 0 ? 'be screened' : 'be rejected'}.`;
  if (rows === 0) return `None of the first ${rowsChecked} rows would be rejected.`;
  if (rows === rowsChecked) return `All of the first ${rowsChecked} rows would be rejected.`;
  return `${rows} of the first ${rowsChecked} rows would be rejected. The others are screened all the same.`;
}

/** Cells that are wrong, as "row column", for marking them in the preview. */
export const wrongCells = (problems: readonly RowProblem[]): ReadonlySet<string> =>
  new Set(problems.map(({ row, column }) => `${row} ${column}`));
