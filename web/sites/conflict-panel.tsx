/** Two states of one site that grew apart: side by side, with the choice of which stays. Nothing is lost before that. */
import type { UnitSystem } from '../../model/index.ts';
import type { Draft } from '../site/draft.ts';
import { differenceSubject, differences, sideWords } from './differences.ts';
import { nameOf } from './saved-site.ts';
import { when } from './when.ts';

export interface ConflictPanelProps {
  /** Null where that side deleted the site. */
  readonly mine: Draft | null;
  readonly theirs: Draft | null;
  /** Where the other state is: "on the server", "in another tab". */
  readonly where: string;
  /** When the other state was saved; left out where nobody knows. */
  readonly since?: string;
  readonly units: UnitSystem;
  keepMine(): void;
  keepTheirs(): void;
  /** Left out where one side is no site. */
  keepBoth?: (() => void) | undefined;
}

const MOST_ROWS = 40;

export function ConflictPanel({
  mine,
  theirs,
  where,
  since,
  units,
  keepMine,
  keepTheirs,
  keepBoth,
}: ConflictPanelProps) {
  const name = nameOf(mine ?? theirs ?? {});
  return (
    <section class="conflict" aria-label={`Two states of ${name}`}>
      <h3 data-home tabIndex={-1}>
        “{name}” was {apart(mine, theirs, where)}
      </h3>
      {since && (
        <p>
          {theirs === null ? 'It was deleted' : 'Theirs was saved'} {when(since)}. Nothing is lost until you choose.
        </p>
      )}
      {mine !== null && theirs !== null && <DifferenceTable mine={mine} theirs={theirs} where={where} units={units} />}
      <div class="buttons">
        <button type="button" onClick={keepMine}>
          {mine === null ? 'Delete it' : 'Keep mine'}
        </button>
        <button type="button" onClick={keepTheirs}>
          {theirs === null ? 'Delete it' : mine === null ? 'Keep it' : 'Keep theirs'}
        </button>
        {mine !== null && theirs !== null && keepBoth && (
          <button type="button" onClick={keepBoth}>
            Keep both
          </button>
        )}
      </div>
    </section>
  );
}

/** "deleted here and changed on the server". */
function apart(mine: Draft | null, theirs: Draft | null, where: string): string {
  if (mine !== null && theirs !== null) return `changed here and ${where}`;
  return mine === null ? `deleted here and changed ${where}` : `changed here and deleted ${where}`;
}

function DifferenceTable(props: { mine: Draft; theirs: Draft; where: string; units: UnitSystem }) {
  const { mine, theirs, where, units } = props;
  const rows = differences(mine, theirs);
  return (
    <>
      <table class="difference-table">
        <caption class="visually-hidden">Where the two differ</caption>
        <thead>
          <tr>
            <th scope="col">Field</th>
            <th scope="col">Mine</th>
            <th scope="col">Theirs, {where}</th>
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, MOST_ROWS).map((row) => (
            <tr key={row.path}>
              <th scope="row">{differenceSubject(row, mine, theirs)}</th>
              <td>{sideWords(row.mine, row.path, units)}</td>
              <td>{sideWords(row.theirs, row.path, units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {rows.length > MOST_ROWS && <p>And {rows.length - MOST_ROWS} more differences.</p>}
    </>
  );
}
