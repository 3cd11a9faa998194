import { expect, test } from 'vitest';
import { type Score, scored, scoreText } from '../../../web/lesson/questions/score.ts';

test('counts outcomes of the questions, and the first one of each only', () => {
  let score: Score = {};
  expect(scoreText(score, 8)).toBe('No guess yet; 8 questions.');
  score = scored(score, 'hottest', 'wrong');
  score = scored(score, 'hottest', 'right');
  score = scored(score, 'hour', 'near');
  expect(scoreText(score, 8)).toBe('0 right, 1 near, 1 wrong; 2 of 8 questions.');
  score = scored(score, 'paint', 'shown');
  score = scored(score, 'paint', 'right');
  expect(scoreText(score, 8)).toBe('0 right, 1 near, 1 wrong, 1 shown without a guess; 3 of 8 questions.');
});

test('one question is one question', () => {
  expect(scoreText({}, 1)).toBe('No guess yet; 1 question.');
  expect(scoreText({ paint: 'near' }, 1)).toBe('0 right, 1 near, 0 wrong; 1 of 1 question.');
});
