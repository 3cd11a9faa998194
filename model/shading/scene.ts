/**
 * What stands around the box, asked one ray at a time: where does a straight line from this point in this direction end,
 * and how much of its light gets through what stands in the way?
 */
import { outlineEdge } from '../building-outline.ts';
import type { Obstruction } from '../site.ts';
import { degrees } from '../solar/angles.ts';
import { type Body, meets, type WallPoint } from './bodies.ts';
import { type Skyline, skylineThrough } from './horizon.ts';
import { type BuildingShape, bodiesOf, buildingBodies, type EaveShape, eaveBody, type Season } from './obstructions.ts';
import type { Vector } from './vector.ts';
import { type WallFrame, wallFrame } from './wall-frame.ts';

/** What a scene is made of. */
export interface SceneInput {
  readonly azimuthDeg: number;
  readonly wallHeightM: number;
  /** Height of the top of the box above ground, m. */
  readonly boxTopM: number;
  readonly eave: EaveShape | null;
  /** The building with its other walls; null for a wall that runs on to both sides. */
  readonly building: BuildingShape | null;
  readonly obstructions: readonly Obstruction[];
  /** [bearing, elevation] points, degrees. */
  readonly horizon: readonly (readonly [number, number])[];
  readonly season: Season;
}

/** What lies at the end of a ray that nothing stops. */
export type RayEnd = 'sky' | 'ground' | 'wall' | 'obstruction';

export interface Ray {
  readonly end: RayEnd;
  /** Share of its light that gets through the obstructions on the way, 0 to 1. */
  readonly through: number;
}

export interface Scene {
  readonly season: Season;
  /** Height of the wall, and how far it runs to the left (negative) and right of the box, m. */
  readonly wall: { readonly heightM: number; readonly leftEndM: number; readonly rightEndM: number };
  readonly frame: WallFrame;
  /** True when something can stand between a face and the sun besides the wall itself. */
  readonly hasObstructions: boolean;
  /** A point in the coordinates of the wall, in which the rays of the sun are asked. */
  inWall(point: Vector): WallPoint;
  /** The ray from `point` along the unit vector `direction`, both in the coordinates of the wall. */
  trace(point: WallPoint, direction: WallPoint): Ray;
  /** The rays of a sun that stands in `direction` (unit vector). */
  sunRays(direction: Vector): SunRays;
}

/** Share of the sun at one instant that reaches a point, 0 to 1: none in the shadow of the wall. */
export type SunRays = (point: WallPoint) => number;

const elevationOf = (up: number): number => degrees(Math.asin(Math.max(-1, Math.min(1, up))));

const FAR = Number.POSITIVE_INFINITY;

/** A point nearer to the plane of the wall than this lies on it, m. */
const ON_WALL_M = 1e-9;

/** What stands out less than this beside the end of a wall, behind its plane, is not looked for from the box, m. */
const BESIDE_M = 0.1;

