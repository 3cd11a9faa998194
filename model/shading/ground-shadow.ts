import { cosDeg, sinDeg } from '../solar/angles.ts';
import type { SunPosition } from '../solar/sun-position.ts';

/**
 * How far the shadow of a long wall reaches over level ground before it, m: 0 while the sun is before the wall.
 * Geometry: height times the cotangent of the sun's profile angle.
 */
export function wallShadowM(sun: SunPosition, wallAzimuthDeg: number, wallHeightM: number): number {
  if (sun.elevationDeg <= 0) return 0;
  const behind = -cosDeg(sun.azimuthDeg - wallAzimuthDeg) * cosDeg(sun.elevationDeg);
  return behind <= 0 ? 0 : (wallHeightM * behind) / sinDeg(sun.elevationDeg);
}

/** Share of a view of the ground that lies within `shadowM` of the wall; `groundOutM` ascending. */
export function shadedShare(groundOutM: Float64Array, shadowM: number): number {
  if (groundOutM.length === 0 || shadowM <= 0) return 0;
  let low = 0;
  let high = groundOutM.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((groundOutM[middle] ?? 0) < shadowM) low = middle + 1;
    else high = middle;
  }
  return low / groundOutM.length;
}
