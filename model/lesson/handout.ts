/** What a handout prints: a page for each comparison, the equation sheet, exercises, and their solutions for a page apart. */
import { CAUTIONS } from '../cautions.ts';
import { clockTime } from '../civil-day.ts';
import { playDay } from '../siting/played-day.ts';
import { SUNSHINE } from '../siting/sunshine.ts';
import { shadeMemory } from '../siting/wall-shade.ts';
import { formatQuantity, type UnitSystem, usualUnits } from '../units.ts';
import { answerQuestion } from './answer-question.ts';
import { type AskedQuestion, askQuestion, placedSite } from './ask.ts';
import { hoursText, kelvinsBeside, temperatureBeside } from './both-units.ts';
import { compareBoxes, type LessonOptions, yearsText } from './compare.ts';
import type { BoxDay, Comparison } from './comparison.ts';
import { AGEING_AGAINST_C, batteryYearsText } from './day-ageing.ts';
import { explain, explainable } from './explain/explain.ts';
import { explainAgeingFactor, explainPeakDifference } from './explain/explain-ageing.ts';
import type { Explanation } from './explain/explanation.ts';
import type { Lesson, LessonComparison } from './lesson-file.ts';

/** One line of the table of a comparison. */
export interface HandoutRow {
  readonly label: string;
  readonly a: string;
  readonly b: string;
}

/** A page with two boxes. */
export interface HandoutPage {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly labels: { readonly a: string; readonly b: string };
  readonly rows: readonly HandoutRow[];
  readonly summary: string;
  readonly notes: readonly string[];
  readonly statements: readonly string[];
  /** What the curves are drawn from. */
  readonly comparison: Comparison;
}

export interface Exercise extends AskedQuestion {
  readonly number: number;
  readonly id: string;
}

export interface Solution {
  readonly number: number;
  readonly id: string;
  readonly answer: string;
  readonly figures: readonly { readonly label: string; readonly text: string }[];
  readonly statements: readonly string[];
}

export interface Handout {
  readonly title: string;
  readonly text: string;
  readonly place: string;
  readonly pages: readonly HandoutPage[];
  /** With the values of the first comparison's box A at its peak, or of the first wall where there is no comparison. */
  readonly equations: readonly Explanation[];
  /** Whose values those are. */
  readonly equationsOf: string;
  readonly exercises: readonly Exercise[];
  /** For a page of its own: what the model computed just now. */
  readonly solutions: readonly Solution[];
  readonly assumptions: readonly string[];
  readonly cautions: readonly string[];
}

/** The figures that the equation sheet opens, those of them that the day has. */
const SHEET = [
  'insideAir',
  'path:sunBeam',
  'beam:front',
  'direct',
  'global',
  'sunHeight',
  'path:convection',
  'path:convection:front',
  'coefficient:front',
  'stillAir:front',
  'path:longwaveSky:front',
  'sky',
  'path:mounting:back',
  'path:hood:front',
  'path:vents:insideAir',
  'path:storage',
  'outsideAir',
  'pressure',
  'margin',
  'wearNow',
  'batteryNow',
  'batteryYears',
];

/** How a handout of a lesson may be made. */
export interface HandoutOptions extends LessonOptions {
  /** The same lesson in another of its climates. */
  readonly climate?: string;
}

/**
 * The handout of a lesson. Everything in it is computed at the call.
 * @throws SiteError where a comparison or a question does not fit its site
 */
