/** A year of weather made of the monthly means of an invented climate, for places that have no weather file. */
import { standardOffsetH } from '../civil-day.ts';
import { normal, normalShare, seeded } from '../random.ts';
import type { Site } from '../site.ts';
import { problem, SiteError } from '../site-error.ts';
import { sinDeg } from '../solar/angles.ts';
import { pressureAtAltitude, relativeAirMass } from '../solar/atmosphere.ts';
import { clearSkyThrough, type Irradiance } from '../solar/clear-sky.ts';
import { erbsSplit } from '../solar/decomposition.ts';
import { equationOfTimeMin, extraterrestrialNormal } from '../solar/extraterrestrial.ts';
import { sunPosition } from '../solar/sun-position.ts';
import { ordinaryTemperature } from './daily-range.ts';
import { type DailyWeather, dailyWeather } from './daily-weather.ts';
import { meansOfSample, monthOfSample } from './design-climate.ts';
import { CLIMATE_SAMPLES, type ClimateSample, type MonthlyMeans } from './samples.ts';
import { skyLongwave } from './sky-temperature.ts';
import { DAYS_OF_YEAR, MONTH_OF_DAY, monthlyMeans, throughMonths } from './through-months.ts';
import { HOURS_OF_YEAR, startOfYearMs, WEATHER_YEAR } from './weather/row-calendar.ts';
import { emptyColumns } from './weather/weather-table.ts';
import { type WeatherYear, weatherYearOf } from './weather/weather-year.ts';
import { asWritten, EPW_WIND_HEIGHT_M, HOUR_ENDING_SUMS } from './weather/write-epw.ts';
import { windProfile } from './wind-profile.ts';

export interface SyntheticOptions {
  /** The same seed makes the same year; 1 where left out. */
  readonly seed?: number;
}

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

/** Instants whose mean is the irradiance of an hour. */
const PARTS_OF_HOUR = 4;

/** Wind of an hour follows that of the hour before so closely. Common practice, no source. */
const WIND_FOLLOWS = 0.9;

/** From this clear-sky index on the light is split more and more as under a clear sky. Common practice, no source. */
const NEARLY_CLEAR = 0.9;

/**
 * Makes a year for a site whose climate is a sample. It is invented, as the sample is: it tells walls apart and shows how a
 * year wears a box out; it is no record of the place.
 * @throws SiteError for a site whose climate is a single day
 */
export function syntheticYear(site: Site, { seed = 1 }: SyntheticOptions = {}): WeatherYear {
  const sample = sampleOf(site);
  const { latitudeDeg, longitudeDeg, altitudeM, timeZone } = site.place;
  const place = { latitudeDeg, longitudeDeg, altitudeM };
  const zoneH = standardOffsetH(timeZone, WEATHER_YEAR);
  const months = Array.from({ length: 12 }, (_, month) => meansOfSample(sample, month + 1, latitudeDeg));
  const sky = skyOver(sample, place);
  const random = seeded(seed);
  const days = dailyWeather(months, sky.clearClearness, random);
  const windAtBoxMs = hourlyWind(months, random);
  const perBox = windProfile(EPW_WIND_HEIGHT_M, site.box.mountHeightM);

  const columns = emptyColumns();
  const pressurePa = pressureAtAltitude(altitudeM);
  for (let row = 0; row < HOURS_OF_YEAR; row++) {
    const labelMs = startOfYearMs(zoneH) + (row + 1) * HOUR_MS;
    const light = hourOfSky(labelMs, sky, days);
    const air = airAt(solarTime(labelMs, longitudeDeg), days);
    const { cloudFraction, ...temperatures } = air;
    const values = {
      ...light,
      ...temperatures,
      pressurePa,
      windMs: (windAtBoxMs[row] as number) / perBox,
      horizontalInfraredWm2: skyLongwave({ ...temperatures, cloudFraction, pressurePa }),
    };
    for (const [name, value] of Object.entries(values) as [keyof typeof values, number][]) {
      columns[name][row] = asWritten(name, value);
    }
  }
  return weatherYearOf({
    ...place,
    format: 'synthetic',
    title: sample.title,
    source: `synthetic year ${seed} of the invented climate ${sample.name}`,
    labelZoneH: zoneH,
    shownZoneH: zoneH,
    firstLabelMin: 60,
    rule: HOUR_ENDING_SUMS,
    windHeightM: EPW_WIND_HEIGHT_M,
    columns,
    lines: new Int32Array(HOURS_OF_YEAR),
    notes: notesOn(sample, seed),
  });
}

