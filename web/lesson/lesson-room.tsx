/** An open lesson: its questions, its comparisons and its handout, with the score so far; each climate has its own. */
import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import {
  climateTitle,
  doneWords,
  type Lesson,
  type LessonComparison,
  placedSite,
  type UnitSystem,
} from '../../model/index.ts';
import { ComparisonPanel } from './comparison/comparison-panel.tsx';
import { HandoutPanel } from './handout/handout-panel.tsx';
import {
  freshProgress,
  type Progress,
  rememberClimate,
  rememberedClimate,
  rememberedProgress,
  rememberProgress,
} from './lesson-memory.ts';
import { nextPart, type Part } from './parts.ts';
import type { Tried } from './questions/guess.ts';
import { QuestionPanel } from './questions/question-panel.tsx';
import { type Score, scored, scoreText } from './questions/score.ts';
import { TaskProgress } from './task-progress.tsx';
import { useLessonTask } from './use-lesson-task.ts';

interface LessonRoomProps {
  readonly lesson: Lesson;
  readonly units: UnitSystem;
  leave(): void;
}

export function LessonRoom({ lesson, units, leave }: LessonRoomProps) {
  const [climate, setClimate] = useState(() => rememberedClimate(lesson));
  useEffect(() => rememberClimate(lesson, climate), [lesson, climate]);
  const placed = useMemo(
    () => (climate === '' ? lesson : { ...lesson, site: placedSite(lesson, { climate }) }),
    [lesson, climate],
  );
  return (
    <OpenLesson key={climate} lesson={placed} climate={climate} units={units}>
      {lesson.climates.length > 0 && (
        <label class="lesson-climate">
          <span>Climate</span>
          <select value={climate} onChange={({ currentTarget }) => setClimate(currentTarget.value)}>
            <option value="">that of the lesson</option>
            {lesson.climates.map((name) => (
              <option key={name} value={name}>
                {climateTitle(name)}
              </option>
            ))}
          </select>
        </label>
      )}
      <button type="button" onClick={leave}>
        Other lessons
      </button>
    </OpenLesson>
  );
}

interface OpenLessonProps {
  readonly lesson: Lesson;
  /** The climate it is shown in; empty for that of the lesson. */
  readonly climate: string;
  readonly units: UnitSystem;
  readonly children: ComponentChildren;
}

function OpenLesson({ lesson, climate, units, children }: OpenLessonProps) {
  const { questions, comparisons } = lesson;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const [progress, setProgress] = useState<Progress>(() => rememberedProgress(lesson, climate));
  // Counts beginnings, so that a field does not keep what was typed before.
  const [beginning, setBeginning] = useState(0);
  const { part, tried, score } = progress;
  useEffect(() => rememberProgress(lesson, climate, progress), [lesson, climate, progress]);
  const setPart = (next: Part) => setProgress((former) => ({ ...former, part: next }));
  const startAgain = () => {
    setProgress(freshProgress(lesson));
    setBeginning((count) => count + 1);
    heading.current?.focus();
  };
  const question = part.kind === 'question' ? questions[part.index] : undefined;
  const comparison = part.kind === 'comparison' ? comparisons[part.index] : undefined;
  const id = question?.id ?? '';
  const onOutcome = useCallback(
    (outcome: Score[string]) => setProgress((former) => ({ ...former, score: scored(former.score, id, outcome) })),
    [id],
  );

  return (
    <div class="lesson-room">
      <header class="lesson-head">
        <h1 ref={heading} tabIndex={-1}>
          {lesson.title}
        </h1>
        <p class="lesson-score" role="status">
          {questions.length > 0 && scoreText(score, questions.length)}
        </p>
        {children}
        {Object.keys(tried).length > 0 && (
          <button type="button" onClick={startAgain}>
            Start again
          </button>
        )}
      </header>
      <PartNav lesson={lesson} units={units} part={part} tried={tried} go={setPart} />
      {question && (
        <QuestionPanel
          key={`${question.id} ${beginning}`}
          lesson={lesson}
          question={question}
          number={questions.indexOf(question) + 1}
          units={units}
          tried={tried[question.id]}
          onTry={(guess) => setProgress((former) => ({ ...former, tried: { ...former.tried, [question.id]: guess } }))}
          onOutcome={onOutcome}
        />
      )}
      {question && <NextPart lesson={lesson} part={part} answered={question.id in tried} go={setPart} />}
      {comparison && (
        <LessonComparisonPanel key={comparison.id} lesson={lesson} comparison={comparison} units={units} />
      )}
      {comparison && <NextPart lesson={lesson} part={part} answered go={setPart} />}
      {part.kind === 'handout' && <HandoutPanel lesson={lesson} units={units} />}
    </div>
  );
}

