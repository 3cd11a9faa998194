/** The days of an invented year: highest and lowest air, dew point and cloud, each with a memory of the day before. */
import { normal } from '../random.ts';
import { dailyClearSkyIndices } from './clearness.ts';
import type { MonthlyMeans } from './samples.ts';
import { DAYS_OF_YEAR, MONTH_OF_DAY, monthlyMeans, throughMonths } from './through-months.ts';

export interface DailyWeather {
  readonly maxC: Float64Array;
  readonly minC: Float64Array;
  readonly dewPointC: Float64Array;
  /** Global irradiation of a day over that of a clear one. */
  readonly clearSkyIndex: Float64Array;
}

/**
 * How the departures of maximum, minimum and sunshine from their means follow those of the day before, and what is new in
 * them. Lag-one correlations that come of it: 0.62, 0.67 and 0.25.
 * Source: Richardson 1981, Water Resources Research 17(1):182-190, and Richardson and Wright 1984, WGEN, USDA ARS-8: one set
 * for all places and seasons, found at 31 stations in the United States; figures read in open code that uses them.
 */
const FOLLOWS = [
  [0.567, 0.086, -0.002],
  [0.253, 0.504, -0.05],
  [-0.006, -0.039, 0.244],
] as const;
const IS_NEW = [
  [0.781, 0, 0],
  [0.328, 0.637, 0],
  [0.238, -0.341, 0.873],
] as const;

/** Days before the first, after which nothing remembers the start. */
const RUN_IN_DAYS = 30;

/** A day and its morning differ by so much at least, K. Common practice, no source. */
const LEAST_RANGE_K = 1;

/**
 * Makes a year of days whose monthly means are the given ones: exactly those of maxima and of cloud, those of minima and dew
 * points but for the mornings that would be warmer than their day. The dew point moves with the minimum: common practice,
 * no source. Rain is not made, so that the colder and duller wet days of the source are not told apart from dry ones.
 * @param months January to December of the place
 * @param clearClearness clearness index of a clear day in each month
 */
export function dailyWeather(
  months: readonly MonthlyMeans[],
  clearClearness: readonly number[],
  random: () => number,
): DailyWeather {
  const [warm, mild, bright] = departures(normal(random));
  const spreadK = throughMonths(months.map((month) => month.spreadK));
  const maxC = about(months, 'maxC', scaled(warm, spreadK));
  const minC = about(months, 'minC', scaled(mild, spreadK));
  const dewPointC = about(months, 'dewPointC', scaled(mild, spreadK));
  for (let day = 0; day < DAYS_OF_YEAR; day++) {
    const around = Math.min(maxC[day] as number, maxC[(day + DAYS_OF_YEAR - 1) % DAYS_OF_YEAR] as number);
    minC[day] = Math.min(minC[day] as number, around - LEAST_RANGE_K);
  }
  return { maxC, minC, dewPointC, clearSkyIndex: clouds(months, clearClearness, bright) };
}

/** Three series of mean 0 and deviation 1. */
function departures(next: () => number): [Float64Array, Float64Array, Float64Array] {
  const series = [0, 1, 2].map(() => new Float64Array(DAYS_OF_YEAR)) as [Float64Array, Float64Array, Float64Array];
  let state = [0, 0, 0];
  for (let day = -RUN_IN_DAYS; day < DAYS_OF_YEAR; day++) {
    const before = state;
    const news = [next(), next(), next()];
    state = FOLLOWS.map((row, i) =>
      row.reduce((sum, a, j) => sum + a * (before[j] as number) + (IS_NEW[i]?.[j] as number) * (news[j] as number), 0),
    );
    if (day >= 0) for (const [i, values] of series.entries()) values[day] = state[i] as number;
  }
  return series;
}

const scaled = (series: Float64Array, spreadK: Float64Array): Float64Array =>
  series.map((value, day) => value * (spreadK[day] as number));

/** Departures about a course through the months that makes up for what they leave in a month's mean. */
function about(
  months: readonly MonthlyMeans[],
  name: 'maxC' | 'minC' | 'dewPointC',
  departuresK: Float64Array,
): Float64Array {
  const left = monthlyMeans(departuresK);
  const course = throughMonths(months.map((month, k) => month[name] - (left[k] as number)));
  return course.map((value, day) => value + (departuresK[day] as number));
}

function clouds(
  months: readonly MonthlyMeans[],
  clearClearness: readonly number[],
  bright: Float64Array,
): Float64Array {
  return Float64Array.from(
    months.flatMap(({ clearSkyIndex }, month) => {
      const ranks = [...bright].filter((_, day) => MONTH_OF_DAY[day] === month);
      const means = { meanIndex: clearSkyIndex, clearClearness: clearClearness[month] as number };
      return dailyClearSkyIndices(ranks, means);
    }),
  );
}
