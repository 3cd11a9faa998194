/** Problems of an input in the words and units of the form. */
import { fieldAt, type Problem, type UnitSystem } from '../../model/index.ts';
import { type Draft, textAt, valueAt } from './draft.ts';
import { rangeText, shortQuantity } from './quantity-text.ts';

export interface ShownProblem {
  readonly path: string;
  /** What the field is called. */
  readonly subject: string;
  /** What is wrong with it. */
  readonly text: string;
  /** What is accepted there; empty where the text says it. */
  readonly allowed: string;
}

export type ProblemsByPath = ReadonlyMap<string, readonly ShownProblem[]>;

/** The model speaks SI; a number that somebody reads in another unit is quoted in that unit. */
export function shownProblem(problem: Problem, draft: Draft, units: UnitSystem): ShownProblem {
  const { path } = problem;
  const subject = subjectOf(path, draft);
  const text = problem.wrong;
  const field = fieldAt(path);
  if (field === undefined) return { path, subject, text, allowed: problem.allowed };

  const allowed = rangeText(field, units);
  const value = valueAt(draft, path);
  // An emptied entry of a list is null once the site went through a file or the browser's memory.
  if (value === null) return { path, subject, text: 'is missing', allowed };
  if (typeof value !== 'number') return { path, subject, text, allowed };
  // A number within its range breaks a rule between fields, which knows better what would do.
  if (value >= field.min && value <= field.max) return { path, subject, text, allowed: problem.allowed || allowed };
  const [side, bound] = value < field.min ? ['below', field.min] : ['above', field.max];
  const quantity = (si: number) => shortQuantity(si, field.kind, units);
  return { path, subject, text: `${quantity(value)} is ${side} ${quantity(bound)}`, allowed };
}

export function problemsByPath(problems: readonly ShownProblem[]): ProblemsByPath {
  const byPath = new Map<string, ShownProblem[]>();
  for (const problem of problems) byPath.set(problem.path, [...(byPath.get(problem.path) ?? []), problem]);
  return byPath;
}

/** Fields that are no numbers and whose key is no plain word. */
const LABELS: Readonly<Record<string, string>> = {
  'box.mount': 'how the box is held',
  'box.compartments': 'two rooms',
  'box.material': 'outer skin',
  'box.duty': 'heat through the day',
  'building.outlineM': 'outline of the building',
};

const AXES = [['east'], ['north']];

/** What the field at a path is called, in words. */
export function subjectOf(path: string, draft: Draft): string {
  const corner = /^building\.outlineM\.(\d+)(?:\.([01]))?/.exec(path);
  if (corner) return [`corner ${corner[1]} of the building`, ...(AXES[Number(corner[2])] ?? [])].join(', ');
  const label = LABELS[path] ?? fieldAt(path)?.label ?? spacedOut(path.split('.').at(-1) ?? '');
  const wall = /^walls\.(\d+)/.exec(path)?.[1];
  if (wall === undefined) return label;
  return `wall ${textAt(draft, `walls.${wall}.name`) || Number(wall) + 1}, ${label}`;
}

/** "timeZone" reads as "time zone". */
function spacedOut(key: string): string {
  return key === '' ? 'site' : key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
