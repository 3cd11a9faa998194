/** From a row of a table to a site, and from what is wrong with the site back to the columns. */
import {
  FINISH_NAMES,
  FINISHES,
  type Problem,
  parseSite,
  readNumberText,
  type Site,
  SiteError,
} from '../../model/index.ts';
import { bearingsIn } from './bearings.ts';
import { type ChosenClimate, type ClimateSettings, chooseClimate } from './climate-choice.ts';
import { COLUMN_KINDS, type ColumnKey, type ColumnMatch, columnUnits, plain } from './columns.ts';
import type { TableRecord } from './records.ts';
import { type RowPlace, rowPlace } from './row-place.ts';

/** One thing that is wrong with a row. */
export interface RowProblem {
  readonly column: string;
  readonly value: string;
  readonly reason: string;
}

/** Thrown for a row that is no site. */
export class RowError extends Error {
  readonly problems: readonly RowProblem[];

  constructor(problems: readonly RowProblem[]) {
    super(problems.map(({ column, reason }) => `${column}: ${reason}`).join('; '));
    this.name = 'RowError';
    this.problems = problems;
  }
}

/** Parts of a site file that hold for every row: box, limits, ground, constraints, climate, and in `walls` what every wall has. */
export interface BaseSite {
  readonly box?: Readonly<Record<string, unknown>>;
  readonly limits?: Readonly<Record<string, unknown>>;
  readonly ground?: Readonly<Record<string, unknown>>;
  readonly constraints?: Readonly<Record<string, unknown>>;
  readonly wall?: Readonly<Record<string, unknown>>;
}

export interface RowSettings {
  readonly header: readonly string[];
  readonly columns: ColumnMatch;
  readonly base: BaseSite;
  readonly climate: ClimateSettings;
}

export interface RowSite {
  readonly input: Readonly<Record<string, unknown>>;
  readonly climate: ChosenClimate;
  /** Whether the walls are the eight of the compass, and not those of the row. */
  readonly compass: boolean;
}

/** The box where no site file says otherwise: a small terminal, invented for this project. */
export const USUAL_BOX = { widthM: 0.3, heightM: 0.35, depthM: 0.12, powerW: 15 } as const;

/** The walls of a row that names none. */
export const COMPASS_WALLS = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'] as const;

/** How far the eave stands above the box where only its depth is given, m. Assumed: below the soffit of one storey. */
export const USUAL_EAVE_HEIGHT_M = 0.8;

/** Worked out once for all rows with the same settings. */
const unitsBySettings = new WeakMap<RowSettings, ReturnType<typeof columnUnits>>();

function unitsOf(settings: RowSettings): ReturnType<typeof columnUnits> {
  const known = unitsBySettings.get(settings) ?? columnUnits(settings.header, settings.columns);
  unitsBySettings.set(settings, known);
  return known;
}

/**
 * Reads a row as a site file.
 * @throws RowError
 */
