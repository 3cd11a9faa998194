/** The design day that a year of weather stands for. */
import type { LocatedDay } from '../climate-by-location.ts';
import { sampleDate } from '../design-climate.ts';
import type { WeatherYear } from './weather-year.ts';

/** Share of the hours of a year that are hotter than its design temperature: the strictest of the usual annual percentiles (ASHRAE). */
const HOTTER_SHARE = 0.004;

const DAY_MS = 86_400_000;

interface Hour {
  readonly day: number;
  readonly month: number;
  readonly airC: number;
  readonly dewPointC: number;
}

/**
 * Highest air temperature: what 0.4 % of the hours exceed; daily range: the mean one of the month that holds most of those hours;
 * dew point: the mean one of those hours. A typical year is made of ordinary months, so that heat waves are mostly missing.
 * Wind and turbidity stay what a site file assumes: what a station measures at 10 m says little about a wall.
 */
export function designDayOfYear(weather: Pick<WeatherYear, 'length' | 'at' | 'zoneOffsetH'>): LocatedDay {
  const hours = Array.from({ length: weather.length }, (_, row): Hour => {
    const { sunUtc, airC, dewPointC } = weather.at(row);
    const localMs = sunUtc.getTime() + weather.zoneOffsetH * 3_600_000;
    return { day: Math.floor(localMs / DAY_MS), month: new Date(localMs).getUTCMonth() + 1, airC, dewPointC };
  });
  const sorted = [...hours].sort((a, b) => b.airC - a.airC);
  const count = Math.max(1, Math.round(hours.length * HOTTER_SHARE));
  const hot = sorted.slice(0, count);
  const maxC = (sorted[count] ?? sorted[0])?.airC ?? 0;
  const inMonth = (month: number) => hot.filter((hour) => hour.month === month).length;
  const month = Array.from({ length: 12 }, (_, k) => k + 1).reduce((best, one) =>
    inMonth(one) > inMonth(best) ? one : best,
  );
  return {
    date: sampleDate(month),
    maxC,
    dailyRangeK: meanRange(hours.filter((hour) => hour.month === month)),
    dewPointC: Math.min(maxC, mean(hot.map(({ dewPointC }) => dewPointC))),
  };
}

function meanRange(hours: readonly Hour[]): number {
  const days = new Map<number, { low: number; high: number }>();
  for (const { day, airC } of hours) {
    const { low, high } = days.get(day) ?? { low: airC, high: airC };
    days.set(day, { low: Math.min(low, airC), high: Math.max(high, airC) });
  }
  return mean([...days.values()].map(({ low, high }) => high - low));
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
