/** The walls of a site beside each other, as many as there is room for. */
import {
  clockReader,
  compassPoint,
  decidingMarginK,
  figureBesideInside,
  formatQuantity,
  type SheetWall,
  type SiteSheet,
  SUNSHINE,
} from '../../model/index.ts';
import { type Area, GREY, HAIR, heading, lineHeight, type Pen, type TextStyle } from './pen.ts';

interface Column {
  readonly head: string;
  /** Share of the width. */
  readonly share: number;
  readonly align?: 'right';
  readonly text: (wall: SheetWall) => string;
}

const SIZE = 7.2;
const ROW_GAP = 3;

/** Lines that a note may take where there is room for them. */
const NOTE_LINES = 3;

export function drawWalls(pen: Pen, sheet: SiteSheet, area: Area): void {
  const top = heading(pen, `The walls, best first; sun: hours of ${SUNSHINE}`, area);
  const columns = columnsOf(sheet);
  const line = lineHeight({ size: SIZE });
  const room = Math.floor((area.y + area.height - top) / (line + ROW_GAP)) - 1;
  const shown = shownWalls(sheet, room);
  const spare = Math.floor((room - shown.length) / Math.max(1, shown.filter(({ feasible }) => !feasible).length));
  const most = Math.max(1, Math.min(NOTE_LINES, 1 + spare));
  const head: TextStyle = { size: 6.5, bold: true, colour: GREY };
  let y = row(pen, columns, { text: ({ head: words }) => words, style: head, most: 1 }, { ...area, y: top });
  for (const wall of shown) {
    const own = wall.name === sheet.wall.name;
    pen.decoration(() => {
      if (own) pen.doc.rect(area.x - 2, y - 2, area.width + 4, line + ROW_GAP).fill('#e8e8e0');
      else {
        pen.doc
          .lineWidth(0.4)
          .moveTo(area.x, y - 2)
          .lineTo(area.x + area.width, y - 2)
          .stroke(HAIR);
      }
    });
    y = row(
      pen,
      columns,
      { text: (column) => column.text(wall), style: { size: SIZE, bold: own }, most },
      { ...area, y },
    );
  }
  const more = sheet.walls.length - shown.length;
  if (more > 0) {
    const words = `${more} more ${more === 1 ? 'wall' : 'walls'} in the site file`;
    pen.part('P', () => pen.paragraph(words, { ...area, y }, { size: SIZE, colour: GREY }, 1));
  }
}

/** The best ones and the one that the sheet is about; one row less where others are left out and said so. */
function shownWalls({ walls, wall }: SiteSheet, room: number): readonly SheetWall[] {
  if (walls.length <= room) return walls;
  const first = walls.slice(0, room - 1);
  if (first.some(({ name }) => name === wall.name)) return first;
  return [...first.slice(0, -1), ...walls.filter(({ name }) => name === wall.name)];
}

interface Row {
  readonly text: (column: Column) => string;
  readonly style: TextStyle;
  /** Lines of the longest cell at most. */
  readonly most: number;
}

/** Writes a row and gives back where it ends. */
function row(pen: Pen, columns: readonly Column[], { text, style, most }: Row, { x, y, width }: Area): number {
  let at = x;
  let end = y;
  pen.part('P', () => {
    for (const column of columns) {
      const wide = column.share * width;
      const align = column.align ?? 'left';
      end = Math.max(end, pen.paragraph(text(column), { x: at, y, width: wide - 5 }, { ...style, align }, most));
      at += wide;
    }
  });
  return end + ROW_GAP;
}

function columnsOf({ units, timeZone, limits, out, walls, wall: chosen }: SiteSheet): Column[] {
  const clock = clockReader(timeZone);
  const why = new Map(out.map((one) => [one.name, one.why]));
  const note = (wall: SheetWall): string => {
    if (!wall.feasible) return `barred: ${why.get(wall.name) ?? ''}`;
    if (wall.name === chosen.name) return 'this sheet';
    if (wall.rank === 1) return 'first of the ranking';
    return decidingMarginK(wall.day) < 0 ? 'past the limit' : '';
  };
  const beside = figureBesideInside(
    walls.map(({ day }) => day),
    limits,
  );
  const deciding: Column[] =
    beside === null
      ? []
      : [
          {
            head: beside.head,
            share: 0.11,
            text: ({ day }) => formatQuantity('temperature', beside.valueC(day), units),
          },
        ];
  return [
    { head: '', share: 0.04, text: ({ rank }) => String(rank) },
    { head: 'wall', share: 0.19, text: ({ name }) => name },
    {
      head: 'faces',
      share: 0.11,
      text: ({ azimuthDeg }) => `${compassPoint(azimuthDeg)} ${Math.round(azimuthDeg) % 360}°`,
    },
    {
      head: 'inside, peak',
      share: 0.18,
      text: ({ day }) => `${formatQuantity('temperature', day.peakInsideAirC, units)}, ${clock(day.peakAtUtc)}`,
    },
    ...deciding,
    {
      head: 'margin',
      share: 0.12,
      align: 'right',
      text: ({ day }) => formatQuantity('temperatureDifference', decidingMarginK(day), units),
    },
    { head: 'sun', share: 0.08, align: 'right', text: ({ day }) => `${day.sunHours.toFixed(1)} h` },
    { head: '', share: deciding.length > 0 ? 0.18 : 0.28, text: note },
  ];
}
