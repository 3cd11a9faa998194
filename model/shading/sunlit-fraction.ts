import { cosDeg, sinDeg } from '../solar/angles.ts';
import type { SunPosition } from '../solar/sun-position.ts';
import type { WallPoint } from './bodies.ts';
import type { Scene, SunRays } from './scene.ts';
import { dot, type Vector } from './vector.ts';
import { type Panel, samplePoints } from './wall-frame.ts';

/** Unit vector that points at the sun, east-north-up. */
export function sunVector(sun: SunPosition): Vector {
  const level = cosDeg(sun.elevationDeg);
  return [level * sinDeg(sun.azimuthDeg), level * cosDeg(sun.azimuthDeg), sinDeg(sun.elevationDeg)];
}

/**
 * Points of a panel, in the coordinates of the wall, at which the sun is looked for: a few that tell whether its shade is
 * even, and many where it is not.
 */
export interface SunPoints {
  readonly scouts: readonly WallPoint[];
  readonly all: readonly WallPoint[];
}

/** Eaves draw level shadow lines, so that upright faces need more points one above the other than side by side. */
const COLUMNS = 4;
const ROWS = 18;

/** Places where the sun is looked for on a panel. */
export function sunPoints(panel: Panel, scene: Scene): SunPoints {
  const all = samplePoints(panel, COLUMNS, ROWS).map(scene.inWall);
  return { all, scouts: edgePoints(all) };
}

/** The outermost of the sample points, and some between: a straight edge that crosses the panel parts them. */
function edgePoints(all: readonly WallPoint[]): WallPoint[] {
  return all.filter((_, index) => {
    const [column, row] = [Math.floor(index / ROWS), index % ROWS];
    return (
      (row % (ROWS - 1) === 0 && column % (COLUMNS - 1) === 0) ||
      (row % 6 === 2 && column === (row % 4 === 0 ? 0 : COLUMNS - 1))
    );
  });
}

/**
 * Sunlit projected fraction of a panel: the mean share of the sun that reaches its points times the cosine of incidence,
 * 0 to 1.
 * @param direction unit vector to the sun
 * @param rays of the sun in that direction
 */
export function sunlitCosine(
  scene: Scene,
  panel: Panel,
  points: SunPoints,
  { direction, rays }: { direction: Vector; rays: SunRays },
): number {
  const incidence = dot(panel.normal, direction);
  if (incidence <= 0 || direction[2] <= 0 || dot(direction, scene.frame.out) <= 0) return 0;
  if (!scene.hasObstructions) return incidence;
  return incidence * evenShare(points.scouts, points.all, rays.onPoint);
}

/** Mean share over all points, asked of a few first: where those agree the rest is not asked. */
export function evenShare(
  scouts: readonly WallPoint[],
  all: readonly WallPoint[],
  shareAt: (point: WallPoint) => number,
): number {
  const first = shareAt((scouts[0] ?? all[0]) as WallPoint);
  if (scouts.every((point) => shareAt(point) === first)) return first;
  let sum = 0;
  for (const point of all) sum += shareAt(point);
  return sum / all.length;
}
