/** A guess before it is held against the answer, and where it lies in the chart afterwards. */
import { type Answer, fromDisplay, type GuessForm, readNumberText, type UnitSystem } from '../../../model/index.ts';

/** What stands in the field before anybody touched it: noon on the slider, nothing elsewhere. */
export const emptyGuess = (form: GuessForm): string => (form.type === 'time' ? '12' : '');

/** 16.25 as "16:15". */
export function clockText(hour: number): string {
  const minutes = Math.round(hour * 60);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/** Decimal keypads of many phones offer only the comma. */
const withPoint = (text: string) => text.trim().replace(',', '.');

/** The guess to hold against the answer, or what is wrong with the text. */
export function readGuess(
  form: GuessForm,
  text: string,
): { readonly guess: string | number } | { readonly wrong: string } {
  if (form.type === 'choice') return text === '' ? { wrong: 'Choose one first.' } : { guess: text };
  const value = readNumberText(withPoint(text), 'ratio');
  if (form.type === 'time') return value === null ? { wrong: 'Choose a time first.' } : { guess: value };
  const allowed = `a number from ${form.min} to ${form.max} (${form.unit})`;
  if (text.trim() === '') return { wrong: `Enter a guess first; allowed: ${allowed}.` };
  if (value === null || value < form.min || value > form.max) {
    return { wrong: `“${text.trim().slice(0, 40)}” is no guess; allowed: ${allowed}.` };
  }
  return { guess: value };
}

/** How a question was left: guessed, or shown without a guess. */
export interface Tried {
  /** Null where the answer was shown without one. */
  readonly guess: string | number | null;
  /** Units in which it was guessed. */
  readonly units: UnitSystem;
}

/** A temperature marked in the chart, degC. */
export interface MarkedLevel {
  readonly celsius: number;
  readonly label: string;
  readonly kind: 'guess' | 'answer';
}

/** Where a guess of kelvins would have put the peak; nothing for other guesses. */
export function markedLevels(answer: Answer, { guess, units }: Tried): MarkedLevel[] {
  const { question, days } = answer;
  const [a, b] = days.map(({ played }) => played.result);
  const k = typeof guess === 'number' ? fromDisplay('temperatureDifference', guess, units) : null;
  if (question.kind === 'dailySwing' && a !== undefined) {
    return levels(a.lowestInsideAirC, a.peakInsideAirC, k);
  }
  if ((question.kind === 'kelvinsSaved' || question.kind === 'kelvinsAdded') && a !== undefined && b !== undefined) {
    return levels(a.peakInsideAirC, b.peakInsideAirC, k !== null && question.kind === 'kelvinsSaved' ? -k : k);
  }
  return [];
}

function levels(fromC: number, answerC: number, k: number | null): MarkedLevel[] {
  const guessed: MarkedLevel[] = k === null ? [] : [{ celsius: fromC + k, label: 'your guess', kind: 'guess' }];
  return [...guessed, { celsius: answerC, label: 'computed', kind: 'answer' }];
}
