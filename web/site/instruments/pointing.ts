/** Where a hand-held device points, from what its browser tells of its orientation. */
import { wrapDegrees } from '../../../model/index.ts';

/** What the events of the browsers hold that is of use here; `webkitCompassHeading` is WebKit's own. */
export interface OrientationReading {
  readonly alpha: number | null;
  readonly beta: number | null;
  readonly gamma: number | null;
  /** Whether alpha counts from north; else from wherever the device lay at first. */
  readonly absolute: boolean;
  readonly webkitCompassHeading?: number | null;
}

/** Of the upper edge of the screen as it is read: along it one sights. */
export interface Pointing {
  /** Degrees clockwise from the device's north, 0 to 360; null where the device knows no north. */
  readonly headingDeg: number | null;
  /** Degrees above the horizontal; null where the device does not tell. */
  readonly elevationDeg: number | null;
}

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const deg = (radians: number): number => (radians * 180) / Math.PI;

/** Closer than this to the zenith an edge points nowhere in particular: cosine of 85 degrees. */
const LEAST_LEVEL = 0.087;

/**
 * @param screenAngleDeg by how much the screen is turned from the natural way up (`screen.orientation.angle`)
 */
export function pointingOf(reading: OrientationReading, screenAngleDeg: number): Pointing {
  const { alpha, beta, gamma, absolute, webkitCompassHeading } = reading;
  const upwards =
    isNumber(beta) && isNumber(gamma) ? edgeInEarth({ alpha: alpha ?? 0, beta, gamma }, screenAngleDeg) : null;
  const elevationDeg = upwards === null ? null : deg(Math.asin(Math.max(-1, Math.min(1, upwards.up))));
  // WebKit gives a negative number for a heading that it does not know; zero is north.
  if (isNumber(webkitCompassHeading) && webkitCompassHeading >= 0) {
    return { headingDeg: wrapDegrees(webkitCompassHeading + screenAngleDeg), elevationDeg };
  }
  if (!absolute || !isNumber(alpha)) return { headingDeg: null, elevationDeg };
  if (upwards === null) return { headingDeg: wrapDegrees(screenAngleDeg - alpha), elevationDeg };
  const { east, north } = upwards;
  const level = Math.hypot(east, north);
  return { headingDeg: level < LEAST_LEVEL ? null : wrapDegrees(deg(Math.atan2(east, north))), elevationDeg };
}

/**
 * The direction of the screen's upper edge, east-north-up: the second column of Rz(alpha) Rx(beta) Ry(gamma), the rotation
 * of the W3C's Device Orientation specification, or a mix with its first column where the screen is turned.
 */
function edgeInEarth({ alpha, beta, gamma }: { alpha: number; beta: number; gamma: number }, screenAngleDeg: number) {
  const [a, b, g, s] = [alpha, beta, gamma, screenAngleDeg].map(rad) as [number, number, number, number];
  const right = {
    east: Math.cos(a) * Math.cos(g) - Math.sin(a) * Math.sin(b) * Math.sin(g),
    north: Math.cos(g) * Math.sin(a) + Math.cos(a) * Math.sin(b) * Math.sin(g),
    up: -Math.cos(b) * Math.sin(g),
  };
  const top = { east: -Math.cos(b) * Math.sin(a), north: Math.cos(a) * Math.cos(b), up: Math.sin(b) };
  const mix = (axis: 'east' | 'north' | 'up') => right[axis] * Math.sin(s) + top[axis] * Math.cos(s);
  return { east: mix('east'), north: mix('north'), up: mix('up') };
}

/** The mean of headings, round the north point; newer ones count more. Null for none. */
export function steadyHeading(headings: readonly number[]): number | null {
  if (headings.length === 0) return null;
  let [east, north] = [0, 0];
  headings.forEach((heading, k) => {
    east += (k + 1) * Math.sin(rad(heading));
    north += (k + 1) * Math.cos(rad(heading));
  });
  return wrapDegrees(deg(Math.atan2(east, north)));
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}
