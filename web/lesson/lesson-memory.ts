/**
 * What this tab keeps of lessons until it is closed: which one is open, and for each lesson and climate the place in it, the
 * guesses and how they went. No answer is kept: the model computes it anew. What is read may be of another version or made
 * up, so only what fits the lesson comes back; without storage everything works for as long as the view stands.
 */
import { askQuestion, type Lesson } from '../../model/index.ts';
import { firstPart, type Part } from './parts.ts';
import type { Tried } from './questions/guess.ts';
import type { Score } from './questions/score.ts';

/** Where a lesson came from: one of the shipped, by its place in the list, or the text of a file. */
export type Source =
  | { readonly kind: 'shipped'; readonly index: number }
  | { readonly kind: 'file'; readonly text: string }
  | { readonly kind: 'free' };

/** How far a lesson is in one climate. */
export interface Progress {
  readonly part: Part;
  readonly tried: Readonly<Record<string, Tried>>;
  readonly score: Score;
}

const OPENED_KEY = 'shadeside.lesson.opened';
const OUTCOMES: readonly unknown[] = ['right', 'near', 'wrong', 'shown'];

export const freshProgress = (lesson: Lesson): Progress => ({ part: firstPart(lesson), tried: {}, score: {} });

export const rememberOpened = (source: Source | null): void => write(OPENED_KEY, source);

export function rememberedSource(): Source | null {
  const kept = read(OPENED_KEY);
  if (!isRecord(kept)) return null;
  const { kind, index, text } = kept;
  if (kind === 'free') return { kind };
  if (kind === 'shipped' && isIndex(index)) return { kind, index };
  return kind === 'file' && typeof text === 'string' ? { kind, text } : null;
}

export const rememberClimate = (lesson: Lesson, climate: string): void => write(keyOf('climate', lesson), climate);

/** The climate that a lesson was left in; empty for its own. */
export function rememberedClimate(lesson: Lesson): string {
  const kept = read(keyOf('climate', lesson));
  return lesson.climates.find((name) => name === kept) ?? '';
}

export const rememberProgress = (lesson: Lesson, climate: string, progress: Progress): void =>
  write(keyOf('progress', lesson, climate), progress);

export function rememberedProgress(lesson: Lesson, climate: string): Progress {
  const kept = read(keyOf('progress', lesson, climate));
  const fresh = freshProgress(lesson);
  if (!isRecord(kept)) return fresh;
  const tried = Object.fromEntries(
    lesson.questions.flatMap((question) => {
      const guessed = isRecord(kept['tried']) ? readTried(lesson, question, kept['tried'][question.id]) : null;
      return guessed === null ? [] : [[question.id, guessed] as const];
    }),
  );
  const outcomes = isRecord(kept['score']) ? Object.entries(kept['score']) : [];
  const score = outcomes.filter(([id, outcome]) => Object.hasOwn(tried, id) && OUTCOMES.includes(outcome));
  return { part: readPart(lesson, kept['part']) ?? fresh.part, tried, score: Object.fromEntries(score) as Score };
}

/** Two lessons are the same where title and questions are: a file that is opened again goes on. */
const keyOf = (what: string, { title, questions, comparisons }: Lesson, climate = ''): string =>
  `shadeside.lesson.${what} ${JSON.stringify([title, climate, [...questions, ...comparisons].map(({ id }) => id)])}`;

function readPart({ questions, comparisons }: Lesson, kept: unknown): Part | null {
  if (!isRecord(kept)) return null;
  const { kind, index } = kept;
  if (kind === 'handout') return { kind };
  if ((kind !== 'question' && kind !== 'comparison') || !isIndex(index)) return null;
  return index < (kind === 'question' ? questions : comparisons).length ? { kind, index } : null;
}

/** A guess that the form of its question would take, in the units that it was made in. */
function readTried(lesson: Lesson, question: Lesson['questions'][number], kept: unknown): Tried | null {
  if (!isRecord(kept)) return null;
  const { guess, units } = kept;
  if (units !== 'metric' && units !== 'us') return null;
  if (guess === null) return { guess, units };
  const { form } = askQuestion(lesson, question, units);
  if (form.type === 'choice') {
    const chosen = form.choices.find(({ value }) => value === guess)?.value;
    return chosen === undefined ? null : { guess: chosen, units };
  }
  const [least, most] = form.type === 'time' ? [0, 24] : [form.min, form.max];
  return typeof guess === 'number' && guess >= least && guess <= most ? { guess, units } : null;
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isIndex = (value: unknown): value is number => Number.isInteger(value) && (value as number) >= 0;

function read(key: string): unknown {
  try {
    return JSON.parse(sessionStorage.getItem(key) ?? 'null');
  } catch {
    // Storage that is switched off throws, and so does text that is no JSON.
    return null;
  }
}

function write(key: string, value: unknown): void {
  try {
    sessionStorage.setItem(key, JSON.stringify(value));
  } catch {
    // Switched off, or full.
  }
}
