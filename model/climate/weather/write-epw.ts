/** Writes a year of weather as an EPW. Layout and codes: Auxiliary Programs of EnergyPlus, "EPW CSV Format". */
import { relativeHumidity } from '../humidity.ts';
import { HOURS_OF_YEAR, startOfYearMs, WEATHER_YEAR } from './row-calendar.ts';
import type { DeclaredRule } from './weather-table.ts';
import type { WeatherHour, WeatherYear } from './weather-year.ts';

/** What an EPW says of its rows. */
export const HOUR_ENDING_SUMS: DeclaredRule = {
  text: 'sums over the hour before the label',
  shiftMin: -30,
  sums: true,
};

/** Height at which its wind is measured. */
export const EPW_WIND_HEIGHT_M = 10;

/** Decimals that are written: more than files of stations have, so that what is read back is what was written. */
const DECIMALS = {
  airC: 2,
  dewPointC: 2,
  pressurePa: 0,
  ghi: 1,
  dni: 1,
  dhi: 1,
  windMs: 2,
  horizontalInfraredWm2: 1,
} as const;

type Written = keyof typeof DECIMALS;

const text = (name: Written, value: number): string => value.toFixed(DECIMALS[name]);

/** A value as it comes back from a file; there is no -0. */
export const asWritten = (name: Written, value: number): number => Number(text(name, value)) + 0;

const HOUR_MS = 3_600_000;

/**
 * The text of an EPW. Temperatures are written to 0.01 K, irradiance to 0.1 W/m2, wind to 0.01 m/s, pressure to 1 Pa; what
 * the year does not hold (illuminance, wind direction, clouds, rain, snow) has the codes for missing values.
 * @throws RangeError for a year whose rows are not sums over whole hours of its zone or whose wind is not that of 10 m: an
 * EPW would say of them what does not hold
 */
export function writeEpw(year: WeatherYear): string {
  refuseOtherRows(year);
  const { title, source, latitudeDeg, longitudeDeg, zoneOffsetH, altitudeM } = year;
  const place = [latitudeDeg, longitudeDeg, zoneOffsetH, altitudeM].join(',');
  const weekday = new Date(startOfYearMs(0)).toLocaleDateString('en', { weekday: 'long', timeZone: 'UTC' });
  const lines = [
    `LOCATION,${plain(title)},-,-,${plain(source)},unknown,${place}`,
    'DESIGN CONDITIONS,0',
    'TYPICAL/EXTREME PERIODS,0',
    'GROUND TEMPERATURES,0',
    'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
    `COMMENTS 1,${plain(year.notes.join(' '))}`,
    `COMMENTS 2,${plain(`Irradiance: ${HOUR_ENDING_SUMS.text}; temperatures and wind at the label`)}`,
    `DATA PERIODS,1,1,Data,${weekday}, 1/ 1,12/31`,
  ];
  for (let row = 0; row < HOURS_OF_YEAR; row++) lines.push(rowText(year.at(row), row));
  return `${lines.join('\n')}\n`;
}

/** Sums of hours that the sun rises or sets in stand for an instant of their own, within the hour. */
function refuseOtherRows(year: WeatherYear): void {
  if (year.windHeightM !== EPW_WIND_HEIGHT_M) throw new RangeError(`writeEpw: wind at ${year.windHeightM} m, not 10 m`);
  let exact = 0;
  for (let row = 0; row < HOURS_OF_YEAR; row++) {
    const middleMs = startOfYearMs(year.zoneOffsetH) + (row + 0.5) * HOUR_MS;
    const offMs = Math.abs(year.at(row).sunUtc.getTime() - middleMs);
    if (offMs > HOUR_MS / 2) throw new RangeError(`writeEpw: row ${row} is no hour of the year in its zone`);
    if (offMs <= 1) exact++;
  }
  // All but the hours of sunrise and sunset.
  if (exact < HOURS_OF_YEAR / 2) throw new RangeError('writeEpw: the rows are not sums over whole hours');
}

/** A field without what would end it. */
const plain = (words: string): string => words.replace(/[",\r\n]+/g, ';').trim() || '-';

function rowText(hour: WeatherHour, row: number): string {
  const start = new Date(startOfYearMs(0) + row * HOUR_MS);
  const label = [WEATHER_YEAR, start.getUTCMonth() + 1, start.getUTCDate(), start.getUTCHours() + 1, 60];
  const of = (name: Written, value: number) => text(name, value + 0);
  const infrared = hour.horizontalInfraredWm2;
  return [
    ...label,
    '?',
    of('airC', hour.airC),
    of('dewPointC', hour.dewPointC),
    relativeHumidity(hour.airC, hour.dewPointC).toFixed(0),
    of('pressurePa', hour.pressurePa),
    9999,
    9999,
    infrared === undefined ? 9999 : of('horizontalInfraredWm2', infrared),
    of('ghi', hour.ghi),
    of('dni', hour.dni),
    of('dhi', hour.dhi),
    ...[999999, 999999, 999999, 9999],
    999,
    of('windMs', hour.windMs),
    ...[99, 99, 9999, 99999, 9, 999999999, 999, '.999', 999, 99, 999, 999, 99],
  ].join(',');
}
