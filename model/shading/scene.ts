/**
 * What stands around the box, asked one ray at a time: where does a straight line from this point in this direction end,
 * and how much of its light gets through what stands in the way?
 */
import type { Obstruction } from '../site.ts';
import { degrees } from '../solar/angles.ts';
import { type Body, meets, type WallPoint } from './bodies.ts';
import { type Skyline, skylineThrough } from './horizon.ts';
import { bodiesOf, type EaveShape, eaveBody, type Season } from './obstructions.ts';
import { dot, type Vector } from './vector.ts';
import { type WallFrame, wallFrame } from './wall-frame.ts';

/** What a scene is made of. */
export interface SceneInput {
  readonly azimuthDeg: number;
  readonly wallHeightM: number;
  /** Height of the top of the box above ground, m. */
  readonly boxTopM: number;
  readonly eave: EaveShape | null;
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
  readonly frame: WallFrame;
  /** True when something can stand between a face and the sun besides the wall itself. */
  readonly hasObstructions: boolean;
  /** The ray from `point` along the unit vector `direction`. */
  trace(point: Vector, direction: Vector): Ray;
  /** Share of the sun in `direction` that reaches `point`; the building is taken as solid behind the wall. */
  sunThrough(point: Vector, direction: Vector): number;
  /**
   * Share of the sun that reaches a point of level ground: in the shadow of the building, taken as long and as high as
   * its wall, none.
   */
  sunOnGround(point: Vector, direction: Vector): number;
}

const bearingOf = (d: Vector): number => degrees(Math.atan2(d[0], d[1]));
const elevationOf = (d: Vector): number => degrees(Math.asin(Math.max(-1, Math.min(1, d[2]))));

const FAR = Number.POSITIVE_INFINITY;

/** Builds the scene of a wall; everything that does not depend on the ray is worked out here, once. */
export function buildScene(input: SceneInput): Scene {
  const frame = wallFrame(input.azimuthDeg);
  const bodies: Body[] = [
    ...(input.eave !== null && input.eave.depthM > 0 ? [eaveBody(input.eave, input.boxTopM)] : []),
    ...input.obstructions.flatMap((obstruction) => bodiesOf(obstruction, input.season)),
  ].filter(({ transmittance }) => transmittance < 1);
  const hasSkyline = input.horizon.some(([, elevation]) => elevation > 0);
  const skyline: Skyline = skylineThrough(input.horizon);

  const [outE, outN] = frame.out;
  const [rightE, rightN] = frame.right;
  const inWall = ([e, n, up]: Vector): WallPoint => [e * rightE + n * rightN, e * outE + n * outN, up];

  /** Share that gets through all bodies within `reach` steps. */
  const through = (point: Vector, direction: Vector, reach: number): number => {
    if (bodies.length === 0) return 1;
    const from = inWall(point);
    const towards = inWall(direction);
    let share = 1;
    for (const body of bodies) {
      if (meets(body, from, towards, reach)) share *= body.transmittance;
      if (share === 0) return 0;
    }
    return share;
  };
  // An elevation of 90 degrees hides the zenith too.
  const belowSkyline = (direction: Vector): boolean =>
    hasSkyline && elevationOf(direction) <= skyline(bearingOf(direction));

  return {
    frame,
    hasObstructions: bodies.length > 0 || hasSkyline,
    trace(point, direction) {
      const outward = dot(direction, frame.out);
      if (outward < 0) {
        const steps = -dot(point, frame.out) / outward;
        const upM = point[2] + steps * direction[2];
        if (upM >= 0 && upM <= input.wallHeightM) return { end: 'wall', through: through(point, direction, steps) };
      }
      if (direction[2] < 0) return { end: 'ground', through: through(point, direction, -point[2] / direction[2]) };
      return { end: belowSkyline(direction) ? 'obstruction' : 'sky', through: through(point, direction, FAR) };
    },
    sunThrough(point, direction) {
      if (dot(direction, frame.out) <= 0 || direction[2] <= 0 || belowSkyline(direction)) return 0;
      return through(point, direction, FAR);
    },
    sunOnGround(point, direction) {
      if (direction[2] <= 0 || belowSkyline(direction)) return 0;
      const outward = dot(direction, frame.out);
      // Towards a sun behind the wall, the line crosses the wall's plane at this height.
      const crossingUpM = (-dot(point, frame.out) * direction[2]) / outward;
      if (outward < 0 && crossingUpM < input.wallHeightM) return 0;
      return through(point, direction, FAR);
    },
  };
}
