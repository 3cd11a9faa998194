/** A year of weather, day by day, as the steps that a box is marched through. */

import { bearingsApartDeg } from '../building-outline.ts';
import { skyLongwave } from '../climate/sky-temperature.ts';
import { windProfile } from '../climate/wind-profile.ts';
import type { Site } from '../site.ts';
import { problem, SiteError } from '../site-error.ts';
import { pressureAtAltitude, relativeAirMass } from '../solar/atmosphere.ts';
import { clearSky } from '../solar/clear-sky.ts';
import { apparentSolarHour, equationOfTimeMin, extraterrestrialNormal } from '../solar/extraterrestrial.ts';
import { sunPosition } from '../solar/sun-position.ts';
import { perezSky } from '../solar/transposition.ts';
import type { ForcedDay } from './day-forcing.ts';
import type { DayStep } from './design-day.ts';

/** One row of a weather year. */
export interface WeatherRow {
  /** The instant that the row's sun stands for. */
  readonly sunUtc: Date;
  readonly airC: number;
  readonly dewPointC: number;
  readonly ghi: number;
  readonly dni: number;
  readonly dhi: number;
  readonly windMs: number;
  readonly horizontalInfraredWm2?: number;
}

/** What a march through a year asks of its weather. */
export interface YearWeather {
  /** Where the weather was measured; not looked at where left out. */
  readonly latitudeDeg?: number;
  readonly longitudeDeg?: number;
  readonly length: number;
  at(row: number): WeatherRow;
  /** The fixed zone of the file, hours east of Greenwich; that of the longitude where left out. */
  readonly zoneOffsetH?: number;
  /** Height at which the wind was measured, m; that of the box where left out. */
  readonly windHeightM?: number;
  readonly timeBase?: { readonly usedShiftMin: number };
}

/** A day of the year. */
export interface YearDay extends ForcedDay {
  /** Local month, 1 to 12. */
  readonly month: number;
  readonly firstHour: number;
}

/** Longest step through a year, s. */
const LONGEST_STEP_S = 900;

const DAY_S = 86_400;

/** How a year is cut into days and steps. */
export interface YearCalendar {
  readonly days: number;
  readonly stepS: number;
  /** Steps of a day. */
  readonly steps: number;
  /** The instant of the first step, ms. */
  readonly startMs: number;
  /** The fixed zone in which months and hours are told, hours east of Greenwich. */
  readonly zoneOffsetH: number;
  dayAt(day: number): YearDay;
}

/**
 * Lays the rows of a weather year out as days. Between rows weather runs straight, the beam and the diffuse light from the
 * instants of the rows' suns, the air from those of its labels; the sun stands where it stands at each step.
 * @throws SiteError for weather of another part of the world; RangeError for rows that do not fill days, divide hours or follow each other
 */
