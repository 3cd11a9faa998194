/** A lesson as text: its comparisons, its questions, its equation sheet, its solutions. */
import type { AskedQuestion, Explanation, Handout, HandoutPage, Lesson } from '../../model/index.ts';
import { wrap } from '../terminal/wrap.ts';

/** Which parts of a handout are shown. */
export interface HandoutParts {
  readonly pages: boolean;
  readonly equations: boolean;
  readonly exercises: boolean;
  readonly solutions: boolean;
}

/** The lessons that there are. */
export function lessonListText(lessons: readonly { readonly name: string; readonly lesson: Lesson }[]): string {
  const width = Math.max(...lessons.map(({ name }) => name.length));
  return lessons
    .map(({ name, lesson: { title, questions, comparisons } }) =>
      wrap(`${title} (${comparisons.length} comparisons, ${questions.length} questions)`, `  ${name.padEnd(width)}  `),
    )
    .join('\n');
}

/** A handout in lines. */
export function handoutText(handout: Handout, parts: HandoutParts): string {
  const { title, text, place, pages, equations, equationsOf, exercises, solutions, assumptions, cautions } = handout;
  const blocks = [[title, '='.repeat(title.length), '', wrap(text), wrap(place)].join('\n')];
  if (parts.pages) blocks.push(...pages.map(pageText));
  if (parts.equations)
    blocks.push([heading('Equations'), wrap(equationsOf), ...equations.map(equationText)].join('\n'));
  if (parts.exercises) {
    blocks.push([heading('Exercises'), ...exercises.map((one) => exerciseText(one.number, one))].join('\n'));
  }
  if (parts.solutions) {
    const lines = solutions.flatMap(({ number, answer, statements }) => [
      wrap(answer, `${String(number).padStart(2)}. `),
      ...statements.map((statement) => wrap(statement, '    - ', '      ')),
    ]);
    blocks.push([heading('Solutions, computed just now'), ...lines].join('\n'));
  }
  if (parts.pages || parts.equations || parts.solutions) {
    blocks.push([heading('What this rests on'), ...assumptions.map((line) => wrap(line, '  - ', '    '))].join('\n'));
  }
  blocks.push([heading('Mind'), ...cautions.map((line) => wrap(line, '  - ', '    '))].join('\n'));
  return blocks.join('\n\n');
}

/** The same as data; the days behind the curves are left out. */
export function handoutData(handout: Handout, parts: HandoutParts) {
  const { title, text, place, pages, equations, equationsOf, exercises, solutions, assumptions } = handout;
  return {
    title,
    text,
    place,
    assumptions,
    ...(parts.pages && { pages: pages.map(({ comparison: _, ...page }) => page) }),
    ...(parts.equations && { equationsOf, equations }),
    ...(parts.exercises && { exercises }),
    ...(parts.solutions && { solutions }),
  };
}

const heading = (text: string): string => `${text}\n${'-'.repeat(text.length)}`;

function pageText({ title, text, labels, rows, notes, statements }: HandoutPage): string {
  const width = Math.max(...rows.map(({ label }) => label.length));
  const column = Math.max(...rows.map(({ a }) => a.length), 1);
  return [
    heading(title),
    ...(text === '' ? [] : [wrap(text)]),
    wrap(labels.a, '  A: '),
    wrap(labels.b, '  B: '),
    '',
    `  ${''.padEnd(width)}  ${'A'.padEnd(column)}  B`,
    ...rows.map(({ label, a, b }) => `  ${label.padEnd(width)}  ${a.padEnd(column)}  ${b}`),
    '',
    ...statements.map((statement) => wrap(statement, '  - ', '    ')),
    ...notes.map((note) => wrap(note, '  - ', '    ')),
  ].join('\n');
}

function exerciseText(number: number, { prompt, form }: AskedQuestion): string {
  const lead = `${String(number).padStart(2)}. `;
  const answer =
    form.type === 'choice'
      ? form.choices.map(({ label }) => wrap(label, '    [ ] ', '        '))
      : [`    ${form.type === 'time' ? '__:__' : `____ ${form.unit}`}`];
  return [wrap(prompt, lead), ...answer].join('\n');
}

function equationText({ title, equation, symbols, check, source, note }: Explanation): string {
  return [
    '',
    title,
    wrap(equation, '    ', '      '),
    ...symbols.map(({ symbol, name, shown, unit }) =>
      wrap(`${symbol} = ${shown}${unit === '' ? '' : ` ${unit}`}: ${name}`, '      ', '        '),
    ),
    wrap(check, '    ', '      '),
    wrap(`Source: ${source}.${note === '' ? '' : ` ${note}`}`, '    '),
  ].join('\n');
}
