/** Where temperatures lie in the rose: bearings as on a compass, warmer farther out. */
import type { RosePoint } from '../../../model/index.ts';
import { onCircle, type Point } from './plane.ts';

export interface RoseChart {
  readonly middle: Point;
  /** Temperatures of the rings as displayed, coolest first, evenly spaced. */
  readonly rings: readonly number[];
  radiusPx(shown: number): number;
  at(bearingDeg: number, shown: number): Point;
}

const STEPS = [0.5, 1, 2, 5, 10, 20, 50, 100];
const MOST_RINGS = 5;

/** The coolest ring keeps this share of the radius, or directions near it could not be told apart. */
const INNER_SHARE = 0.3;

/** A chart that holds all of the shown values; `outerPx` is the radius of the warmest ring. */
export function roseChart(middle: Point, outerPx: number, values: readonly number[]): RoseChart {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const fit = (step: number) => ({ step, from: Math.floor(low / step) * step, to: Math.ceil(high / step) * step });
  const fits = STEPS.map(fit);
  const { step, from, to } =
    fits.find((one) => (one.to - one.from) / one.step < MOST_RINGS) ?? (fits.at(-1) as ReturnType<typeof fit>);
  const top = to > from ? to : from + step;
  const rings = Array.from({ length: Math.round((top - from) / step) + 1 }, (_, k) => from + k * step);
  const innerPx = outerPx * INNER_SHARE;
  const radiusPx = (shown: number) => innerPx + ((shown - from) / (top - from)) * (outerPx - innerPx);
  return { middle, rings, radiusPx, at: (bearingDeg, shown) => onCircle(middle, radiusPx(shown), bearingDeg) };
}

/** Farther from the other values than this share of their span, a limit would flatten the curve. */
const LIMIT_REACH = 0.6;

/** Whether a limit lies in the range of the values or so near to it that it can be drawn with them. */
export function limitInReach(limit: number, values: readonly number[]): boolean {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const reach = (high - low) * LIMIT_REACH;
  return limit >= low - reach && limit <= high + reach;
}

/** What the curve shows at a bearing, on the straight line between its neighbours. */
export function onCurveC(points: readonly RosePoint[], bearingDeg: number): number {
  const stepDeg = 360 / points.length;
  const place = (((bearingDeg % 360) + 360) % 360) / stepDeg;
  const peak = (k: number) => (points[k % points.length] as RosePoint).peakInsideAirC;
  const share = place - Math.floor(place);
  return peak(Math.floor(place)) * (1 - share) + peak(Math.floor(place) + 1) * share;
}

/** The bearings with the lowest and the highest peak. */
export function extremes(points: readonly RosePoint[]): { readonly coolest: RosePoint; readonly hottest: RosePoint } {
  const [first] = points as [RosePoint];
  return {
    coolest: points.reduce((best, point) => (point.peakInsideAirC < best.peakInsideAirC ? point : best), first),
    hottest: points.reduce((best, point) => (point.peakInsideAirC > best.peakInsideAirC ? point : best), first),
  };
}
