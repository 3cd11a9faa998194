import { type Problem, SiteError } from '../../site-error.ts';

/** One thing that is wrong with a weather file. */
export interface WeatherProblem extends Problem {
  /** Line of the file, from 1; 0 for the file as a whole. */
  readonly line: number;
}

/** Thrown for a weather file that cannot be used; names the line. */
export class WeatherFileError extends SiteError {
  declare readonly problems: readonly WeatherProblem[];

  constructor(problem: WeatherProblem) {
    super([problem]);
    this.name = 'WeatherFileError';
  }
}

const LONGEST_SHOWN = 60;

/** What stands in the file, in quotes, short whatever its size. */
export function quoted(text: string): string {
  const start = text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}…` : text;
  // What does not print is shown as a point: a binary file must not reach the terminal.
  return `"${start.replace(/\p{C}/gu, '·')}"`;
}

/** An error with its sentence: `line 12: dry bulb "abc" is not a number; allowed: -90 to 70 degC`. */
export function fileError(line: number, wrong: string, { found = '', allowed = '' } = {}): WeatherFileError {
  const path = line === 0 ? 'weather file' : `line ${line}`;
  const message = `${path}: ${wrong}${allowed === '' ? '' : `; allowed: ${allowed}`}`;
  return new WeatherFileError({ path, line, found, wrong, allowed, message });
}
