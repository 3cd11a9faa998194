/** Which fields of a site were filled in and not entered: its assumptions, also of one that went through a file. */
import { rawAt } from './raw-site.ts';
import type { Site } from './site.ts';
import { SiteError } from './site-error.ts';

/**
 * The paths that were filled in. A site that went through a file carries the values with it: those that it lists as
 * assumed, and that would be filled in just so, are still assumptions.
 */
export function assumedIn(site: Site, input: unknown, filled: (input: unknown) => Site): string[] {
  const listed = site.assumed;
  const now = filledIn(input, site, '');
  const without = withoutFields(input, listed, filled);
  if (without === null) return now.sort();
  const { stripped, again } = without;
  const still = filledIn(stripped, again, '').filter((path) => same(rawAt(again, path), rawAt(site, path)));
  return [...new Set([...now, ...still])].sort();
}

/** Rounds in which fields are given back; one is enough mostly. */
const MAX_ROUNDS = 8;

/**
 * The input without what it lists as assumed, and the site that this makes. Where somebody edited other fields by hand, some of
 * those may be needed as they stand: they are entered now. Null where nothing is left to take out.
 */
function withoutFields(input: unknown, listed: readonly string[], filled: (input: unknown) => Site) {
  let paths = listed;
  for (let round = 0; round < MAX_ROUNDS && paths.length > 0; round++) {
    // What passed the schema is plain data.
    const stripped: unknown = JSON.parse(JSON.stringify(input));
    for (const path of paths) remove(stripped, path);
    try {
      return { stripped, again: filled(stripped) };
    } catch (error) {
      if (!(error instanceof SiteError)) throw error;
      const needed = error.problems.map(({ path }) => path);
      // A rule between two fields names the one that is entered: then its whole section is given back.
      const exact = paths.filter((path) => !needed.includes(path));
      const fewer = exact.length < paths.length ? exact : paths.filter((path) => !needed.some(inSectionOf(path)));
      if (fewer.length === paths.length) return null;
      paths = fewer;
    }
  }
  return null;
}

const inSectionOf = (path: string) => (other: string) => other.split('.')[0] === path.split('.')[0];

function remove(input: unknown, path: string): void {
  const keys = path.split('.');
  const last = keys.pop() ?? '';
  const holder = keys.length === 0 ? input : rawAt(input, keys.join('.'));
  if (typeof holder !== 'object' || holder === null || Array.isArray(holder)) return;
  const values = holder as Record<string, unknown>;
  if (isLeaf(values[last])) delete values[last];
}

/** A value or a pair of values; sections and lists of sections are filled in field by field. */
function isLeaf(value: unknown): boolean {
  return typeof value !== 'object' || (Array.isArray(value) && value.length > 0 && typeof value[0] !== 'object');
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Paths that stand in `output` and not in `input`. */
function filledIn(input: unknown, output: unknown, path: string): string[] {
  if (path === 'assumed' || path === 'title' || output === null) return [];
  if (isLeaf(output)) return input === undefined ? [path] : [];
  return Object.entries(output as object).flatMap(([key, value]) =>
    filledIn(rawAt(input, key), value, path === '' ? key : `${path}.${key}`),
  );
}