export function rowSite(record: TableRecord, settings: RowSettings): RowSite {
  const { header, columns, base } = settings;
  const units = unitsOf(settings);
  if (record.fault !== undefined) throw new RowError([problemOf('', record.cells[0] ?? '', record.fault)]);
  if (record.cells.length !== header.length) throw new RowError([problemOf('', '', cellCount(record, header.length))]);
  const cell = (key: ColumnKey): string | undefined => {
    const at = columns[key];
    const entered = at === undefined ? '' : (record.cells[at] ?? '').trim();
    // Spreadsheets, and our own results, put an apostrophe before a text that would be taken for a formula: "'-113.4 deg".
    const text = entered.replace(/^'(?=[-+])/, '');
    if (text === '') return undefined;
    const unit = units.get(key)?.unit;
    return unit !== undefined && readNumberText(text, 'ratio') !== null ? `${text} ${unit}` : text;
  };
  const misfits = [...units.values()].filter(({ fits }) => !fits);
  if (misfits.length > 0) {
    throw new RowError(
      misfits.map(({ column, unit }) => problemOf(column, '', `${unit} is no unit for it; rename the column`)),
    );
  }
  const place = rowPlace(cell);
  const problems = [...coordinateProblems(cell, place, settings), ...commaProblems(cell, header, columns)];
  if (problems.length > 0) throw new RowError(problems);

  const climate = chooseClimate(cell, place, settings.climate);
  const facing = cell('bearings');
  const bearings = facing === undefined ? undefined : bearingsIn(facing);
  const depthM = cell('eaveDepth');
  const eave = depthM !== undefined && { eave: { depthM, heightAboveBoxM: cell('eaveHeight') ?? USUAL_EAVE_HEIGHT_M } };
  const wall = { ...base.wall, ...given('construction', cell('construction')), ...eave };
  const input = {
    place: {
      ...given('latitudeDeg', place.latitudeDeg ?? cell('latitude')),
      ...given('longitudeDeg', place.longitudeDeg ?? cell('longitude')),
      ...given('altitudeM', place.altitudeM ?? cell('altitude') ?? climate.altitudeM),
      ...given('timeZone', cell('timeZone')),
    },
    climate: climate.entry,
    ground: { ...base.ground, ...given('albedo', cell('albedo')) },
    box: {
      ...USUAL_BOX,
      ...base.box,
      ...given('widthM', cell('width')),
      ...given('heightM', cell('height')),
      ...given('depthM', cell('depth')),
      ...given('powerW', cell('power')),
      ...finish(cell('finish')),
      ...given('solarAbsorptance', cell('absorptance')),
    },
    limits: {
      ...base.limits,
      ...given('maxC', cell('limit')),
      ...given('minC', cell('lowerLimit')),
      ...given('refersTo', cell('limitOf')),
    },
    ...(base.constraints && { constraints: base.constraints }),
    walls: (bearings ?? COMPASS_WALLS).map((azimuthDeg) => ({ ...wall, name: azimuthDeg, azimuthDeg })),
  };
  return { input, climate, compass: bearings === undefined };
}

/**
 * The site of a row, everything filled in.
 * @throws RowError naming the columns
 */
export function parseRowSite({ input }: RowSite, record: TableRecord, settings: RowSettings): Site {
  try {
    return parseSite(input);
  } catch (error) {
    throw rowErrorOf(error, record, settings);
  }
}

/** What the model found wrong with a row, told by its columns; anything else is thrown on. */
export function rowErrorOf(error: unknown, record: TableRecord, { header, columns }: RowSettings): RowError {
  if (error instanceof RowError) return error;
  if (!(error instanceof SiteError)) throw error;
  // The walls of a row say the same thing once.
  const told = new Map(error.problems.map((found) => [`${columnPath(found.path)} ${found.wrong}`, found]));
  return new RowError([...told.values()].map((found) => columnProblem(found, record, header, columns)));
}

const given = <Key extends string>(key: Key, value: unknown) => (value === undefined ? {} : { [key]: value });

/** A finish may be told in plain words; it takes the place of the absorptance of the base. */
function finish(text: string | undefined) {
  if (text === undefined) return {};
  const word = plain(text).replace('gray', 'grey').replace('aluminum', 'aluminium');
  const name = FINISH_NAMES.find((known) => {
    const labels = FINISHES[known].label.split(' or ').map(plain);
    return [plain(known), plain(known).replace(/paint$/, ''), ...labels].includes(word);
  });
  return { finish: name ?? text, solarAbsorptance: undefined, emittance: undefined };
}

function cellCount({ cells }: TableRecord, width: number): string {
  const found = `${cells.length} ${cells.length === 1 ? 'cell' : 'cells'}, the header has ${width}`;
  return cells.length > width ? `${found}; a decimal comma or an unquoted text with the delimiter in it?` : found;
}

function problemOf(column: string, value: string, reason: string): RowProblem {
  return { column, value: value.slice(0, 100), reason };
}

const COMMA = /^[-+]?\d+,\d+$/;
/** Longer cells are no coordinates, and the pattern below takes long over them. */
const LONGEST_COORDINATE = 60;
const HEMISPHERE = /^([NSEWO])?\s*[-+]?[\d.,]+\s*[°º]?[\s\d.'"′″]*([NSEWO])?$/i;

/** Decimal commas in cells that hold numbers. */
function commaProblems(
  cell: (key: ColumnKey) => string | undefined,
  header: readonly string[],
  columns: ColumnMatch,
): RowProblem[] {
  const texts: readonly ColumnKey[] = ['bearings', 'finish', 'climate', 'construction', 'limitOf', 'timeZone', 'date'];
  return COLUMN_KINDS.flatMap(({ key }): RowProblem[] => {
    const text = cell(key);
    if (text === undefined || texts.includes(key) || !COMMA.test(text)) return [];
    return [problemOf(nameOf(key, header, columns), text, `decimal comma; write ${text.replace(',', '.')}`)];
  });
}

/** What goes wrong with coordinates most often, each with what to do about it. */
function coordinateProblems(
  cell: (key: ColumnKey) => string | undefined,
  { latitudeDeg = 0, longitudeDeg = 0 }: RowPlace,
  { header, columns }: RowSettings,
): RowProblem[] {
  const problems = (['latitude', 'longitude'] as const).flatMap((key): RowProblem[] => {
    const text = cell(key);
    const column = nameOf(key, header, columns);
    if (text === undefined) return [problemOf(column, '', 'is missing')];
    const [, before, after] = (text.length <= LONGEST_COORDINATE && HEMISPHERE.exec(text)) || [];
    if (before !== undefined || after !== undefined || /['′]/.test(text)) {
      return [problemOf(column, text, 'write signed decimal degrees, south and west negative, such as -33.25')];
    }
    return [];
  });
  if (problems.length > 0) return problems;
  if (Math.abs(latitudeDeg) > 90 && Math.abs(latitudeDeg) <= 180 && Math.abs(longitudeDeg) <= 90) {
    const text = cell('latitude') ?? '';
    const reason = `${text} is no latitude; latitude and longitude look swapped`;
    return [problemOf(nameOf('latitude', header, columns), text, reason)];
  }
  return [];
}

function nameOf(key: ColumnKey, header: readonly string[], columns: ColumnMatch): string {
  return header[columns[key] ?? -1] ?? key;
}

const columnPath = (path: string): string =>
  path.replace(/^walls\.\d+\.(?=azimuthDeg|name)/, 'walls:').replace(/^walls\.\d+/, 'walls');

function columnProblem(
  problem: Problem,
  { cells }: TableRecord,
  header: readonly string[],
  columns: ColumnMatch,
): RowProblem {
  const { path, wrong, allowed } = problem;
  const wanted = columnPath(path).replace(/^walls:.*/, 'walls');
  const kind =
    COLUMN_KINDS.find((one) => one.path === wanted) ??
    COLUMN_KINDS.find((one) => one.key === 'climate' && /^climate\.(sample|cycle)$/.test(wanted));
  const at = kind && columns[kind.key];
  const reason = wordedForRows(problem) ?? (allowed === '' ? wrong : `${wrong}; allowed: ${allowed}`);
  if (at !== undefined) return problemOf(header[at] ?? wanted, cells[at] ?? '', reason);
  // Design days come from rows alone; what else has no column may come from the site file, and goes by its path there.
  return problemOf(kind !== undefined && path.startsWith('climate.designDay.') ? kind.key : wanted, '', reason);
}

/** What means nothing to a reader of the table in the words of a site file. */
function wordedForRows({ path, wrong, found }: Problem): string | undefined {
  if (path === 'climate' && wrong.startsWith('exactly one')) {
    return 'a named climate and a design day in one row contradict each other; leave one of them out';
  }
  if (path === 'climate.designDay.maxC' && wrong === 'is missing') {
    return 'designMax is missing; without it date, dailyRange, dewPoint, wind and turbidity are no design day';
  }
  // The walls of a row are named by their bearings.
  if (/^walls\.\d+\.name$/.test(path) && wrong.includes('is taken by'))
    return `the bearing ${found} stands there twice; allowed: bearings that differ`;
  return undefined;
}
