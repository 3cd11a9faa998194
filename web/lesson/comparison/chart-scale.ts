/** Where hours and temperatures lie in a chart of a day, and what stands at its axes. */
import { type DayResult, type Site, toDisplay, type UnitSystem, unitSymbol } from '../../../model/index.ts';
import { fullHours } from '../../site/day-series.ts';
import { linePath, type Point } from '../../site/pictures/plane.ts';
import { placeClock } from '../../site/place-clock.ts';

export interface DayChart {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly symbol: string;
  readonly xTicks: readonly { readonly x: number; readonly label: string }[];
  readonly yTicks: readonly { readonly y: number; readonly label: string }[];
  /** Height of the upper limit; null where it lies too far above the day. */
  readonly limitY: number | null;
  readonly limitText: string;
  x(step: number): number;
  y(celsius: number): number;
  path(celsius: readonly number[]): string;
}

/** A limit farther above the day than this share of its span would flatten the curves. */
const LIMIT_REACH = 0.9;

/** Spaces between lines of the grid, in shown degrees. */
const SPACES = [2, 5, 10, 20, 50];

interface ChartInput {
  readonly day: DayResult;
  readonly site: Site;
  /** All that is drawn, degC. */
  readonly curves: readonly (readonly number[])[];
  readonly units: UnitSystem;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly fontPx: number;
}

export function dayChart({ day, site, curves, units, widthPx, heightPx, fontPx }: ChartInput): DayChart {
  const shown = (celsius: number) => toDisplay('temperature', celsius, units);
  const symbol = unitSymbol('temperature', units);
  const left = fontPx * 2.6;
  const right = widthPx - fontPx * 1.2;
  const top = fontPx * 1.8;
  const bottom = heightPx - fontPx * 1.9;
  const range = shownRange(curves.flat().map(shown), shown(site.limits.maxC));
  const steps = day.stepsUtc.length;
  const x = (step: number) => left + (step / steps) * (right - left);
  const ofShown = (value: number) => bottom - ((value - range.min) / (range.max - range.min)) * (bottom - top);
  const y = (celsius: number) => ofShown(shown(celsius));
  const limit = shown(site.limits.maxC);
  const room = (right - left) / (fontPx * 3.4);
  const every = [3, 6, 12].find((hours) => 24 / hours <= room) ?? 12;
  return {
    widthPx,
    heightPx,
    left,
    right,
    top,
    bottom,
    symbol,
    x,
    y,
    xTicks: fullHours(day, placeClock(day.timeZone))
      .filter(({ clockHour }) => clockHour % every === 0)
      .map(({ step, clockHour }) => ({ x: x(step), label: `${String(clockHour).padStart(2, '0')}:00` })),
    yTicks: gridOf(range, (bottom - top) / (fontPx * 2)).map((value) => ({ y: ofShown(value), label: String(value) })),
    limitY: limit <= range.max ? ofShown(limit) : null,
    limitText: `limit ${Math.round(limit)} ${symbol}`,
    path: (celsius) => linePath(celsius.map((value, step): Point => [x(step), y(value)])),
  };
}

function shownRange(values: readonly number[], limit: number): { min: number; max: number } {
  const low = values.reduce((least, value) => Math.min(least, value), Number.POSITIVE_INFINITY);
  const high = values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
  const near = limit < high + (high - low) * LIMIT_REACH ? limit : high;
  return { min: Math.floor((low - 1) / 5) * 5, max: Math.ceil((Math.max(high, near) + 2) / 5) * 5 };
}

function gridOf({ min, max }: { min: number; max: number }, most: number): number[] {
  const space = SPACES.find((step) => (max - min) / step <= most) ?? 50;
  const first = Math.ceil(min / space) * space;
  return Array.from({ length: Math.floor((max - first) / space) + 1 }, (_, k) => first + k * space);
}

export interface NamedPoint {
  readonly letter: string;
  readonly at: Point;
}

/** Where a letter may stand beside its point, in letters: above, or to the sides where another stands there already. */
const BESIDE: readonly Point[] = [
  [0, -0.5],
  [0.9, -0.4],
  [-0.9, -0.4],
  [0, 1.3],
  [1.5, 0.4],
  [-1.5, 0.4],
];

/** Letters beside their points, none on another. */
export function placeLetters(named: readonly NamedPoint[], fontPx: number): NamedPoint[] {
  const placed: NamedPoint[] = [];
  for (const { letter, at } of named) {
    const places = BESIDE.map(([dx, dy]): Point => [at[0] + dx * fontPx, at[1] + dy * fontPx]);
    const free = places.find(([x, y]) =>
      placed.every((other) => Math.abs(other.at[0] - x) > fontPx || Math.abs(other.at[1] - y) > fontPx),
    );
    placed.push({ letter, at: free ?? (places[0] as Point) });
  }
  return placed;
}

/** Share of what is drawn that stays free beyond a marked level, for its words. */
const LEVEL_ROOM = 0.2;

/** Temperatures that a chart has to reach so that the words beside its levels lie within, degC. */
export function roomForLevels(levels: readonly number[], drawn: readonly number[]): number[] {
  const all = [...drawn, ...levels];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const room = LEVEL_ROOM * (high - low);
  return levels.flatMap((celsius) => [celsius - room, celsius + room]);
}

/**
 * Baselines of the words beside some levels, two at most: above the upper line and below the lower one, so that none stands
 * at the line of the other however near they lie.
 * @param ys heights of the lines; of equals the first counts as the upper one
 */
export function besideLevels(ys: readonly number[], fontPx: number): number[] {
  const upper = ys.indexOf(Math.min(...ys));
  return ys.map((y, k) => (k === upper ? y - 0.35 * fontPx : y + fontPx));
}
