/** When the sun stands on the box along its path through a day, and what hides it the rest of the time. */
import { bearingNear, type Silhouette, type SunPath } from '../../../model/index.ts';
import type { SkyPlace } from './sky-chart.ts';

export interface LitSpan {
  readonly from: Date;
  readonly to: Date;
}

/** Each point of a path stands for the ten minutes from it. */
const POINT_MS = 10 * 60_000;

/** The times with sun on the box, in order. */
export function litSpans({ points }: SunPath): LitSpan[] {
  const spans: LitSpan[] = [];
  for (const { utc, lit } of points) {
    if (lit <= 0) continue;
    const to = new Date(utc.getTime() + POINT_MS);
    const last = spans.at(-1);
    if (last?.to.getTime() === utc.getTime()) spans[spans.length - 1] = { from: last.from, to };
    else spans.push({ from: utc, to });
  }
  return spans;
}

/** How long something keeps the sun off the box. */
export interface Hiding {
  readonly silhouette: Silhouette;
  readonly hours: number;
}

/** What hides the sun while none reaches the box, the longest first. */
export function hiddenBy({ points }: SunPath, silhouettes: readonly Silhouette[]): Hiding[] {
  const counts = new Map<Silhouette, number>();
  for (const point of points) {
    const hider = point.lit > 0 ? undefined : hiderOf(point, silhouettes);
    if (hider !== undefined) counts.set(hider, (counts.get(hider) ?? 0) + 1);
  }
  return [...counts]
    .map(([silhouette, count]) => ({ silhouette, hours: (count * POINT_MS) / 3_600_000 }))
    .sort((a, b) => b.hours - a.hours);
}

/** What stands before a place in the sky, as seen from the middle of the box. The nearest comes last in the list. */
export function hiderOf(place: SkyPlace, silhouettes: readonly Silhouette[]): Silhouette | undefined {
  return silhouettes.findLast(({ runs }) => runs.some((bands) => within(bands, place)));
}

function within(bands: Silhouette['runs'][number], { azimuthDeg, elevationDeg }: SkyPlace): boolean {
  const [first, last] = [bands[0], bands.at(-1)];
  if (first === undefined || last === undefined) return false;
  const bearing = bearingNear(azimuthDeg, (first.bearingDeg + last.bearingDeg) / 2);
  // Bands stand a degree apart: the edges of a silhouette are known to half of that.
  const band = bands.find(({ bearingDeg }) => Math.abs(bearingDeg - bearing) <= 0.5);
  return band !== undefined && elevationDeg >= band.lowDeg && elevationDeg <= band.highDeg;
}
