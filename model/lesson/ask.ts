/** How a question is put, and what a guess looks like. Nothing is computed here: the words hold no answer. */
import { compassPoint } from '../compass.ts';
import { type Face, openFaces } from '../faces.ts';
import type { Site } from '../site.ts';
import { formatQuantity, type UnitSystem, unitSymbol } from '../units.ts';
import { BATTERY_RATED_YEARS } from './day-ageing.ts';
import { boxLabels, climateTitle, doneWords } from './difference-words.ts';
import type { Lesson } from './lesson-file.ts';
import type { LessonQuestion } from './question.ts';
import { inClimate, secondStanding } from './second-site.ts';

export interface Choice {
  readonly value: string;
  readonly label: string;
}

/** What a guessed number counts; all but the kelvins read the same in either unit system. */
export type GuessedUnit = 'kelvins' | 'hours' | 'years' | 'times';

/** What a guess looks like: one of some values, a number in the shown unit, or a time of the day. */
export type GuessForm =
  | { readonly type: 'choice'; readonly choices: readonly Choice[] }
  | {
      readonly type: 'number';
      readonly counts: GuessedUnit;
      readonly unit: string;
      readonly min: number;
      readonly max: number;
      readonly step: number;
    }
  | { readonly type: 'time' };

export interface AskedQuestion {
  readonly prompt: string;
  readonly form: GuessForm;
}

/** The site that a question or a comparison is about: that of the lesson, in a climate of its own where it names one. */
export function placedSite(
  { site }: Pick<Lesson, 'site'>,
  { climate }: { readonly climate?: string | undefined },
): Site {
  return climate === undefined ? site : inClimate(site, climate);
}

/** Puts a question: its words and what a guess looks like. */
export function askQuestion(lesson: Pick<Lesson, 'site'>, question: LessonQuestion, units: UnitSystem): AskedQuestion {
  const site = placedSite(lesson, question);
  const where = question.climate === undefined ? '' : ` In the climate "${climateTitle(question.climate)}".`;
  return {
    prompt: `${question.text ?? usualPrompt(site, question, units)}${where}`,
    form: formOf(site, question, units),
  };
}

const FACE_LABELS: Readonly<Record<Face, string>> = {
  front: 'the front',
  left: 'the left side, seen from outside',
  right: 'the right side, seen from outside',
  top: 'the lid',
  bottom: 'the underside',
  back: 'the back',
};

function usualPrompt(site: Site, question: LessonQuestion, units: UnitSystem): string {
  const done = (difference: Parameters<typeof doneWords>[0], wallName: string) =>
    doneWords(difference, { site, wallName }, units);
  const limit = formatQuantity('temperature', site.limits.maxC, units);
  const withIt = (from: { wall: string; difference?: Parameters<typeof doneWords>[0] | undefined }): string =>
    from.difference === undefined ? '' : ` with ${done(from.difference, from.wall)}`;
  switch (question.kind) {
    case 'hottestWall':
      return 'On which wall does the air inside the box get hottest on this day?';
    case 'coolestWall':
      return 'On which wall does the air inside the box stay coolest at its peak?';
    case 'peakHour':
      return `At what time is the air inside the box on "${question.wall}" hottest?`;
    case 'kelvinsSaved':
      return `By how much does ${done(question.difference, question.wall)} lower the peak of the air inside on "${question.wall}"?`;
    case 'kelvinsAdded':
      return `By how much does ${done(question.difference, question.wall)} raise the peak of the air inside on "${question.wall}"?`;
    case 'overLimit':
      return `Does the box on "${question.wall}"${withIt(question)} pass its limit of ${limit} on this day?`;
    case 'hoursOverLimit':
      return `For how many hours is the box on "${question.wall}"${withIt(question)} over its limit of ${limit} on this day?`;
    case 'betterRemedy':
      return `What lowers the peak on "${question.wall}" more: ${done(question.first, question.wall)}, or ${done(question.second, question.wall)}?`;
    case 'sunniestFace':
      return `Which face of the box on "${question.wall}" gets the most sun for each square metre at ${hourText(question.hour)}?`;
    case 'sunniestWall':
      return `On which wall does the front of the box get the most sun at ${hourText(question.hour)}?`;
    case 'sunOnWall':
      return `Does direct sun fall on the front of the box on "${question.wall}" on this day, and when?`;
    case 'dailySwing':
      return `How far is it from the coolest to the hottest hour of the air inside the box on "${question.wall}"?`;
    case 'hotterBox':
      return `Two boxes on "${question.wall}", one of them with ${done(question.difference, question.wall)}: which peaks hotter?`;
    case 'greaterSwing':
      return `Two boxes on "${question.wall}", one of them with ${done(question.difference, question.wall)}: in which does the air inside swing more from night to day?`;
    case 'batteryYears':
      return `A battery that lasts ${BATTERY_RATED_YEARS} years at ${formatQuantity('temperature', 25, units)}: how many years would it last in the box on "${question.wall}"${withIt(question)} if every day were like this one?`;
    case 'ageingFactor':
      return `How many times as fast do the electronics on "${question.wall}" age with ${done(question.difference, question.wall)}?`;
  }
}

