/**
 * The climates that come with the program, one file each in climate-samples/. A new file is added here and in the
 * table of climate-samples/README.md.
 */
import continental from '../../climate-samples/continental.json';
import dryBasin from '../../climate-samples/dry-basin.json';
import highPlateau from '../../climate-samples/high-plateau.json';
import humidCoast from '../../climate-samples/humid-coast.json';
import mediterranean from '../../climate-samples/mediterranean.json';
import hotDryA1 from '../../climate-samples/mil-std-810h-a1.json';
import basicHotA2 from '../../climate-samples/mil-std-810h-a2.json';
import temperateMaritime from '../../climate-samples/temperate-maritime.json';

/** Design conditions of one month: its hottest day under a clear sky. */
export interface MonthlyDesign {
  readonly maxC: number;
  readonly dailyRangeK: number;
  readonly dewPointC: number;
  /** Free wind at the height of the box, m/s. */
  readonly windMs: number;
  readonly linkeTurbidity: number;
}

/** Means of one month's ordinary days, of which a year is made. */
export interface MonthlyMeans {
  /** Of the daily maxima and minima. */
  readonly maxC: number;
  readonly minC: number;
  /** Standard deviation of both from day to day. */
  readonly spreadK: number;
  readonly dewPointC: number;
  /** Free wind at the height of the box, m/s. */
  readonly windMs: number;
  /** Global irradiation of a day over that of a clear one. */
  readonly clearSkyIndex: number;
}

export interface ClimateSample {
  readonly name: string;
  readonly title: string;
  readonly origin: string;
  readonly note: string;
  /** Latitudes the climate is meant for, degrees from the equator, either hemisphere. */
  readonly latitudeBandDeg: readonly number[];
  readonly altitudeM: number;
  /** January to December at a northern place; half a year is added south of the equator. */
  readonly months: readonly MonthlyDesign[];
  /** The same months. */
  readonly monthlyMeans: readonly MonthlyMeans[];
}

export interface CycleHour {
  /** Hour of the standard's day, 1 to 24. */
  readonly hour: number;
  readonly airC: number;
  readonly ghiWm2: number;
  readonly relativeHumidityPercent: number;
}

export interface StandardCycle {
  readonly name: string;
  readonly title: string;
  readonly origin: string;
  readonly status: string;
  readonly note: string;
  readonly hours: readonly CycleHour[];
}

/** Invented climates, by name. */
export const CLIMATE_SAMPLES: readonly ClimateSample[] = [
  dryBasin,
  humidCoast,
  highPlateau,
  temperateMaritime,
  continental,
  mediterranean,
];

/** Tabulated cycles of a standard, by name. */
export const STANDARD_CYCLES: readonly StandardCycle[] = [hotDryA1, basicHotA2];
