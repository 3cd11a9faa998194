/** Computes the answer of a question, each time that it is asked. */
import type { Face } from '../faces.ts';
import { openFaces } from '../faces.ts';
import { problem, SiteError } from '../site-error.ts';
import { type PlayedDay, playDay } from '../siting/played-day.ts';
import { shadeMemory } from '../siting/wall-shade.ts';
import { formatQuantity } from '../units.ts';
import { askQuestion, type GuessForm, hourText, placedSite } from './ask.ts';
import { type BothUnits, bothUnits, hotterBy, hoursText, kelvins } from './both-units.ts';
import { compareBoxes, type LessonOptions, yearsText } from './compare.ts';
import type { Comparison } from './comparison.ts';
import { batteryYearsText, dayAgeing } from './day-ageing.ts';
import {
  clockHour,
  directSunSteps,
  faceSunWm2,
  hoursOf,
  insidePeakStep,
  insideSwingK,
  stepAtHour,
  stepClock,
  sunniestFace,
} from './day-facts.ts';
import type { Difference } from './difference.ts';
import type { Lesson } from './lesson-file.ts';
import { ALIKE_K } from './pair-facts.ts';
import type { LessonQuestion } from './question.ts';
import { relevantTo } from './relevant.ts';
import { type Statement, statementsOf } from './rule.ts';
import { WALL_RULES } from './rules-of-a-wall.ts';
import { facesAtHour, frontsAtHour, HOUR_RULES } from './rules-of-an-hour.ts';
import { PAIR_RULES } from './rules-of-two.ts';
import { hottestFirst, WALLS_RULES } from './rules-of-walls.ts';

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

/** A wall this near the hottest or coolest counts as near, K. */
const NEAR_WALL_K = 1;

/** A face or wall with this share of the most sun counts as near. */
const NEAR_SUN = 0.9;

/** A margin smaller than this counts as near, K. */
const NEAR_LIMIT_K = 1;

type Found = Omit<Answer, 'question' | 'form'>;

/**
 * Computes the answer of a question.
 * @throws SiteError where it does not fit the site, as when the sun is down at the hour that it asks for
 */
export function answerQuestion(
  lesson: Pick<Lesson, 'site'>,
  question: LessonQuestion,
  options: LessonOptions = {},
): Answer {
  const site = placedSite(lesson, question);
  const shades = options.shades ?? shadeMemory();
  const with_: LessonOptions = { ...options, shades };
  const play = (wallName: string): PlayedDay => playDay(site, wallName, with_);
  const compare = (wallName: string, difference: Difference): Comparison =>
    compareBoxes({ site, wallName, difference, options: with_ });
  const { form } = askQuestion(lesson, question, 'metric');
  const all = found(question, { walls: () => site.walls.map(({ name }) => play(name)), play, compare });
  return { question, form, ...all, statements: relevantTo(question.kind, all.statements) };
}

interface Doing {
  walls(): PlayedDay[];
  play(wallName: string): PlayedDay;
  compare(wallName: string, difference: Difference): Comparison;
}

