/** What a schema of lessons found wrong, in the words of a site's problems. */
import type { z } from 'zod';
import { FIELDS } from '../fields.ts';
import { problemsOf } from '../parse-site.ts';
import type { KnownKeys } from '../schema-parts.ts';
import { type Problem, problem } from '../site-error.ts';
import { DIFFERENCE_FIELDS } from './difference.ts';

/** The problems of some issues, their paths below `under`. */
export function lessonProblems(issues: readonly z.core.$ZodIssue[], knownKeys: KnownKeys, under: string): Problem[] {
  const field = (path: string) => {
    const at = DIFFERENCE_FIELDS[path.slice(path.lastIndexOf('.') + 1)];
    return at === undefined ? undefined : FIELDS[at];
  };
  return issues.flatMap((issue) => {
    const path = [under, ...issue.path].filter((part) => part !== '');
    return problemsOf({ ...issue, path }, knownKeys, field).map((one) =>
      one.path === '' ? problem('lesson', one.found, one.wrong, one.allowed) : one,
    );
  });
}
