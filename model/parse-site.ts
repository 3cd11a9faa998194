/** Reads a site: checks it against the schema, fills in what was left out, and remembers what it filled in. */
import tzLookup from '@photostructure/tz-lookup';
import { distance } from 'fastest-levenshtein';
import { z } from 'zod';
import { wrapDegrees } from './compass.ts';
import { CONSTRUCTIONS } from './constructions.ts';
import { allowedText, fieldAt, generalPath } from './fields.ts';
import { buildSiteSchema, type KnownKeys, type Site } from './site.ts';
import { type Problem, problem, SiteError, shown } from './site-error.ts';
import type { QuantityReader } from './units.ts';

/** A parser of site files whose text fields are read by `read`; the schema is built once, here. */
export function siteParser(read: QuantityReader): (input: unknown) => Site {
  // Pages with a strict content security policy forbid the code that zod would otherwise compile.
  z.config({ jitless: true });
  const knownKeys: KnownKeys = new Map();
  const schema = buildSiteSchema(read, knownKeys);

  return (input) => {
    const parsed = schema.safeParse(input, { reportInput: true });
    const problems = [
      ...(parsed.success ? [] : parsed.error.issues.flatMap((issue) => problemsOf(issue, knownKeys))),
      ...duplicateNames(input),
    ];
    if (!parsed.success || problems.length > 0) throw new SiteError(problems);

    const { place, walls } = parsed.data;
    const site: Site = {
      ...parsed.data,
      place: { ...place, timeZone: place.timeZone ?? tzLookup(place.latitudeDeg, place.longitudeDeg) },
      walls: walls.map((wall) => ({
        ...wall,
        azimuthDeg: wrapDegrees(wall.azimuthDeg),
        solarAbsorptance: wall.solarAbsorptance ?? CONSTRUCTIONS[wall.construction].solarAbsorptance,
      })),
    };
    // Sites that were filled in before keep saying so after a round trip through a file.
    return { ...site, assumed: [...new Set([...parsed.data.assumed, ...filledIn(input, site, '')])].sort() };
  };
}

function problemsOf(issue: z.core.$ZodIssue, knownKeys: KnownKeys): Problem[] {
  const path = issue.path.join('.');
  const found = shown(issue.input);
  if (issue.code === 'unrecognized_keys') {
    const known = knownKeys.get(generalPath(path)) ?? [];
    return issue.keys.map((key) => {
      const guess = nearest(key, known);
      const hint = guess === null ? '' : `; did you mean "${guess}"?`;
      return problem(
        [path, key].filter((part) => part !== '').join('.'),
        key,
        `unknown field${hint}`,
        known.join(', '),
      );
    });
  }
  const field = fieldAt(path);
  if (issue.input === undefined && issue.code !== 'custom') {
    return [problem(path, found, 'is missing', field ? allowedText(field) : '')];
  }
  if (issue.code === 'invalid_value') {
    const allowed = issue.values.map(String);
    const guess = typeof issue.input === 'string' ? nearest(issue.input, allowed) : null;
    const hint = guess === null ? '' : `; did you mean "${guess}"?`;
    return [problem(path, found, `${found} is not known${hint}`, allowed.join(', '))];
  }
  if (field && issue.code !== 'custom') return [problem(path, found, `${found} is not a number`, allowedText(field))];
  const allowed = issue.code === 'custom' ? String(issue.params?.['allowed'] ?? '') : '';
  return [problem(path, found, issue.message, allowed)];
}

/** Wall names must differ; read from the raw input so that it is reported together with everything else. */
function duplicateNames(input: unknown): Problem[] {
  const walls = (input as { walls?: unknown } | null | undefined)?.walls;
  if (!Array.isArray(walls)) return [];
  const seen = new Map<string, number>();
  return walls.flatMap((wall: unknown, index) => {
    const name = (wall as { name?: unknown } | null | undefined)?.name;
    if (typeof name !== 'string') return [];
    const first = seen.get(name.trim());
    seen.set(name.trim(), first ?? index);
    if (first === undefined) return [];
    return [
      problem(
        `walls.${index}.name`,
        shown(name),
        `the name ${shown(name)} is taken by walls.${first}`,
        'names that differ',
      ),
    ];
  });
}

/** The known word that a misspelt one is nearest to; null where none is near. */
function nearest(word: string, known: readonly string[]): string | null {
  const lower = word.slice(0, 40).toLowerCase();
  let best: string | null = null;
  let bestDistance = Math.max(2, Math.ceil(lower.length / 2)) + 1;
  for (const candidate of known) {
    const far = candidate.toLowerCase().startsWith(lower) ? 1 : distance(lower, candidate.toLowerCase());
    if (far < bestDistance) [best, bestDistance] = [candidate, far];
  }
  return best;
}

/** Paths that stand in `output` and not in `input`. */
function filledIn(input: unknown, output: unknown, path: string): string[] {
  if (path === 'assumed' || path === 'title' || output === null) return [];
  if (typeof output !== 'object') return input === undefined ? [path] : [];
  if (Array.isArray(output) && output.length === 0) return [];
  return Object.entries(output as object).flatMap(([key, value]) =>
    filledIn((input as Record<string, unknown> | null | undefined)?.[key], value, path === '' ? key : `${path}.${key}`),
  );
}
