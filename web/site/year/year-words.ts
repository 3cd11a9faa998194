/** A year in words. */
import {
  formatQuantity,
  type Site,
  toDisplay,
  type UnitSystem,
  unitSymbol,
  type YearResult,
} from '../../../model/index.ts';
import { dayAndMonth } from '../pictures/day-and-month.ts';
import { listed } from '../pictures/things.ts';
import { placeClock } from '../place-clock.ts';
import { limitSubject } from '../words.ts';
import type { CalendarDay, DayPeak } from './year-calendar.ts';

/** "214 h"; the hours of a year need no parts, unless there is less than one. */
export function yearHours(hours: number): string {
  if (hours <= 0) return '0 h';
  return hours < 1 ? 'under 1 h' : `${Math.round(hours)} h`;
}

/** "310 K·h" */
export function degreeHours(kelvinHours: number, units: UnitSystem): string {
  const shown = toDisplay('temperatureDifference', kelvinHours, units);
  const number = shown > 0 && shown < 10 ? shown.toFixed(1) : String(Math.round(shown));
  return `${number} ${unitSymbol('temperatureDifference', units)}·h`;
}

/** "2.3 times" */
export const times = (factor: number): string => `${factor.toFixed(factor < 10 ? 2 : 0)} times`;

/** "UTC−7", "UTC+5:30" */
export function zoneName(offsetH: number): string {
  const minutes = Math.round(Math.abs(offsetH) * 60);
  const part = minutes % 60 === 0 ? '' : `:${String(minutes % 60).padStart(2, '0')}`;
  return minutes === 0 ? 'UTC' : `UTC${offsetH < 0 ? '−' : '+'}${Math.floor(minutes / 60)}${part}`;
}

/** Day and time of an instant by the fixed clock of a year: "5 July, 16:15". */
export function dayAndTime(instant: Date, zoneOffsetH: number, units: UnitSystem): string {
  const local = new Date(instant.getTime() + zoneOffsetH * 3_600_000).toISOString();
  return `${dayAndMonth(local.slice(0, 10), units)}, ${local.slice(11, 16)}`;
}

/** Which clock the hours are of, and how the clocks of the place stand to it. */
export function clockWords(zoneOffsetH: number, timeZone: string): string {
  const [winter, summer] = [1, 7].map((month) =>
    clockAhead(new Date(Date.UTC(2026, month - 1, 15)), zoneOffsetH, timeZone),
  );
  const fixed = `Hours are those of a clock that stays at ${zoneName(zoneOffsetH)} all year, so that every day has 24 of them.`;
  if (winter === summer) {
    return winter === 0
      ? `${fixed} So do the clocks of the place.`
      : `${fixed} Clocks of the place show ${shift(winter)}.`;
  }
  return `${fixed} Clocks of the place show ${shift(winter)} in January and ${shift(summer)} in July.`;
}

function shift(minutes = 0): string {
  if (minutes === 0) return 'the same';
  const hours = `${Number((Math.abs(minutes) / 60).toFixed(2))} h`;
  return `${hours} ${minutes > 0 ? 'more' : 'less'}`;
}

/** Minutes that the clocks of a place are ahead of a fixed one. */
function clockAhead(instant: Date, zoneOffsetH: number, timeZone: string): number {
  const fixed = instant.getUTCHours() * 60 + instant.getUTCMinutes() + Math.round(zoneOffsetH * 60);
  return ((((placeClock(timeZone).minutes(instant) - fixed + 720) % 1440) + 1440) % 1440) - 720;
}

/** How long, how far and when a year lies over the limit. */
export function overWords(year: YearResult, { limits }: Site, units: UnitSystem): string {
  const limit = formatQuantity('temperature', limits.maxC, units);
  const subject = limitSubject(limits.refersTo);
  if (year.hoursOverLimit <= 0) return `The ${subject} never passes the limit of ${limit}.`;
  const hours = `${yearHours(year.hoursOverLimit)}, ${degreeHours(year.degreeHoursOverLimit, units)} in all`;
  const byHour = Array.from({ length: 24 }, (_, hour) => year.hoursOverByHour.some((month) => (month[hour] ?? 0) > 0));
  const byMonth = year.hoursOverByHour.map((month) => month.some((over) => over > 0));
  return `The ${subject} is over the limit of ${limit} for ${hours}: ${monthSpans(byMonth)}, ${hourSpans(byHour)}.`;
}

function monthSpans(flags: readonly boolean[]): string {
  const spans = spansOf(flags);
  if (spans === 'all') return 'in every month';
  return listed(
    spans.map(([from, to]) => (from === to ? `in ${monthName(from)}` : `from ${monthName(from)} to ${monthName(to)}`)),
  );
}

function hourSpans(flags: readonly boolean[]): string {
  const spans = spansOf(flags);
  if (spans === 'all') return 'at every hour';
  return `between ${listed(spans.map(([from, to]) => `${hourName(from)} and ${hourName((to + 1) % 24)}`))}`;
}

/** Stretches of what holds round a ring, first and last index; "all" where it holds everywhere. */
export function spansOf(flags: readonly boolean[]): [number, number][] | 'all' {
  if (flags.every(Boolean)) return 'all';
  const count = flags.length;
  return flags.flatMap((holds, from): [number, number][] => {
    if (!holds || flags[(from + count - 1) % count]) return [];
    let to = from;
    while (flags[(to + 1) % count]) to = (to + 1) % count;
    return [[from, to]];
  });
}

/** "5 July at 16:00: 72.1 °C, 7.1 K over the limit" */
export function dayPeakWords({ day, hour, limitedC }: DayPeak, { limits }: Site, units: UnitSystem): string {
  return `${dayAndMonth(day.date, units)} at ${hourName(hour)}: ${stateWords(limitedC, limits, units)}`;
}

/** What one cell of the map says. */
export function cellWords(cell: { day: CalendarDay; hour: number }, { limits }: Site, units: UnitSystem): string {
  const span = `${hourName(cell.hour)} to ${hourName((cell.hour + 1) % 24)}`;
  return `${dayAndMonth(cell.day.date, units)}, ${span}: ${stateWords(cell.day.limitedC[cell.hour] as number, limits, units)}`;
}

function stateWords(celsius: number, limits: { minC: number; maxC: number }, units: UnitSystem): string {
  const margin = limits.maxC - celsius;
  const size = formatQuantity('temperatureDifference', Math.abs(margin), units);
  return `${formatQuantity('temperature', celsius, units)}, ${size} ${margin < 0 ? 'over' : 'below'} the limit`;
}

/** "09:00" */
export const hourName = (hour: number): string => `${String(hour).padStart(2, '0')}:00`;

/** `month` from 0. */
export function monthName(month: number, length: 'short' | 'long' = 'long'): string {
  return new Intl.DateTimeFormat('en', { month: length, timeZone: 'UTC' }).format(new Date(Date.UTC(2026, month, 15)));
}