function found(question: LessonQuestion, doing: Doing): Found {
  const one = (wall: string, difference: Difference | undefined) => {
    if (difference === undefined) return { played: doing.play(wall), pair: null };
    const pair = doing.compare(wall, difference);
    return { played: pair.b.played, pair };
  };
  switch (question.kind) {
    case 'hottestWall':
      return wallByPeak(hottestFirst(doing.walls()));
    case 'coolestWall':
      return wallByPeak(hottestFirst(doing.walls()).reverse());
    case 'sunniestWall':
      return sunniestWall(question, doing.walls());
    case 'peakHour':
      return peakHour(doing.play(question.wall));
    case 'sunOnWall':
      return sunOnWall(doing.play(question.wall));
    case 'sunniestFace':
      return faceOfTheSun(question, doing.play(question.wall));
    case 'dailySwing': {
      const played = doing.play(question.wall);
      const text = bothUnits((units) => kelvins(insideSwingK(played), units));
      return { ...ofOne(played), target: { type: 'number', value: insideSwingK(played) }, computed: text };
    }
    case 'overLimit':
      return overLimit(one(question.wall, question.difference));
    case 'hoursOverLimit': {
      const { played, pair } = one(question.wall, question.difference);
      const { hoursOverLimit } = played.result;
      const computed = bothUnits(() => hoursText(hoursOverLimit));
      return { ...ofEither(played, pair), target: { type: 'number', value: hoursOverLimit }, computed };
    }
    case 'batteryYears': {
      const { played, pair } = one(question.wall, question.difference);
      const { batteryYears } = dayAgeing(played.result);
      const computed = bothUnits((units) => `${yearsText(batteryYears)}. ${batteryYearsText(units)}`);
      return { ...ofEither(played, pair), target: { type: 'number', value: batteryYears }, computed };
    }
    case 'kelvinsSaved':
    case 'kelvinsAdded': {
      const pair = doing.compare(question.wall, question.difference);
      const value = pair.peakDifferenceK * (question.kind === 'kelvinsSaved' ? -1 : 1);
      const computed = bothUnits((units) => hotterBy(pair.peakDifferenceK, units));
      return { ...ofTwo(pair), target: { type: 'number', value }, computed };
    }
    case 'ageingFactor': {
      const pair = doing.compare(question.wall, question.difference);
      const computed = bothUnits(
        () => `${pair.ageingFactor.toFixed(2)} times as fast (Arrhenius, 0.7 eV: common practice, no source)`,
      );
      return { ...ofTwo(pair), target: { type: 'number', value: pair.ageingFactor }, computed };
    }
    case 'hotterBox': {
      const pair = doing.compare(question.wall, question.difference);
      return betweenTwo(pair, pair.peakDifferenceK);
    }
    case 'greaterSwing': {
      const pair = doing.compare(question.wall, question.difference);
      return betweenTwo(pair, insideSwingK(pair.b.played) - insideSwingK(pair.a.played), true);
    }
    case 'betterRemedy':
      return betterRemedy(doing.compare(question.wall, question.first), doing.compare(question.wall, question.second));
  }
}

const TOLERANCE_OF_NUMBERS = bothUnits(() => '');

const peakText = (played: PlayedDay): BothUnits =>
  bothUnits(
    (units) =>
      `${formatQuantity('temperature', played.result.peakInsideAirC, units)} at ${stepClock(played, insidePeakStep(played))}`,
  );

const wallLabel = ({ wall }: PlayedDay): BothUnits => bothUnits(() => wall.name);

const ofOne = (played: PlayedDay) => ({
  nearMeans: TOLERANCE_OF_NUMBERS,
  figures: [{ label: wallLabel(played), text: peakText(played) }],
  statements: statementsOf(WALL_RULES, played),
  days: [{ label: wallLabel(played), played }],
});

const ofTwo = (pair: Comparison) => ({
  nearMeans: TOLERANCE_OF_NUMBERS,
  figures: [pair.a, pair.b].map(({ label, played }) => ({ label, text: peakText(played) })),
  statements: statementsOf(PAIR_RULES, pair),
  days: [pair.a, pair.b].map(({ label, played }) => ({ label, played })),
});

const ofEither = (played: PlayedDay, pair: Comparison | null) =>
  pair === null
    ? ofOne(played)
    : { ...ofTwo(pair), statements: [...statementsOf(PAIR_RULES, pair), ...statementsOf(WALL_RULES, played)] };

const ofWalls = (walls: readonly PlayedDay[]) => ({
  nearMeans: TOLERANCE_OF_NUMBERS,
  figures: walls.map((played) => ({ label: wallLabel(played), text: peakText(played) })),
  statements: statementsOf(WALLS_RULES, walls),
  days: walls.map((played) => ({ label: wallLabel(played), played })),
});

