/** Reads a lesson: its schema, its site, and what holds between the two. */
import { issueWords } from '../issue-words.ts';
import type { KnownKeys } from '../schema-parts.ts';
import type { Site } from '../site.ts';
import { type Problem, problem, SiteError, shown } from '../site-error.ts';
import type { QuantityReader } from '../units.ts';
import type { Difference } from './difference.ts';
import { buildLessonSchema, type Lesson } from './lesson-file.ts';
import { lessonProblems } from './lesson-problems.ts';
import { inClimate, secondStanding } from './second-site.ts';
import { LESSON_SITE } from './usual-site.ts';

/** A parser of lesson files whose text fields are read by `read` and whose site is read by `parseSite`. */
export function lessonParser(read: QuantityReader, parseSite: (input: unknown) => Site): (input: unknown) => Lesson {
  const knownKeys: KnownKeys = new Map();
  const schema = buildLessonSchema(read, knownKeys);
  return (input) => {
    const parsed = schema.safeParse(input, { reportInput: true, jitless: true, error: issueWords });
    const problems = parsed.success ? [] : lessonProblems(parsed.error.issues, knownKeys, '');
    const site = readSite(input, parseSite, problems);
    if (!parsed.success || site === null) throw new SiteError(problems);
    const lesson: Lesson = { ...parsed.data, site };
    problems.push(...contentProblems(lesson));
    if (problems.length > 0) throw new SiteError(problems);
    return lesson;
  };
}

/** The site of a lesson, or null with its problems told. */
function readSite(input: unknown, parseSite: (input: unknown) => Site, problems: Problem[]): Site | null {
  const given = isObject(input) ? input['site'] : undefined;
  if (given !== undefined && !isObject(given)) return null;
  try {
    return parseSite(onUsual(given ?? {}));
  } catch (error) {
    if (!(error instanceof SiteError)) throw error;
    problems.push(...error.problems.map((one) => problem(below('site', one.path), one.found, one.wrong, one.allowed)));
    return null;
  }
}

/** The usual site with parts replaced: sections field by field, climate and lists whole. */
function onUsual(given: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const usual = LESSON_SITE as unknown as Record<string, unknown>;
  const merged = Object.entries(given).map(([key, value]) => {
    const there = usual[key];
    return [key, key !== 'climate' && isObject(value) && isObject(there) ? { ...there, ...value } : value] as const;
  });
  const site: Record<string, unknown> = { ...usual, ...Object.fromEntries(merged) };
  // Another place has another clock and, where it does not say, an altitude of its own.
  const place = given['place'];
  if (isObject(place) && ('latitudeDeg' in place || 'longitudeDeg' in place)) site['place'] = place;
  return site;
}

/** What the schema of a lesson cannot see: names of walls, the same identifier twice, differences that do not fit. */
function contentProblems(lesson: Lesson): Problem[] {
  const { site, comparisons, questions } = lesson;
  const walls = site.walls.map(({ name }) => name);
  const problems: Problem[] = [...twice('comparisons', comparisons), ...twice('questions', questions)];
  const look = (path: string, item: Readonly<Record<string, unknown>>): void => {
    const wall = item['wall'];
    if (typeof wall === 'string' && !walls.includes(wall)) {
      problems.push(problem(`${path}.wall`, shown(wall), `there is no wall ${shown(wall)}`, walls.join(', ')));
      return;
    }
    const climate = item['climate'] as string | undefined;
    const placed = climate === undefined ? site : inClimate(site, climate);
    for (const key of ['difference', 'first', 'second']) {
      const difference = item[key] as Difference | undefined;
      if (difference === undefined || typeof wall !== 'string') continue;
      problems.push(...fitProblems(`${path}.${key}`, () => secondStanding(placed, wall, difference)));
    }
  };
  for (const [k, item] of comparisons.entries()) look(`comparisons.${k}`, item);
  for (const [k, item] of questions.entries()) look(`questions.${k}`, item);
  return problems;
}

function fitProblems(path: string, make: () => unknown): Problem[] {
  try {
    make();
    return [];
  } catch (error) {
    if (!(error instanceof SiteError)) throw error;
    return error.problems.map((one) => {
      const own = one.path.startsWith('difference') ? one.path.slice('difference'.length).replace(/^\./, '') : '';
      const wrong = one.path.startsWith('difference') ? one.wrong : `${one.path}: ${one.wrong}`;
      return problem(below(path, own), one.found, wrong, one.allowed);
    });
  }
}

function twice(list: string, items: readonly { readonly id: string }[]): Problem[] {
  const ids = items.map(({ id }) => id);
  return ids.flatMap((id, k) =>
    ids.indexOf(id) === k
      ? []
      : [problem(`${list}.${k}.id`, shown(id), `${shown(id)} stands twice`, 'a name of its own')],
  );
}

const below = (path: string, key: string): string => (key === '' ? path : `${path}.${key}`);

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
