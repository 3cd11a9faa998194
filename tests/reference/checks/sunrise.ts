/** Sunrise and sunset by the almanac, and the length of a day. */
import { sunPosition } from '../../../model/index.ts';
import { equationOfTimeMin } from '../../../model/solar/extraterrestrial.ts';
import type { Check, ValueCheck } from '../check.ts';
import { crossingUtc, SUNRISE_APPARENT_DEG, ZERO_TRUE_DEG } from '../sunrise.ts';

const MINUTE_MS = 60_000;

/** Minutes after midnight, at a fixed offset from UTC, at which the sun crosses its rising or setting height. */
function crossing(date: string, at: readonly [number, number], offsetH: number, rising: boolean): number {
  const noon = Date.parse(`${date}T12:00:00Z`) - (at[1] / 15) * 60 * MINUTE_MS;
  const utc = crossingUtc({ noonMs: noon, latitudeDeg: at[0], longitudeDeg: at[1] }, rising, SUNRISE_APPARENT_DEG);
  return (utc - (Date.parse(`${date}T00:00:00Z`) - offsetH * 60 * MINUTE_MS)) / MINUTE_MS;
}

const minutes = (clock: string): number => {
  const [h = 0, m = 0, s = 0] = clock.split(':').map(Number);
  return 60 * h + m + s / 60;
};

type Almanac = readonly [date: string, rise: string, set: string];

const denver: readonly Almanac[] = [
  ['2015-01-02', '07:19', '16:49'],
  ['2015-04-02', '05:43', '18:24'],
  ['2015-08-02', '05:01', '19:10'],
  ['2015-12-02', '07:01', '16:38'],
];
const beijing: readonly Almanac[] = [
  ['2015-01-02', '07:36', '17:00'],
  ['2015-04-02', '05:58', '18:39'],
  ['2015-08-02', '05:13', '19:28'],
  ['2015-12-02', '07:17', '16:50'],
];

function almanac(id: string, place: readonly [number, number], offsetH: number, rows: readonly Almanac[]): Check[] {
  return rows.flatMap(([date, rise, set]) =>
    ([true, false] as const).map((rising) => ({
      id: `${id} ${date.slice(5)} ${rising ? 'rise' : 'set'}`,
      what: `${rising ? 'sunrise' : 'sunset'} ${rising ? rise : set} on ${date} at ${place[0]} N ${Math.abs(place[1])} ${place[1] < 0 ? 'W' : 'E'}, minutes after midnight`,
      source: 'US Naval Observatory (via tests of pvlib)',
      status: 'verified' as const,
      unit: 'min',
      value: minutes(rising ? rise : set),
      ours: () => crossing(date, place, offsetH, rising),
      allowed: 1,
      reason: 'printed to the minute; refraction at the horizon is a convention',
    })),
  );
}

function spaCrossing(date: string, rising: boolean, clock: string): ValueCheck {
  return {
    id: `3.2 ${rising ? 'rise' : 'set'}`,
    what: `${rising ? 'sunrise' : 'sunset'} ${clock} local there on ${date}, minutes after midnight${rising ? '' : '; the report works by the day of UT, in which the set of 16 October local falls on the 17th'}`,
    source: 'Reda and Andreas, NREL/TP-560-34302',
    status: 'from memory',
    unit: 'min',
    value: minutes(clock),
    ours: () => crossing(date, [39.742476, -105.1786], -7, rising),
    allowed: 0.5,
    reason: 'half a minute of the clock; 0.1 degrees of the sun',
  };
}

/** 15 June, 40 N: a textbook's sun, from the day's declination alone. */
const june = { noonMs: Date.parse('2026-06-15T12:00:00Z'), latitudeDeg: 40, longitudeDeg: 0 };
const juneTransitMs = june.noonMs - equationOfTimeMin(new Date(june.noonMs)) * MINUTE_MS;
const textbook = { source: 'solar-energy text, open web copy (book not named)', status: 'verified' } as const;
const dailyDeclination = 'the book has one declination a day from a sine of the date';

export const SUNRISE_CHECKS: readonly Check[] = [
  spaCrossing('2003-10-17', true, '06:12:43'),
  spaCrossing('2003-10-16', false, '17:20:19'),
  ...almanac('3.3', [39, -105], -7, denver),
  ...almanac('3.4', [39.917, 116.383], 8, beijing),
  {
    id: '3.5 noon',
    what: '40 N, 15 June: elevation at noon, from a declination of 23.35 degrees',
    ...textbook,
    unit: 'deg',
    value: 90 - 40 + 23.35,
    ours: () => sunPosition(new Date(juneTransitMs), 40, 0).elevationDeg,
    allowed: 0.1,
    reason: dailyDeclination,
  },
  {
    id: '3.5 two hours later',
    what: 'the same, 2 h after noon',
    ...textbook,
    unit: 'deg',
    value: 59.75,
    ours: () => sunPosition(new Date(juneTransitMs + 120 * MINUTE_MS), 40, 0).elevationDeg,
    allowed: 0.1,
    reason: dailyDeclination,
  },
  {
    id: '3.5 day length',
    what: 'the same: length of the day between true elevations of zero',
    ...textbook,
    unit: 'h',
    value: 14.83,
    ours: () => (crossingUtc(june, false, ZERO_TRUE_DEG) - crossingUtc(june, true, ZERO_TRUE_DEG)) / MINUTE_MS / 60,
    allowed: 0.02,
    reason: dailyDeclination,
  },
];