/** @param ordered the wall asked for first */
function wallByPeak(ordered: readonly PlayedDay[]): Found {
  const first = ordered[0] as PlayedDay;
  const near = ordered
    .slice(1)
    .filter(({ result }) => Math.abs(result.peakInsideAirC - first.result.peakInsideAirC) <= NEAR_WALL_K);
  return {
    ...ofWalls(ordered),
    statements: [...statementsOf(WALLS_RULES, ordered), ...statementsOf(WALL_RULES, first)],
    target: { type: 'choice', right: [first.wall.name], near: near.map(({ wall }) => wall.name) },
    computed: bothUnits((units) => `${first.wall.name}: ${peakText(first)[units]}`),
    nearMeans: bothUnits((units) => `a wall within ${kelvins(NEAR_WALL_K, units)} of it counts as near`),
  };
}

function sunniestWall({ hour, id }: { hour: number; id: string }, walls: readonly PlayedDay[]): Found {
  const sun = (played: PlayedDay): number => faceSunWm2(played, 'front', stepAtHour(played, hour));
  const ordered = [...walls].sort((a, b) => sun(b) - sun(a));
  const first = ordered[0] as PlayedDay;
  if (sun(first) <= 0) throw darkness(id, hour);
  const text = (played: PlayedDay) => bothUnits((units) => formatQuantity('irradiance', sun(played), units));
  return {
    ...ofWalls(ordered),
    statements: [...statementsOf(HOUR_RULES, frontsAtHour(ordered, hour)), ...statementsOf(WALLS_RULES, ordered)],
    figures: ordered.map((played) => ({ label: wallLabel(played), text: text(played) })),
    target: { type: 'choice', right: [first.wall.name], near: nearSun(ordered.map((p) => [p.wall.name, sun(p)])) },
    computed: bothUnits((units) => `${first.wall.name}: ${text(first)[units]} at ${hourText(hour)}`),
    nearMeans: NEAR_SUN_TEXT,
  };
}

function faceOfTheSun({ hour, id }: { hour: number; id: string }, played: PlayedDay): Found {
  const step = stepAtHour(played, hour);
  const sun = (face: Face): number => faceSunWm2(played, face, step);
  const first = sunniestFace(played, step);
  if (sun(first) <= 0) throw darkness(id, hour);
  const faces = [...openFaces(played.site.box.mount)].sort((a, b) => sun(b) - sun(a));
  const text = (face: Face) => bothUnits((units) => formatQuantity('irradiance', sun(face), units));
  return {
    ...ofOne(played),
    statements: [...statementsOf(HOUR_RULES, facesAtHour(played, faces, hour)), ...statementsOf(WALL_RULES, played)],
    figures: faces.map((face) => ({ label: bothUnits(() => face), text: text(face) })),
    target: { type: 'choice', right: [first], near: nearSun(faces.map((face) => [face, sun(face)])) },
    computed: bothUnits((units) => `${first}: ${text(first)[units]} at ${hourText(hour)}`),
    nearMeans: NEAR_SUN_TEXT,
  };
}

const NEAR_SUN_TEXT = bothUnits(() => `${NEAR_SUN * 100} % of the most sun or more counts as near`);

/** Those besides the first that get nearly as much. */
function nearSun([first, ...others]: (readonly [name: string, wm2: number])[]): string[] {
  const most = first?.[1] ?? 0;
  return others.filter(([, wm2]) => wm2 >= NEAR_SUN * most).map(([name]) => name);
}

function darkness(id: string, hour: number): SiteError {
  return new SiteError([
    problem(`question ${id}`, hourText(hour), `the sun is down at ${hourText(hour)}`, 'an hour of daylight'),
  ]);
}

function peakHour(played: PlayedDay): Found {
  const clock = stepClock(played, insidePeakStep(played));
  return { ...ofOne(played), target: { type: 'time', value: clockHour(clock) }, computed: peakText(played) };
}

