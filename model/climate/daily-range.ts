/**
 * Share of the daily range by which the air is below its maximum at 1 h, 2 h, ... 24 h.
 * Source: ASHRAE Handbook of Fundamentals 2021, chapter 14, table 6 (also 2009 to 2017), read in open code that cites
 * the page. The hours are taken as apparent solar time, so that east and west differ by the sun and the air alone.
 */
const FRACTION_OF_RANGE = [
  0.88, 0.92, 0.95, 0.98, 1, 0.98, 0.91, 0.74, 0.55, 0.38, 0.23, 0.13, 0.05, 0, 0, 0.06, 0.14, 0.24, 0.39, 0.5, 0.59,
  0.68, 0.75, 0.82,
];

/** Outside air temperature at an apparent solar hour of the design day, degC; straight between the hours. */
export function airTemperature(solarHour: number, maxC: number, dailyRangeK: number): number {
  const position = (((solarHour - 1) % 24) + 24) % 24;
  const index = Math.floor(position);
  const from = FRACTION_OF_RANGE[index] as number;
  const to = FRACTION_OF_RANGE[(index + 1) % 24] as number;
  return maxC - dailyRangeK * (from + (to - from) * (position - index));
}

/** What the air of an ordinary day runs between. */
export interface DailyTurns {
  /** Maximum of the day before. */
  readonly maxBeforeC: number;
  readonly minC: number;
  readonly maxC: number;
  /** Minimum of the next morning. */
  readonly minAfterC: number;
}

/** Hours of the lowest and of the last highest air in the same table. */
const LOWEST_H = 5;
const HIGHEST_H = 15;

/** The same between days that differ: each stretch from a turn to the next has the shape of the design day's. */
export function ordinaryTemperature(solarHour: number, { maxBeforeC, minC, maxC, minAfterC }: DailyTurns): number {
  if (solarHour < LOWEST_H) return airTemperature(solarHour, maxBeforeC, maxBeforeC - minC);
  return airTemperature(solarHour, maxC, maxC - (solarHour <= HIGHEST_H ? minC : minAfterC));
}
