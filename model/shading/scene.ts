/**
 * What stands around the box, asked one ray at a time: where does a straight line from this point in this direction end?
 */
import { degrees } from '../solar/angles.ts';
import { type Skyline, skylineThrough } from './horizon.ts';
import { dot, type Vector } from './vector.ts';
import { type WallFrame, wallFrame } from './wall-frame.ts';

/** An eave or soffit: a level, opaque rectangle that stands out from the wall. */
export interface EaveShape {
  readonly depthM: number;
  readonly heightAboveBoxM: number;
  readonly widthM: number;
  readonly offsetM: number;
}

/** What a scene is made of. */
export interface SceneInput {
  readonly azimuthDeg: number;
  readonly wallHeightM: number;
  /** Height of the top of the box above ground, m. */
  readonly boxTopM: number;
  readonly eave: EaveShape | null;
  /** [bearing, elevation] points, degrees. */
  readonly horizon: readonly (readonly [number, number])[];
}

/** Where a ray ends. */
export type RayEnd = 'sky' | 'ground' | 'wall' | 'obstruction';

export interface Scene {
  readonly frame: WallFrame;
  /** True when something can stand between a face and the sun besides the wall itself. */
  readonly hasObstructions: boolean;
  /** Where the ray from `point` along the unit vector `direction` ends. */
  endOfRay(point: Vector, direction: Vector): RayEnd;
  /** Whether the sun in `direction` is hidden from `point`; the building is taken as solid behind the wall. */
  hidesSun(point: Vector, direction: Vector): boolean;
  /** Whether a point of level ground lies in shadow: of the building, taken as long and as high as its wall, or of the rest. */
  shadesGround(point: Vector, direction: Vector): boolean;
}

const bearingOf = (d: Vector): number => degrees(Math.atan2(d[0], d[1]));
const elevationOf = (d: Vector): number => degrees(Math.asin(Math.max(-1, Math.min(1, d[2]))));

/** Builds the scene of a wall; everything that does not depend on the ray is worked out here, once. */
export function buildScene(input: SceneInput): Scene {
  const frame = wallFrame(input.azimuthDeg);
  const eave = input.eave !== null && input.eave.depthM > 0 ? input.eave : null;
  const eaveUpM = eave === null ? 0 : input.boxTopM + eave.heightAboveBoxM;
  const hasSkyline = input.horizon.some(([, elevation]) => elevation > 0);
  const skyline: Skyline = skylineThrough(input.horizon);

  const [outE, outN] = frame.out;
  const [rightE, rightN] = frame.right;
  const hitsEave = (point: Vector, direction: Vector): boolean => {
    if (eave === null || direction[2] <= 0) return false;
    const steps = (eaveUpM - point[2]) / direction[2];
    // A face that touches the eave from below is covered by it.
    if (steps < -1e-9) return false;
    const east = point[0] + steps * direction[0];
    const north = point[1] + steps * direction[1];
    const out = east * outE + north * outN;
    if (out < 0 || out > eave.depthM) return false;
    const right = east * rightE + north * rightN - eave.offsetM;
    return Math.abs(right) <= eave.widthM / 2;
  };
  // An elevation of 90 degrees hides the zenith too.
  const belowSkyline = (direction: Vector): boolean =>
    hasSkyline && elevationOf(direction) <= skyline(bearingOf(direction));

  return {
    frame,
    hasObstructions: eave !== null || hasSkyline,
    endOfRay(point, direction) {
      const outward = dot(direction, frame.out);
      if (outward < 0) {
        const steps = -dot(point, frame.out) / outward;
        const upM = point[2] + steps * direction[2];
        if (upM >= 0 && upM <= input.wallHeightM) return hitsEave(point, direction) ? 'obstruction' : 'wall';
      }
      if (hitsEave(point, direction)) return 'obstruction';
      if (direction[2] < 0) return 'ground';
      return belowSkyline(direction) ? 'obstruction' : 'sky';
    },
    hidesSun(point, direction) {
      if (dot(direction, frame.out) <= 0 || direction[2] <= 0) return true;
      return hitsEave(point, direction) || belowSkyline(direction);
    },
    shadesGround(point, direction) {
      if (direction[2] <= 0) return true;
      const outward = dot(direction, frame.out);
      // Towards a sun behind the wall, the line crosses the wall's plane at this height.
      const crossingUpM = (-dot(point, frame.out) * direction[2]) / outward;
      if (outward < 0 && crossingUpM < input.wallHeightM) return true;
      return hitsEave(point, direction) || belowSkyline(direction);
    },
  };
}
