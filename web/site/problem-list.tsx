/** Every problem of the input in one list, each with a way to its field. */
import { goToField } from './form/form-context.ts';
import type { ShownProblem } from './problems.ts';

/** Where the marks of an outdated result lead. */
export const PROBLEMS_HEADING = 'problems-heading';

interface ProblemListProps {
  readonly problems: readonly ShownProblem[];
  readonly failure: string | null;
  /** Takes a field out of the site; for one that the form does not show. */
  takeOut(path: string): void;
}

export function ProblemList({ problems, failure, takeOut }: ProblemListProps) {
  if (problems.length === 0 && failure === null) return null;
  return (
    <section class="problem-list" aria-labelledby={PROBLEMS_HEADING}>
      <h2 id={PROBLEMS_HEADING} tabIndex={-1}>
        {problems.length > 0 ? 'What to correct' : 'The computation failed'}
      </h2>
      {failure !== null && <p>{failure}</p>}
      <ul>
        {problems.map(({ path, subject, text, allowed }) => (
          <li key={`${path} ${text}`}>
            <button type="button" class="link-button" onClick={() => goToField(path)}>
              {subject}
            </button>
            <p>
              {text}
              {allowed !== '' && `; allowed: ${allowed}`}
            </p>
            {text.startsWith('unknown field') && (
              <button type="button" class="small-button" onClick={() => takeOut(path)}>
                Take it out
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
