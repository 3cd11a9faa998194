/**
 * EPW, the weather file of EnergyPlus: eight header lines, then rows of 35 columns without names.
 * Layout and codes: Auxiliary Programs of EnergyPlus, "EPW CSV Format".
 */
import { type FileLines, fieldsOf } from './file-lines.ts';
import { fileError, quoted } from './weather-file-error.ts';
import {
  ALTITUDE,
  type ColumnPlace,
  headerNumber,
  LATITUDE,
  LONGITUDE,
  labelNumber,
  readRows,
  type WeatherTable,
  ZONE,
} from './weather-table.ts';
import { EPW_WIND_HEIGHT_M, HOUR_ENDING_SUMS } from './write-epw.ts';

const HEADERS = [
  ['LOCATION'],
  ['DESIGN CONDITIONS'],
  ['TYPICAL/EXTREME PERIODS'],
  ['GROUND TEMPERATURES'],
  ['HOLIDAYS/DAYLIGHT SAVINGS', 'HOLIDAYS/DAYLIGHT SAVING'],
  ['COMMENTS 1'],
  ['COMMENTS 2'],
  ['DATA PERIODS'],
] as const;

const COLUMNS: readonly ColumnPlace[] = [
  { name: 'airC', index: 6, missingFrom: 99.9 },
  { name: 'dewPointC', index: 7, missingFrom: 99.9 },
  { name: 'humidityPercent', index: 8, missingFrom: 999 },
  { name: 'pressurePa', index: 9, missingFrom: 999_999 },
  { name: 'horizontalInfraredWm2', index: 12, missingFrom: 9999 },
  { name: 'ghi', index: 13, missingFrom: 9999 },
  { name: 'dni', index: 14, missingFrom: 9999 },
  { name: 'dhi', index: 15, missingFrom: 9999 },
  { name: 'windMs', index: 21, missingFrom: 999 },
];

const ALL_FIELDS = 35;

/** Files from before albedo and rain were added end with the snow. */
const FEWEST_FIELDS = 32;

export const isEpw = (firstLine: string): boolean => /^"?LOCATION"?,/i.test(firstLine);

/** @throws WeatherFileError */
export function readEpw(file: FileLines): WeatherTable {
  const headers = HEADERS.map((names) => header(file, names));
  const [, city, state, country, source, , latitude, longitude, zone, elevation] = headers[0] as string[];
  const labelZoneH = headerNumber(zone, { ...ZONE, line: 1 });
  const table = {
    latitudeDeg: headerNumber(latitude, { ...LATITUDE, line: 1 }),
    longitudeDeg: headerNumber(longitude, { ...LONGITUDE, line: 1 }),
    altitudeM: headerNumber(elevation, { ...ALTITUDE, line: 1 }),
  };
  checkPeriods(headers[7] as string[]);
  const ownOffset = /Irradiance Time Offset[^,]*/i.exec((headers[6] as string[]).slice(1).join(','));
  const first = file.peek();
  const isRow = first !== null && /^\d/.test(first);
  const fields = Math.min(ALL_FIELDS, isRow ? fieldsOf(first).length : ALL_FIELDS);
  if (fields < FEWEST_FIELDS) {
    const allowed = `${FEWEST_FIELDS} to ${ALL_FIELDS} columns`;
    throw fileError(file.line + 1, `${fields} columns`, { found: `${fields} columns`, allowed });
  }
  const rows = readRows(file, { columns: COLUMNS, fields, label: labelOf, legendAfter: false });
  const says = ownOffset === null ? '' : ` (a comment of the file says "${ownOffset[0].trim()}")`;
  return {
    ...table,
    ...rows,
    format: 'EPW',
    title: [city, state, country].filter(isNamed).join(', '),
    source: isNamed(source) ? source.trim() : '',
    labelZoneH,
    shownZoneH: labelZoneH,
    rule: { ...HOUR_ENDING_SUMS, text: `${HOUR_ENDING_SUMS.text}${says}` },
    windHeightM: EPW_WIND_HEIGHT_M,
  };
}

const isNamed = (text: string | undefined): text is string =>
  text !== undefined && !['', '-', 'unknown'].includes(text.trim().toLowerCase());

function header(file: FileLines, names: readonly string[]): string[] {
  const text = file.next();
  const allowed = names.map(quoted).join(' or ');
  if (text === null) throw fileError(file.line, 'the file ends within its header', { allowed });
  const fields = fieldsOf(text);
  const name = (fields[0] as string).trim().toUpperCase();
  if (!names.includes(name)) {
    throw fileError(file.line, `header ${quoted(name)}`, { found: quoted(name), allowed });
  }
  return fields;
}

/** `DATA PERIODS,periods,records per hour,…` */
function checkPeriods([, periods, perHour]: string[]): void {
  const line = HEADERS.length;
  if (labelNumber(periods, 'number of data periods', line) !== 1) {
    throw fileError(line, `${periods} data periods`, { found: quoted(String(periods)), allowed: '1' });
  }
  if (labelNumber(perHour, 'records per hour', line) !== 1) {
    throw fileError(line, `${perHour} records per hour`, { found: quoted(String(perHour)), allowed: '1' });
  }
}

/** The minute is 0 in some files and 60 in others and means nothing in hourly ones. */
function labelOf(fields: readonly string[], line: number) {
  return {
    year: labelNumber(fields[0], 'year', line),
    month: labelNumber(fields[1], 'month', line),
    day: labelNumber(fields[2], 'day', line),
    hour: labelNumber(fields[3], 'hour', line),
    minute: 0,
  };
}
