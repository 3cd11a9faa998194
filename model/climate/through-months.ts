/** Days of each month of the year that weather is made for, which has no 29 February. */
export const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

export const DAYS_OF_YEAR = 365;

/** Month, 0 to 11, of each day of the year. */
export const MONTH_OF_DAY: readonly number[] = MONTH_DAYS.flatMap((days, month) => new Array<number>(days).fill(month));

const FIRST_DAYS = MONTH_DAYS.map((_, month) => MONTH_OF_DAY.indexOf(month));

/** Rounds after which the means hold to a millionth; each at least halves what is left. */
const ROUNDS = 40;

/** Means over the months of what is given day by day. */
export function monthlyMeans(daily: ArrayLike<number>): number[] {
  const sums = new Array<number>(12).fill(0);
  for (let day = 0; day < DAYS_OF_YEAR; day++) {
    const month = MONTH_OF_DAY[day] as number;
    sums[month] = (sums[month] as number) + (daily[day] as number);
  }
  return sums.map((sum, month) => sum / (MONTH_DAYS[month] as number));
}

/**
 * A value for each day that runs straight from the middle of a month to the middle of the next, round the year, and whose
 * monthly means are those that are asked for: the values in the middles are moved until they are.
 */
export function throughMonths(means: readonly number[]): Float64Array {
  const middles = [...means];
  let daily = straight(middles);
  for (let round = 0; round < ROUNDS; round++) {
    const found = monthlyMeans(daily);
    for (let month = 0; month < 12; month++) {
      middles[month] = (middles[month] as number) + (means[month] as number) - (found[month] as number);
    }
    daily = straight(middles);
  }
  return daily;
}

function straight(middles: readonly number[]): Float64Array {
  const middleDay = (month: number): number => {
    const turn = Math.floor(month / 12);
    const within = month - 12 * turn;
    return (FIRST_DAYS[within] as number) + ((MONTH_DAYS[within] as number) - 1) / 2 + turn * DAYS_OF_YEAR;
  };
  return Float64Array.from({ length: DAYS_OF_YEAR }, (_, day) => {
    const month = MONTH_OF_DAY[day] as number;
    const from = day < middleDay(month) ? month - 1 : month;
    const share = (day - middleDay(from)) / (middleDay(from + 1) - middleDay(from));
    const [a, b] = [middles[(from + 12) % 12] as number, middles[(from + 1) % 12] as number];
    return a + (b - a) * share;
  });
}