export function yearCalendar(site: Site, weather: YearWeather): YearCalendar {
  const { latitudeDeg, longitudeDeg, altitudeM } = site.place;
  nearby(site, weather);
  const rowS = rowIntervalS(weather);
  const rowsPerDay = DAY_S / rowS;
  const days = weather.length / rowsPerDay;
  if (days < 1 || !Number.isInteger(days) || !Number.isInteger(rowsPerDay)) {
    throw new RangeError('weather: its rows do not fill days');
  }
  const perRow = Math.ceil(rowS / LONGEST_STEP_S);
  const stepS = rowS / perRow;
  const steps = rowsPerDay * perRow;
  if (steps % 24 !== 0) throw new RangeError('weather: its rows do not divide hours');
  const zoneOffsetH = weather.zoneOffsetH ?? Math.round(longitudeDeg / 15);
  const rows = columnsOf(weather);
  const shiftMs = (weather.timeBase?.usedShiftMin ?? 0) * 60_000;
  // Rows near sunrise and sunset may stand for instants of their own; the grid is that of most.
  const startMs = medianOf(rows.sunMs.map((ms, i) => ms - i * rowS * 1000));
  const gridMs = rows.sunMs.map((_, i) => startMs + i * rowS * 1000);
  for (let i = 0; i < weather.length; i++) {
    if (Math.abs((rows.sunMs[i] as number) - (gridMs[i] as number)) <= rowS * 500) continue;
    throw new RangeError(`weather: row ${i} does not follow the one before after ${rowS} s`);
  }
  const sitePressurePa = pressureAtAltitude(altitudeM);
  const windFactor = weather.windHeightM === undefined ? 1 : windProfile(weather.windHeightM, site.box.mountHeightM);

  const dayAt = (day: number): YearDay => {
    const firstMs = startMs + day * DAY_S * 1000;
    const noon = new Date(firstMs + DAY_S * 500);
    const extraterrestrialWm2 = extraterrestrialNormal(noon);
    const equationMin = equationOfTimeMin(noon);
    const cloudFraction = rows.infrared === null ? cloudsOfDay(site, rows, day * rowsPerDay, rowsPerDay) : 0;
    const list = Array.from({ length: steps }, (_, k): DayStep => {
      const ms = firstMs + k * stepS * 1000;
      const utc = new Date(ms);
      const sun = sunPosition(utc, latitudeDeg, longitudeDeg);
      const airMass = relativeAirMass(sun.elevationDeg);
      const light = placeAt(rows.sunMs, ms, day * rowsPerDay);
      // The air's own instant is the label of its row, near sunrise as at noon.
      const air = placeAt(gridMs, ms + shiftMs, day * rowsPerDay);
      const up = sun.elevationDeg > 0;
      const dni = up ? valueAt(rows.dni, light) : 0;
      const dhi = up ? valueAt(rows.dhi, light) : 0;
      const airC = valueAt(rows.airC, air);
      const dewPointC = valueAt(rows.dewPointC, air);
      const skyLongwaveWm2 =
        rows.infrared === null
          ? skyLongwave({ airC, dewPointC, cloudFraction, pressurePa: sitePressurePa })
          : valueAt(rows.infrared, air);
      const windMs = windFactor * valueAt(rows.windMs, air);
      const { elevationDeg } = sun;
      return {
        utc,
        sun,
        relativeAirMass: airMass,
        solarHour: apparentSolarHour(utc, longitudeDeg, equationMin),
        weather: { ghi: valueAt(rows.ghi, light), dni, dhi, airC, dewPointC, windMs, skyLongwaveWm2 },
        sky: perezSky({ elevationDeg, dni, dhi, extraterrestrialWm2, relativeAirMass: airMass }),
      };
    });
    const localNoon = new Date(noon.getTime() + zoneOffsetH * 3_600_000);
    const firstHour = (((firstMs / 3_600_000 + zoneOffsetH) % 24) + 24) % 24;
    return { steps: list, stepS, month: localNoon.getUTCMonth() + 1, firstHour };
  };
  return { days, stepS, steps, startMs, zoneOffsetH, dayAt };
}

/** The sun of a place further off rises and climbs at other times, degrees. */
const FURTHEST_DEG = 5;

/** Weather from another part of the world says nothing: the file or the site is mixed up. */
function nearby({ place }: Site, { latitudeDeg, longitudeDeg }: YearWeather): void {
  if (latitudeDeg === undefined || longitudeDeg === undefined) return;
  const north = Math.abs(latitudeDeg - place.latitudeDeg);
  const east = bearingsApartDeg(longitudeDeg, place.longitudeDeg);
  if (north <= FURTHEST_DEG && east <= FURTHEST_DEG) return;
  const found = `${latitudeDeg}, ${longitudeDeg}`;
  const allowed = `within ${FURTHEST_DEG} degrees of ${place.latitudeDeg}, ${place.longitudeDeg}`;
  throw new SiteError([problem('weather', found, `the weather is that of another place, ${found}`, allowed)]);
}