function sunOnWall(played: PlayedDay): Found {
  const { morning, afternoon } = directSunSteps(played, 'front');
  const before = morning.length > 0;
  const after = afternoon.length > 0;
  const right = before && after ? 'both' : before ? 'morning' : after ? 'afternoon' : 'never';
  const hours = `${hoursText(hoursOf(played, morning))} before and ${hoursText(hoursOf(played, afternoon))} after the sun's noon`;
  const near = right === 'both' ? ['morning', 'afternoon'] : right === 'never' ? [] : ['both'];
  return {
    ...ofOne(played),
    target: { type: 'choice', right: [right], near },
    computed: bothUnits(() => (right === 'never' ? 'No direct sun on the front at any hour.' : `Yes: ${hours}.`)),
    nearMeans: bothUnits(() => 'half of the truth counts as near; direct sun counts from 120 W/m² (WMO guide no. 8)'),
  };
}

function overLimit({ played, pair }: { played: PlayedDay; pair: Comparison | null }): Found {
  const { marginK } = played.result;
  const [right, other] = marginK < 0 ? ['yes', 'no'] : ['no', 'yes'];
  return {
    ...ofEither(played, pair),
    target: {
      type: 'choice',
      right: [right as string],
      near: Math.abs(marginK) < NEAR_LIMIT_K ? [other as string] : [],
    },
    computed: bothUnits((units) =>
      marginK < 0 ? `Yes, by ${kelvins(marginK, units)}.` : `No, ${kelvins(marginK, units)} are left.`,
    ),
    nearMeans: bothUnits((units) => `within ${kelvins(NEAR_LIMIT_K, units)} of the limit either answer counts as near`),
  };
}

/** @param apartK how much more B has of what was asked for, K */
function betweenTwo(pair: Comparison, apartK: number, swing = false): Found {
  const right = Math.abs(apartK) <= ALIKE_K ? 'alike' : apartK > 0 ? 'b' : 'a';
  const near = right === 'alike' ? [] : Math.abs(apartK) <= 2 * ALIKE_K ? ['alike'] : [];
  const text = (played: PlayedDay, units: 'metric' | 'us'): string =>
    swing ? kelvins(insideSwingK(played), units) : peakText(played)[units];
  return {
    ...ofTwo(pair),
    figures: [pair.a, pair.b].map(({ label, played }) => ({ label, text: bothUnits((units) => text(played, units)) })),
    target: { type: 'choice', right: [right], near },
    computed: bothUnits(
      (units) =>
        `${pair.a.label[units]}: ${text(pair.a.played, units)}; ${pair.b.label[units]}: ${text(pair.b.played, units)}`,
    ),
    nearMeans: bothUnits((units) => `less than ${kelvins(ALIKE_K, units)} apart counts as about the same`),
  };
}

function betterRemedy(first: Comparison, second: Comparison): Found {
  const apartK = first.peakDifferenceK - second.peakDifferenceK;
  const right = Math.abs(apartK) <= ALIKE_K ? 'alike' : apartK < 0 ? 'first' : 'second';
  const near = right !== 'alike' && Math.abs(apartK) <= 2 * ALIKE_K ? ['alike'] : [];
  const figures = [
    { label: first.a.label, text: peakText(first.a.played) },
    { label: first.title, text: peakText(first.b.played) },
    { label: second.title, text: peakText(second.b.played) },
  ];
  const seen = new Set<string>();
  const statements = [first, second]
    .flatMap((pair) => statementsOf(PAIR_RULES, pair))
    .filter(({ id }) => !seen.has(id) && seen.add(id));
  return {
    target: { type: 'choice', right: [right], near },
    computed: bothUnits(
      (units) =>
        `${first.title[units]}: ${hotterBy(first.peakDifferenceK, units)}; ${second.title[units]}: ${hotterBy(second.peakDifferenceK, units)}`,
    ),
    nearMeans: bothUnits((units) => `less than ${kelvins(ALIKE_K, units)} apart counts as about the same`),
    figures,
    statements,
    days: [
      { label: first.a.label, played: first.a.played },
      { label: first.title, played: first.b.played },
      { label: second.title, played: second.b.played },
    ],
  };
}
