/** Computes the answer of a question, each time that it is asked. */
import { type PlayedDay, playDay } from '../siting/played-day.ts';
import { shadeMemory } from '../siting/wall-shade.ts';
import { type Answer, type Found, ofEither, ofOne, ofTwo, peakText } from './answer.ts';
import { betterRemedy, betweenTwo, overLimit } from './answers-of-boxes.ts';
import { faceOfTheSun, sunniestWall, sunOnWall, wallByPeak } from './answers-of-walls.ts';
import { askQuestion, placedSite } from './ask.ts';
import { bothUnits, hotterBy, hoursText, kelvins } from './both-units.ts';
import { compareBoxes, type LessonOptions, yearsText } from './compare.ts';
import type { Comparison } from './comparison.ts';
import { batteryYearsText, dayAgeing } from './day-ageing.ts';
import { clockHour, insidePeakStep, insideSwingK, stepClock } from './day-facts.ts';
import type { Difference } from './difference.ts';
import type { Lesson } from './lesson-file.ts';
import type { LessonQuestion } from './question.ts';
import { relevantTo } from './relevant.ts';
import { hottestFirst } from './rules-of-walls.ts';

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

function peakHour(played: PlayedDay): Found {
  const clock = stepClock(played, insidePeakStep(played));
  return { ...ofOne(played), target: { type: 'time', value: clockHour(clock) }, computed: peakText(played) };
}
