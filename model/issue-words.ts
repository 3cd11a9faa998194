/** Words for what has the wrong type, and for lists and texts that are too long or too short, where a schema brings none of its own. */
import type { z } from 'zod';
import { shown } from './site-error.ts';

/** What lists and texts are counted in: one of it, and more. */
const COUNTED: Readonly<Record<string, readonly [one: string, more: string]>> = {
  array: ['entry', 'entries'],
  string: ['character', 'characters'],
};

/** What a value is not, and how one is written. */
const TYPES: Readonly<Record<string, readonly [not: string, written: string]>> = {
  array: ['a list', 'entries in square brackets'],
  tuple: ['a list', 'entries in square brackets'],
  string: ['a text', 'text in quotes'],
  number: ['a number', 'a number without quotes'],
  boolean: ['true or false', 'true, false'],
};

/** Handed to zod as what words its issues; undefined leaves them to zod. What is allowed follows where `problemsOf` looks for it. */
export function issueWords(issue: z.core.$ZodRawIssue): string | undefined {
  if (issue.code === 'invalid_type') {
    const words = TYPES[String(issue.expected)];
    return words && `${shown(issue.input)} is not ${words[0]}; allowed: ${words[1]}`;
  }
  if (issue.code !== 'too_big' && issue.code !== 'too_small') return undefined;
  const words = COUNTED[String(issue.origin)];
  if (words === undefined) return undefined;
  const counted = (n: number) => `${n} ${words[n === 1 ? 0 : 1]}`;
  const found = (issue.input as { readonly length: number }).length;
  return issue.code === 'too_big'
    ? `has ${counted(found)}, which is too many; allowed: up to ${counted(Number(issue.maximum))}`
    : `has ${counted(found)}, which is too few; allowed: ${counted(Number(issue.minimum))} at least`;
}
