/** The weather of one design day, as a function of the instant: an invented sample's, an entered one, or a standard's cycle. */
import { FIELDS } from '../fields.ts';
import type { Site } from '../site.ts';
import { sinDeg } from '../solar/angles.ts';
import { pressureAtAltitude } from '../solar/atmosphere.ts';
import { clearSkyThrough, type Irradiance } from '../solar/clear-sky.ts';
import { erbsSplit } from '../solar/decomposition.ts';
import type { SunPosition } from '../solar/sun-position.ts';
import { airTemperature } from './daily-range.ts';
import { dewPoint } from './humidity.ts';
import {
  CLIMATE_SAMPLES,
  type ClimateSample,
  type MonthlyDesign,
  type MonthlyMeans,
  STANDARD_CYCLES,
  type StandardCycle,
} from './samples.ts';
import { skyLongwave } from './sky-temperature.ts';

/** Weather at an instant. */
export interface Weather extends Irradiance {
  readonly airC: number;
  readonly windMs: number;
  readonly dewPointC: number;
  /** From the whole sky on a horizontal plane, W/m2. */
  readonly skyLongwaveWm2: number;
}

export interface DesignClimate {
  /** Local civil date of the day. */
  readonly date: string;
  /** What the day is, in a sentence, and where it comes from. */
  readonly text: string;
  readonly origin: string;
  /** The coldest hour of the day. */
  readonly lowest: { readonly airC: number; readonly dewPointC: number; readonly windMs: number };
  at(now: SunNow): Weather;
}

/** The sun at an instant, with what several parts of the sky need of it. */
export interface SunNow {
  readonly sun: SunPosition;
  /** Apparent solar time, hours. */
  readonly solarHour: number;
  readonly relativeAirMass: number;
  /** Normal to the sun, outside the atmosphere. */
  readonly extraterrestrialWm2: number;
}

/** The year of design days that name none; a date is needed for the sun, and years differ by less than its width. */
const DESIGN_YEAR = 2026;

/** The clear design day of a site, entered or its sample's; null for a standard's cycle. */
export function resolvedClearDay({ climate, place }: Site): (MonthlyDesign & { readonly date: string }) | null {
  if (climate.designDay !== undefined) return climate.designDay;
  const sample = CLIMATE_SAMPLES.find(({ name }) => name === climate.sample);
  if (sample === undefined) return null;
  const month = climate.month ?? hottestMonth(sample.months, place.latitudeDeg);
  return { ...monthOfSample(sample, month, place.latitudeDeg), date: sampleDate(month) };
}

/** Calendar month, 1 to 12, of a design day that a sample gives; null where none gives it. */
export function designMonth({ climate, place }: Site): number | null {
  if (climate.designDay !== undefined) return null;
  const sample = CLIMATE_SAMPLES.find(({ name }) => name === climate.sample);
  return sample === undefined ? null : (climate.month ?? hottestMonth(sample.months, place.latitudeDeg));
}

/** The design day of a calendar month, 1 to 12. */
export const sampleDate = (month: number): string => `${DESIGN_YEAR}-${String(month).padStart(2, '0')}-21`;

/** The design climate of a site. */
export function designClimate(site: Site): DesignClimate {
  const { climate, place } = site;
  const day = resolvedClearDay(site);
  if (day !== null && climate.designDay !== undefined) {
    return clearDay(day.date, day, site, `Clear design day of ${day.date}`, 'entered');
  }
  const cycle = STANDARD_CYCLES.find(({ name }) => name === climate.cycle);
  if (cycle !== undefined) return standardDay(cycle, site);
  const sample = CLIMATE_SAMPLES.find(({ name }) => name === climate.sample);
  if (sample === undefined || day === null) throw new RangeError('the site names no climate');
  const which = climate.month === undefined ? 'hottest month' : 'chosen month';
  const text = `${sample.title}: clear design day of its ${which}${farFromHome(sample, place.latitudeDeg)}`;
  return clearDay(day.date, day, site, text, sample.origin);
}

/** A sample's sun is that of the place: said where the place lies outside the latitudes that the sample is meant for. */
function farFromHome({ latitudeBandDeg: [low = 0, high = 90] }: ClimateSample, latitudeDeg: number): string {
  const fromEquator = Math.abs(latitudeDeg);
  if (fromEquator >= low && fromEquator <= high) return '';
  return `; it is meant for ${low} to ${high} degrees from the equator, the place lies at ${Math.round(fromEquator)}`;
}

/** Row of a sample for a calendar month; south of the equator the year is shifted by half. */
function sampleRow(month: number, latitudeDeg: number): number {
  return (month - 1 + (latitudeDeg < 0 ? 6 : 0)) % 12;
}

/** The design day of a sample for a calendar month, 1 to 12, at a latitude. */
export function monthOfSample(sample: ClimateSample, month: number, latitudeDeg: number): MonthlyDesign {
  return sample.months[sampleRow(month, latitudeDeg)] as MonthlyDesign;
}

