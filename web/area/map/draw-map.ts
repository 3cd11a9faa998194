/** Draws a map of addresses on a canvas: many thousand signs are too many for elements of a page. */
import { geoPath } from 'd3-geo';
import type { UnitSystem } from '../../../model/index.ts';
import type { Grid } from '../api.ts';
import type { MarginBand } from '../margin-bands.ts';
import { type Frame, type Placed, projectionOf, type View } from './frame.ts';
import { type GridLine, graticule, scaleBar } from './graticule.ts';
import type { Outlines } from './outlines.ts';
import { rimmed, STAMP_PX, sign, stamp, written } from './strokes.ts';

export type Box = Omit<Grid, 'stepDeg'>;

export interface Drawing {
  readonly frame: Frame;
  readonly view: View;
  readonly outlines: Outlines | null;
  readonly units: UnitSystem;
  readonly points: Placed | null;
  /** Indices in the order of drawing, the worst last. */
  readonly order: ArrayLike<number>;
  /** Class of each point. */
  readonly band: ArrayLike<number>;
  readonly bands: readonly MarginBand[];
  readonly selected: number | null;
  readonly box: Box | null;
  /** The first corner of a box that is being drawn. */
  readonly corner: readonly [number, number] | null;
  /** Whether keys move the map, and Enter means its middle. */
  readonly cross: boolean;
}

/** Above as many signs in sight, they are smaller, and printed instead of drawn. */
const CROWD = 1500;

export function drawMap(canvas: HTMLCanvasElement, drawing: Drawing, pixelRatio: number): void {
  const context = canvas.getContext('2d');
  if (context === null) return;
  const { frame, view } = drawing;
  const { widthPx, heightPx } = frame;
  context.setTransform(pixelRatio, 0, 0, pixelRatio, 0, 0);
  context.fillStyle = '#fff';
  context.fillRect(0, 0, widthPx, heightPx);
  const projection = projectionOf(frame, view);
  const path = geoPath(projection, context);
  const stroke = (geometry: Parameters<typeof path>[0], style: string, width: number) => {
    context.beginPath();
    path(geometry);
    context.strokeStyle = style;
    context.lineWidth = width;
    context.stroke();
  };
  if (drawing.outlines) {
    context.beginPath();
    path(drawing.outlines.land);
    context.fillStyle = '#ecece6';
    context.fill();
    context.strokeStyle = '#6b6b66';
    context.lineWidth = 1;
    context.stroke();
  }
  const lines = graticule(frame, view);
  for (const { line } of lines) stroke(line, '#c9c9c4', 1);
  if (drawing.outlines) stroke(drawing.outlines.borders, '#6b6b66', 1);
  if (drawing.box) stroke(outlineOf(drawing.box), '#000', 3);
  if (drawing.corner) {
    const at = projection([...drawing.corner]);
    if (at) mark(context, at, 10);
  }
  if (drawing.points) drawPoints(context, drawing);
  labels(context, lines, (at) => projection(at), frame);
  if (frame.hasScale) bar(context, drawing);
  if (drawing.cross) mark(context, [widthPx / 2, heightPx / 2], 14);
}

function drawPoints(context: CanvasRenderingContext2D, { frame, view, points, order, band, bands, selected }: Drawing) {
  if (points === null) return;
  const paths = bands.map(({ d }) => new Path2D(d));
  const seen: number[] = [];
  for (let at = 0; at < order.length; at += 1) {
    const k = order[at] as number;
    const x = (points.x[k] as number) * view.k + view.x;
    const y = (points.y[k] as number) * view.k + view.y;
    if (x > -10 && y > -10 && x < frame.widthPx + 10 && y < frame.heightPx + 10) seen.push(k);
  }
  const crowded = seen.length > CROWD;
  const stamps = crowded ? paths.map((path, k) => stamp(path, bands[k]?.fill ?? '', context.getTransform().a)) : [];
  const at = (k: number): [number, number] => [
    (points.x[k] as number) * view.k + view.x,
    (points.y[k] as number) * view.k + view.y,
  ];
  for (const k of seen) {
    const [x, y] = at(k);
    const image = stamps[band[k] as number];
    const path = paths[band[k] as number];
    if (image) context.drawImage(image, x - STAMP_PX / 2, y - STAMP_PX / 2, STAMP_PX, STAMP_PX);
    else if (path) sign(context, path, { x, y, scale: 1, fill: bands[band[k] as number]?.fill ?? '' });
  }
  if (selected === null) return;
  const [x, y] = at(selected);
  const path = paths[band[selected] as number];
  if (path) sign(context, path, { x, y, scale: 1.4, fill: bands[band[selected] as number]?.fill ?? '' });
  rimmed(context, 3, () => context.arc(x, y, 17, 0, 2 * Math.PI));
}

/** The border of a box along its parallels, which bend on most maps. */
function outlineOf({ south, west, north, east }: Box) {
  const span = east >= west ? east - west : east - west + 360;
  const across = Array.from({ length: 25 }, (_, k) => west + (span * k) / 24);
  const coordinates = [
    ...across.map((lon) => [lon, south]),
    ...across.reverse().map((lon) => [lon, north]),
    [west, south],
  ];
  return { type: 'LineString' as const, coordinates };
}

function mark(context: CanvasRenderingContext2D, [x, y]: readonly [number, number], reach: number) {
  rimmed(context, 2, () => {
    context.moveTo(x - reach, y);
    context.lineTo(x + reach, y);
    context.moveTo(x, y - reach);
    context.lineTo(x, y + reach);
  });
}

type Project = (at: [number, number]) => [number, number] | null;

function labels(context: CanvasRenderingContext2D, lines: readonly GridLine[], project: Project, frame: Frame) {
  context.font = '13px system-ui, sans-serif';
  let taken = 0;
  for (const { label, at, along } of lines) {
    const [x, y] = project(at) ?? [Number.NaN, Number.NaN];
    if (along === 'bottom') {
      context.textAlign = 'center';
      context.textBaseline = 'bottom';
      const half = context.measureText(label).width / 2;
      if (!(x - half > Math.max(taken, 4) && x + half < frame.widthPx - 4)) continue;
      taken = x + half + 8;
      written(context, label, x, frame.heightPx - 4);
    } else if (y > 14 && y < frame.heightPx - 34) {
      context.textAlign = 'left';
      context.textBaseline = 'middle';
      written(context, label, 4, y);
    }
  }
}

function bar(context: CanvasRenderingContext2D, { frame, view, units }: Drawing) {
  const { px, label } = scaleBar(frame, view, units === 'us' ? 'mi' : 'km', Math.min(120, frame.widthPx / 3));
  const [x, y] = [frame.widthPx - px - 12, 14];
  rimmed(context, 3, () => {
    context.moveTo(x, y);
    context.lineTo(x + px, y);
  });
  context.textAlign = 'right';
  context.textBaseline = 'top';
  written(context, label, x + px, y + 5);
}
