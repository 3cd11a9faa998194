import { cosDeg, sinDeg } from '../solar/angles.ts';
import type { SunPosition } from '../solar/sun-position.ts';
import type { WallPoint } from './bodies.ts';
import { GOLDEN } from './golden.ts';
import type { Scene, SunRays } from './scene.ts';
import { along, dot, type Vector } from './vector.ts';
import type { Panel } from './wall-frame.ts';

const CORNERS = [
  [-1, -1],
  [-1, 1],
  [1, -1],
  [1, 1],
] as const;

/** Unit vector that points at the sun, east-north-up. */
export function sunVector(sun: SunPosition): Vector {
  const level = cosDeg(sun.elevationDeg);
  return [level * sinDeg(sun.azimuthDeg), level * cosDeg(sun.azimuthDeg), sinDeg(sun.elevationDeg)];
}

/** The sun of one instant in a scene: the unit vector that points at it, and its rays. */
export interface Sunlight {
  readonly direction: Vector;
  readonly rays: SunRays;
}

/**
 * Points of a panel, in the coordinates of the wall, at which the sun is looked for: a few that tell whether its shade is
 * even, and many where it is not.
 */
export interface SunPoints {
  readonly scouts: readonly WallPoint[];
  readonly all: readonly WallPoint[];
}

/** Fine enough is what moves the sum over the suns by less than this from half as many points, of the sum itself … */
const REFINED_WITHIN = 0.01;

/** … or of what it would be without shade: of a face that is nearly dark all day no more need be known. */
const REFINED_WITHIN_OPEN = 0.002;

/**
 * Places where the sun is looked for on a panel: refined until the sunlit sum over the given suns of a day moves by less
 * than one in a hundred.
 */
export function sunPoints(panel: Panel, scene: Scene, suns: readonly Sunlight[]): SunPoints {
  const [fewest, ...more] = SPREADS as [Spread, ...Spread[]];
  let points = spreadOver(panel, scene, fewest);
  const ends = Number.isFinite(scene.wall.leftEndM) || Number.isFinite(scene.wall.rightEndM);
  if (!scene.hasObstructions && !ends) return points;
  const facing = suns.filter(({ direction }) => dot(panel.normal, direction) > 0);
  const openSum = facing.reduce((sum, { direction }) => sum + dot(panel.normal, direction), 0);
  const daySum = () => facing.reduce((sum, sun) => sum + sunlitCosine(scene, panel, points, sun), 0);
  let sum = daySum();
  for (const spread of more) {
    const before = sum;
    points = spreadOver(panel, scene, spread);
    sum = daySum();
    if (Math.abs(sum - before) <= Math.max(REFINED_WITHIN * sum, REFINED_WITHIN_OPEN * openSum)) break;
  }
  return points;
}

/**
 * Points spread evenly over a panel, no two of a half in one row or column, so that a shadow's edge that runs along a side
 * passes them one by one. The halves mirror each other, as do mirrored scenes.
 */
function spreadOver({ centre, halfAcross, halfAlong }: Panel, scene: Scene, spread: Spread): SunPoints {
  const all = spread.places.map(({ u, v }) => scene.inWall(along(along(centre, halfAcross, u), halfAlong, v)));
  return { all, scouts: spread.scouts.map((k) => all[k] as WallPoint) };
}

/** Places on a panel from -1 to 1 across and upwards, and the numbers of those that are asked first. */
interface Spread {
  readonly places: readonly { readonly u: number; readonly v: number }[];
  readonly scouts: readonly number[];
}

function spreadOf(halfCount: number): Spread {
  const places = Array.from({ length: halfCount }, (_, k) => {
    const across = ((k + 1) * GOLDEN) % 1;
    const upwards = (2 * k + 1) / halfCount - 1;
    return [-across, across].map((u) => ({ u, v: upwards }));
  }).flat();
  const outermost = CORNERS.map(([u, v]) =>
    places.reduce((best, place) => (place.u * u + place.v * v > best.u * u + best.v * v ? place : best)),
  );
  const every = places.length / 8;
  const first = new Set([...outermost, ...places.filter((_, k) => k % every === every >> 1)]);
  return { places, scouts: [...first].map((place) => places.indexOf(place)) };
}

/** From few points on each half of a panel to many. */
const SPREADS = [8, 16, 32, 64, 128].map(spreadOf);

/**
 * Sunlit projected fraction of a panel: the mean share of the sun that reaches its points times the cosine of incidence,
 * 0 to 1.
 */
export function sunlitCosine(scene: Scene, panel: Panel, points: SunPoints, { direction, rays }: Sunlight): number {
  const incidence = dot(panel.normal, direction);
  if (incidence <= 0 || direction[2] <= 0) return 0;
  if (!scene.hasObstructions && dot(direction, scene.frame.out) >= 0) return incidence;
  return incidence * evenShare(points.scouts, points.all, rays);
}

/** Mean share over all points, asked of a few first: where those agree the rest is not asked. */
export function evenShare(
  scouts: readonly WallPoint[],
  all: readonly WallPoint[],
  shareAt: (point: WallPoint) => number,
): number {
  const first = shareAt((scouts[0] ?? all[0]) as WallPoint);
  let even = true;
  for (let k = 1; k < scouts.length && even; k++) even = shareAt(scouts[k] as WallPoint) === first;
  if (even) return first;
  let sum = 0;
  for (const point of all) sum += shareAt(point);
  return sum / all.length;
}