/** The means of a sample for a calendar month, 1 to 12, at a latitude. */
export function meansOfSample(sample: ClimateSample, month: number, latitudeDeg: number): MonthlyMeans {
  return sample.monthlyMeans[sampleRow(month, latitudeDeg)] as MonthlyMeans;
}

/** The calendar month, 1 to 12, with the highest temperature at a latitude; the later one of equals. */
export function hottestMonth(months: readonly MonthlyDesign[], latitudeDeg: number): number {
  let hottest = 1;
  const maxC = (month: number) => months[sampleRow(month, latitudeDeg)]?.maxC ?? Number.NEGATIVE_INFINITY;
  for (let month = 2; month <= 12; month++) if (maxC(month) >= maxC(hottest)) hottest = month;
  return hottest;
}

function clearDay(date: string, day: MonthlyDesign, site: Site, text: string, origin: string): DesignClimate {
  const { altitudeM } = site.place;
  const { linkeTurbidity, dewPointC, windMs } = day;
  const pressurePa = pressureAtAltitude(altitudeM);
  return {
    date,
    text,
    origin,
    lowest: { airC: day.maxC - day.dailyRangeK, dewPointC, windMs },
    at({ sun, solarHour, relativeAirMass, extraterrestrialWm2 }) {
      const airC = airTemperature(solarHour, day.maxC, day.dailyRangeK);
      const { elevationDeg } = sun;
      const { ghi, dni, dhi } = clearSkyThrough({
        elevationDeg,
        extraterrestrialWm2,
        relativeAirMass,
        pressurePa,
        altitudeM,
        linkeTurbidity,
      });
      // Air is never moister than saturated: what is entered holds for the warm hours.
      const dew = Math.min(dewPointC, airC);
      const skyLongwaveWm2 = skyLongwave({ airC, dewPointC: dew, pressurePa });
      return { ghi, dni, dhi, airC, windMs, dewPointC: dew, skyLongwaveWm2 };
    },
  };
}

/** Hour of the tabulated day at which its sun stands highest: the columns mirror about half past twelve. */
const CYCLE_NOON_H = 12.5;

function standardDay(cycle: StandardCycle, site: Site): DesignClimate {
  const { latitudeDeg, altitudeM } = site.place;
  const pressurePa = pressureAtAltitude(altitudeM);
  const windMs = site.climate.windMs ?? FIELDS['climate.windMs'].default.value;
  return {
    date: site.climate.date ?? `${DESIGN_YEAR}-${latitudeDeg < 0 ? '12' : '06'}-21`,
    text: `${cycle.title}: tabulated hours, their noon laid on the sun's, wind ${windMs} m/s`,
    origin: cycle.origin,
    lowest: { ...coldestHour(cycle), windMs },
    at({ sun, solarHour, extraterrestrialWm2 }) {
      const hour = solarHour - 12 + CYCLE_NOON_H;
      const { airC, ghiWm2, relativeHumidityPercent } = cycleAt(cycle, hour);
      const dewPointC = dewPoint(airC, relativeHumidityPercent);
      const skyLongwaveWm2 = skyLongwave({ airC, dewPointC, pressurePa });
      return { ...sunOfCycle(sun, ghiWm2, extraterrestrialWm2), airC, windMs, dewPointC, skyLongwaveWm2 };
    },
  };
}

function coldestHour({ hours }: StandardCycle) {
  const { airC, relativeHumidityPercent } = hours.reduce((best, hour) => (hour.airC < best.airC ? hour : best));
  return { airC, dewPointC: dewPoint(airC, relativeHumidityPercent) };
}

function cycleAt(cycle: StandardCycle, hour: number) {
  const count = cycle.hours.length;
  const position = (((hour - 1) % count) + count) % count;
  const index = Math.floor(position);
  const share = position - index;
  const a = cycle.hours[index];
  const b = cycle.hours[(index + 1) % count];
  if (a === undefined || b === undefined) throw new RangeError(`the cycle ${cycle.name} has no hour ${hour}`);
  const between = (from: number, to: number) => from + (to - from) * share;
  return {
    airC: between(a.airC, b.airC),
    ghiWm2: between(a.ghiWm2, b.ghiWm2),
    relativeHumidityPercent: between(a.relativeHumidityPercent, b.relativeHumidityPercent),
  };
}

/** Share of the extraterrestrial irradiance that reaches level ground under the brightest sky taken for possible. */
const BRIGHTEST_SKY = 0.9;

/**
 * The tabulated global irradiance at the sun's true height. A standard's column is not bound to a latitude: where the sun
 * stands too low for it, it is held to what the brightest sky could send, and is nothing while the sun is down.
 */
function sunOfCycle({ elevationDeg }: SunPosition, tabulated: number, extraterrestrialWm2: number): Irradiance {
  const ghi = Math.min(tabulated, BRIGHTEST_SKY * extraterrestrialWm2 * Math.max(0, sinDeg(elevationDeg)));
  return { ghi, ...erbsSplit({ elevationDeg, ghi, extraterrestrialWm2 }) };
}
