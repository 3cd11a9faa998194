/** Local civil days: which instants a date covers at a place, and how instants read on its clocks. */

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

export interface CivilDay {
  /** "2026-07-05" */
  readonly date: string;
  readonly timeZone: string;
  /** First instant of the day. */
  readonly startUtc: Date;
  /** Length, hours: 24, or 23 and 25 where the clock changes (other steps exist). */
  readonly hours: number;
  /** Clock time of an instant at the place, "16:35". */
  clockTime(utc: Date): string;
}

/** Reads instants on the clocks of a zone. */
interface ZoneClock {
  /** What the clock shows, as if it were UTC, ms. */
  readingMs(utcMs: number): number;
}

function zoneClock(timeZone: string): ZoneClock {
  const format = new Intl.DateTimeFormat('en-US', {
    timeZone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });
  return {
    readingMs(utcMs) {
      const parts: Record<string, number> = {};
      for (const { type, value } of format.formatToParts(utcMs)) parts[type] = Number(value);
      const { year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0 } = parts;
      return Date.UTC(year, month - 1, day, hour, minute, second);
    },
  };
}

/**
 * The civil day of a date at a place.
 * @param date "YYYY-MM-DD"
 * @throws RangeError when the zone skipped the date altogether
 */
export function civilDay(date: string, timeZone: string): CivilDay {
  const clock = zoneClock(timeZone);
  const midnight = Date.parse(`${date}T00:00:00Z`);
  const start = firstInstant(clock, midnight);
  const next = firstInstant(clock, midnight + DAY_MS);
  if (start === null || next === null) throw new RangeError(`the date ${date} does not exist in ${timeZone}`);
  return {
    date,
    timeZone,
    startUtc: new Date(start),
    hours: (next - start) / HOUR_MS,
    clockTime: (utc) => clockText(clock, utc),
  };
}

/** First instant whose clock reads `midnight` or, where the clock jumps over midnight, the instant of the jump. */
function firstInstant(clock: ZoneClock, midnight: number): number | null {
  // The offsets in force before and after: one of them holds at midnight, or the jump lies between them.
  const offsets = [-DAY_MS, DAY_MS].map((shift) => clock.readingMs(midnight + shift) - (midnight + shift));
  const candidates = offsets.map((offset) => midnight - offset).sort((a, b) => a - b);
  const day = Math.floor(midnight / DAY_MS);
  return candidates.find((instant) => Math.floor(clock.readingMs(instant) / DAY_MS) === day) ?? null;
}

/** Clock time of an instant in a zone, "16:35". */
export function clockTime(utc: Date, timeZone: string): string {
  return clockText(zoneClock(timeZone), utc);
}

/** Reads many instants on the clock of a zone: making the reader takes longer than reading. */
export function clockReader(timeZone: string): (utc: Date) => string {
  const clock = zoneClock(timeZone);
  return (utc) => clockText(clock, utc);
}

/** What the clocks of a zone are ahead of Greenwich in a year without daylight saving, hours. */
export function standardOffsetH(timeZone: string, year: number): number {
  const clock = zoneClock(timeZone);
  const offsets = [0, 6].map((month) => clock.readingMs(Date.UTC(year, month, 1)) - Date.UTC(year, month, 1));
  return Math.min(...offsets) / HOUR_MS;
}

function clockText(clock: ZoneClock, utc: Date): string {
  return new Date(clock.readingMs(utc.getTime())).toISOString().slice(11, 16);
}
