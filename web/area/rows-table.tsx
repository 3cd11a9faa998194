/** Every address in a table: sorted by the heads of its columns, filtered, in pages. */
import { useEffect, useState } from 'preact/hooks';
import { type UnitSystem, unitSymbol } from '../../model/index.ts';
import { askRows, type Row, type Summary } from './api.ts';
import { marginCell, nameOfRow, peakCell, wallText } from './margin-text.ts';
import { Refusal, refusedBy } from './refusal.tsx';
import {
  belowK,
  FIRST_VIEW,
  PAGE_ROWS,
  pageCount,
  type RowsView,
  rowsQuery,
  type Sort,
  sortedBy,
} from './rows-query.ts';
import { counted, countText } from './run-words.ts';
import { useAnswer } from './use-answer.ts';

interface RowsTableProps {
  readonly id: string;
  readonly version: number;
  readonly summary: Summary;
  readonly units: UnitSystem;
  /** Shows a row on the map. */
  choose(row: number): void;
}

/** A search waits for the end of a word. */
const TYPING_MS = 250;

export function RowsTable({ id, version, summary, units, choose }: RowsTableProps) {
  const [view, setView] = useState<RowsView>(FIRST_VIEW);
  const query = useSettled(rowsQuery(view, units));
  const { answer, error } = useAnswer((signal) => askRows(id, query, signal), [id, query, version]);
  // A typed margin is of the unit it was typed in.
  useEffect(() => setView((now) => ({ ...now, below: '', page: 0 })), [units]);
  const set = (change: Partial<RowsView>) => setView({ ...view, page: 0, ...change });
  const total = answer?.total ?? 0;
  const pages = pageCount(total);
  return (
    <section class="rows" aria-labelledby="rows-heading">
      <h2 id="rows-heading" tabIndex={-1}>
        All addresses
      </h2>
      <div class="rows-filter">
        <div class="field">
          <label for="rows-kit">Kit</label>
          <select id="rows-kit" value={view.kit} onChange={({ currentTarget }) => set({ kit: currentTarget.value })}>
            <option value="">all</option>
            {summary.kitClasses.map(({ kit, count }) => (
              <option key={kit} value={kit}>
                {kit} ({countText(count)})
              </option>
            ))}
          </select>
        </div>
        <div class="field">
          <label for="rows-below">Margin below</label>
          <span class="field-entry">
            <input
              id="rows-below"
              type="text"
              autocomplete="off"
              maxLength={12}
              value={view.below}
              aria-invalid={belowK(view.below, units) === undefined}
              aria-describedby="rows-below-problem"
              onInput={({ currentTarget }) => set({ below: currentTarget.value })}
            />
            <span class="field-unit">{unitSymbol('temperatureDifference', units)}</span>
          </span>
          <p class="field-problem" id="rows-below-problem">
            {belowK(view.below, units) === undefined && '✕ a number is needed'}
          </p>
        </div>
        <div class="field">
          <label for="rows-text">Text in the row</label>
          <input
            id="rows-text"
            type="text"
            autocomplete="off"
            maxLength={200}
            value={view.text}
            onInput={({ currentTarget }) => set({ text: currentTarget.value })}
          />
        </div>
      </div>
      <p role="status">
        {answer && `${counted(total, 'address', 'addresses')}${pages > 1 ? `, page ${view.page + 1} of ${pages}` : ''}`}
      </p>
      <Refusal refused={error === null ? null : refusedBy(error)} />
      {answer && answer.rows.length > 0 && (
        <RowsBody
          rows={answer.rows}
          view={view}
          units={units}
          sort={(by) => setView(sortedBy(view, by))}
          choose={choose}
        />
      )}
      {pages > 1 && (
        <nav class="buttons" aria-label="Pages of the table">
          <button type="button" disabled={view.page === 0} onClick={() => setView({ ...view, page: view.page - 1 })}>
            {PAGE_ROWS} before
          </button>
          <button
            type="button"
            disabled={view.page + 1 >= pages}
            onClick={() => setView({ ...view, page: view.page + 1 })}
          >
            {PAGE_ROWS} after
          </button>
        </nav>
      )}
    </section>
  );
}

const HEADS: readonly { readonly label: string; readonly sort: Sort | null }[] = [
  { label: 'Address', sort: null },
  { label: 'Row', sort: 'row' },
  { label: 'Margin', sort: 'margin' },
  { label: 'Inside air', sort: 'peak' },
  { label: 'Best wall', sort: 'bestWall' },
  { label: 'Walls inside', sort: null },
  { label: 'Kit', sort: 'kit' },
  { label: 'Least remedy', sort: null },
];

/** Columns of words stand to the left, figures to the right. */
const WORDS: ReadonlySet<string> = new Set(['Best wall', 'Kit', 'Least remedy']);

interface RowsBodyProps {
  readonly rows: readonly Row[];
  readonly view: RowsView;
  readonly units: UnitSystem;
  sort(by: Sort): void;
  choose(row: number): void;
}

function RowsBody({ rows, view, units, sort, choose }: RowsBodyProps) {
  const ariaSort = (by: Sort) => (view.sort !== by ? 'none' : view.order === 'asc' ? 'ascending' : 'descending');
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="table-scroll" tabIndex={0} aria-label="Table of all addresses">
      <table class="rows-table">
        <thead>
          <tr>
            {HEADS.map(({ label, sort: by }) =>
              by === null ? (
                <th key={label} scope="col" class={WORDS.has(label) ? 'words' : undefined}>
                  {label}
                </th>
              ) : (
                <th key={label} scope="col" aria-sort={ariaSort(by)} class={WORDS.has(label) ? 'words' : undefined}>
                  <button type="button" class="sort-button" onClick={() => sort(by)}>
                    {label} <span aria-hidden="true">{view.sort !== by ? '↕' : view.order === 'asc' ? '↑' : '↓'}</span>
                  </button>
                </th>
              ),
            )}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.row}>
              <th scope="row">
                <button
                  type="button"
                  class="link-button"
                  aria-label={`Show ${nameOfRow(row)} on the map`}
                  onClick={() => choose(row.row)}
                >
                  {nameOfRow(row)}
                </button>
              </th>
              <td>{row.row}</td>
              <td class={row.marginK === null || row.marginK < 0 ? 'over' : undefined}>
                {marginCell(row.marginK, units)}
              </td>
              <td>{peakCell(row.peakInsideAirC, units)}</td>
              <td class="words">{row.bestWall === null ? '–' : wallText(row.bestWall)}</td>
              <td>{Math.round(row.shareInside * 100)}&nbsp;%</td>
              <td class="words">{row.kit}</td>
              <td class="words remedy-cell">{row.remedy ?? '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The newest value once it has stood for a moment. */
function useSettled(value: string): string {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), TYPING_MS);
    return () => clearTimeout(timer);
  }, [value]);
  return settled;
}
