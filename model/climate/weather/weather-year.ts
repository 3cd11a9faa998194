/** A year of weather as the model takes it, whatever file it came from. */
import { sunPosition } from '../../solar/sun-position.ts';
import { dropNegativeIrradiance, fillAir, fillIrradiance, openEmptyColumns, type RowSuns } from './missing-values.ts';
import { HOURS_OF_YEAR } from './row-calendar.ts';
import { type CheckedTime, checkTime, labelMs, type TimeBase } from './time-base.ts';
import type { WeatherOrigin, WeatherPlace, WeatherTable } from './weather-table.ts';

/** One hour of a weather year. */
export interface WeatherHour {
  /** The instant that the sun of the row stands for. */
  readonly sunUtc: Date;
  readonly airC: number;
  readonly dewPointC: number;
  readonly ghi: number;
  readonly dni: number;
  readonly dhi: number;
  /** At `windHeightM`. */
  readonly windMs: number;
  readonly pressurePa: number;
  /** Left out where the file has none. */
  readonly horizontalInfraredWm2?: number;
}

export interface WeatherYear extends WeatherPlace {
  readonly format: WeatherOrigin;
  /** Name of the place, as far as the file has one. */
  readonly title: string;
  readonly source: string;
  /** Fixed zone in which hours of the day are told, hours east of Greenwich. */
  readonly zoneOffsetH: number;
  readonly windHeightM: number;
  readonly timeBase: TimeBase;
  /** What was filled in, left out or made of something else. */
  readonly notes: readonly string[];
  /** Hours: 8760. */
  readonly length: number;
  at(row: number): WeatherHour;
}

/** @throws WeatherFileError where values are missing for too long, and where the sun fits the rows at no time */
export function weatherYearOf(table: WeatherTable): WeatherYear {
  openEmptyColumns(table);
  dropNegativeIrradiance(table);
  fillAir(table);
  const time = checkTime(table);
  const { sunMs, suns } = rowSuns(table, time);
  fillIrradiance(table, suns);
  const { latitudeDeg, longitudeDeg, altitudeM, format, title, source, windHeightM, notes, columns } = table;
  const { airC, dewPointC, ghi, dni, dhi, windMs, pressurePa, horizontalInfraredWm2: infrared } = columns;
  const hasInfrared = !infrared.some(Number.isNaN);
  if (!hasInfrared && !infrared.every(Number.isNaN)) {
    notes.push('Infrared from the sky is missing for too many hours and not used.');
  }
  const zoneOffsetH = table.shownZoneH + time.labelZoneH - table.labelZoneH;
  return {
    ...{ latitudeDeg, longitudeDeg, altitudeM, format, title, source, zoneOffsetH, windHeightM, notes },
    timeBase: time.timeBase,
    length: HOURS_OF_YEAR,
    at(row) {
      if (!(Number.isInteger(row) && row >= 0 && row < HOURS_OF_YEAR)) {
        throw new RangeError(`weather year: there is no hour ${row}; it has 0 to ${HOURS_OF_YEAR - 1}`);
      }
      const hour = {
        sunUtc: new Date(sunMs[row] as number),
        airC: airC[row] as number,
        dewPointC: dewPointC[row] as number,
        ghi: ghi[row] as number,
        dni: dni[row] as number,
        dhi: dhi[row] as number,
        windMs: windMs[row] as number,
        pressurePa: pressurePa[row] as number,
      };
      return hasInfrared ? { ...hour, horizontalInfraredWm2: infrared[row] as number } : hour;
    },
  };
}

const HALF_HOUR_MS = 1_800_000;

/**
 * The instant of each row's sun. A sum over the hour in which the sun rises or sets belongs to the middle of the part that
 * the sun is up; the edge is found on a straight line between the ends of the hour.
 */
function rowSuns(table: WeatherTable, time: CheckedTime): { sunMs: Float64Array; suns: RowSuns } {
  const { latitudeDeg, longitudeDeg } = table;
  const elevationAt = (ms: number) => sunPosition(new Date(ms), latitudeDeg, longitudeDeg).elevationDeg;
  const shiftMs = time.timeBase.usedShiftMin * 60_000;
  const sunMs = Float64Array.from({ length: HOURS_OF_YEAR }, (_, row) =>
    Math.round(labelMs(table, time.labelZoneH, row) + shiftMs),
  );
  if (time.sums) {
    let starts = elevationAt((sunMs[0] as number) - HALF_HOUR_MS);
    for (let row = 0; row < HOURS_OF_YEAR; row++) {
      const middle = sunMs[row] as number;
      const ends = elevationAt(middle + HALF_HOUR_MS);
      if (starts > 0 !== ends > 0) {
        const up = Math.max(starts, ends) / Math.abs(ends - starts);
        const toEdge = HALF_HOUR_MS * (1 - up);
        sunMs[row] = Math.round(ends > 0 ? middle + toEdge : middle - toEdge);
      }
      starts = ends;
    }
  }
  const suns = {
    elevationDeg: (row: number) => elevationAt(sunMs[row] as number),
    utc: (row: number) => new Date(sunMs[row] as number),
  };
  return { sunMs, suns };
}
