/** The hours of a year laid out as days of the calendar, by the fixed clock that the year is told in. */
import type { YearResult } from '../../../model/index.ts';

export interface CalendarDay {
  /** "2026-07-05"; the year means nothing. */
  readonly date: string;
  /** 1 to 12. */
  readonly month: number;
  /** What the limit refers to, a value for each hour of the day, degC. */
  readonly limitedC: readonly number[];
}

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
const HOURS_OF_YEAR = 8760;

export type HoursOfYear = Pick<YearResult, 'hourlyLimitedC' | 'firstHourUtc' | 'zoneOffsetH'>;

/**
 * A value stands in the hour that its instant, the middle of a marched hour, falls into. Rows that begin with the last
 * evening of the year before, or end with the first hours of the next, close the ring: a typical year follows itself.
 */
export function yearDays({ hourlyLimitedC, firstHourUtc, zoneOffsetH }: HoursOfYear): CalendarDay[] {
  const count = hourlyLimitedC.length;
  const firstMs = firstHourUtc.getTime() + HOUR_MS / 2 + zoneOffsetH * HOUR_MS;
  const startMs =
    count >= HOURS_OF_YEAR ? newYear(firstMs + (count / 2) * HOUR_MS) : Math.floor(firstMs / DAY_MS) * DAY_MS;
  const shift = Math.floor((firstMs - startMs) / HOUR_MS);
  const ring = Array.from({ length: count }, (_, slot) => hourlyLimitedC[(slot - shift + 2 * count) % count] as number);
  return Array.from({ length: count / 24 }, (_, day) => {
    const date = new Date(startMs + day * DAY_MS);
    return {
      date: date.toISOString().slice(0, 10),
      month: date.getUTCMonth() + 1,
      limitedC: ring.slice(day * 24, day * 24 + 24),
    };
  });
}

const newYear = (ms: number): number => Date.UTC(new Date(ms).getUTCFullYear(), 0, 1);

/** Hottest hour of a day. */
export interface DayPeak {
  readonly day: CalendarDay;
  readonly hour: number;
  readonly limitedC: number;
}

/** The hottest days, the hottest first. */
export function hottestDays(days: readonly CalendarDay[], count: number): DayPeak[] {
  return days
    .map((day) => {
      const limitedC = Math.max(...day.limitedC);
      return { day, limitedC, hour: day.limitedC.indexOf(limitedC) };
    })
    .sort((a, b) => b.limitedC - a.limitedC)
    .slice(0, count);
}

/** The hottest of each month and hour of the day, twelve rows of 24; null for a month without days. */
export function hottestByMonthAndHour(days: readonly CalendarDay[]): (number | null)[][] {
  return Array.from({ length: 12 }, (_, index) => {
    const month = days.filter((day) => day.month === index + 1);
    return Array.from({ length: 24 }, (_, hour) =>
      month.length === 0 ? null : Math.max(...month.map(({ limitedC }) => limitedC[hour] as number)),
    );
  });
}
