/** Suns, paths and silhouettes made up for the tests of the pictures. */
import { FACES, type PerFace, type Silhouette, type SunOnBox, type SunPath } from '../../../model/index.ts';

export interface MadeSun {
  readonly minute: number;
  readonly azimuthDeg: number;
  readonly elevationDeg?: number;
  readonly lit?: number;
}

export function sunAt({ minute, azimuthDeg, elevationDeg = 30, lit = 0 }: MadeSun): SunOnBox {
  const reaches = Object.fromEntries(FACES.map((face) => [face, face === 'front' ? lit : 0])) as PerFace<number>;
  return { utc: new Date(minute * 60_000), azimuthDeg, elevationDeg, lit, reaches };
}

export function pathOf(suns: readonly MadeSun[]): SunPath {
  const points = suns.map(sunAt);
  const litHours = points.filter(({ lit }) => lit > 0).length / 6;
  return { date: '2026-07-21', isDesignDay: true, points, end: null, litHours };
}

/** Hides everything from the horizon to `highDeg` between two bearings. */
export function silhouetteBetween(
  fromDeg: number,
  toDeg: number,
  highDeg: number,
  kind: Silhouette['kind'],
): Silhouette {
  const run = Array.from({ length: toDeg - fromDeg + 1 }, (_, k) => ({ bearingDeg: fromDeg + k, lowDeg: 0, highDeg }));
  return { kind, index: null, transmittance: 0, runs: [run] };
}
