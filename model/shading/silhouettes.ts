/**
 * What stands before the sky as one sees it from a place before a wall: for each bearing, from which elevation up to which
 * a thing hides the sky.
 */
import { cosDeg, degrees, sinDeg } from '../solar/angles.ts';
import type { Body, WallPoint } from './bodies.ts';

/** What a thing hides at one bearing, degrees of elevation above the horizontal. */
export interface HiddenBand {
  readonly bearingDeg: number;
  readonly lowDeg: number;
  readonly highDeg: number;
}

/** Bearings are looked at this far apart, degrees. */
const STEP_DEG = 1;

/** Bearings all the way round from behind the wall, ascending; the wall's own azimuth lies in the middle. */
function bearingsRound(azimuthDeg: number): number[] {
  return Array.from({ length: 360 / STEP_DEG + 1 }, (_, k) => azimuthDeg - 180 + k * STEP_DEG);
}

/** Elevations that a vertical plane through the eye meets a thing at; null for a miss. */
type Slice = (towards: { right: number; out: number }) => { low: number; high: number } | null;

/** Splits what a slice finds round the circle into runs without a gap, cut off at the horizontal. */
function runsOf(slice: Slice, azimuthDeg: number): HiddenBand[][] {
  const runs: HiddenBand[][] = [];
  let run: HiddenBand[] = [];
  for (const bearingDeg of bearingsRound(azimuthDeg)) {
    const apart = bearingDeg - azimuthDeg;
    const band = slice({ right: -sinDeg(apart), out: cosDeg(apart) });
    if (band === null || band.high <= 0) {
      if (run.length > 0) runs.push(run);
      run = [];
    } else run.push({ bearingDeg, lowDeg: Math.max(0, band.low), highDeg: band.high });
  }
  return run.length > 0 ? [...runs, run] : runs;
}

/** The silhouette of a body as seen from `eye`, in the coordinates of a wall that faces `azimuthDeg`. */
export function silhouetteOf(body: Body, eye: WallPoint, azimuthDeg: number): HiddenBand[][] {
  if (body.shape === 'crown') return runsOf((towards) => crownSlice(body, eye, towards), azimuthDeg);
  return runsOf((towards) => {
    const reach = body.shape === 'box' ? throughFloor(body, eye, towards) : toSheet(body, eye, towards);
    return reach === null ? null : upright(reach, body.low[2] - eye[2], body.high[2] - eye[2]);
  }, azimuthDeg);
}

/** The silhouette of the wall itself, from its foot to its top, between its ends. */
export function wallSilhouette(
  wall: { readonly heightM: number; readonly leftEndM: number; readonly rightEndM: number },
  eye: WallPoint,
  azimuthDeg: number,
): HiddenBand[][] {
  return runsOf(({ right, out }) => {
    if (out >= 0) return null;
    const away = -eye[1] / out;
    const at = eye[0] + away * right;
    if (at < wall.leftEndM || at > wall.rightEndM) return null;
    return upright([away, away], -eye[2], wall.heightM - eye[2]);
  }, azimuthDeg);
}

/** The silhouette of a skyline. */
export function skylineSilhouette(elevationAt: (bearingDeg: number) => number, azimuthDeg: number): HiddenBand[][] {
  return runsOf(({ right, out }) => {
    const high = elevationAt(azimuthDeg + degrees(Math.atan2(-right, out)));
    return high > 0 ? { low: 0, high } : null;
  }, azimuthDeg);
}

/** Elevations of what stands between two distances and two heights above the eye. */
function upright([near, far]: readonly [number, number], low: number, high: number) {
  const elevation = (up: number, away: number) => degrees(Math.atan2(up, away));
  return {
    low: Math.min(elevation(low, near), elevation(low, far)),
    high: Math.max(elevation(high, near), elevation(high, far)),
  };
}

type Towards = Parameters<Slice>[0];

/** Distances at which a level line enters and leaves the floor of a box. */
function throughFloor({ low, high }: Body, eye: WallPoint, towards: Towards): [number, number] | null {
  let enter = 0;
  let leave = Number.POSITIVE_INFINITY;
  for (const [axis, step] of [towards.right, towards.out].entries()) {
    const [a, b] = [(low[axis] as number) - (eye[axis] as number), (high[axis] as number) - (eye[axis] as number)];
    if (Math.abs(step) < 1e-12) {
      if (a > 0 || b < 0) return null;
      continue;
    }
    enter = Math.max(enter, Math.min(a / step, b / step));
    leave = Math.min(leave, Math.max(a / step, b / step));
  }
  return enter <= leave ? [enter, leave] : null;
}

/** Distance at which a level line meets an upright sheet. */
function toSheet({ low, high, shape }: Body, eye: WallPoint, towards: Towards): [number, number] | null {
  const right = high[0] - low[0];
  const out = shape === 'risingSheet' ? high[1] - low[1] : low[1] - high[1];
  const startOut = shape === 'risingSheet' ? low[1] : high[1];
  const across = towards.right * out - towards.out * right;
  if (Math.abs(across) < 1e-12) return null;
  const away = ((low[0] - eye[0]) * out - (startOut - eye[1]) * right) / across;
  if (away <= 0) return null;
  const atRight = eye[0] + away * towards.right - low[0];
  const atOut = eye[1] + away * towards.out - startOut;
  const along = (atRight * right + atOut * out) / (right * right + out * out);
  return along >= 0 && along <= 1 ? [away, away] : null;
}

/** Straight below the rim of a crown one tangent stands upright, and the quadratic is none. */
const LEVEL_RIM = 1e-9;

/**
 * Elevations between the tangents from the eye to a crown. With t the tangent of the elevation, a line meets the ellipsoid
 * where a quadratic in t is not negative.
 */
function crownSlice({ low, high }: Body, eye: WallPoint, towards: Towards): ReturnType<Slice> {
  const radius = (axis: number) => ((high[axis] as number) - (low[axis] as number)) / 2;
  const start = (axis: number) =>
    ((eye[axis] as number) - ((high[axis] as number) + (low[axis] as number)) / 2) / radius(axis);
  const [x, y] = [towards.right / radius(0), towards.out / radius(1)];
  const [sx, sy, sz] = [start(0), start(1), start(2)];
  const outside = sx * sx + sy * sy + sz * sz - 1;
  if (outside <= 0) return { low: -90, high: 90 };
  const level = x * x + y * y;
  const meet = sx * x + sy * y;
  const a = (sz * sz - outside) / radius(2) ** 2;
  const b = (2 * meet * sz) / radius(2);
  const c = meet * meet - level * outside;
  const root = Math.sqrt(Math.max(0, b * b - 4 * a * c));
  const elevation = (t: number) => degrees(Math.atan(t));
  if (Math.abs(a) < LEVEL_RIM) return b > 0 ? { low: elevation(-c / b), high: 90 } : null;
  if (a < 0) {
    if (b * b < 4 * a * c || meet > 0) return null;
    return { low: elevation((-b + root) / (2 * a)), high: elevation((-b - root) / (2 * a)) };
  }
  // Below the crown itself: it hides everything from the tangent up to the zenith.
  if (sz >= 0) return null;
  return { low: elevation((-b + root) / (2 * a)), high: 90 };
}
