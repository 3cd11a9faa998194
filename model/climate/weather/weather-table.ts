/** What every reader makes of its file: columns of one year in SI, holes left open, nothing of the format but its name. */
import { type FileLines, fieldsOf, isBlank } from './file-lines.ts';
import { HOURS_OF_YEAR, type RowCalendar, type RowLabel, rowCalendar } from './row-calendar.ts';
import { fileError, quoted } from './weather-file-error.ts';

export const WEATHER_FORMATS = ['EPW', 'TMY3', 'PVGIS csv'] as const;

/** What a year comes from: a file, or nothing but a climate. */
export type WeatherOrigin = (typeof WEATHER_FORMATS)[number] | 'synthetic';

/** What may stand in a column; below and above it a value is taken for an error of the file. */
interface Quantity {
  readonly title: string;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
}

/** A pyranometer reads a little below nothing at night; the beam is never above the solar constant at perihelion. */
const LEAST_IRRADIANCE = -30;

/**
 * Air and pressure span the records of weather (-89.2 to 56.7 degC; at 5,700 m the air has 500 hPa), the rest what the
 * quantity allows. Horizontal irradiance under broken cloud passes the clear sky's by half.
 */
export const QUANTITIES = {
  airC: { title: 'air temperature', unit: 'degC', min: -90, max: 65 },
  dewPointC: { title: 'dew point', unit: 'degC', min: -110, max: 45 },
  humidityPercent: { title: 'relative humidity', unit: '%', min: 0, max: 110 },
  pressurePa: { title: 'pressure', unit: 'Pa', min: 30_000, max: 120_000 },
  ghi: { title: 'global irradiance', unit: 'W/m2', min: LEAST_IRRADIANCE, max: 1800 },
  dni: { title: 'direct irradiance', unit: 'W/m2', min: LEAST_IRRADIANCE, max: 1420 },
  dhi: { title: 'diffuse irradiance', unit: 'W/m2', min: LEAST_IRRADIANCE, max: 1200 },
  windMs: { title: 'wind', unit: 'm/s', min: 0, max: 115 },
  horizontalInfraredWm2: { title: 'infrared from the sky', unit: 'W/m2', min: 0, max: 700 },
} as const satisfies Record<string, Quantity>;

export type QuantityName = keyof typeof QUANTITIES;
export const QUANTITY_NAMES = Object.keys(QUANTITIES) as QuantityName[];

export type WeatherColumns = { readonly [name in QuantityName]: Float64Array };

/** Which instant a format says that its rows belong to. */
export interface DeclaredRule {
  readonly text: string;
  /** The sun against the label, minutes. */
  readonly shiftMin: number;
  /** Whether irradiance is a sum over the hour. */
  readonly sums: boolean;
}

export interface WeatherPlace {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly altitudeM: number;
}

export interface WeatherTable extends WeatherPlace {
  readonly format: WeatherOrigin;
  readonly title: string;
  readonly source: string;
  /** Zone of the labels, hours east of Greenwich. */
  readonly labelZoneH: number;
  /** Zone in which the hours of the day are told. */
  readonly shownZoneH: number;
  readonly firstLabelMin: number;
  readonly rule: DeclaredRule;
  readonly windHeightM: number;
  /** NaN where the file has nothing. */
  readonly columns: WeatherColumns;
  /** Line of each row. */
  readonly lines: Int32Array;
  readonly notes: string[];
}

/** Where a quantity stands in a format, and how it says that it has none. */
export interface ColumnPlace {
  readonly name: QuantityName;
  readonly index: number;
  /** Values from here on are codes for "missing". */
  readonly missingFrom?: number;
  /** Values down from here are. */
  readonly missingDownTo?: number;
  /** What a value is multiplied with. */
  readonly factor?: number;
}

export interface RowLayout {
  readonly columns: readonly ColumnPlace[];
  /** Fields that a row has; further ones are blank. */
  readonly fields: number;
  label(fields: readonly string[], line: number): RowLabel;
  /** Whether text after a whole year is a legend, as against rows too many. */
  readonly legendAfter: boolean;
}

/** The rows of a file from the line after the one that was read last. */
export interface TableRows {
  readonly columns: WeatherColumns;
  readonly lines: Int32Array;
  readonly firstLabelMin: number;
  readonly notes: string[];
}