function sampleOf({ climate }: Site): ClimateSample {
  const sample = CLIMATE_SAMPLES.find(({ name }) => name === climate.sample);
  if (sample !== undefined) return sample;
  const found = climate.cycle === undefined ? 'designDay' : 'cycle';
  const wrong = `a ${found === 'cycle' ? "standard's cycle" : 'design day'} is one day, of which no year can be made`;
  const allowed = `a weather file, or a sample as the climate: ${CLIMATE_SAMPLES.map(({ name }) => name).join(', ')}`;
  throw new SiteError([problem(`climate.${found}`, found, wrong, allowed)]);
}

function notesOn({ title, name }: ClimateSample, seed: number): string[] {
  return [
    `Invented year ${seed} of the invented climate "${title}" (${name}): no record of the place. Monthly means of daily maxima, minima, cloud and wind are the sample's.`,
    'Warm and dull spells last as in Richardson 1981, one set of figures for all places. No rain, no fronts; the cloud of a day is the same from morning to evening.',
    'Cloudy light is split after Erbs 1982, the light of clear days as under the clear sky. Wind is spread after Rayleigh and the same by day and by night: common practice, no source.',
  ];
}

/** The sky of a place through the year of a sample. */
interface YearSky {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly clearClearness: readonly number[];
  /** Under a cloudless sky. */
  clear(utc: Date, day: number): Irradiance & { readonly elevationDeg: number; readonly extraterrestrialWm2: number };
}

function skyOver(
  sample: ClimateSample,
  { latitudeDeg, longitudeDeg, altitudeM }: { latitudeDeg: number; longitudeDeg: number; altitudeM: number },
): YearSky {
  const months = Array.from({ length: 12 }, (_, month) => monthOfSample(sample, month + 1, latitudeDeg));
  const linkeTurbidity = throughMonths(months.map((month) => month.linkeTurbidity));
  const pressurePa = pressureAtAltitude(altitudeM);
  const clear: YearSky['clear'] = (utc, day) => {
    const { elevationDeg } = sunPosition(utc, latitudeDeg, longitudeDeg);
    const extraterrestrialWm2 = extraterrestrialNormal(utc);
    const through = { elevationDeg, extraterrestrialWm2, relativeAirMass: relativeAirMass(elevationDeg), pressurePa };
    const light = clearSkyThrough({ ...through, altitudeM, linkeTurbidity: linkeTurbidity[day] as number });
    return { ...light, elevationDeg, extraterrestrialWm2 };
  };
  const clearClearness = months.map((_, month) => clearnessOf(clear, month));
  return { latitudeDeg, longitudeDeg, clearClearness, clear };
}

/** Clearness index of the clear day in the middle of a month: global over extraterrestrial irradiation. */
function clearnessOf(clear: YearSky['clear'], month: number): number {
  const day = MONTH_OF_DAY.indexOf(month) + 14;
  let below = 0;
  let above = 0;
  for (let part = 0; part < 48; part++) {
    const utc = new Date(startOfYearMs(0) + day * DAY_MS + part * (HOUR_MS / 2));
    const { ghi, elevationDeg, extraterrestrialWm2 } = clear(utc, day);
    below += ghi;
    above += extraterrestrialWm2 * Math.max(0, sinDeg(elevationDeg));
  }
  return above > 0 ? below / above : 0;
}

/** Apparent solar time: which day of the year, and which hour of it. */
function solarTime(ms: number, longitudeDeg: number): { day: number; hour: number } {
  const minutes = equationOfTimeMin(new Date(ms)) + 4 * longitudeDeg;
  const days = (ms - startOfYearMs(0)) / DAY_MS + minutes / 1440;
  const whole = Math.floor(days);
  return { day: dayWithin(whole), hour: (days - whole) * 24 };
}

