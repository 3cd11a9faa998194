/** Words for lists and texts that are too long or too short, where a schema brings none of its own for a limit. */
import type { z } from 'zod';

/** What lists and texts are counted in: one of it, and more. */
const COUNTED: Readonly<Record<string, readonly [one: string, more: string]>> = {
  array: ['entry', 'entries'],
  string: ['character', 'characters'],
};

/** Handed to zod as what words its issues; undefined leaves them to zod. What is allowed follows where `problemsOf` looks for it. */
export function issueWords(issue: z.core.$ZodRawIssue): string | undefined {
  if (issue.code !== 'too_big' && issue.code !== 'too_small') return undefined;
  const words = COUNTED[String(issue.origin)];
  if (words === undefined) return undefined;
  const counted = (n: number) => `${n} ${words[n === 1 ? 0 : 1]}`;
  const found = (issue.input as { readonly length: number }).length;
  return issue.code === 'too_big'
    ? `has ${counted(found)}, which is too many; allowed: up to ${counted(Number(issue.maximum))}`
    : `has ${counted(found)}, which is too few; allowed: ${counted(Number(issue.minimum))} at least`;
}
