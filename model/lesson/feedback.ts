/** Holds a guess against a computed answer. */
import { fromDisplay, readNumberText, type UnitSystem } from '../units.ts';
import type { Answer } from './answer.ts';
import { type GuessedUnit, type GuessForm, hourText } from './ask.ts';
import { kelvins } from './both-units.ts';
import type { Statement } from './rule.ts';

export type Verdict = 'right' | 'near' | 'wrong';

export interface Feedback {
  readonly verdict: Verdict;
  /** The guess as it was understood. */
  readonly guess: string;
  readonly computed: string;
  /** How far the guess is off; empty for a choice. */
  readonly apart: string;
  /** What counts as right and what as near. */
  readonly tolerance: string;
  readonly statements: readonly Statement[];
}

interface Tolerance {
  /** Right within this, absolute or as a share of the answer, whichever is larger. */
  readonly right: number;
  readonly rightShare: number;
  readonly near: number;
  readonly nearShare: number;
}

/** What counts as right and as near; a matter of teaching, no physics: common practice, no source. */
const TOLERANCES: Readonly<Record<GuessedUnit | 'time', Tolerance>> = {
  kelvins: { right: 1, rightShare: 0.2, near: 3, nearShare: 0.5 },
  hours: { right: 0.5, rightShare: 0.1, near: 2, nearShare: 0.3 },
  years: { right: 0.2, rightShare: 0.2, near: 0.5, nearShare: 0.5 },
  times: { right: 0.2, rightShare: 0.15, near: 0.5, nearShare: 0.4 },
  time: { right: 0.5, rightShare: 0, near: 1.5, nearShare: 0 },
};

/**
 * Holds a guess against an answer.
 * @param guess a value of the choices, a number in the unit that is shown, or a time such as "16:15" or 16.25
 * @throws RangeError for what is no guess, saying what is allowed
 */
export function checkGuess(answer: Answer, guess: string | number, units: UnitSystem): Feedback {
  const { target, form, computed, nearMeans, statements } = answer;
  const base = { computed: computed[units], statements };
  if (target.type === 'choice') {
    const value = readChoice(form, guess);
    const verdict = target.right.includes(value) ? 'right' : target.near.includes(value) ? 'near' : 'wrong';
    return { ...base, verdict, guess: value, apart: '', tolerance: nearMeans[units] };
  }
  const time = target.type === 'time';
  const counts = time ? 'time' : form.type === 'number' ? form.counts : 'hours';
  const value = time ? readTime(guess) : readNumber(form, guess, units);
  const limits = TOLERANCES[counts];
  const off = time ? roundTheClock(value - target.value) : value - target.value;
  const right = Math.max(limits.right, limits.rightShare * Math.abs(target.value));
  const near = Math.max(limits.near, limits.nearShare * Math.abs(target.value));
  const verdict = Math.abs(off) <= right ? 'right' : Math.abs(off) <= near ? 'near' : 'wrong';
  const amount = (size: number) => amountText(Math.abs(size), counts, units);
  return {
    ...base,
    verdict,
    guess: time ? hourText(value) : amount(value),
    apart:
      off === 0 ? 'exactly' : `${amount(off)} too ${time ? (off > 0 ? 'late' : 'early') : off > 0 ? 'much' : 'little'}`,
    tolerance: `right within ${amount(right)}, near within ${amount(near)}`,
  };
}

function readChoice(form: GuessForm, guess: string | number): string {
  const values = form.type === 'choice' ? form.choices.map(({ value }) => value) : [];
  if (values.includes(String(guess))) return String(guess);
  throw new RangeError(`guess: "${String(guess).slice(0, 40)}" is none of the choices; allowed: ${values.join(', ')}`);
}

function readNumber(form: GuessForm, guess: string | number, units: UnitSystem): number {
  const value = typeof guess === 'number' ? guess : readNumberText(guess, 'ratio');
  if (value === null || !Number.isFinite(value) || Math.abs(value) > MOST) {
    const unit = form.type === 'number' ? form.unit : '';
    throw new RangeError(
      `guess: "${String(guess).slice(0, 40)}" is no number; allowed: a number of ${unit}, such as 3.5`,
    );
  }
  return form.type === 'number' && form.counts === 'kelvins'
    ? fromDisplay('temperatureDifference', value, units)
    : value;
}

/** Further off than any answer. */
const MOST = 1e6;

function readTime(guess: string | number): number {
  const clock = typeof guess === 'string' ? /^\s*(\d{1,2}):([0-5]\d)\s*$/.exec(guess) : null;
  const hour = clock === null ? plainHour(guess) : Number(clock[1]) + Number(clock[2]) / 60;
  if (hour !== null && hour >= 0 && hour < 24) return hour;
  throw new RangeError(`guess: "${String(guess).slice(0, 40)}" is no time of the day; allowed: 00:00 to 23:59`);
}

const plainHour = (guess: string | number): number | null =>
  typeof guess === 'number' ? guess : readNumberText(guess, 'ratio');

/** Hours apart the shorter way round. */
function roundTheClock(hours: number): number {
  return ((hours + 36) % 24) - 12;
}

function amountText(size: number, counts: GuessedUnit | 'time', units: UnitSystem): string {
  if (counts === 'kelvins') return kelvins(size, units);
  if (counts === 'hours') return `${size.toFixed(1)} h`;
  if (counts === 'time') return size < 1 ? `${Math.round(size * 60)} min` : `${size.toFixed(1)} h`;
  return counts === 'years' ? `${size.toFixed(1)} years` : `${size.toFixed(2)} times`;
}