interface Columns {
  readonly sunMs: Float64Array;
  readonly airC: Float64Array;
  readonly dewPointC: Float64Array;
  readonly ghi: Float64Array;
  readonly dni: Float64Array;
  readonly dhi: Float64Array;
  readonly windMs: Float64Array;
  /** Null where some row has none. */
  readonly infrared: Float64Array | null;
}

function columnsOf({ length, at }: YearWeather): Columns {
  const column = () => new Float64Array(length);
  const [sunMs, airC, dewPointC, ghi] = [column(), column(), column(), column()];
  const [dni, dhi, windMs, infrared] = [column(), column(), column(), column()];
  let measured = true;
  for (let i = 0; i < length; i++) {
    const row = at(i);
    sunMs[i] = row.sunUtc.getTime();
    airC[i] = row.airC;
    dewPointC[i] = row.dewPointC;
    ghi[i] = row.ghi;
    dni[i] = row.dni;
    dhi[i] = row.dhi;
    windMs[i] = row.windMs;
    infrared[i] = row.horizontalInfraredWm2 ?? Number.NaN;
    measured &&= row.horizontalInfraredWm2 !== undefined;
  }
  return { sunMs, airC, dewPointC, ghi, dni, dhi, windMs, infrared: measured ? infrared : null };
}

/** Seconds between rows, by the first of them. */
function rowIntervalS(weather: YearWeather): number {
  if (weather.length < 24) throw new RangeError('weather: fewer rows than a day has hours');
  // A sum near sunrise may stand for an instant of its own: the median of some gaps is that of the file.
  const gaps = Array.from({ length: 23 }, (_, k) => {
    const [a, b] = [weather.at(k).sunUtc.getTime(), weather.at(k + 1).sunUtc.getTime()];
    return Math.round((b - a) / 1000);
  }).sort((a, b) => a - b);
  return gaps[11] as number;
}

const medianOf = (values: Float64Array): number => Float64Array.from(values).sort()[values.length >> 1] as number;

/** Where an instant lies among rows: after which one, and what share of the way to the next. */
interface Place {
  readonly row: number;
  readonly share: number;
}

function placeAt(sunMs: Float64Array, ms: number, near: number): Place {
  const last = sunMs.length - 1;
  let row = Math.min(Math.max(near, 0), last);
  while (row < last && (sunMs[row + 1] as number) <= ms) row++;
  while (row > 0 && (sunMs[row] as number) > ms) row--;
  if (row === last || ms <= (sunMs[0] as number)) return { row: row === last ? last : 0, share: 0 };
  const from = sunMs[row] as number;
  return { row, share: (ms - from) / ((sunMs[row + 1] as number) - from) };
}

function valueAt(column: Float64Array, { row, share }: Place): number {
  const from = column[row] as number;
  return share === 0 ? from : from + ((column[row + 1] as number) - from) * share;
}

/**
 * Clouds of a day whose long-wave radiation nobody measured: one minus measured over clear-sky global irradiance.
 * Source: Crawford and Duchon 1999, J. Appl. Meteorol. 38:474; here of the whole day, so that the night has some, too.
 */
function cloudsOfDay({ place }: Site, rows: Columns, first: number, count: number): number {
  const { latitudeDeg, longitudeDeg, altitudeM } = place;
  let measured = 0;
  let clear = 0;
  for (let i = first; i < Math.min(first + count, rows.ghi.length); i++) {
    const utc = new Date(rows.sunMs[i] as number);
    const { elevationDeg } = sunPosition(utc, latitudeDeg, longitudeDeg);
    measured += rows.ghi[i] as number;
    clear += clearSky({ utc, elevationDeg, altitudeM, linkeTurbidity: CLEAR_LINKE }).ghi;
  }
  return clear > 0 ? Math.min(1, Math.max(0, 1 - measured / clear)) : UNKNOWN_CLOUDS;
}

/** Turbidity of the clear sky that clouds are measured against: a mid-latitude plain. */
const CLEAR_LINKE = 3;

/** Clouds of the polar night, of which irradiance says nothing. */
const UNKNOWN_CLOUDS = 0.5;
