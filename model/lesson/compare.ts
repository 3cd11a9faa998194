/** Two boxes side by side on the same day, with one difference between them. */
import { capital } from '../capital.ts';
import { clockTime } from '../civil-day.ts';
import { issueWords } from '../issue-words.ts';
import { type KnownKeys, schemaParts } from '../schema-parts.ts';
import type { Site } from '../site.ts';
import { SiteError } from '../site-error.ts';
import { playDay } from '../siting/played-day.ts';
import type { DayOptions } from '../siting/results.ts';
import { type ShadeMemory, shadeMemory } from '../siting/wall-shade.ts';
import { readNumberText, type UnitSystem } from '../units.ts';
import { type BothUnits, bothUnits, hotterBy, hoursText, kelvinsBeside, temperatureBeside } from './both-units.ts';
import type { BoxDay, Comparison, Pair } from './comparison.ts';
import { dayAgeing } from './day-ageing.ts';
import { type Difference, type DifferenceInput, differenceSchema } from './difference.ts';
import { boxLabels, doneWords, keptWords } from './difference-words.ts';
import { lessonProblems } from './lesson-problems.ts';
import { statementsOf } from './rule.ts';
import { PAIR_RULES } from './rules-of-two.ts';
import { type Standing, secondStanding } from './second-site.ts';

export interface LessonOptions extends DayOptions {
  /** Shades of former days, kept by the caller. */
  readonly shades?: ShadeMemory;
}

/**
 * Plays box A and the box that differs from it in one thing.
 * @throws SiteError with every problem of the difference, or where it does not fit the site
 */
export function compareBoxes(input: {
  site: Site;
  wallName: string;
  difference: DifferenceInput;
  options?: LessonOptions;
}): Comparison {
  const { site, wallName, options = {} } = input;
  const difference = readDifference(input.difference);
  return compareStandings({ site, wallName }, secondStanding(site, wallName, difference), difference, options);
}

/**
 * Reads a difference that a program hands in.
 * @throws SiteError
 */
export function readDifference(input: DifferenceInput): Difference {
  const knownKeys: KnownKeys = new Map();
  const schema = differenceSchema(schemaParts(readNumberText, knownKeys), 'difference');
  const parsed = schema.safeParse(input, { reportInput: true, jitless: true, error: issueWords });
  if (parsed.success) return parsed.data;
  throw new SiteError(lessonProblems(parsed.error.issues, knownKeys, 'difference'));
}

function compareStandings(from: Standing, to: Standing, difference: Difference, options: LessonOptions): Comparison {
  const shades = options.shades ?? shadeMemory();
  const box = (standing: Standing, label: BothUnits): BoxDay => {
    const played = playDay(standing.site, standing.wallName, { ...options, shades });
    return { ...standing, label, played, ageing: dayAgeing(played.result) };
  };
  const a = box(
    from,
    bothUnits((units) => boxLabels(difference, from, to, units).a),
  );
  const b = box(
    to,
    bothUnits((units) => boxLabels(difference, from, to, units).b),
  );
  const [dayA, dayB] = [a.played.result, b.played.result];
  const figures = {
    peakDifferenceK: dayB.peakInsideAirC - dayA.peakInsideAirC,
    marginDifferenceK: dayB.marginK - dayA.marginK,
    hoursOverDifference: dayB.hoursOverLimit - dayA.hoursOverLimit,
    ageingFactor: b.ageing.electronicsAgainst40C / a.ageing.electronicsAgainst40C,
  };
  const notes = (units: UnitSystem) => keptWords(difference, from, to, units);
  const pair: Pair = {
    difference,
    title: bothUnits((units) => capital(doneWords(difference, from, units))),
    a,
    b,
    summary: bothUnits((units) => summaryText({ a, b, ...figures }, units)),
    ...figures,
    notes: notes('metric').map((metric, k) => ({ metric, us: notes('us')[k] ?? metric })),
  };
  return { ...pair, statements: statementsOf(PAIR_RULES, pair) };
}

function summaryText(
  { a, b, peakDifferenceK, ageingFactor }: Pick<Comparison, 'a' | 'b' | 'peakDifferenceK' | 'ageingFactor'>,
  units: UnitSystem,
): string {
  const peak = ({ played: { result } }: BoxDay): string => {
    const at = clockTime(result.peakAtUtc, result.timeZone);
    return `${temperatureBeside(result.peakInsideAirC, units)} at ${at}`;
  };
  const hours = ({ played }: BoxDay): string => hoursText(played.result.hoursOverLimit);
  const years = ({ ageing }: BoxDay): string => yearsText(ageing.batteryYears);
  const parts = [
    `A, ${a.label[units]}: the air inside peaks at ${peak(a)}.`,
    `B, ${b.label[units]}: at ${peak(b)}, ${hotterBy(peakDifferenceK, units, kelvinsBeside)}.`,
    `Over the limit for ${hours(a)} and ${hours(b)}.`,
    `The electronics in B age ${ageingFactor.toFixed(2)} times as fast as those in A, and a battery would last ${years(a)} and ${years(b)} if every day were like this one.`,
  ];
  return parts.join(' ');
}

/** "2.4 years". */
export const yearsText = (years: number): string => `${years.toFixed(years < 10 ? 1 : 0)} years`;
