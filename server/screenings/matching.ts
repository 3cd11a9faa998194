/** Which column of a table stands for which field, as the API says it: names of columns by names of fields. */
import type { Problem } from '../../model/index.ts';
import { columnNames } from '../screening/column-names.ts';
import {
  COLUMN_KINDS,
  type ColumnKey,
  type ColumnMatch,
  matchByName,
  plain,
  REQUIRED_COLUMNS,
} from '../screening/columns.ts';
import { problemAt } from './problems.ts';

/** Fields by the column that each is taken from; null leaves one out, what is not named is matched by name. */
export type Matching = Readonly<Record<string, string | null>>;

const KEYS: readonly ColumnKey[] = COLUMN_KINDS.map(({ key }) => key);

/** What a column can be matched to. */
export const FIELDS = COLUMN_KINDS.map(({ key, label }) => ({
  field: key,
  required: (REQUIRED_COLUMNS as readonly string[]).includes(key),
  what: label,
}));

/** Columns by number, and what is wrong with a matching. */
export function readMatching(
  header: readonly string[],
  matching: Matching = {},
): { columns: ColumnMatch; problems: Problem[] } {
  const names = columnNames(header);
  const problems: Problem[] = [];
  const known: Partial<Record<ColumnKey, number>> = {};
  const left: ColumnKey[] = [];
  const users = new Map<number, string>();
  for (const [field, column] of Object.entries(matching)) {
    const key = KEYS.find((one) => one === field);
    const path = `matching.${field}`;
    if (key === undefined) {
      problems.push(problemAt(path, column, 'is no field of a screening', KEYS.join(', ')));
      continue;
    }
    if (column === null || column === '') {
      left.push(key);
      continue;
    }
    const at = names.indexOf(column);
    const user = users.get(at);
    if (at < 0) problems.push(problemAt(path, column, `the table has no column "${column}"`, listed(names)));
    else if (user !== undefined)
      problems.push(problemAt(path, column, `column "${column}" stands for ${user} already`));
    else {
      users.set(at, key);
      known[key] = at;
    }
  }
  return { columns: matchByName(names, known, left), problems };
}

/** The other way round: every field with the name of its column. */
export function matchingOf(header: readonly string[], columns: ColumnMatch): Record<ColumnKey, string | null> {
  const names = columnNames(header);
  return Object.fromEntries(KEYS.map((key) => [key, names[columns[key] ?? -1] ?? null])) as Record<
    ColumnKey,
    string | null
  >;
}

/** Fields that every screening needs and that no column stands for. */
export const unmatched = (columns: ColumnMatch): ColumnKey[] =>
  REQUIRED_COLUMNS.filter((key) => columns[key] === undefined);

/** Names under which lists keep what tells one address from another, the best first. */
const LABELS = ['id', 'siteid', 'addressid', 'ref', 'reference', 'key', 'name', 'sitename', 'site', 'title', 'address'];

/** The column that names an address for people; undefined where there is none. */
export function labelColumn(header: readonly string[], columns: ColumnMatch): number | undefined {
  const used = new Set(Object.values(columns));
  const free = header.flatMap((name, at) => (used.has(at) ? [] : [{ name: plain(name), at }]));
  const found = LABELS.map((label) => free.find(({ name }) => name === label)).find((one) => one !== undefined);
  return (found ?? free[0])?.at;
}

const SHOWN = 20;

const listed = (names: readonly string[]): string =>
  names.length > SHOWN ? `${names.slice(0, SHOWN).join(', ')} …` : names.join(', ');
