import { fileError, quoted } from './weather-file-error.ts';
import type { ColumnPlace } from './weather-table.ts';

/** A column by the name that the file gives it. */
export interface NamedColumn extends Omit<ColumnPlace, 'index'> {
  readonly title: string;
  readonly needed: boolean;
}

/**
 * Finds columns by their names.
 * @throws WeatherFileError for a needed one that is missing and one that stands there twice
 */
export function placesOf(names: readonly string[], wanted: readonly NamedColumn[], line: number): ColumnPlace[] {
  return wanted.flatMap(({ title, needed, ...column }) => {
    const index = names.indexOf(title);
    if (index >= 0 && names.indexOf(title, index + 1) >= 0) {
      throw fileError(line, `column ${quoted(title)} stands there twice`, { found: quoted(title), allowed: 'once' });
    }
    if (index >= 0) return [{ ...column, index }];
    if (!needed) return [];
    const all = wanted.filter((each) => each.needed).map((each) => each.title);
    throw fileError(line, `column ${quoted(title)} is missing`, { allowed: `columns ${all.join(', ')}` });
  });
}

/** The number of columns without blank ones at the end. */
export function columnCount(names: readonly string[]): number {
  let count = names.length;
  while (count > 0 && (names[count - 1] as string).trim() === '') count--;
  return count;
}
