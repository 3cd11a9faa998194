/** How the guesses of a lesson went; kept while the page is open and no longer. */
import type { Feedback } from '../../../model/index.ts';

/** By the id of the question; `shown` where the answer was revealed without a guess. */
export type Score = Readonly<Record<string, Feedback['verdict'] | 'shown'>>;

/** The first answer counts: a second guess after the curve is no guess. */
export function scored(score: Score, id: string, outcome: Score[string]): Score {
  return id in score ? score : { ...score, [id]: outcome };
}

/** "2 right, 1 near, 1 wrong, 1 shown without a guess; 5 of 12 questions". */
export function scoreText(score: Score, questions: number): string {
  const outcomes = Object.values(score);
  const all = `${questions} ${questions === 1 ? 'question' : 'questions'}`;
  if (outcomes.length === 0) return `No guess yet; ${all}.`;
  const count = (outcome: Score[string]) => outcomes.filter((one) => one === outcome).length;
  const parts = [
    `${count('right')} right`,
    `${count('near')} near`,
    `${count('wrong')} wrong`,
    ...(count('shown') > 0 ? [`${count('shown')} shown without a guess`] : []),
  ];
  return `${parts.join(', ')}; ${outcomes.length} of ${all}.`;
}
