import { wrapDegrees } from '../compass.ts';

/** Elevation of the skyline at a bearing, degrees. */
export type Skyline = (bearingDeg: number) => number;

/**
 * The skyline through points that someone took with a compass and an inclinometer: straight between neighbours, all the
 * way round; one point stands for the whole circle, none for a level horizon.
 * @param points [bearing, elevation] in degrees, in any order
 */
export function skylineThrough(points: readonly (readonly [number, number])[]): Skyline {
  const sorted = points
    .map(([bearing, elevation]) => [wrapDegrees(bearing), elevation] as const)
    .sort((a, b) => a[0] - b[0]);
  const first = sorted[0];
  const last = sorted[sorted.length - 1];
  if (first === undefined || last === undefined) return () => 0;
  const closed = [[last[0] - 360, last[1]] as const, ...sorted, [first[0] + 360, first[1]] as const];

  return (bearingDeg) => {
    const bearing = wrapDegrees(bearingDeg);
    const next = firstBeyond(closed, bearing);
    const from = closed[next - 1] ?? first;
    const to = closed[next] ?? first;
    const span = to[0] - from[0];
    return span <= 0 ? to[1] : from[1] + ((to[1] - from[1]) * (bearing - from[0])) / span;
  };
}

/** Index of the first point whose bearing lies beyond; a skyline is asked for many thousand rays. */
function firstBeyond(points: readonly (readonly [number, number])[], bearing: number): number {
  let low = 0;
  let high = points.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((points[middle]?.[0] ?? 0) > bearing) high = middle;
    else low = middle + 1;
  }
  return low;
}
