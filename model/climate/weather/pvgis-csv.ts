/**
 * The typical year of PVGIS (European Commission, Joint Research Centre) as csv: place, the year of each month, rows in
 * UTC, a legend. Its irradiance is that of one instant after the label; how long after stands in newer files.
 */
import { type FileLines, fieldsOf, isBlank } from './file-lines.ts';
import { columnCount, type NamedColumn, placesOf } from './named-columns.ts';
import { fileError, quoted } from './weather-file-error.ts';
import {
  ALTITUDE,
  type DeclaredRule,
  headerNumber,
  LATITUDE,
  LONGITUDE,
  readRows,
  type WeatherTable,
} from './weather-table.ts';

const COLUMNS: readonly NamedColumn[] = [
  { name: 'airC', title: 't2m', needed: true },
  { name: 'humidityPercent', title: 'rh', needed: true },
  { name: 'ghi', title: 'g(h)', needed: true },
  { name: 'dni', title: 'gb(n)', needed: true },
  { name: 'dhi', title: 'gd(h)', needed: true },
  { name: 'horizontalInfraredWm2', title: 'ir(h)', needed: false },
  { name: 'windMs', title: 'ws10m', needed: true },
  { name: 'pressurePa', title: 'sp', needed: false },
];

const WIND_HEIGHT_M = 10;

const LONGEST_HEADER = 40;

export const isPvgisCsv = (firstLine: string): boolean => /^"?latitude \(decimal degrees\)/i.test(firstLine);

/** @throws WeatherFileError */
export function readPvgisCsv(file: FileLines): WeatherTable {
  const { facts, names } = readHeader(file);
  const number = (key: string, range: { what: string; min: number; max: number }) => {
    const fact = facts.get(key);
    if (fact === undefined) throw fileError(file.line, `${range.what} is missing in the header`, { allowed: key });
    return headerNumber(fact.text, { ...range, line: fact.line });
  };
  const place = {
    latitudeDeg: number('latitude', LATITUDE),
    longitudeDeg: number('longitude', LONGITUDE),
    altitudeM: number('elevation', ALTITUDE),
  };
  const offset = 'irradiance time offset';
  const offsetH = facts.has(offset) ? number(offset, { what: 'irradiance time offset', min: -1, max: 1 }) : null;
  const rows = readRows(file, {
    columns: placesOf(names, COLUMNS, file.line),
    fields: columnCount(names),
    label: labelOf,
    legendAfter: true,
  });
  const shownZoneH = Math.round(place.longitudeDeg / 15);
  return {
    ...place,
    ...rows,
    format: 'PVGIS csv',
    title: `${place.latitudeDeg}, ${place.longitudeDeg}`,
    source: 'PVGIS, European Union',
    labelZoneH: 0,
    shownZoneH,
    rule: ruleOf(offsetH),
    windHeightM: WIND_HEIGHT_M,
    notes: [
      ...rows.notes,
      `The file counts in UTC; hours of the day are told in UTC${signed(shownZoneH)} by longitude.`,
    ],
  };
}

const signed = (hours: number): string => (hours < 0 ? String(hours) : `+${hours}`);

function ruleOf(offsetH: number | null): DeclaredRule {
  if (offsetH === null) return { text: 'values of the instant of the label', shiftMin: 0, sums: false };
  const text = `values of one instant, ${offsetH} h after the label by the file's header`;
  return { text, shiftMin: offsetH * 60, sums: false };
}

interface Header {
  readonly facts: Map<string, { readonly text: string; readonly line: number }>;
  readonly names: string[];
}

/** `Latitude (decimal degrees): 45.000` and the like up to the names of the columns. */
function readHeader(file: FileLines): Header {
  const facts = new Map<string, { text: string; line: number }>();
  for (let text = file.next(); text !== null && file.line <= LONGEST_HEADER; text = file.next()) {
    const names = fieldsOf(text).map((name) => name.trim().toLowerCase());
    if (names[0]?.startsWith('time')) return { facts, names };
    const fact = /^"?([a-z ]+?)\s*\([^)]*\)\s*:\s*([^,"]*)/i.exec(text);
    if (fact !== null) facts.set((fact[1] as string).toLowerCase(), { text: fact[2] as string, line: file.line });
    else if (!isBlank(text) && !/^"?(month|\d)/i.test(text)) {
      throw fileError(file.line, `${quoted(text)} in the header`, { found: quoted(text), allowed: 'name: value' });
    }
  }
  throw fileError(file.line, 'no line with the names of the columns', { allowed: 'a line that starts with time(UTC)' });
}

/** `20180101:0000` */
function labelOf([time = '']: readonly string[], line: number) {
  const match = /^\s*(\d{4})(\d{2})(\d{2}):(\d{2})(\d{2})\s*$/.exec(time);
  if (match === null) throw fileError(line, `time ${quoted(time)}`, { found: quoted(time), allowed: 'YYYYMMDD:HHMM' });
  const [year, month, day, hour, minute] = match.slice(1).map(Number) as [number, number, number, number, number];
  return { year, month, day, hour, minute };
}