function formOf(site: Site, question: LessonQuestion, units: UnitSystem): GuessForm {
  const kelvins = (maxK: number): GuessForm => ({
    type: 'number',
    counts: 'kelvins',
    unit: unitSymbol('temperatureDifference', units),
    min: 0,
    max: units === 'us' ? Math.round(maxK * 1.8) : maxK,
    step: units === 'us' ? 1 : 0.5,
  });
  const walls: Choice[] = site.walls.map(({ name, azimuthDeg }) => ({
    value: name,
    label: `${name}, facing ${compassPoint(azimuthDeg)}`,
  }));
  switch (question.kind) {
    case 'hottestWall':
    case 'coolestWall':
    case 'sunniestWall':
      return { type: 'choice', choices: walls };
    case 'peakHour':
      return { type: 'time' };
    case 'kelvinsSaved':
    case 'kelvinsAdded':
      return kelvins(40);
    case 'dailySwing':
      return kelvins(60);
    case 'overLimit':
      return choice([
        ['yes', 'yes, it passes the limit'],
        ['no', 'no, it stays within the limit'],
      ]);
    case 'hoursOverLimit':
      return { type: 'number', counts: 'hours', unit: 'h', min: 0, max: 24, step: 0.5 };
    case 'batteryYears':
      return { type: 'number', counts: 'years', unit: 'years', min: 0, max: 30, step: 0.1 };
    case 'ageingFactor':
      return { type: 'number', counts: 'times', unit: 'times', min: 0, max: 20, step: 0.1 };
    case 'sunniestFace':
      return choice(openFaces(site.box.mount).map((face) => [face, FACE_LABELS[face]] as const));
    case 'sunOnWall':
      return choice([
        ['never', 'no, not at any hour'],
        ['morning', 'yes, before noon only'],
        ['afternoon', 'yes, after noon only'],
        ['both', 'yes, before and after noon'],
      ]);
    case 'betterRemedy': {
      const done = (difference: typeof question.first) =>
        doneWords(difference, { site, wallName: question.wall }, units);
      return choice([
        ['first', done(question.first)],
        ['second', done(question.second)],
        ['alike', 'about the same'],
      ]);
    }
    case 'hotterBox':
    case 'greaterSwing': {
      const a = { site, wallName: question.wall };
      const labels = boxLabels(question.difference, a, secondStanding(site, question.wall, question.difference), units);
      return choice([
        ['a', labels.a],
        ['b', labels.b],
        ['alike', 'about the same'],
      ]);
    }
  }
}

const choice = (pairs: readonly (readonly [string, string])[]): GuessForm => ({
  type: 'choice',
  choices: pairs.map(([value, label]) => ({ value, label })),
});

/** 16.5 as "16:30". */
export function hourText(hour: number): string {
  const minutes = Math.round(hour * 60) % 1440;
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}