/** Builds the scene of a wall; everything that does not depend on the ray is worked out here, once. */
export function buildScene(input: SceneInput): Scene {
  const frame = wallFrame(input.azimuthDeg);
  const bodies: Body[] = [
    ...(input.building === null ? [] : buildingBodies(input.building)),
    ...(input.eave !== null && input.eave.depthM > 0 ? [eaveBody(input.eave, input.boxTopM)] : []),
    ...input.obstructions.flatMap((obstruction) => bodiesOf(obstruction, input.season)),
  ].filter(({ transmittance }) => transmittance < 1);
  const [leftEndM, rightEndM] = wallEnds(input.building);
  // What the wall hides from the box still shades the ground beside the building.
  const seenBodies = bodies.filter(
    ({ low, high }) => high[1] > ON_WALL_M || low[0] < leftEndM - BESIDE_M || high[0] > rightEndM + BESIDE_M,
  );
  const hasSkyline = input.horizon.some(([, elevation]) => elevation > 0);
  const skyline: Skyline = skylineThrough(input.horizon);
  const onWall = (rightM: number, upM: number): boolean =>
    upM >= 0 && upM <= input.wallHeightM && rightM >= leftEndM && rightM <= rightEndM;

  const [outE, outN] = frame.out;
  const [rightE, rightN] = frame.right;
  const inWall = ([e, n, up]: Vector): WallPoint => [e * rightE + n * rightN, e * outE + n * outN, up];

  /** Share that gets through all bodies within `reach` steps. */
  const through = (from: WallPoint, towards: WallPoint, reach: number): number => {
    let share = 1;
    for (const body of seenBodies) {
      if (meets(body, from, towards, reach)) share *= body.transmittance;
      if (share === 0) return 0;
    }
    return share;
  };
  // An elevation of 90 degrees hides the zenith too.
  const belowSkyline = ([right, out, up]: WallPoint): boolean =>
    hasSkyline && elevationOf(up) <= skyline(input.azimuthDeg + degrees(Math.atan2(-right, out)));

  return {
    season: input.season,
    wall: { heightM: input.wallHeightM, leftEndM, rightEndM },
    frame,
    inWall,
    hasObstructions: seenBodies.length > 0 || hasSkyline,
    trace(point, direction) {
      const outward = direction[1];
      if (outward < 0) {
        const steps = -point[1] / outward;
        if (onWall(point[0] + steps * direction[0], point[2] + steps * direction[2])) {
          return { end: 'wall', through: through(point, direction, steps) };
        }
      }
      if (direction[2] < 0) return { end: 'ground', through: through(point, direction, -point[2] / direction[2]) };
      return { end: belowSkyline(direction) ? 'obstruction' : 'sky', through: through(point, direction, FAR) };
    },
    sunRays(direction) {
      const up = direction[2];
      const towards = inWall(direction);
      if (up <= 0 || belowSkyline(towards)) return () => 0;
      const [toRight, outward] = towards;
      const reaches = bodies.length === 0 ? null : sunShare(bodies, towards);
      const stepsPerM = outward === 0 ? 0 : -1 / outward;
      return (point) => {
        // The line to the sun crosses the plane of the wall after so many steps; a point on the wall does not cross it.
        const steps = Math.abs(point[1]) > ON_WALL_M ? point[1] * stepsPerM : 0;
        if (steps > 0 && onWall(point[0] + steps * toRight, point[2] + steps * up)) return 0;
        return reaches === null ? 1 : reaches(point);
      };
    },
  };
}

/** How far the wall runs to the left (negative) and right of the box, m; endless where no building is given. */
function wallEnds(building: BuildingShape | null): [left: number, right: number] {
  if (building === null) return [-FAR, FAR];
  return [-building.alongM, outlineEdge(building.outlineM, building.edge).lengthM - building.alongM];
}

/**
 * Share of the sun that gets past bodies to a point. Whatever lies on one line to the sun has one shadow on the ground: a
 * point whose shadow falls outside that of a body's corners cannot be shaded by it, which spares most of the looking.
 */
function sunShare(bodies: readonly Body[], towards: WallPoint): (point: WallPoint) => number {
  const [right, out, up] = towards;
  const shadows = shadowBounds(bodies, -right / up, -out / up);
  return (point) => {
    const steps = point[2] / up;
    const atRight = point[0] - right * steps;
    const atOut = point[1] - out * steps;
    let share = 1;
    for (let k = 0, at = 0; k < bodies.length; k++, at += 4) {
      if (atRight < (shadows[at] as number) || atRight > (shadows[at + 1] as number)) continue;
      if (atOut < (shadows[at + 2] as number) || atOut > (shadows[at + 3] as number)) continue;
      const body = bodies[k] as Body;
      if (meets(body, point, towards, FAR)) share *= body.transmittance;
      if (share === 0) return 0;
    }
    return share;
  };
}

/**
 * The rectangles on the ground that hold the shadows of bodies: lowest and highest right, lowest and highest out of each.
 * The shifts are those of the shadow of a point one metre up.
 */
function shadowBounds(bodies: readonly Body[], rightPerM: number, outPerM: number): number[] {
  const bounds: number[] = [];
  for (const { low, high } of bodies) {
    bounds.push(
      low[0] + (rightPerM < 0 ? high[2] : low[2]) * rightPerM,
      high[0] + (rightPerM < 0 ? low[2] : high[2]) * rightPerM,
      low[1] + (outPerM < 0 ? high[2] : low[2]) * outPerM,
      high[1] + (outPerM < 0 ? low[2] : high[2]) * outPerM,
    );
  }
  return bounds;
}
