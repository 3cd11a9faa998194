/** A day as the chart and the table show it: displayed units, clock time of the place. */
import { type DayResult, type Site, toDisplay, type UnitSystem, unitSymbol } from '../../model/index.ts';
import { type PlaceClock, placeClock } from './place-clock.ts';
import { LINE_NAMES } from './words.ts';

export interface DayLine {
  readonly label: string;
  readonly values: readonly number[];
  /** Its name in the style sheet. */
  readonly colour: 'warm' | 'cool' | 'third';
  /** Lengths of dash and gap; empty for a full line. */
  readonly dash: readonly number[];
}

export interface DayLimit {
  readonly value: number;
  /** "149 °F limit" */
  readonly label: string;
  /** What it limits: "for the air inside the box". */
  readonly of: string;
  readonly side: 'upper' | 'lower';
}

export interface DaySeries {
  /** Hours that have passed since the first step; a day may have 23 or 25. */
  readonly hours: readonly number[];
  readonly lines: readonly DayLine[];
  readonly limits: readonly DayLimit[];
  /** How long the day is, in hours. */
  readonly length: number;
  /** Where the clock shows a full hour divisible by three. */
  readonly ticks: readonly { readonly hour: number; readonly label: string; readonly clockHour: number }[];
  readonly symbol: string;
  /** Clock time at a step. */
  timeAt(step: number): string;
}

/** Colours that people with any colour vision tell apart, by their names in the style sheet; dashes tell them apart without colour. */
const STYLES = {
  outside: { colour: 'cool', dash: [8, 5] },
  inside: { colour: 'warm', dash: [] },
  electronics: { colour: 'third', dash: [12, 4, 2, 4] },
} as const;

export function daySeries(day: DayResult, site: Site, units: UnitSystem): DaySeries {
  const clock = placeClock(day.timeZone);
  const degrees = (values: readonly number[]) => values.map((value) => toDisplay('temperature', value, units));
  const start = day.stepsUtc[0]?.getTime() ?? 0;
  const symbol = unitSymbol('temperature', units);
  const limit = (side: DayLimit['side'], celsius: number): DayLimit => {
    const value = toDisplay('temperature', celsius, units);
    return {
      value,
      side,
      label: `${Math.round(value)} ${symbol} limit`,
      of: `for ${LINE_NAMES[site.limits.refersTo]}`,
    };
  };
  const hours = day.stepsUtc.map((step) => (step.getTime() - start) / 3_600_000);
  return {
    hours,
    // The last step ends when the day does.
    length: (hours.at(-1) ?? 0) + (hours[1] ?? 0),
    lines: [
      { label: LINE_NAMES.componentCase, values: degrees(day.electronicsC), ...STYLES.electronics },
      { label: LINE_NAMES.insideAir, values: degrees(day.insideAirC), ...STYLES.inside },
      { label: LINE_NAMES.outsideAir, values: degrees(day.outsideAirC), ...STYLES.outside },
    ],
    limits: [limit('upper', site.limits.maxC), limit('lower', site.limits.minC)],
    ticks: fullHours(day, clock)
      .filter(({ clockHour }) => clockHour % 3 === 0)
      .map(({ step, clockHour }) => ({
        hour: ((day.stepsUtc[step]?.getTime() ?? 0) - start) / 3_600_000,
        label: `${String(clockHour).padStart(2, '0')}:00`,
        clockHour,
      })),
    symbol,
    timeAt: (step) => clock.time(day.stepsUtc[step] ?? new Date(start)),
  };
}

/** The steps at which the clock of the place shows a full hour. */
export function fullHours(day: DayResult, clock: PlaceClock): { readonly step: number; readonly clockHour: number }[] {
  return day.stepsUtc.flatMap((instant, step) => {
    const minutes = clock.minutes(instant);
    return minutes % 60 === 0 ? [{ step, clockHour: minutes / 60 }] : [];
  });
}
