/** When the sun crosses a height, from the product's sun position alone. */
import { sunPosition } from '../../model/index.ts';

/** What suncalc adds to a sun below the horizon, degrees. */
const CONSTANT_REFRACTION_DEG = 0.48;

/** True elevation of the sun's centre at sunrise by the almanac's convention, -50 minutes of arc, as our apparent one. */
export const SUNRISE_APPARENT_DEG = -0.353;

/** Our apparent elevation where the true one is zero. */
export const ZERO_TRUE_DEG = CONSTANT_REFRACTION_DEG;

interface DayAt {
  /** Some time about local noon, ms. */
  readonly noonMs: number;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

/** Instant of the rise or the set through an apparent elevation, ms; for places where there is one. */
export function crossingUtc(
  { noonMs, latitudeDeg, longitudeDeg }: DayAt,
  rising: boolean,
  elevationDeg: number,
): number {
  let up = noonMs;
  let down = noonMs + (rising ? -1 : 1) * 11.5 * 3_600_000;
  while (Math.abs(up - down) > 500) {
    const middle = (up + down) / 2;
    const above = sunPosition(new Date(middle), latitudeDeg, longitudeDeg).elevationDeg > elevationDeg;
    if (above) up = middle;
    else down = middle;
  }
  return (up + down) / 2;
}
