/** What the answer of a question is, and what answers of all kinds have in common. */
import type { PlayedDay } from '../siting/played-day.ts';
import { formatQuantity } from '../units.ts';
import type { GuessForm } from './ask.ts';
import { type BothUnits, bothUnits } from './both-units.ts';
import type { Comparison } from './comparison.ts';
import { insidePeakStep, stepClock } from './day-facts.ts';
import type { LessonQuestion } from './question.ts';
import { type Statement, statementsOf } from './rule.ts';
import { WALL_RULES } from './rules-of-a-wall.ts';
import { PAIR_RULES } from './rules-of-two.ts';
import { WALLS_RULES } from './rules-of-walls.ts';

/** A day that belongs to an answer, and whose it is. */
export interface LabelledDay {
  readonly label: BothUnits;
  readonly played: PlayedDay;
}

/** One line of a table beside an answer. */
export interface Figure {
  readonly label: BothUnits;
  readonly text: BothUnits;
}

/** What a guess is held against. */
export type Target =
  /** Values that are right, and those that are near. */
  | { readonly type: 'choice'; readonly right: readonly string[]; readonly near: readonly string[] }
  /** K, hours, years or times. */
  | { readonly type: 'number'; readonly value: number }
  /** Hour of the local day. */
  | { readonly type: 'time'; readonly value: number };

export interface Answer {
  readonly question: LessonQuestion;
  readonly form: GuessForm;
  readonly target: Target;
  /** The answer in words. */
  readonly computed: BothUnits;
  /** What counts as right and as near for a choice; of numbers the tolerance is the same everywhere. */
  readonly nearMeans: BothUnits;
  readonly figures: readonly Figure[];
  readonly statements: readonly Statement[];
  /** The days that the answer was read off, to be drawn. */
  readonly days: readonly LabelledDay[];
}

/** What is found when a question is computed. */
export type Found = Omit<Answer, 'question' | 'form'>;

const TOLERANCE_OF_NUMBERS = bothUnits(() => '');

export const peakText = (played: PlayedDay): BothUnits =>
  bothUnits(
    (units) =>
      `${formatQuantity('temperature', played.result.peakInsideAirC, units)} at ${stepClock(played, insidePeakStep(played))}`,
  );

export const wallLabel = ({ wall }: PlayedDay): BothUnits => bothUnits(() => wall.name);

export const ofOne = (played: PlayedDay) => ({
  nearMeans: TOLERANCE_OF_NUMBERS,
  figures: [{ label: wallLabel(played), text: peakText(played) }],
  statements: statementsOf(WALL_RULES, played),
  days: [{ label: wallLabel(played), played }],
});

export const ofTwo = (pair: Comparison) => ({
  nearMeans: TOLERANCE_OF_NUMBERS,
  figures: [pair.a, pair.b].map(({ label, played }) => ({ label, text: peakText(played) })),
  statements: statementsOf(PAIR_RULES, pair),
  days: [pair.a, pair.b].map(({ label, played }) => ({ label, played })),
});

export const ofEither = (played: PlayedDay, pair: Comparison | null) =>
  pair === null
    ? ofOne(played)
    : { ...ofTwo(pair), statements: [...statementsOf(PAIR_RULES, pair), ...statementsOf(WALL_RULES, played)] };

export const ofWalls = (walls: readonly PlayedDay[]) => ({
  nearMeans: TOLERANCE_OF_NUMBERS,
  figures: walls.map((played) => ({ label: wallLabel(played), text: peakText(played) })),
  statements: statementsOf(WALLS_RULES, walls),
  days: walls.map((played) => ({ label: wallLabel(played), played })),
});
