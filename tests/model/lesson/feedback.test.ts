/** Guesses against computed answers. */
import { describe, expect, test } from 'vitest';
import {
  type Answer,
  answerQuestion,
  askQuestion,
  checkGuess,
  lessonHandout,
  shippedLesson,
} from '../../../model/index.ts';

const fourWalls = shippedLesson('four-walls');
const question = (id: string, lesson = fourWalls) =>
  lesson.questions.find((one) => one.id === id) as Answer['question'];
const answer = (id: string, lesson = fourWalls) => answerQuestion(lesson, question(id, lesson));

describe('a number', () => {
  const paintOrHood = shippedLesson('paint-or-hood');
  const paint = answer('paint-saves', paintOrHood);
  const value = paint.target.type === 'number' ? paint.target.value : Number.NaN;

  test.each([
    [0, 'right', 'exactly'],
    [0.9, 'right', 'too much'],
    [-2.5, 'near', 'too little'],
    [30, 'wrong', 'too much'],
  ])('off by %d K', (off, verdict, apart) => {
    const feedback = checkGuess(paint, value + off, 'metric');
    expect(feedback.verdict).toBe(verdict);
    expect(feedback.apart).toContain(apart);
    expect(feedback.tolerance).toMatch(/^right within \d+\.\d K, near within \d+\.\d K$/);
  });

  test('is read in the units that are shown', () => {
    expect(checkGuess(paint, value * 1.8, 'us').apart).toBe(checkGuess(paint, value, 'metric').apart);
    expect(checkGuess(paint, String(value.toFixed(2)), 'metric').verdict).toBe('right');
  });

  test.each(['', 'much', 'NaN', '1e99'])('%j is no guess', (guess) => {
    expect(() => checkGuess(paint, guess, 'metric')).toThrow(/^guess: .* is no number; allowed: a number of K/);
  });
});

describe('a time', () => {
  const hour = answer('west-hour');
  const value = hour.target.type === 'time' ? hour.target.value : Number.NaN;

  test('near and far, round midnight, too', () => {
    expect(checkGuess(hour, value, 'metric').verdict).toBe('right');
    expect(checkGuess(hour, value - 1, 'metric')).toMatchObject({ verdict: 'near', apart: '1.0 h too early' });
    expect(checkGuess(hour, '03:00', 'metric').verdict).toBe('wrong');
    const late = { ...hour, target: { type: 'time', value: 23.75 } } as const;
    expect(checkGuess(late, '00:00', 'metric')).toMatchObject({ verdict: 'right', apart: '15 min too late' });
  });

  test.each(['25:00', '12:60', 'noon', 24, -1])('%j is no time', (guess) => {
    expect(() => checkGuess(hour, guess, 'metric')).toThrow(/is no time of the day; allowed: 00:00 to 23:59/);
  });
});

describe('a choice', () => {
  const hottest = answer('hottest');

  test('is right or wrong, and the feedback names the physics', () => {
    expect(checkGuess(hottest, 'west', 'metric').verdict).toBe('right');
    const wrong = checkGuess(hottest, 'north', 'us');
    expect(wrong.verdict).toBe('wrong');
    expect(wrong.computed).toMatch(/^west: \d+ °F at \d\d:\d\d$/);
    expect(wrong.statements.map(({ id }) => id)).toContain('afternoon-sun-meets-hot-air');
    expect(() => checkGuess(hottest, 'attic', 'metric')).toThrow('allowed: north, east, south, west');
  });

  test('the question holds no answer', () => {
    const asked = JSON.stringify(askQuestion(fourWalls, question('hottest'), 'metric'));
    expect(asked).not.toMatch(/peak|°C|right/);
  });
});

test('an hour of darkness is refused with its question', () => {
  expect(() => answerQuestion(fourWalls, { id: 'night', kind: 'sunniestWall', hour: 1 })).toThrow(
    'question night: the sun is down at 01:00; allowed: an hour of daylight',
  );
});

test('answers are computed when asked: another box, another answer', () => {
  const { site } = fourWalls;
  const darker = { ...site, box: { ...site.box, solarAbsorptance: 0.95 } };
  const over = (lesson: { site: typeof site }) => {
    const { target } = answerQuestion(lesson, { id: 'over', kind: 'hoursOverLimit', wall: 'west' });
    return target.type === 'number' ? target.value : Number.NaN;
  };
  expect(over({ site: darker })).toBeGreaterThan(over({ site }) + 1);
});

describe('the handout', () => {
  const coast = shippedLesson('coast-and-desert');
  const handout = lessonHandout(coast, { units: 'us' });

  test('has a page for each comparison, an exercise and a solution for each question, and equations that close', () => {
    expect(handout.pages.map(({ id }) => id)).toEqual(coast.comparisons.map(({ id }) => id));
    expect(handout.exercises.map(({ id }) => id)).toEqual(coast.questions.map(({ id }) => id));
    expect(handout.solutions.map(({ number }) => number)).toEqual(handout.exercises.map(({ number }) => number));
    expect(handout.equations.length).toBeGreaterThan(12);
    for (const one of handout.equations) expect(Math.abs(one.evaluated - one.value)).toBeLessThanOrEqual(one.within);
    expect(handout.pages[0]?.rows[0]?.a).toMatch(/°F$/);
    expect(JSON.stringify(handout.exercises)).not.toContain(handout.solutions[2]?.answer);
  });

  test('in another of its climates the figures are others', () => {
    const moist = lessonHandout(coast, { units: 'us', climate: 'temperate-maritime' });
    expect(moist.pages[1]?.rows).not.toEqual(handout.pages[1]?.rows);
  });
});
