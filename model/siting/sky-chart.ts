/** Where bearings and elevations lie in a drawn sun diagram, and the lines and areas there: on the page and on paper. */
import type { Silhouette, SunOnBox, SunPath } from './sun-diagram.ts';

/** Where a chart lies in its picture; x to the right and y downward, in units of the picture. */
export interface ChartFrame {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

type Point = readonly [x: number, y: number];

/** The sky unrolled: the wall's bearing in the middle, half a turn to each side. */
export interface SkyChart {
  readonly frame: ChartFrame;
  readonly wallAzimuthDeg: number;
  at(bearingDeg: number, elevationDeg: number): Point;
}

/** A chart of the sky as seen from the wall: bearings and elevations in degrees to places in the frame, in its own units. */
export function skyChart(frame: ChartFrame, wallAzimuthDeg: number): SkyChart {
  return {
    frame,
    wallAzimuthDeg,
    at(bearingDeg, elevationDeg) {
      const share = (bearingDeg - wallAzimuthDeg + 180) / 360;
      const up = Math.min(90, Math.max(0, elevationDeg)) / 90;
      return [frame.left + share * (frame.right - frame.left), frame.bottom - up * (frame.bottom - frame.top)];
    },
  };
}

/** The same bearing, within half a turn of another. */
export function bearingNear(bearingDeg: number, otherDeg: number): number {
  return bearingDeg + 360 * Math.round((otherDeg - bearingDeg) / 360);
}

/** How much of the sun reaches the box: nothing, some of it, or at least half. */
export type LitDegree = 'none' | 'some' | 'most';

/** The degree of a sunlit share of the box, 0 to 1. */
export function litDegree(lit: number): LitDegree {
  if (lit <= 0) return 'none';
  return lit < 0.5 ? 'some' : 'most';
}

/** A stretch of a path along which as much of the sun reaches the box. */
export interface PathRun {
  readonly degree: LitDegree;
  readonly points: readonly Point[];
}

/** Points of a path that are farther apart belong to two passes of the sun, as around midnight in the far north. */
const LONGEST_GAP_MS = 15 * 60_000;

/**
 * A sun path in stretches. Each point stands for the time until the next one, so that what is drawn as lit lasts as long
 * as the figures say. A path that leaves at one side of the chart comes in at the other.
 */
export function pathRuns({ points: ofDay, end }: SunPath, chart: SkyChart): PathRun[] {
  const points = end === null ? ofDay : [...ofDay, end];
  const runs: { degree: LitDegree; points: Point[] }[] = [];
  const add = (degree: LitDegree, from: Point, to: Point) => {
    const run = runs.at(-1);
    const [x, y] = run?.points.at(-1) ?? [];
    if (run?.degree === degree && x === from[0] && y === from[1]) run.points.push(to);
    else runs.push({ degree, points: [from, to] });
  };
  for (let k = 0; k + 1 < points.length; k += 1) {
    const [here, next] = [points[k] as SunOnBox, points[k + 1] as SunOnBox];
    if (next.utc.getTime() - here.utc.getTime() > LONGEST_GAP_MS) continue;
    const degree = litDegree(here.lit);
    for (const [from, to] of pieces(here, next, chart.wallAzimuthDeg)) {
      add(degree, chart.at(...from), chart.at(...to));
    }
  }
  return runs;
}

type SkyPoint = readonly [bearingDeg: number, elevationDeg: number];

/** The way between two suns, in two pieces where it crosses the edge behind the wall. */
function pieces(here: SunOnBox, next: SunOnBox, middleDeg: number): (readonly [SkyPoint, SkyPoint])[] {
  const from = bearingNear(here.azimuthDeg, middleDeg);
  const to = bearingNear(next.azimuthDeg, from);
  const edge = middleDeg + (to > from ? 180 : -180);
  if (Math.abs(to - middleDeg) <= 180) {
    return [
      [
        [from, here.elevationDeg],
        [to, next.elevationDeg],
      ],
    ];
  }
  const share = (edge - from) / (to - from);
  const elevationDeg = here.elevationDeg + share * (next.elevationDeg - here.elevationDeg);
  const opposite = edge - 360 * Math.sign(to - from);
  return [
    [
      [from, here.elevationDeg],
      [edge, elevationDeg],
    ],
    [
      [opposite, elevationDeg],
      [bearingNear(next.azimuthDeg, middleDeg), next.elevationDeg],
    ],
  ];
}

/** The outlines of a silhouette: along its tops and back along its feet. */
export function silhouetteAreas({ runs }: Silhouette, chart: SkyChart): Point[][] {
  return runs.map((bands) => [
    ...bands.map(({ bearingDeg, highDeg }) => chart.at(bearingDeg, highDeg)),
    ...bands.toReversed().map(({ bearingDeg, lowDeg }) => chart.at(bearingDeg, lowDeg)),
  ]);
}
