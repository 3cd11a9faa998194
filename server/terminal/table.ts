import { TERMINAL_WIDTH, wrap } from './wrap.ts';

/** One column of a table of plain text. */
export interface Column<Row> {
  readonly head: string;
  readonly text: (row: Row) => string;
  readonly align?: 'left' | 'right';
  /** Shortened with an ellipsis when the table would be wider than the terminal. */
  readonly shrinks?: boolean;
  /** Goes on in further lines when the table would be wider than the terminal; for the last column. */
  readonly wraps?: boolean;
}

const GAP = '  ';
const NARROWEST = 4;

/** Sets rows as a table that fits an 80-column terminal, heads first. */
export function table<Row>(rows: readonly Row[], columns: readonly Column<Row>[]): string {
  const cells = [columns.map((column) => column.head), ...rows.map((row) => columns.map((column) => column.text(row)))];
  const wrapped = columns.at(-1)?.wraps ? columns.length - 1 : columns.length;
  const fixed = columns.slice(0, wrapped);
  const widths = fixed.map((_, index) => Math.max(...cells.map((line) => lengthOf(line[index] ?? ''))));
  const surplus = widths.reduce((sum, width) => sum + width, 0) + GAP.length * (fixed.length - 1) - TERMINAL_WIDTH;
  const fitted = widths.map((width, index) =>
    surplus > 0 && fixed[index]?.shrinks ? Math.max(NARROWEST, width - surplus) : width,
  );
  return cells
    .map((line) => {
      const start = fixed
        .map((column, index) => set(line[index] ?? '', fitted[index] ?? 0, column.align ?? 'right'))
        .join(GAP);
      return wrapped < columns.length ? wrap(line[wrapped] ?? '', `${start}${GAP}`) : start.trimEnd();
    })
    .join('\n');
}

function set(text: string, width: number, align: 'left' | 'right'): string {
  const characters = [...text];
  const fitted = characters.length > width ? `${characters.slice(0, width - 1).join('')}…` : text;
  const space = ' '.repeat(width - lengthOf(fitted));
  return align === 'left' ? `${fitted}${space}` : `${space}${fitted}`;
}

/** Characters, not UTF-16 units. */
function lengthOf(text: string): number {
  return [...text].length;
}
