import { capital, clockTime, type DayResult, FACES } from '../../model/index.ts';

interface CsvColumn {
  readonly name: string;
  readonly text: (step: number) => string;
}

/**
 * The day as CSV, one line a step, units in the names. Only numbers and instants stand in it, so that no cell can be
 * taken for a formula.
 */
export function dayCsv(day: DayResult): string {
  const columns: CsvColumn[] = [
    { name: 'timeUtc', text: (step) => instant(day, step).toISOString().replace('.000Z', 'Z') },
    // In the form that spreadsheets take for a date; where the clock is set back, the column before it tells which hour.
    { name: 'timeLocal', text: (step) => `${day.date} ${clockTime(instant(day, step), day.timeZone)}` },
    ...series('outsideAirC', day.outsideAirC),
    ...series('insideAirC', day.insideAirC),
    ...series('electronicsC', day.electronicsC),
    ...series('batteryC', day.batteryC),
    ...series('lowerAirC', day.lowerAirC),
    ...FACES.map((face) => ({
      name: `skin${capital(face)}C`,
      text: (step: number) => plain(day.skinC[face][step], 3),
    })),
    ...FACES.map((face) => ({
      name: `irradiance${capital(face)}Wm2`,
      text: (step: number) => plain(day.faceIrradianceWm2[face][step], 1),
    })),
  ];
  const lines = day.stepsUtc.map((_, step) => columns.map(({ text }) => text(step)).join(','));
  return `${[columns.map(({ name }) => name).join(','), ...lines].join('\n')}\n`;
}

/** A column of temperatures; none where the box has no such part. */
function series(name: string, valuesC: readonly number[] | null): CsvColumn[] {
  return valuesC === null ? [] : [{ name, text: (step) => plain(valuesC[step], 3) }];
}

function instant(day: DayResult, step: number): Date {
  return day.stepsUtc[step] ?? new Date(Number.NaN);
}

/** A decimal number without exponent or "-0". */
function plain(value: number | undefined, digits: number): string {
  const text = (value ?? Number.NaN).toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text;
}
