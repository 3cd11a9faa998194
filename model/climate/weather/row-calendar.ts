/** Holds the labels of a file's rows against the calendar: every hour of one year, once, in order. */
import { MONTH_DAYS } from '../through-months.ts';
import { fileError } from './weather-file-error.ts';

/** The year that all rows are dated to: months of a typical year come from different ones. It has no 29 February. */
export const WEATHER_YEAR = 2026;

export const HOURS_OF_YEAR = 8760;

const MONTH_NAMES = 'January February March April May June July August September October November December'.split(' ');

const HOUR_MS = 3_600_000;

/** What a row calls itself; `hour` 0 to 24. */
export interface RowLabel {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
}

export interface RowCalendar {
  /** Takes the next row: its place in the year, or -1 for one of a leap day. */
  take(label: RowLabel, line: number): number;
  /** Hours taken so far. */
  readonly count: number;
  /** Rows of a leap day that were left out. */
  readonly leapRows: number;
  /** Minutes from the start of the year to the label of the first row. */
  readonly firstLabelMin: number;
  readonly years: ReadonlySet<number>;
  /** The hour that is to come next, in words. */
  expected(): string;
}

/** @throws WeatherFileError from `take`, for a row that is not the next hour */
export function rowCalendar(): RowCalendar {
  let count = 0;
  let leapRows = 0;
  let firstLabelMin = 0;
  const years = new Set<number>();
  // Hours are named by their end, 1 to 24, unless the file starts with an hour 0.
  let endNamed = true;
  let before: { month: number; day: number; start: number } | null = null;

  const expected = (): string => {
    const { month, day, start } = placeOf(count);
    return `${day} ${MONTH_NAMES[month - 1]} ${clock(endNamed ? start + 1 : start)}`;
  };

  const take = (label: RowLabel, line: number): number => {
    checkLabel(label, line);
    if (before === null) {
      endNamed = label.hour > 0;
      firstLabelMin = label.hour * 60 + label.minute;
    }
    let { month, day } = label;
    let start = endNamed ? label.hour - 1 : label.hour;
    if (start < 0 && before !== null) {
      // Midnight as 00:00: the last hour of the day of the row before, whichever of the two days names it.
      if (before.start !== 22) throw outOfPlace(label, line, expected());
      ({ month, day } = before);
      start = 23;
    } else {
      years.add(label.year);
    }
    before = { month, day, start };
    if (month === 2 && day === 29) {
      leapRows++;
      return -1;
    }
    if (count >= HOURS_OF_YEAR) {
      throw fileError(line, `a row after the last hour of the year, ${wordsOf(label)}`, { allowed: 'one year' });
    }
    const place = placeOf(count);
    const inPlace = place.month === month && place.day === day && place.start === start;
    if (!inPlace || label.minute !== firstLabelMin % 60) throw outOfPlace(label, line, expected());
    return count++;
  };

  return {
    take,
    expected,
    years,
    get count() {
      return count;
    },
    get leapRows() {
      return leapRows;
    },
    get firstLabelMin() {
      return firstLabelMin;
    },
  };
}

/** The first instant of the weather year in a zone, ms. */
export const startOfYearMs = (zoneOffsetH: number): number => Date.UTC(WEATHER_YEAR, 0, 1) - zoneOffsetH * HOUR_MS;

/** Hour of the year by count, as month, day and the hour it starts with. */
function placeOf(hourOfYear: number): { month: number; day: number; start: number } {
  const date = new Date(startOfYearMs(0) + Math.min(hourOfYear, HOURS_OF_YEAR - 1) * HOUR_MS);
  return { month: date.getUTCMonth() + 1, day: date.getUTCDate(), start: date.getUTCHours() };
}

const clock = (hour: number, minute = 0): string =>
  `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;

const wordsOf = ({ month, day, hour, minute }: RowLabel): string =>
  `${day} ${MONTH_NAMES[month - 1]} ${clock(hour, minute)}`;

function checkLabel({ month, day, hour, minute }: RowLabel, line: number): void {
  const wrongMonth = !(Number.isInteger(month) && month >= 1 && month <= 12);
  if (wrongMonth) {
    const swapped = month > 12 && month <= 31 && day <= 12 ? ': are day and month swapped?' : '';
    throw fileError(line, `month ${month}${swapped}`, { found: String(month), allowed: '1 to 12' });
  }
  const days = month === 2 ? 29 : (MONTH_DAYS[month - 1] as number);
  if (!(Number.isInteger(day) && day >= 1 && day <= days)) {
    const allowed = `1 to ${days} in ${MONTH_NAMES[month - 1]}`;
    throw fileError(line, `day ${day}`, { found: String(day), allowed });
  }
  if (!(Number.isInteger(hour) && hour >= 0 && hour <= 24)) {
    throw fileError(line, `hour ${hour}`, { found: String(hour), allowed: '0 to 24' });
  }
  if (!(Number.isInteger(minute) && minute >= 0 && minute < 60)) {
    throw fileError(line, `minute ${minute}`, { found: String(minute), allowed: '0 to 59' });
  }
}

function outOfPlace(label: RowLabel, line: number, expected: string) {
  const { month, day } = label;
  const swapped = day <= 12 && expected.startsWith(`${month} ${MONTH_NAMES[day - 1]} `);
  const guess = swapped && month !== day ? ': are day and month swapped?' : '';
  const found = wordsOf(label);
  const wrong = `${found} stands where ${expected} belongs${guess}`;
  return fileError(line, wrong, { found, allowed: 'every hour of one year in order' });
}