const dayWithin = (day: number): number => ((day % DAYS_OF_YEAR) + DAYS_OF_YEAR) % DAYS_OF_YEAR;

/** Sunk so far in the middle of an hour, the sun is down for all of it: it climbs 7.5 degrees in half an hour at most. */
const DOWN_ALL_HOUR_DEG = -8;

/** Mean irradiance of the hour that ends with a label. */
function hourOfSky(labelMs: number, sky: YearSky, { clearSkyIndex }: DailyWeather): Irradiance {
  const sum = { ghi: 0, dni: 0, dhi: 0 };
  const middleMs = labelMs - HOUR_MS / 2;
  const { elevationDeg } = sunPosition(new Date(middleMs), sky.latitudeDeg, sky.longitudeDeg);
  if (elevationDeg < DOWN_ALL_HOUR_DEG) return sum;
  const { day } = solarTime(middleMs, sky.longitudeDeg);
  for (let part = 0; part < PARTS_OF_HOUR; part++) {
    const utc = new Date(labelMs - HOUR_MS + ((part + 0.5) * HOUR_MS) / PARTS_OF_HOUR);
    const light = underClouds(sky.clear(utc, day), clearSkyIndex[day] as number);
    sum.ghi += light.ghi / PARTS_OF_HOUR;
    sum.dni += light.dni / PARTS_OF_HOUR;
    sum.dhi += light.dhi / PARTS_OF_HOUR;
  }
  return sum;
}

function underClouds(clear: ReturnType<YearSky['clear']>, index: number): Irradiance {
  const ghi = index * clear.ghi;
  const cloudy = erbsSplit({ ...clear, ghi });
  const share = Math.max(0, (index - NEARLY_CLEAR) / (1 - NEARLY_CLEAR));
  const mixed = (name: 'dni' | 'dhi') => share * index * clear[name] + (1 - share) * cloudy[name];
  return { ghi, dni: mixed('dni'), dhi: mixed('dhi') };
}

/** Air at a solar time; the dew point runs straight from noon to noon, clouds stand for the day. */
function airAt({ day, hour }: { day: number; hour: number }, days: DailyWeather) {
  const of = (values: Float64Array, other: number) => values[dayWithin(other)] as number;
  const airC = ordinaryTemperature(hour, {
    maxBeforeC: of(days.maxC, day - 1),
    minC: of(days.minC, day),
    maxC: of(days.maxC, day),
    minAfterC: of(days.minC, day + 1),
  });
  const noon = hour < 12 ? day - 1 : day;
  const share = (hour + (hour < 12 ? 12 : -12)) / 24;
  const dew = of(days.dewPointC, noon) * (1 - share) + of(days.dewPointC, noon + 1) * share;
  // Air is never moister than saturated.
  return { airC, dewPointC: Math.min(dew, airC), cloudFraction: 1 - of(days.clearSkyIndex, day) };
}

/** Wind at the height of the box, hour by hour, spread after Rayleigh about the means of the months. */
function hourlyWind(months: readonly MonthlyMeans[], random: () => number): Float64Array {
  const next = normal(random);
  const news = Math.sqrt(1 - WIND_FOLLOWS ** 2);
  let state = next();
  const windMs = new Float64Array(HOURS_OF_YEAR);
  for (let row = 0; row < HOURS_OF_YEAR; row++) {
    state = WIND_FOLLOWS * state + news * next();
    windMs[row] = Math.sqrt(-Math.log(1 - normalShare(state)));
  }
  const daily = Float64Array.from({ length: DAYS_OF_YEAR }, (_, day) =>
    windMs.subarray(day * 24, day * 24 + 24).reduce((sum, wind) => sum + wind / 24, 0),
  );
  const found = monthlyMeans(daily);
  const factors = months.map((month, k) => month.windMs / (found[k] as number));
  return windMs.map((wind, row) => wind * (factors[MONTH_OF_DAY[Math.floor(row / 24)] as number] as number));
}
