/** Checks, cautions and assumptions in columns: in letters as large as fit, and what does not fit is counted. */
import type { Finding, SiteSheet } from '../../model/index.ts';
import { byWeight } from './assumption-order.ts';
import { type Area, GREY, lineHeight, type Pen, type TextStyle } from './pen.ts';

const COLUMNS = 3;
const GAP = 12;
const INDENT = 9;

/** Letters from readable to small, pt. */
const SIZES = [7.4, 7, 6.6, 6.2, 5.8];
const SMALLEST = 5.8;

interface Item {
  readonly text: string;
  /** A heading over what follows. */
  readonly heading?: boolean;
  readonly strong?: boolean;
  readonly grey?: boolean;
  readonly mark?: Finding['status'];
}

interface Placed extends Item {
  readonly lines: readonly string[];
  readonly column: number;
  readonly y: number;
}

export function drawLists(pen: Pen, sheet: SiteSheet, area: Area): void {
  const width = (area.width - (COLUMNS - 1) * GAP) / COLUMNS;
  const items = itemsOf(sheet);
  const size = SIZES.find((one) => place(pen, items, { ...area, width, size: one }).length === items.length);
  if (size === undefined)
    drawItems(pen, counted(pen, items, { ...area, width, size: SMALLEST }), { ...area, width, size: SMALLEST });
  else drawItems(pen, place(pen, items, { ...area, width, size }), { ...area, width, size });
}

function drawItems(pen: Pen, placed: readonly Placed[], { x: left, width, size }: Columns): void {
  for (const item of placed) {
    const x = left + item.column * (width + GAP);
    const indent = item.heading ? 0 : INDENT;
    pen.part(item.heading ? 'H2' : 'P', () => {
      if (item.mark) drawStatus(pen, item.mark, x, item.y, size);
      pen.write(item.lines, { x: x + indent, y: item.y, width: width - indent }, styleOf(item, size));
    });
  }
}

const styleOf = ({ heading, strong, grey }: Item, size: number): TextStyle => ({
  size: heading ? size + 1 : size,
  bold: heading === true || strong === true,
  ...(grey && { colour: GREY }),
});

interface Columns extends Area {
  readonly size: number;
}

/** Fills column after column, up to the first item that finds no room. */
function place(pen: Pen, items: readonly Item[], { y: top, width, height, size }: Columns): Placed[] {
  const placed: Placed[] = [];
  const bottom = top + height;
  const line = lineHeight({ size });
  let [column, y] = [0, top];
  for (const item of items) {
    const style = styleOf(item, size);
    const lines = pen.lines(item.text, item.heading ? width : width - INDENT, style);
    const high = lines.length * lineHeight(style);
    // A heading does not stand alone at the foot of a column.
    const needed = item.heading ? high + 3 * line : high;
    if (y + needed > bottom && y > top) [column, y] = [column + 1, top];
    if (column >= COLUMNS || y + high > bottom) return placed;
    const above = item.heading && y > top ? 4 : 0;
    placed.push({ ...item, lines, column, y: y + above });
    y += above + high + 1.2;
  }
  return placed;
}

/** The same with a last line that counts what found no room. */
function counted(pen: Pen, items: readonly Item[], columns: Columns): Placed[] {
  const line = lineHeight({ size: columns.size });
  const bottom = columns.y + columns.height;
  const placed = place(pen, items, columns);
  const above = placed.filter(
    ({ column, y, lines }) => column < COLUMNS - 1 || y + lines.length * line <= bottom - 1.5 * line,
  );
  const text = `${items.length - above.length} more on the page and in "shadeside rank"`;
  const lines = pen.lines(text, columns.width - INDENT, { size: columns.size, bold: true }, 1);
  return [...above, { text, strong: true, lines, column: COLUMNS - 1, y: bottom - line }];
}

const STATUS_WORDS: Readonly<Record<Finding['status'], string>> = { pass: 'Pass', look: 'Look', fail: 'Fail' };

function itemsOf({ checks, cautions, assumptions }: SiteSheet): Item[] {
  const order: readonly Finding['status'][] = ['fail', 'look', 'pass'];
  const sorted = order.flatMap((status) => checks.filter((check) => check.status === status));
  return [
    { text: 'Siting checks of this wall', heading: true },
    ...sorted.map(({ status, text, origin }) => ({
      text: `${STATUS_WORDS[status]}: ${text} (${origin})`,
      mark: status,
    })),
    { text: 'Before you climb', heading: true },
    { text: 'Nothing here permits anything: local rules, the trade and the makers come first.' },
    ...cautions.cautions.flatMap(({ text, here, origin }) => [
      { text },
      ...(here === ''
        ? []
        : [
            { text: here, strong: true },
            { text: `(${origin})`, grey: true },
          ]),
    ]),
    { text: 'What the forecast rests on', heading: true },
    ...byWeight(assumptions).map(({ text, origin }) => ({ text: origin === '' ? text : `${text} (${origin})` })),
  ];
}

/** A tick, a ring or a cross: told apart without colour. */
function drawStatus({ doc }: Pen, status: Finding['status'], x: number, y: number, size: number): void {
  const s = size * 0.8;
  doc.lineWidth(1.1);
  if (status === 'pass')
    doc
      .moveTo(x, y + s * 0.55)
      .lineTo(x + s * 0.35, y + s * 0.9)
      .lineTo(x + s, y + s * 0.1)
      .stroke('#00522b');
  else if (status === 'look') doc.circle(x + s / 2, y + s / 2, s * 0.42).stroke('#000000');
  else {
    doc
      .moveTo(x, y)
      .lineTo(x + s, y + s)
      .moveTo(x + s, y)
      .lineTo(x, y + s)
      .stroke('#8a0f00');
  }
}
