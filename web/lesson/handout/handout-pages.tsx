/** The pages of a handout, as it is printed. */
import type { Explanation, Handout, HandoutPage, HandoutRow, UnitSystem } from '../../../model/index.ts';
import { unbroken } from '../../site/words.ts';
import { comparedBoxes } from '../comparison/comparison-panel.tsx';
import { DayCurves } from '../comparison/day-curves.tsx';
import { Equation, Formula } from '../explain/equation.tsx';

export function HandoutPages({ handout, units }: { handout: Handout; units: UnitSystem }) {
  return (
    <div class="handout">
      {handout.pages.map((page) => (
        <ComparisonPage key={page.id} handout={handout} page={page} units={units} />
      ))}
      <EquationSheet handout={handout} />
      <Exercises handout={handout} />
      <Solutions handout={handout} />
    </div>
  );
}

function ComparisonPage({ handout, page, units }: { handout: Handout; page: HandoutPage; units: UnitSystem }) {
  const summary = unbroken(page.summary);
  return (
    <section class="handout-page" aria-label={page.title}>
      <p class="handout-title">
        {handout.title}. {unbroken(handout.place)}
      </p>
      <h3>{page.title}</h3>
      {page.text !== '' && <p>{page.text}</p>}
      <DayCurves
        curves={comparedBoxes(page.comparison, units)}
        units={units}
        description={`Curves of the air inside two boxes. ${summary}`}
      />
      <table class="handout-figures">
        <thead>
          <tr>
            <td />
            <th scope="col">A</th>
            <th scope="col">B</th>
          </tr>
        </thead>
        <tbody>
          {page.rows.map((row: HandoutRow) => (
            <tr key={row.label}>
              <th scope="row">{row.label}</th>
              <td>{unbroken(row.a)}</td>
              <td>{unbroken(row.b)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>{summary}</p>
      <TextList texts={[...page.statements, ...page.notes]} />
    </section>
  );
}

function EquationSheet({ handout }: { handout: Handout }) {
  return (
    <section class="handout-page" aria-label="Equations">
      <p class="handout-title">{handout.title}</p>
      <h3>The equations</h3>
      <p>{unbroken(handout.equationsOf)}</p>
      {handout.equations.map((equation) => (
        <EquationOfSheet key={equation.what} equation={equation} />
      ))}
    </section>
  );
}

function EquationOfSheet({ equation }: { equation: Explanation }) {
  const { title, math, symbols, source, shown, unit, check } = equation;
  return (
    <div class="sheet-equation">
      <h4>
        {title}: {shown} {unit}
      </h4>
      <Equation title={title} math={math} words={equation.equation} />
      <p class="sheet-symbols">
        {symbols.map(({ symbol, math: sign, name, shown: value, unit: of }) => (
          <span key={symbol}>
            <Formula math={sign} words={symbol} /> {name}, {value} {of};{' '}
          </span>
        ))}
        {check}. Source: {source}
      </p>
    </div>
  );
}

function Exercises({ handout }: { handout: Handout }) {
  return (
    <section class="handout-page" aria-label="Exercises">
      <p class="handout-title">{handout.title}</p>
      <h3>Exercises</h3>
      <ol class="exercises">
        {handout.exercises.map(({ id, prompt, form }) => (
          <li key={id}>
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
        ))}
      </ol>
    </section>
  );
}

function Solutions({ handout }: { handout: Handout }) {
  return (
    <section class="handout-page" aria-label="Solutions">
      <p class="handout-title">{handout.title}</p>
      <h3>Computed solutions</h3>
      <ol class="exercises">
        {handout.solutions.map(({ id, answer, figures, statements }) => (
          <li key={id}>
            <p>
              <b>{unbroken(answer)}</b>{' '}
              {figures.length > 1 && `(${figures.map(({ label, text }) => unbroken(`${label}: ${text}`)).join('; ')})`}
            </p>
            <TextList texts={statements} />
          </li>
        ))}
      </ol>
      <h4>What all of it rests on</h4>
      <TextList texts={handout.assumptions} />
    </section>
  );
}

function TextList({ texts }: { texts: readonly string[] }) {
  return (
    <ul>
      {texts.map((text) => (
        <li key={text}>{unbroken(text)}</li>
      ))}
    </ul>
  );
}
