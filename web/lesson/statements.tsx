/** The physics that a day shows, each sentence with how far it reaches. */
import type { Statement, UnitSystem } from '../../model/index.ts';
import { unbroken } from '../site/words.ts';

interface StatementsProps {
  readonly statements: readonly Statement[];
  readonly units: UnitSystem;
  /** As many are said at once; the others are folded away. */
  readonly most?: number;
}

export function Statements({ statements, units, most = statements.length }: StatementsProps) {
  if (statements.length === 0) return null;
  const others = statements.slice(most);
  return (
    <section class="statements" aria-label="Why">
      <h3>Why</h3>
      <StatementList statements={statements.slice(0, most)} units={units} />
      {others.length > 0 && (
        <details>
          <summary>What else this day shows ({others.length})</summary>
          <StatementList statements={others} units={units} />
        </details>
      )}
    </section>
  );
}

function StatementList({ statements, units }: Pick<StatementsProps, 'statements' | 'units'>) {
  return (
    <ul>
      {statements.map(({ id, text, where }) => (
        <li key={id}>
          {unbroken(text[units])} {where === 'here' && <i>(seen at this place on this day; not everywhere)</i>}
        </li>
      ))}
    </ul>
  );
}
