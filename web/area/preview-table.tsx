/** The first rows of a table, and what is wrong with them. */
import type { Matching, Preview, RowProblem } from './api.ts';
import { fieldOfColumn, wrongCells } from './matching.ts';

/** The header is row 1, as a spreadsheet counts. */
const FIRST_ROW = 2;
const SHOWN_ROWS = 8;

interface PreviewTableProps {
  readonly columns: readonly string[];
  readonly matching: Matching;
  readonly preview: Preview;
}

export function PreviewTable({ columns, matching, preview }: PreviewTableProps) {
  const fields = fieldOfColumn(matching);
  const wrong = wrongCells(preview.problems);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="table-scroll" tabIndex={0} aria-label="The first rows">
      <table class="preview">
        <thead>
          <tr>
            <th scope="col">Row</th>
            {columns.map((column) => (
              <th key={column} scope="col">
                {column}
                <span class="preview-field">{fields.get(column) ?? 'passed through'}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {preview.firstRows.slice(0, SHOWN_ROWS).map((cells, k) => (
            <tr key={k + FIRST_ROW}>
              <th scope="row">{k + FIRST_ROW}</th>
              {columns.map((column, at) => {
                const isWrong = wrong.has(`${k + FIRST_ROW} ${column}`);
                return (
                  <td key={column} class={isWrong ? 'preview-wrong' : undefined}>
                    {isWrong && '✕ '}
                    {cells[at]}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

export function ProblemTable({ problems }: { problems: readonly RowProblem[] }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="table-scroll problems-scroll" tabIndex={0} aria-label="Problems of the first rows">
      <table class="problem-table">
        <thead>
          <tr>
            <th scope="col">Row</th>
            <th scope="col">Column</th>
            <th scope="col">Value</th>
            <th scope="col">Reason</th>
          </tr>
        </thead>
        <tbody>
          {problems.map(({ row, column, value, reason }) => (
            <tr key={`${row} ${column} ${reason}`}>
              <th scope="row">{row}</th>
              <td>{column || 'whole row'}</td>
              <td>{value}</td>
              <td>{reason}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
