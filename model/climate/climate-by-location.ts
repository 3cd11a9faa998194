/**
 * A design day for a place of which no record is at hand.
 *
 * The samples are invented and stand at no station; all they state is the latitudes that they are meant for and an altitude.
 * What is made of them here is an assumption, good for a first screening at most, and says so.
 */
import { FIELDS } from '../fields.ts';
import { cosDeg, sinDeg } from '../solar/angles.ts';
import { hottestMonth, monthOfSample, sampleDate } from './design-climate.ts';
import { CLIMATE_SAMPLES, type ClimateSample, type MonthlyDesign } from './samples.ts';

/** What moves with altitude, and what a site file asks for besides. */
export interface LocatedDay {
  readonly date: string;
  readonly maxC: number;
  readonly dailyRangeK: number;
  readonly dewPointC: number;
}

/** A design day blended from the samples. */
export interface AssumedClimate {
  readonly day: LocatedDay & MonthlyDesign;
  /** The samples with their shares, the greatest first. */
  readonly shares: readonly { readonly name: string; readonly share: number }[];
  /** Degrees of latitude between the place and the nearest band that a sample is meant for; 0 inside one. */
  readonly outsideDeg: number;
}

/** Fall of the air temperature with altitude, K/m: the standard atmosphere's (ISO 2533). */
export const LAPSE_K_PER_M = 0.0065;

/** Half of the weight is gone at this distance from the middle of a sample's band, degrees. No source: it smooths the joints. */
const FADE_DEG = 2;

/** A sample of less weight than this share of the greatest is left out. */
const LEAST_SHARE = 0.02;

/**
 * Blends the samples by how far the place lies from the middle of the latitudes that each is meant for, brings them to its altitude
 * and takes the hottest month.
 * @param place latitude in degrees, altitude in m
 */
export function assumedClimate({ latitudeDeg, altitudeM }: { latitudeDeg: number; altitudeM: number }): AssumedClimate {
  const fromEquator = Math.abs(latitudeDeg);
  const weighed = CLIMATE_SAMPLES.map((sample) => ({ sample, weight: weightAt(sample, fromEquator) }));
  const greatest = Math.max(...weighed.map(({ weight }) => weight));
  const near = weighed.filter(({ weight }) => weight >= greatest * LEAST_SHARE).sort((a, b) => b.weight - a.weight);
  const sum = near.reduce((total, { weight }) => total + weight, 0);
  const months = Array.from({ length: 12 }, (_, index): MonthlyDesign => {
    const blend = (value: (month: MonthlyDesign, sample: ClimateSample) => number): number =>
      near.reduce((total, { sample, weight }) => {
        return total + (weight / sum) * value(monthOfSample(sample, index + 1, latitudeDeg), sample);
      }, 0);
    return {
      maxC: blend(({ maxC }, sample) => maxC - LAPSE_K_PER_M * (altitudeM - sample.altitudeM)),
      dailyRangeK: blend(({ dailyRangeK }) => dailyRangeK),
      dewPointC: blend(({ dewPointC }, sample) => dewPointC - LAPSE_K_PER_M * (altitudeM - sample.altitudeM)),
      windMs: blend(({ windMs }) => windMs),
      linkeTurbidity: blend(({ linkeTurbidity }) => linkeTurbidity),
    };
  });
  // The blend is of calendar months of the place already.
  const month = hottestMonth(months, 0);
  const day = { ...(months[month - 1] as MonthlyDesign), date: sampleDate(month) };
  return {
    day: withinRanges(day),
    shares: near.map(({ sample, weight }) => ({ name: sample.name, share: weight / sum })),
    outsideDeg: Math.min(...CLIMATE_SAMPLES.map((sample) => outsideBand(sample, fromEquator))),
  };
}

/** The same day at another altitude: the air changes by the lapse, its dew point with it (common practice, no source: relative humidity stays much the same). */
export function lapsed<Day extends LocatedDay>(day: Day, fromM: number, toM: number): Day {
  const shift = -LAPSE_K_PER_M * (toM - fromM);
  return withinRanges({ ...day, maxC: day.maxC + shift, dewPointC: day.dewPointC + shift });
}

/** What a site file accepts; air is never moister than saturated at the day's highest temperature. */
function withinRanges<Day extends LocatedDay>(day: Day): Day {
  const held = (path: 'maxC' | 'dailyRangeK' | 'dewPointC', value: number): number => {
    const { min, max } = FIELDS[`climate.designDay.${path}`];
    return Math.min(max, Math.max(min, value));
  };
  const maxC = held('maxC', day.maxC);
  const dewPointC = Math.min(maxC, held('dewPointC', day.dewPointC));
  return { ...day, maxC, dewPointC, dailyRangeK: held('dailyRangeK', day.dailyRangeK) };
}

function outsideBand({ latitudeBandDeg: [low = 0, high = 90] }: ClimateSample, fromEquator: number): number {
  return Math.max(0, low - fromEquator, fromEquator - high);
}

/** Falls with the distance from the middle of the band, so that bands that overlap pass into each other. */
function weightAt({ latitudeBandDeg: [low = 0, high = 90] }: ClimateSample, fromEquator: number): number {
  const away = Math.abs(fromEquator - (low + high) / 2) / FADE_DEG;
  return 1 / (1 + away ** 4);
}

/** Mean radius of the earth, km (IUGG). */
const EARTH_KM = 6371;

/** Great-circle distance between two places, km (haversine). */
export function distanceKm(
  a: { latitudeDeg: number; longitudeDeg: number },
  b: { latitudeDeg: number; longitudeDeg: number },
): number {
  const hav = (deg: number) => sinDeg(deg / 2) ** 2;
  const h =
    hav(b.latitudeDeg - a.latitudeDeg) +
    cosDeg(a.latitudeDeg) * cosDeg(b.latitudeDeg) * hav(b.longitudeDeg - a.longitudeDeg);
  return 2 * EARTH_KM * Math.asin(Math.min(1, Math.sqrt(h)));
}
