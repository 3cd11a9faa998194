/** The pages of a handout. */
import { type Answer, askQuestion, type Comparison, type Lesson, type UnitSystem } from '../../../model/index.ts';
import { unbroken } from '../../site/words.ts';
import { comparedBoxes } from '../comparison/comparison-panel.tsx';
import { ComparisonTable } from '../comparison/comparison-table.tsx';
import { DayCurves } from '../comparison/day-curves.tsx';
import { ExplainContext } from '../explain/explain-button.tsx';
import { Statements } from '../statements.tsx';

interface HandoutPagesProps {
  readonly lesson: Lesson;
  readonly comparisons: readonly Comparison[];
  readonly answers: readonly Answer[];
  readonly units: UnitSystem;
}

export function HandoutPages({ lesson, comparisons, answers, units }: HandoutPagesProps) {
  return (
    <ExplainContext.Provider value={null}>
      <div class="handout">
        {comparisons.map((comparison, k) => (
          <ComparisonPage
            key={lesson.comparisons[k]?.id}
            lesson={lesson}
            title={lesson.comparisons[k]?.title ?? comparison.title[units]}
            text={lesson.comparisons[k]?.text ?? ''}
            comparison={comparison}
            units={units}
          />
        ))}
        <Exercises lesson={lesson} units={units} />
        <Solutions lesson={lesson} answers={answers} units={units} />
      </div>
    </ExplainContext.Provider>
  );
}

interface ComparisonPageProps {
  readonly lesson: Lesson;
  readonly title: string;
  readonly text: string;
  readonly comparison: Comparison;
  readonly units: UnitSystem;
}

function ComparisonPage({ lesson, title, text, comparison, units }: ComparisonPageProps) {
  const summary = unbroken(comparison.summary[units]);
  return (
    <section class="handout-page" aria-label={title}>
      <p class="handout-title">{lesson.title}</p>
      <h3>{title}</h3>
      {text !== '' && <p>{text}</p>}
      <DayCurves
        curves={comparedBoxes(comparison, units)}
        units={units}
        description={`Curves of the air inside two boxes. ${summary}`}
      />
      <ComparisonTable comparison={comparison} units={units} />
      <p>{summary}</p>
      <Statements statements={comparison.statements} units={units} />
    </section>
  );
}

function Exercises({ lesson, units }: { lesson: Lesson; units: UnitSystem }) {
  return (
    <section class="handout-page" aria-label="Exercises">
      <p class="handout-title">{lesson.title}</p>
      <h3>Exercises</h3>
      <ol class="exercises">
        {lesson.questions.map((question) => {
          const { prompt, form } = askQuestion(lesson, question, units);
          return (
            <li key={question.id}>
              <p>{unbroken(prompt)}</p>
              {form.type === 'choice' ? (
                <ul class="exercise-choices">
                  {form.choices.map(({ value, label }) => (
                    <li key={value}>{unbroken(label)}</li>
                  ))}
                </ul>
              ) : (
                <p>Guess: ____________ {form.type === 'number' ? form.unit : 'o’clock'}</p>
              )}
            </li>
          );
        })}
      </ol>
    </section>
  );
}

function Solutions({ lesson, answers, units }: Pick<HandoutPagesProps, 'lesson' | 'answers' | 'units'>) {
  return (
    <section class="handout-page" aria-label="Solutions">
      <p class="handout-title">{lesson.title}</p>
      <h3>Computed solutions</h3>
      <ol class="exercises">
        {answers.map(({ question, computed, statements }) => (
          <li key={question.id}>
            <p>
              <b>{unbroken(computed[units])}</b>
            </p>
            <ul>
              {statements.map(({ id, text }) => (
                <li key={id}>{unbroken(text[units])}</li>
              ))}
            </ul>
          </li>
        ))}
      </ol>
    </section>
  );
}
