/** The building from above: its walls by their rank, north, what stands before the wall of the sheet. */
import { formatQuantity, fromDisplay, type PlanMark, type SiteSheet } from '../../model/index.ts';
import { type Area, GREY, HAIR, heading, INK, lineHeight, type Pen } from './pen.ts';

type Point = readonly [number, number];

/** What stands farther than this is not drawn: it would make the building too small, m. */
const FARTHEST_M = 25;

/** Marks get their number while there are few. */
const NUMBERED = 12;

/** How far the number of a wall and its circle stand out from the foot of the wall, and a little more, pt. */
const MARK_REACH = 20;

const SMALL = { size: 6.2, colour: GREY } as const;

export function drawPlan(pen: Pen, sheet: SiteSheet, area: Area): void {
  const { doc } = pen;
  const top = heading(pen, 'Plan, north up', area);
  const frame: Area = { x: area.x, y: top, width: area.width, height: area.y + area.height - top };
  const { plan } = sheet;
  pen.part(
    'Figure',
    () => {
      doc.save();
      doc.rect(frame.x, frame.y, frame.width, frame.height).clip();
      if (plan.building === null) bearingsOnly(pen, sheet, frame);
      else building(pen, sheet, frame);
      doc.restore();
      northArrow(pen, frame.x + frame.width - 9, frame.y + 2);
    },
    `Plan of the building: ${plan.marks.length} walls, wall ${sheet.wall.name} marked`,
  );
}

function building(pen: Pen, sheet: SiteSheet, frame: Area): void {
  const { doc } = pen;
  const { plan, units } = sheet;
  const outline = plan.building ?? [];
  const near = plan.shapes.filter(({ outline: corners }) => corners.every(([e, n]) => Math.hypot(e, n) < FARTHEST_M));
  const points = [...outline, ...near.flatMap((shape) => shape.outline)];
  const [east, north] = [points.map(([e]) => e), points.map(([, n]) => n)];
  const [west, south] = [Math.min(...east), Math.min(...north)];
  const size: Point = [Math.max(...east) - west, Math.max(...north) - south];
  const margin = 16;
  const perM = Math.min((frame.width - 2 * margin) / size[0], (frame.height - 2 * margin - 4) / size[1]);
  const at = ([e, n]: Point): Point => [
    frame.x + frame.width / 2 + (e - west - size[0] / 2) * perM,
    frame.y + margin + (frame.height - 2 * margin - 4 - size[1] * perM) / 2 + (south + size[1] - n) * perM,
  ];
  polygon(pen, outline.map(at));
  doc.lineWidth(1.4).fillAndStroke('#e8e8e0', INK);
  for (const shape of near) {
    polygon(pen, shape.outline.map(at));
    doc.lineWidth(0.6).dash(2, { space: 1.5 }).stroke('#444444').undash();
  }
  for (const mark of plan.marks) if (mark.at !== null) drawMark(pen, sheet, mark, at(mark.at));
  scaleBar(pen, perM, units, { x: frame.x + 2, y: frame.y + frame.height - 4 });
}

/** Without an outline only the bearings are known: each wall is a stroke across its bearing. */
function bearingsOnly(pen: Pen, sheet: SiteSheet, frame: Area): void {
  const { doc } = pen;
  const words = 'bearings of the walls; the outline of the building was not entered';
  const captionTop = frame.y + frame.height - 2 * lineHeight(SMALL);
  const height = captionTop - frame.y;
  const middle: Point = [frame.x + frame.width / 2, frame.y + height / 2];
  const radius = Math.min(frame.width, height) / 2 - MARK_REACH;
  doc.lineWidth(0.4).circle(middle[0], middle[1], radius).stroke(HAIR);
  for (const mark of sheet.plan.marks) {
    const [out, along] = directions(mark.azimuthDeg);
    const foot: Point = [middle[0] + radius * out[0], middle[1] + radius * out[1]];
    const half = sheet.plan.marks.length > NUMBERED ? 2 : 12;
    doc.lineWidth(1.4).moveTo(foot[0] - half * along[0], foot[1] - half * along[1]);
    doc.lineTo(foot[0] + half * along[0], foot[1] + half * along[1]).stroke(INK);
    drawMark(pen, sheet, mark, foot);
  }
  pen.paragraph(words, { x: frame.x, y: captionTop, width: frame.width }, { ...SMALL, align: 'center' }, 2);
}

/** On paper y runs downward. */
function directions(azimuthDeg: number): [out: Point, along: Point] {
  const angle = (azimuthDeg * Math.PI) / 180;
  return [
    [Math.sin(angle), -Math.cos(angle)],
    [Math.cos(angle), Math.sin(angle)],
  ];
}

function drawMark(pen: Pen, { walls, wall, plan }: SiteSheet, { wall: name, azimuthDeg }: PlanMark, foot: Point): void {
  const { doc } = pen;
  const own = name === wall.name;
  if (!own && plan.marks.length > NUMBERED) return;
  const rank = walls.find((one) => one.name === name)?.rank ?? 0;
  const [[outX, outY]] = directions(azimuthDeg);
  const [x, y] = [foot[0] + 9 * outX, foot[1] + 9 * outY];
  doc
    .lineWidth(0.8)
    .circle(x, y, 6)
    .fillAndStroke(own ? INK : '#ffffff', INK);
  const style = { size: 7, bold: true, align: 'center', colour: own ? '#ffffff' : INK } as const;
  pen.paragraph(String(rank), { x: x - 8, y: y - 2.9, width: 16 }, style, 1);
}

function polygon({ doc }: Pen, points: readonly Point[]): void {
  for (const [k, [x, y]] of points.entries()) {
    if (k === 0) doc.moveTo(x, y);
    else doc.lineTo(x, y);
  }
  doc.closePath();
}

function scaleBar(pen: Pen, perM: number, units: SiteSheet['units'], { x, y }: { x: number; y: number }): void {
  const lengths = [1, 2, 5, 10, 20, 50].map((shown) => fromDisplay('length', shown, units));
  const metres = lengths.findLast((m) => m * perM <= 60) ?? (lengths[0] as number);
  pen.doc
    .lineWidth(1.2)
    .moveTo(x, y)
    .lineTo(x + metres * perM, y)
    .stroke(INK);
  pen.paragraph(formatQuantity('length', metres, units, 0), { x, y: y - 8, width: 60 }, SMALL, 1);
}

function northArrow(pen: Pen, x: number, y: number): void {
  pen.doc
    .moveTo(x, y)
    .lineTo(x + 4, y + 10)
    .lineTo(x, y + 8)
    .lineTo(x - 4, y + 10)
    .closePath()
    .fill(INK);
  pen.paragraph('N', { x: x - 8, y: y + 11, width: 16 }, { size: 7, bold: true, align: 'center' }, 1);
}
