/** What is wrong with a request about screenings, as the API tells it. */
import { type Problem, SiteError, shown } from '../../model/index.ts';
import { BadInput } from '../bad-input.ts';

/** `found` is quoted back short, whatever its size. */
export function problemAt(path: string, found: unknown, wrong: string, allowed = ''): Problem {
  const message = `${path === '' ? 'body' : path}: ${wrong}${allowed === '' ? '' : `; allowed: ${allowed}`}`;
  return { path, found: shown(found), wrong, allowed, message };
}

/** What the engine says in lines, each a problem of its own. */
export function problemsOfLines({ lines }: BadInput, path = ''): Problem[] {
  return lines.map((line) => ({ path, found: '', wrong: line, allowed: '', message: line }));
}

/** The problems of something that throws on bad input; anything else is thrown on. */
export function problemsIn(look: () => void, path: string): Problem[] {
  try {
    look();
    return [];
  } catch (error) {
    if (error instanceof BadInput) return problemsOfLines(error, path);
    if (!(error instanceof SiteError)) throw error;
    return error.problems.map((found) => {
      const at = found.path === '' ? path : `${path}.${found.path}`;
      return { ...found, path: at, message: `${path}: ${found.message}` };
    });
  }
}
