/** The parts of a lesson in their order: questions, comparisons, handout. */
import type { Lesson } from '../../model/index.ts';

export type Part =
  | { readonly kind: 'question'; readonly index: number }
  | { readonly kind: 'comparison'; readonly index: number }
  | { readonly kind: 'handout' };

export function firstPart({ questions, comparisons }: Lesson): Part {
  if (questions.length > 0) return { kind: 'question', index: 0 };
  return comparisons.length > 0 ? { kind: 'comparison', index: 0 } : { kind: 'handout' };
}

export function nextPart({ questions, comparisons }: Lesson, part: Part): Part | null {
  if (part.kind === 'handout') return null;
  const list = part.kind === 'question' ? questions : comparisons;
  if (part.index + 1 < list.length) return { ...part, index: part.index + 1 };
  return part.kind === 'question' && comparisons.length > 0 ? { kind: 'comparison', index: 0 } : { kind: 'handout' };
}
