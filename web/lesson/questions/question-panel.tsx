/** One question: guessed before anything is computed, answered by the model, with the physics that the answer shows. */
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { askQuestion, type Lesson, type LessonQuestion, type UnitSystem } from '../../../model/index.ts';
import { emptyGuess, readGuess, type Tried } from './guess.ts';
import { GuessAnswer } from './guess-answer.tsx';
import { GuessField } from './guess-field.tsx';
import type { Score } from './score.ts';

interface QuestionPanelProps {
  readonly lesson: Lesson;
  readonly question: LessonQuestion;
  readonly number: number;
  readonly units: UnitSystem;
  readonly tried: Tried | undefined;
  onTry(tried: Tried): void;
  onOutcome(outcome: Score[string]): void;
}

export function QuestionPanel({ lesson, question, number, units, tried, onTry, onOutcome }: QuestionPanelProps) {
  const id = useId();
  const heading = useRef<HTMLHeadingElement>(null);
  const { prompt, form } = askQuestion(lesson, question, units);
  const [text, setText] = useState(() => emptyGuess(form));
  const [error, setError] = useState('');

  useEffect(() => heading.current?.focus(), []);

  const submit = (event: Event) => {
    event.preventDefault();
    const read = readGuess(form, text);
    if ('wrong' in read) setError(read.wrong);
    else onTry({ guess: read.guess, units });
  };

  return (
    <section class="question" aria-labelledby={id}>
      <p class="question-number">
        Question {number} of {lesson.questions.length}
      </p>
      <h2 id={id} ref={heading} tabIndex={-1}>
        {prompt}
      </h2>
      {tried === undefined && (
        <form onSubmit={submit} noValidate>
          <GuessField
            form={form}
            prompt={prompt}
            value={text}
            error={error}
            onValue={(value) => {
              setText(value);
              setError('');
            }}
          />
          <div class="buttons">
            <button type="submit" class="main-button">
              That is my guess
            </button>
            <button type="button" onClick={() => onTry({ guess: null, units })}>
              Show without a guess
            </button>
          </div>
        </form>
      )}
      <div aria-live="polite">
        {tried !== undefined && (
          <GuessAnswer lesson={lesson} question={question} tried={tried} units={units} onOutcome={onOutcome} />
        )}
      </div>
    </section>
  );
}
