/** The lessons that come with the program can be read, asked and answered. */
import { describe, expect, test } from 'vitest';
import {
  answerQuestion,
  askQuestion,
  checkGuess,
  compareBoxes,
  LESSON_NAMES,
  placedSite,
  shippedLesson,
} from '../../../model/index.ts';
import { shadeMemory } from '../../../model/siting/wall-shade.ts';

test('three ship, with twelve questions or more', () => {
  expect(LESSON_NAMES).toHaveLength(3);
  const questions = LESSON_NAMES.flatMap((name) => shippedLesson(name).questions);
  expect(questions.length).toBeGreaterThanOrEqual(15);
});

test('a name that there is none of', () => {
  expect(() => shippedLesson('five-walls')).toThrow('allowed: four-walls, paint-or-hood, coast-and-desert');
});

describe.each(LESSON_NAMES)('%s', (name) => {
  const lesson = shippedLesson(name);
  const shades = shadeMemory();

  test.each(lesson.questions)('$id is answered, and its answer is right', (question) => {
    const { prompt, form } = askQuestion(lesson, question, 'metric');
    expect(prompt).toMatch(/\?/);
    const answer = answerQuestion(lesson, question, { shades });
    const { target } = answer;
    expect(form.type).toBe(target.type);
    const guess = target.type === 'choice' ? (target.right[0] as string) : target.value;
    const feedback = checkGuess(answer, guess, 'metric');
    expect(feedback.verdict).toBe('right');
    expect(feedback.statements.length).toBeGreaterThan(0);
    // A number that a trainee may enter lies within the form's bounds.
    if (form.type === 'number' && target.type === 'number') {
      expect(target.value).toBeGreaterThanOrEqual(form.min);
      expect(target.value).toBeLessThanOrEqual(form.max);
    }
    // What a worker sends.
    expect(() => structuredClone(answer)).not.toThrow();
  });

  test.each(lesson.comparisons)('comparison $id', ({ wall, difference, ...where }) => {
    const comparison = compareBoxes({
      site: placedSite(lesson, where),
      wallName: wall,
      difference,
      options: { shades },
    });
    expect(comparison.statements.length).toBeGreaterThan(0);
    expect(comparison.b.played.result.peakInsideAirC - comparison.a.played.result.peakInsideAirC).toBe(
      comparison.peakDifferenceK,
    );
  });
});
