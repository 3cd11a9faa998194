/** The years of several walls beside each other, row by row. */
import {
  FACES,
  type Face,
  formatQuantity,
  type Site,
  type UnitSystem,
  versusBest,
  type YearResult,
} from '../../../model/index.ts';
import { dayAndTime, degreeHours, times, yearHours } from './year-words.ts';

export interface ComparisonRow {
  readonly name: string;
  /** A text for each wall. */
  readonly cells: readonly string[];
}

/** The wall on which the electronics age the slowest. */
export function slowestAgeing(years: readonly YearResult[]): YearResult | undefined {
  if (years.length === 0) return undefined;
  const { bestWall } = versusBest(years);
  return years.find(({ wall }) => wall === bestWall);
}

export function comparisonRows(years: readonly YearResult[], { box }: Site, units: UnitSystem): ComparisonRow[] {
  const temperature = (celsius: number) => formatQuantity('temperature', celsius, units);
  const best = slowestAgeing(years)?.ageingAgainst40C ?? Number.NaN;
  const row = (name: string, cell: (year: YearResult) => string): ComparisonRow => ({ name, cells: years.map(cell) });
  const faces = FACES.filter((face) => face !== 'back' || box.mount === 'post');
  const hooded = (face: Face) => box.hood?.faces.some((covered) => covered === face) ?? false;
  return [
    row('Over the limit', ({ hoursOverLimit }) => yearHours(hoursOverLimit)),
    row('Degree-hours over it', ({ degreeHoursOverLimit }) => degreeHours(degreeHoursOverLimit, units)),
    row('Peak of the air inside', ({ peakInsideAirC }) => temperature(peakInsideAirC)),
    row('When', ({ peakAtUtc, zoneOffsetH }) => dayAndTime(peakAtUtc, zoneOffsetH, units)),
    row('Lowest', ({ lowestInsideAirC }) => temperature(lowestInsideAirC)),
    row('Below the lower limit', ({ coldHours }) => yearHours(coldHours)),
    row('Ageing against the wall where it is slowest', ({ ageingAgainst40C }) => times(ageingAgainst40C / best)),
    row('Ageing against full shade', ({ ageingFactor }) => (ageingFactor === null ? '–' : times(ageingFactor))),
    row(`Battery life against ${formatQuantity('temperature', 25, units, 0)}`, ({ batteryLifeFactor }) =>
      times(batteryLifeFactor),
    ),
    ...faces.map((face) =>
      row(`Sun on the ${face}`, ({ faceInsolationKwhM2 }) =>
        hooded(face) ? 'under the hood' : `${Math.round(faceInsolationKwhM2[face])} kWh/m²`,
      ),
    ),
  ];
}

/** Where the electronics age the slowest, and how much faster on the worst wall. */
export function comparisonWords(years: readonly YearResult[]): string {
  const best = slowestAgeing(years);
  if (best === undefined) return '';
  const worst = years.reduce((a, b) => (b.ageingAgainst40C > a.ageingAgainst40C ? b : a));
  if (worst === best) return '';
  const factor = times(worst.ageingAgainst40C / best.ageingAgainst40C);
  return `The electronics age the slowest on “${best.wall}”, and ${factor} as fast on “${worst.wall}”.`;
}
