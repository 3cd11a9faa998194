/** One thing that is wrong with an input: where, what stands there, and what may stand there. */
export interface Problem {
  /** Path of the field, "walls.0.azimuthDeg"; empty for the input as a whole. */
  readonly path: string;
  readonly found: string;
  /** What is wrong with it, without path and range: for a message beside the field. */
  readonly wrong: string;
  readonly allowed: string;
  /** The whole sentence for a person. */
  readonly message: string;
}

/** Thrown for bad input; lists every problem at once. */
export class SiteError extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(problems.map((problem) => problem.message).join('\n'));
    this.name = 'SiteError';
    this.problems = problems;
  }
}

/** A problem with its sentence put together: "box.powerW: -3 is below 0; allowed: 0 W to 2000 W". */
export function problem(path: string, found: string, wrong: string, allowed: string): Problem {
  const subject = path === '' ? 'site' : path;
  const message = `${subject}: ${wrong}${allowed === '' ? '' : `; allowed: ${allowed}`}`;
  return { path, found, wrong, allowed, message };
}

const LONGEST_SHOWN = 60;

/** How a wrong value is quoted back, short whatever its size. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
  if (typeof value === 'object' && value !== null) return 'an object';
  const text = typeof value === 'string' ? `"${value}"` : String(value);
  return text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}…` : text;
}