/** @throws WeatherFileError for the first row that is not what the layout says, and for less or more than a year */
export function readRows(file: FileLines, layout: RowLayout): TableRows {
  const columns = emptyColumns();
  const lines = new Int32Array(HOURS_OF_YEAR);
  const calendar = rowCalendar();
  for (let text = file.next(); text !== null; text = file.next()) {
    if (isBlank(text)) {
      // Rows of commas alone are no end of a file, blank lines may be.
      if (calendar.count < HOURS_OF_YEAR && text.includes(',')) throw wrongCount(file.line, 0, layout.fields);
      continue;
    }
    if (calendar.count === HOURS_OF_YEAR && layout.legendAfter && !/^\d/.test(text)) break;
    const fields = fieldsOf(text);
    checkFields(text, fields, layout, file, calendar);
    const row = calendar.take(layout.label(fields, file.line), file.line);
    if (row < 0) continue;
    lines[row] = file.line;
    for (const place of layout.columns) {
      columns[place.name][row] = valueAt(place, fields[place.index] as string, file.line);
    }
  }
  if (calendar.count < HOURS_OF_YEAR) {
    const wrong = `the file ends after ${calendar.count} of ${HOURS_OF_YEAR} hours; ${calendar.expected()} is to follow`;
    throw fileError(file.line, wrong, { found: `${calendar.count} hours`, allowed: `${HOURS_OF_YEAR} hours` });
  }
  return { columns, lines, firstLabelMin: calendar.firstLabelMin, notes: calendarNotes(calendar) };
}

export function emptyColumns(): WeatherColumns {
  const entries = QUANTITY_NAMES.map((name) => [name, new Float64Array(HOURS_OF_YEAR).fill(Number.NaN)]);
  return Object.fromEntries(entries) as WeatherColumns;
}

function calendarNotes({ leapRows, years }: RowCalendar): string[] {
  const notes: string[] = [];
  if (leapRows > 0) notes.push(`29 February left out: ${leapRows} hours.`);
  if (years.size > 1) {
    const sorted = [...years].sort((a, b) => a - b);
    notes.push(`Months of different years, ${sorted[0]} to ${sorted.at(-1)}, laid into one.`);
  }
  return notes;
}

function checkFields(
  text: string,
  fields: string[],
  layout: RowLayout,
  file: FileLines,
  { expected }: RowCalendar,
): void {
  const { line } = file;
  if (!/^["\s]*\d/.test(text)) {
    const wrong = `${quoted(text)} stands where a row belongs (${expected()})`;
    throw fileError(line, wrong, { found: quoted(text), allowed: 'a row that starts with its date' });
  }
  let count = fields.length;
  while (count > layout.fields && (fields[count - 1] as string).trim() === '') count--;
  if (count === layout.fields) return;
  const cutOff = count < layout.fields && file.peek() === null;
  throw wrongCount(line, count, layout.fields, cutOff ? ' in the last line: is the file cut off?' : '');
}

function wrongCount(line: number, count: number, fields: number, guess = '') {
  return fileError(line, `${count} columns${guess}`, { found: `${count} columns`, allowed: `${fields} columns` });
}

function valueAt(place: ColumnPlace, raw: string, line: number): number {
  const { title, unit, min, max }: Quantity = QUANTITIES[place.name];
  const text = raw.trim();
  if (text === '') return Number.NaN;
  const range = () => ({ found: quoted(text), allowed: `${min} to ${max} ${unit}` });
  if (!isPlainNumber(text)) throw fileError(line, `${title} ${quoted(text)} is not a number`, range());
  const number = Number(text);
  if (place.missingFrom !== undefined && number >= place.missingFrom) return Number.NaN;
  if (place.missingDownTo !== undefined && number <= place.missingDownTo) return Number.NaN;
  // Adding nothing makes 0 of the -0 that some files write.
  const value = number * (place.factor ?? 1) + 0;
  if (!(value >= min && value <= max)) {
    throw fileError(line, `${title} ${value} ${unit} cannot be`, range());
  }
  return value;
}

/** Digits, a point, a sign and an exponent: not what `Number` takes besides ("0x10", "Infinity"). */
const isPlainNumber = (text: string): boolean => /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text);

/** A whole number of a label. */
export function labelNumber(text: string | undefined, what: string, line: number): number {
  const trimmed = (text ?? '').trim();
  if (!/^\d+(\.0*)?$/.test(trimmed)) {
    throw fileError(line, `${what} ${quoted(trimmed)} is not a whole number`, { found: quoted(trimmed) });
  }
  return Number(trimmed);
}

/** A number of a header, held to its range. */
export function headerNumber(
  text: string | undefined,
  { what, min, max, line }: { what: string; min: number; max: number; line: number },
): number {
  const trimmed = (text ?? '').trim();
  const value = isPlainNumber(trimmed) ? Number(trimmed) : Number.NaN;
  if (!(value >= min && value <= max)) {
    throw fileError(line, `${what} ${quoted(trimmed)}`, { found: quoted(trimmed), allowed: `${min} to ${max}` });
  }
  return value;
}

export const LATITUDE = { what: 'latitude', min: -90, max: 90 };
export const LONGITUDE = { what: 'longitude', min: -180, max: 180 };
export const ALTITUDE = { what: 'elevation', min: -500, max: 8000 };
export const ZONE = { what: 'time zone', min: -12, max: 14 };
