import { expect, test } from 'vitest';
import { answerQuestion, askQuestion, type GuessForm, parsePlainLesson } from '../../../model/index.ts';
import { clockText, emptyGuess, markedLevels, readGuess } from '../../../web/lesson/questions/guess.ts';

const CHOICE: GuessForm = { type: 'choice', choices: [{ value: 'west', label: 'west' }] };
const TIME: GuessForm = { type: 'time' };
const KELVINS: GuessForm = { type: 'number', counts: 'kelvins', unit: 'K', min: 0, max: 40, step: 0.5 };

test('reads what somebody put in, a comma for a point, and says what is allowed instead', () => {
  expect(readGuess(CHOICE, 'west')).toEqual({ guess: 'west' });
  expect(readGuess(CHOICE, '')).toEqual({ wrong: 'Choose one first.' });
  expect(readGuess(TIME, '16.25')).toEqual({ guess: 16.25 });
  expect(readGuess(KELVINS, ' 3,5 ')).toEqual({ guess: 3.5 });
  for (const text of ['', 'warm', '41', '-1', '1e9', 'x'.repeat(200)]) {
    const read = readGuess(KELVINS, text);
    expect('wrong' in read && read.wrong).toMatch(/allowed: a number from 0 to 40 \(K\)\.$/);
    expect('wrong' in read && read.wrong.length).toBeLessThan(110);
  }
});

test('hours are shown as a clock does', () => {
  expect([0, 9.5, 16.25, 23.75].map(clockText)).toEqual(['00:00', '09:30', '16:15', '23:45']);
  expect(emptyGuess(TIME)).toBe('12');
  expect(emptyGuess(KELVINS)).toBe('');
});

test('a guess of kelvins is marked where it would have put the peak, in either unit', () => {
  const lesson = parsePlainLesson({
    title: 'Paint',
    questions: [
      { id: 'saved', kind: 'kelvinsSaved', wall: 'west', difference: { kind: 'finish', to: 'whitePaint' } },
      { id: 'hour', kind: 'peakHour', wall: 'west' },
    ],
  });
  const [saved, hour] = lesson.questions;
  if (saved === undefined || hour === undefined) throw new Error('no question');
  const answer = answerQuestion(lesson, saved);
  const [a, b] = answer.days.map(({ played }) => played.result.peakInsideAirC);
  const [guessed, computed] = markedLevels(answer, { guess: 5, units: 'metric' });
  expect(guessed?.celsius).toBeCloseTo((a ?? 0) - 5, 9);
  expect(computed?.celsius).toBeCloseTo(b ?? 0, 9);
  expect(markedLevels(answer, { guess: 9, units: 'us' })[0]?.celsius).toBeCloseTo((a ?? 0) - 5, 9);
  expect(markedLevels(answer, { guess: null, units: 'us' })).toHaveLength(1);
  expect(markedLevels(answerQuestion(lesson, hour), { guess: 15, units: 'metric' })).toEqual([]);
  expect(askQuestion(lesson, hour, 'metric').form.type).toBe('time');
});