interface NavProps {
  readonly lesson: Lesson;
  readonly units: UnitSystem;
  readonly part: Part;
  readonly tried: Readonly<Record<string, Tried>>;
  go(part: Part): void;
}

function PartNav({ lesson, units, part, tried, go }: NavProps) {
  const current = (is: boolean) => (is ? { 'aria-current': 'step' as const } : {});
  const at = (kind: Part['kind'], index: number) => part.kind === kind && 'index' in part && part.index === index;
  return (
    <nav class="part-nav" aria-label="Parts of the lesson">
      <ol>
        {lesson.questions.map(({ id }, index) => (
          <li key={id}>
            <button
              type="button"
              aria-label={`Question ${index + 1}${id in tried ? ', answered' : ''}`}
              onClick={() => go({ kind: 'question', index })}
              {...current(at('question', index))}
            >
              {index + 1}
              {id in tried && ' •'}
            </button>
          </li>
        ))}
        {lesson.comparisons.map((comparison, index) => (
          <li key={comparison.id}>
            <button
              type="button"
              onClick={() => go({ kind: 'comparison', index })}
              {...current(at('comparison', index))}
            >
              {comparison.title ?? comparedWords(lesson, comparison, units)}
            </button>
          </li>
        ))}
        <li>
          <button type="button" onClick={() => go({ kind: 'handout' })} {...current(part.kind === 'handout')}>
            Handout
          </button>
        </li>
      </ol>
    </nav>
  );
}

/** What a comparison without a title is about. */
function comparedWords({ site }: Lesson, { difference, wall }: LessonComparison, units: UnitSystem): string {
  const words = doneWords(difference, { site, wallName: wall }, units);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

const NEXT_WORDS: Record<Part['kind'], string> = {
  question: 'Next question',
  comparison: 'Next: two boxes side by side',
  handout: 'Next: the handout',
};

interface NextPartProps {
  readonly lesson: Lesson;
  readonly part: Part;
  readonly answered: boolean;
  go(part: Part): void;
}

function NextPart({ lesson, part, answered, go }: NextPartProps) {
  const next = nextPart(lesson, part);
  if (next === null || !answered) return null;
  return (
    <p class="next-part">
      <button type="button" class="main-button" onClick={() => go(next)}>
        {NEXT_WORDS[next.kind]}
      </button>
    </p>
  );
}

interface LessonComparisonPanelProps {
  readonly lesson: Lesson;
  readonly comparison: LessonComparison;
  readonly units: UnitSystem;
}

function LessonComparisonPanel({ lesson, comparison, units }: LessonComparisonPanelProps) {
  const input = useMemo(() => ({ lesson, comparison }), [lesson, comparison]);
  const asked = useLessonTask('compareLesson', input);
  if (asked.state.kind !== 'result') return <TaskProgress asked={asked} what="the two boxes" />;
  const { result } = asked.state;
  return (
    <ComparisonPanel
      comparison={result}
      units={units}
      title={comparison.title ?? result.title[units]}
      text={comparison.text ?? ''}
    />
  );
}
