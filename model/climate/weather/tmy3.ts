/**
 * TMY3 csv of the US national solar radiation database: place, names of columns, rows.
 * Layout and codes: Wilcox and Marion 2008, Users Manual for TMY3 Data Sets, NREL/TP-581-43156.
 */
import { type FileLines, fieldsOf } from './file-lines.ts';
import { columnCount, type NamedColumn, placesOf } from './named-columns.ts';
import { fileError, quoted } from './weather-file-error.ts';
import { ALTITUDE, headerNumber, LATITUDE, LONGITUDE, readRows, type WeatherTable, ZONE } from './weather-table.ts';

const MISSING_DOWN_TO = -999;

const COLUMNS: readonly NamedColumn[] = [
  { name: 'ghi', title: 'ghi', needed: true },
  { name: 'dni', title: 'dni', needed: false },
  { name: 'dhi', title: 'dhi', needed: false },
  { name: 'airC', title: 'dry-bulb', needed: true },
  { name: 'dewPointC', title: 'dew-point', needed: false },
  { name: 'humidityPercent', title: 'rhum', needed: false },
  // Millibars.
  { name: 'pressurePa', title: 'pressure', needed: false, factor: 100 },
  { name: 'windMs', title: 'wspd', needed: true },
].map((column) => ({ ...column, missingDownTo: MISSING_DOWN_TO }) as NamedColumn);

const WIND_HEIGHT_M = 10;

/** Its first line has no mark of its own. */
export const isTmy3 = (secondLine: string): boolean => /^"?date \(mm\/dd\/yyyy\)"?,"?time/i.test(secondLine.trim());

/** @throws WeatherFileError */
export function readTmy3(file: FileLines): WeatherTable {
  const [code, name, state, zone, latitude, longitude, elevation] = fieldsOf(file.next() ?? '');
  const labelZoneH = headerNumber(zone, { ...ZONE, line: 1 });
  const place = {
    latitudeDeg: headerNumber(latitude, { ...LATITUDE, line: 1 }),
    longitudeDeg: headerNumber(longitude, { ...LONGITUDE, line: 1 }),
    altitudeM: headerNumber(elevation, { ...ALTITUDE, line: 1 }),
  };
  // Units follow in brackets, some with one bracket too many.
  const names = fieldsOf(file.next() ?? '').map((field) => field.replace(/\(.*$/, '').trim().toLowerCase());
  const rows = readRows(file, {
    columns: placesOf(names, COLUMNS, file.line),
    fields: columnCount(names),
    label: labelOf,
    legendAfter: false,
  });
  return {
    ...place,
    ...rows,
    format: 'TMY3',
    title: [name, state]
      .map((text) => text?.trim())
      .filter((text) => text)
      .join(', '),
    source: code === undefined || code.trim() === '' ? '' : `station ${code.trim()}`,
    labelZoneH,
    shownZoneH: labelZoneH,
    rule: { text: 'sums over the hour before the label', shiftMin: -30, sums: true },
    windHeightM: WIND_HEIGHT_M,
  };
}

/** `MM/DD/YYYY,HH:MM`, midnight as 24:00 or 00:00. */
function labelOf([date = '', time = '']: readonly string[], line: number) {
  const day = /^\s*(\d{1,2})\/(\d{1,2})\/(\d{4})\s*$/.exec(date);
  if (day === null) throw fileError(line, `date ${quoted(date)}`, { found: quoted(date), allowed: 'MM/DD/YYYY' });
  const clock = /^\s*(\d{1,2}):(\d{2})\s*$/.exec(time);
  if (clock === null) throw fileError(line, `time ${quoted(time)}`, { found: quoted(time), allowed: 'HH:MM' });
  return {
    year: Number(day[3]),
    month: Number(day[1]),
    day: Number(day[2]),
    hour: Number(clock[1]),
    minute: Number(clock[2]),
  };
}
