/** Where bearings and elevations lie in the sun diagram, and the lines and areas drawn there. */
import type { Silhouette, SunOnBox, SunPath } from '../../../model/index.ts';
import type { Rect } from './labels.ts';
import type { Point } from './plane.ts';

/** The sky unrolled: the wall's bearing in the middle, half a turn to each side. */
export interface SkyChart {
  readonly frame: Rect;
  readonly wallAzimuthDeg: number;
  at(bearingDeg: number, elevationDeg: number): Point;
}

export function skyChart(frame: Rect, wallAzimuthDeg: number): SkyChart {
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
export function pathRuns({ points }: SunPath, chart: SkyChart): PathRun[] {
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

/** A place in the sky. */
export interface SkyPlace {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
}

/** Where in its bands a silhouette is asked whether it shows, as shares of their height. */
const BAND_SHARES = [0.5, 0.25, 0.75];

function placesIn({ lowDeg, highDeg, bearingDeg }: Silhouette['runs'][number][number]): SkyPlace[] {
  return BAND_SHARES.map((share) => ({
    azimuthDeg: bearingDeg,
    elevationDeg: lowDeg + share * (Math.min(90, highDeg) - lowDeg),
  }));
}

/** Whether something of a silhouette shows where `shows` tells whether nothing nearer covers it. */
export function showsAnywhere({ runs }: Silhouette, shows: (place: SkyPlace) => boolean): boolean {
  return runs.some((bands) => bands.some((band) => placesIn(band).some(shows)));
}

/** Where the letter of a silhouette may stand, the roomiest place first: only where nothing nearer covers it. */
export function letterPlaces({ runs }: Silhouette, chart: SkyChart, shows: (place: SkyPlace) => boolean): Point[] {
  const places = runs.flatMap((bands) =>
    bands.flatMap((band, k) => {
      const [x, low] = chart.at(band.bearingDeg, band.lowDeg);
      const [, high] = chart.at(band.bearingDeg, band.highDeg);
      const toEnd = Math.min(k, bands.length - 1 - k);
      const toEndPx = Math.abs(chart.at(band.bearingDeg + toEnd, 0)[0] - x);
      const roomPx = Math.min(low - high, 2 * toEndPx);
      return placesIn(band).map((place) => ({ place, roomPx }));
    }),
  );
  return places
    .filter(({ place }) => shows(place))
    .sort((a, b) => b.roomPx - a.roomPx)
    .map(({ place }) => chart.at(place.azimuthDeg, place.elevationDeg));
}
