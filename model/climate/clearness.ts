/** How cloudy the days of a month are, given how cloudy the month is. */

/** The dullest days have a clearness index of this, same source as below. */
const LEAST_CLEARNESS = 0.05;

/** Bounds and rounds of the search for the shape: exp(-400) to exp(400) covers every mean that an index can have. */
const STEEPEST = 400;
const ROUNDS = 80;

/**
 * The clear-sky indices of a month's days: daily global irradiation over that of a clear day. They are spread as daily
 * clearness indices are, exponentially between the dullest day and the clear one, with the slope that gives the month its
 * mean, and stand in the order of `ranks`.
 *
 * Source: Bendt, Collares-Pereira and Rabl 1981, Solar Energy 27(1):1-5 (the density and the lower bound; the upper one is
 * the clear day here). That a month's days take the even quantiles of the distribution in a random order follows
 * Knight, Klein and Duffie 1991, Solar Energy 46(2):109-120. Both values from memory.
 * @param ranks one number a day; a brighter day has a higher one
 * @param meanIndex of the month, 0 to 1
 * @param clearClearness clearness index of the month's clear day
 */
export function dailyClearSkyIndices(
  ranks: readonly number[],
  { meanIndex, clearClearness }: { meanIndex: number; clearClearness: number },
): number[] {
  const count = ranks.length;
  const least = Math.min(LEAST_CLEARNESS / Math.max(clearClearness, LEAST_CLEARNESS), meanIndex);
  const quantiles = (slope: number) =>
    Array.from({ length: count }, (_, k) => least + (1 - least) * exponentialQuantile((k + 0.5) / count, slope));
  let [low, high] = [-STEEPEST, STEEPEST];
  for (let round = 0; round < ROUNDS; round++) {
    const slope = (low + high) / 2;
    const mean = quantiles(slope).reduce((sum, index) => sum + index, 0) / count;
    if (mean < meanIndex) low = slope;
    else high = slope;
  }
  const sorted = quantiles((low + high) / 2);
  const order = ranks.map((rank, day) => ({ rank, day })).sort((a, b) => a.rank - b.rank);
  const indices = new Array<number>(count);
  for (const [place, { day }] of order.entries()) indices[day] = sorted[place] as number;
  return indices;
}

/** The value below which a share lies, of the density that grows as exp(slope x) over 0 to 1. */
function exponentialQuantile(share: number, slope: number): number {
  if (Math.abs(slope) < 1e-6) return share;
  // From the steep end, so that no power overflows.
  if (slope > 0) return 1 + Math.log(share + (1 - share) * Math.exp(-slope)) / slope;
  return 1 - exponentialQuantile(1 - share, -slope);
}