export function lessonHandout(lesson: Lesson, options: HandoutOptions = {}): Handout {
  const units = options.units ?? usualUnits(lesson.site.place.timeZone);
  const given: LessonOptions = { ...options, units, shades: options.shades ?? shadeMemory() };
  const placed: Lesson = { ...lesson, site: placedSite(lesson, options) };
  const pages = placed.comparisons.map((one) => handoutPage(placed, one, units, given));
  const day = firstDay(placed, pages, given);
  return {
    title: lesson.title,
    text: lesson.text,
    place: placeText(placed, units),
    pages,
    ...equationSheet(day, pages[0]?.comparison),
    exercises: placed.questions.map((question, k) => ({
      number: k + 1,
      id: question.id,
      ...askQuestion(placed, question, units),
    })),
    solutions: placed.questions.map((question, k): Solution => {
      const { computed, figures, statements } = answerQuestion(placed, question, given);
      return {
        number: k + 1,
        id: question.id,
        answer: computed[units],
        figures: figures.map(({ label, text }) => ({ label: label[units], text: text[units] })),
        statements: statements.map(({ text }) => text[units]),
      };
    }),
    assumptions: [
      ...day.played.result.assumptions.map(({ text, origin }) => `${text} (${origin})`),
      batteryYearsText(units),
    ],
    cautions: CAUTIONS,
  };
}

function placeText({ site }: Lesson, units: UnitSystem): string {
  const { latitudeDeg, altitudeM } = site.place;
  const side = latitudeDeg < 0 ? 'south' : 'north';
  return `${site.title}: ${Math.abs(latitudeDeg).toFixed(1)}° ${side}, ${formatQuantity('length', altitudeM, units, 0)} above the sea`;
}

function firstDay(
  lesson: Lesson,
  pages: readonly HandoutPage[],
  options: LessonOptions,
): Pick<BoxDay, 'played' | 'wallName'> {
  const first = pages[0]?.comparison.a;
  if (first !== undefined) return first;
  const wallName = lesson.site.walls[0]?.name ?? '';
  return { wallName, played: playDay(lesson.site, wallName, options) };
}

function equationSheet({ played, wallName }: Pick<BoxDay, 'played' | 'wallName'>, pair: Comparison | undefined) {
  const has = new Set(explainable(played).map(({ what }) => what));
  const own = SHEET.filter((what) => has.has(what)).flatMap((what) => explain(played, what) ?? []);
  const { peakAtUtc, timeZone, date } = played.result;
  return {
    equations: [...own, ...(pair === undefined ? [] : [explainPeakDifference(pair), explainAgeingFactor(pair)])],
    equationsOf: `Values of the box on "${wallName}" on ${date} at ${clockTime(peakAtUtc, timeZone)}, when the air inside is hottest.`,
  };
}

function handoutPage(lesson: Lesson, one: LessonComparison, units: UnitSystem, options: LessonOptions): HandoutPage {
  const { id, wall, difference, title, text } = one;
  const comparison = compareBoxes({ site: placedSite(lesson, one), wallName: wall, difference, options });
  return {
    id,
    title: title ?? comparison.title[units],
    text: text ?? '',
    labels: { a: comparison.a.label[units], b: comparison.b.label[units] },
    rows: comparisonRows(comparison, units),
    summary: comparison.summary[units],
    notes: comparison.notes.map((note) => note[units]),
    statements: comparison.statements.map((statement) => statement.text[units]),
    comparison,
  };
}

/** The figures of two boxes beside each other, as text. */
export function comparisonRows({ a, b }: Comparison, units: UnitSystem): HandoutRow[] {
  const row = (label: string, of: (box: BoxDay) => string): HandoutRow => ({ label, a: of(a), b: of(b) });
  const temperature = (celsius: number) => temperatureBeside(celsius, units);
  return [
    row('air inside at its peak', ({ played }) => temperature(played.result.peakInsideAirC)),
    row('at', ({ played: { result } }) => clockTime(result.peakAtUtc, result.timeZone)),
    row('outside air, highest', ({ played }) => temperature(played.result.peakOutsideAirC)),
    row('margin to the limit', ({ played }) => kelvinsBeside(played.result.marginK, units)),
    row('hours over the limit', ({ played }) => hoursText(played.result.hoursOverLimit)),
    row(`${SUNSHINE} on the box`, ({ played }) => hoursText(played.result.sunHours)),
    row(`wear of the electronics against ${formatQuantity('temperature', AGEING_AGAINST_C, units, 0)}`, ({ ageing }) =>
      ageing.electronicsAgainst40C.toFixed(2),
    ),
    row('life of a battery if every day were like this one', ({ ageing }) => yearsText(ageing.batteryYears)),
  ];
}
