/** The computed answer beside the guess: verdict, physics, and only now the curve. */
import { useEffect, useMemo, useRef } from 'preact/hooks';
import {
  type Answer,
  capital,
  checkGuess,
  type Feedback,
  fromDisplay,
  type Lesson,
  type LessonQuestion,
  toDisplay,
  type UnitSystem,
} from '../../../model/index.ts';
import { unbroken } from '../../site/words.ts';
import { DayCurves, type MarkedHour } from '../comparison/day-curves.tsx';
import { Statements } from '../statements.tsx';
import { TaskProgress } from '../task-progress.tsx';
import { useLessonTask } from '../use-lesson-task.ts';
import { clockText, markedLevels, type Tried } from './guess.ts';
import type { Score } from './score.ts';

/** More at once would not be read. */
const MOST_STATEMENTS = 4;

interface GuessAnswerProps {
  readonly lesson: Lesson;
  readonly question: LessonQuestion;
  readonly tried: Tried;
  readonly units: UnitSystem;
  onOutcome(outcome: Score[string]): void;
}

export function GuessAnswer({ lesson, question, tried, units, onOutcome }: GuessAnswerProps) {
  const input = useMemo(() => ({ lesson, question }), [lesson, question]);
  const asked = useLessonTask('answer', input);
  const answer = asked.state.kind === 'result' ? asked.state.result : null;
  const feedback = useMemo(
    () => (answer === null || tried.guess === null ? null : checkGuess(answer, guessIn(answer, tried, units), units)),
    [answer, tried, units],
  );
  const outcome = answer === null ? null : (feedback?.verdict ?? 'shown');
  useEffect(() => {
    if (outcome !== null) onOutcome(outcome);
  }, [outcome, onOutcome]);

  if (answer === null) return <TaskProgress asked={asked} what="the answer" />;
  return <Told answer={answer} feedback={feedback} tried={tried} units={units} />;
}

/** Kelvins are held against the answer in the unit that they were guessed in. */
function guessIn({ form }: Answer, { guess, units: guessedIn }: Tried, units: UnitSystem): string | number {
  if (typeof guess !== 'number' || form.type !== 'number' || form.counts !== 'kelvins') return guess ?? '';
  return toDisplay('temperatureDifference', fromDisplay('temperatureDifference', guess, guessedIn), units);
}

const VERDICTS: Record<Feedback['verdict'], string> = {
  right: 'Right.',
  near: 'Near.',
  wrong: 'Not this time.',
};

interface ToldProps {
  readonly answer: Answer;
  readonly feedback: Feedback | null;
  readonly tried: Tried;
  readonly units: UnitSystem;
}

function Told({ answer, feedback, tried, units }: ToldProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const choices = answer.form.type === 'choice' ? answer.form.choices : [];
  const guess = choices.find(({ value }) => value === feedback?.guess)?.label ?? feedback?.guess ?? '';
  const computed = answer.computed[units];
  return (
    <div class="answer">
      <div>
        <div class={`answer-verdict answer-${feedback?.verdict ?? 'shown'}`}>
          <h3 ref={heading} tabIndex={-1}>
            {feedback === null ? 'The answer' : VERDICTS[feedback.verdict]}
          </h3>
          <p>
            {feedback !== null && (
              <>
                Guess: <b>{unbroken(guess)}</b>
                {feedback.apart !== '' && ` (${unbroken(feedback.apart)})`}.{' '}
              </>
            )}
            Computed: <b>{unbroken(computed)}</b>
          </p>
          {feedback !== null && feedback.tolerance !== '' && <p>{capital(unbroken(feedback.tolerance))}.</p>}
        </div>
        <Statements statements={answer.statements} units={units} most={MOST_STATEMENTS} />
      </div>
      <div>
        <AnswerCurves answer={answer} tried={tried} units={units} />
        <table class="answer-figures">
          <caption>What it was read off</caption>
          <tbody>
            {answer.figures.map(({ label, text }) => (
              <tr key={label[units]}>
                <th scope="row">{label[units]}</th>
                <td>{text[units]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}

/** "A", "B" … in the order of the days. */
const letterOf = (index: number): string => String.fromCharCode(65 + index);

function AnswerCurves({ answer, tried, units }: Pick<ToldProps, 'answer' | 'tried' | 'units'>) {
  const { days, target, computed, question } = answer;
  const curves = days.map(({ label, played }, k) => ({
    letter: letterOf(k),
    label: `${label[units]}${played.wall.name === tried.guess && target.type === 'choice' ? ' (your guess)' : ''}`,
    played,
  }));
  const marks: MarkedHour[] = [];
  if (target.type === 'time') {
    const { guess } = tried;
    if (typeof guess === 'number') marks.push({ hour: guess, label: `your guess ${clockText(guess)}`, kind: 'guess' });
    marks.push({ hour: target.value, label: `computed ${clockText(target.value)}`, kind: 'answer' });
  }
  // The chart shows the air; the figures beside it are those of this hour.
  if ('hour' in question) {
    marks.push({ hour: question.hour, label: `asked for: ${clockText(question.hour)}`, kind: 'asked' });
  }
  const levels = markedLevels(answer, tried);
  return (
    <DayCurves
      curves={curves}
      units={units}
      description={`Curves of the air inside: ${curves.map(({ letter, label }) => `${letter} ${label}`).join(', ')}. ${computed[units]}`}
      marks={marks}
      levels={levels}
    />
  );
}
