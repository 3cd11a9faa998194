/** Where two states of a site differ, and what each says there in the words and units of the form. */
import { fieldAt, type UnitSystem } from '../../model/index.ts';
import { type Draft, isDraft, textAt } from '../site/draft.ts';
import { subjectOf } from '../site/problems.ts';
import { shortQuantity } from '../site/quantity-text.ts';
import { sameDraft } from './saved-site.ts';

export interface Difference {
  readonly path: string;
  /** Undefined where that state has nothing there. */
  readonly mine: unknown;
  readonly theirs: unknown;
}

/** Which fields the program filled in follows from the others. */
const DERIVED = 'assumed';

/** Every place where two states differ, as deep as both have something there. */
export function differences(mine: Draft, theirs: Draft): Difference[] {
  return below('', mine, theirs).filter(({ path }) => path !== DERIVED);
}

function below(path: string, mine: unknown, theirs: unknown): Difference[] {
  if (sameDraft(mine, theirs)) return [];
  const keys = sharedKeys(mine, theirs);
  if (keys === null) return [{ path, mine, theirs }];
  return keys.flatMap((key) => below(path === '' ? key : `${path}.${key}`, at(mine, key), at(theirs, key)));
}

/** The keys to compare one by one; null where the two are compared as a whole. */
function sharedKeys(mine: unknown, theirs: unknown): string[] | null {
  if (Array.isArray(mine) && Array.isArray(theirs)) {
    // Points of a horizon or an outline mean something only together.
    if (![...mine, ...theirs].every(isDraft)) return null;
    return Array.from({ length: Math.max(mine.length, theirs.length) }, (_, index) => String(index));
  }
  if (!isDraft(mine) || !isDraft(theirs)) return null;
  return [...new Set([...Object.keys(mine), ...Object.keys(theirs)])];
}

function at(value: unknown, key: string): unknown {
  const holder = value as Draft;
  return Object.hasOwn(holder, key) ? holder[key] : undefined;
}

/** What a difference is about: "wall west, direction it faces". */
export function differenceSubject({ path }: Difference, mine: Draft, theirs: Draft): string {
  const wall = /^walls\.\d+/.exec(path)?.[0];
  // A wall that only they have has its name there.
  const named = wall !== undefined && textAt(mine, `${wall}.name`) === '' ? theirs : mine;
  if (path === wall) return `wall ${textAt(named, `${wall}.name`) || Number(wall.split('.')[1]) + 1}`;
  return subjectOf(path, named);
}

/** What one side says: a quantity with its unit, text as it was typed, "nothing" for what is left out. */
export function sideWords(value: unknown, path: string, units: UnitSystem): string {
  if (value === undefined || value === null || value === '') return 'nothing';
  if (typeof value === 'number') {
    const field = fieldAt(path);
    return field === undefined ? String(value) : shortQuantity(value, field.kind, units);
  }
  if (typeof value === 'string') return value;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (Array.isArray(value)) return value.length === 1 ? '1 entry' : `${value.length} entries`;
  return 'is there';
}
