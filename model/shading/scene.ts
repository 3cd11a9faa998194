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
  /** A point in the coordinates of the wall, in which the rays of the sun are asked. */
  inWall(point: Vector): WallPoint;
  /** The ray from `point` along the unit vector `direction`. */
  trace(point: Vector, direction: Vector): Ray;
  /** The rays of a sun that stands in `direction` (unit vector). */
  sunRays(direction: Vector): SunRays;
}

/** The rays of the sun at one instant. */
export interface SunRays {
  /** Share of the sun that reaches a point before the wall; the building is taken as solid behind it. */
  onPoint(point: WallPoint): number;
  /** Share that reaches a point of level ground: none in the shadow of the building, taken as long and high as its wall. */
  onGround(point: WallPoint): number;
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
    inWall,
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
    sunRays(direction) {
      const up = direction[2];
      const outward = dot(direction, frame.out);
      if (up <= 0 || belowSkyline(direction)) return { onPoint: () => 0, onGround: () => 0 };
      const reaches = sunShare(bodies, inWall(direction));
      return {
        onPoint: outward <= 0 ? () => 0 : reaches,
        onGround(point) {
          // Towards a sun behind the wall, the line crosses the wall's plane at this height.
          const crossingUpM = (-point[1] * up) / outward;
          return outward < 0 && crossingUpM < input.wallHeightM ? 0 : reaches(point);
        },
      };
    },
  };
}

/**
 * Share of the sun that gets past bodies to a point. Whatever lies on one line to the sun has one shadow on the ground: a
 * point whose shadow falls outside that of a body's corners cannot be shaded by it, which spares most of the looking.
 */
function sunShare(bodies: readonly Body[], towards: WallPoint): (point: WallPoint) => number {
  const [right, out, up] = towards;
  const shadows = bodies.map((body) => shadowOf(body, -right / up, -out / up));
  return (point) => {
    const steps = point[2] / up;
    const atRight = point[0] - right * steps;
    const atOut = point[1] - out * steps;
    let share = 1;
    for (const { body, lowRight, highRight, lowOut, highOut } of shadows) {
      if (atRight < lowRight || atRight > highRight || atOut < lowOut || atOut > highOut) continue;
      if (meets(body, point, towards, FAR)) share *= body.transmittance;
      if (share === 0) return 0;
    }
    return share;
  };
}

/** A body with the rectangle on the ground that holds its shadow; shifts are those of a point one metre up. */
function shadowOf(body: Body, rightPerM: number, outPerM: number) {
  const [, , u0] = body.low;
  const [, , u1] = body.high;
  return {
    body,
    lowRight: body.low[0] + Math.min(u0 * rightPerM, u1 * rightPerM),
    highRight: body.high[0] + Math.max(u0 * rightPerM, u1 * rightPerM),
    lowOut: body.low[1] + Math.min(u0 * outPerM, u1 * outPerM),
    highOut: body.high[1] + Math.max(u0 * outPerM, u1 * outPerM),
  };
}
