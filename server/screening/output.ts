/** Results as text: rows of a CSV file that a spreadsheet may open, or features of a GeoJSON file. */
import { stringify } from 'csv-stringify/sync';
import type { ScreenedSite } from '../../model/index.ts';
import { screeningAssumptions } from './assumptions.ts';
import type { ChosenClimate } from './climate-choice.ts';
import { columnNames, namesBeside } from './column-names.ts';
import type { TableRecord } from './records.ts';
import { COMPASS_WALLS, type RowProblem, type RowSettings, type RowSite } from './row-site.ts';
import type { Tally } from './tally.ts';

export const FORMATS = ['csv', 'geojson'] as const;

export type Format = (typeof FORMATS)[number];

export interface OutputSettings extends RowSettings {
  readonly format: Format;
  readonly delimiter: string;
  /** Whether outcomes carry the rows themselves, too, for whoever looks them up later. */
  readonly keepRows?: boolean;
}

/** A screened row. */
export interface RowResult {
  readonly record: TableRecord;
  readonly site: Pick<RowSite, 'compass'> & { readonly climate: Omit<ChosenClimate, 'entry' | 'altitudeM'> };
  readonly place: { readonly latitudeDeg: number; readonly longitudeDeg: number; readonly altitudeM: number };
  readonly result: ScreenedSite;
}

type Cell = string | number | null;

/** What a result says beside the columns of its row; numbers in full, degC and K. */
const RESULT_COLUMNS: readonly (readonly [name: string, value: (row: RowResult) => Cell])[] = [
  ['best_wall', ({ result }) => result.best?.name ?? null],
  ['best_azimuth_deg', ({ result }) => result.best?.azimuthDeg ?? null],
  ['best_peak_inside_c', ({ result }) => result.best?.peakInsideAirC ?? null],
  ['best_margin_k', ({ result }) => result.best?.marginK ?? null],
  ['inside_share', ({ result }) => result.insideShare],
  ['kit', ({ result }) => result.kit],
  ['remedy', ({ result }) => result.remedy?.text ?? null],
  ['remedy_margin_k', ({ result }) => result.remedy?.marginK ?? null],
  ['climate_source', ({ site }) => site.climate.source],
  ['climate_used', ({ site }) => site.climate.text],
  ['climate_distance_km', ({ site }) => site.climate.distanceKm],
  ['altitude_used_m', ({ place }) => place.altitudeM],
];

const wallOf = (row: RowResult, name: string) =>
  row.site.compass ? row.result.walls.find((wall) => wall.name === name) : undefined;

const WALL_COLUMNS = COMPASS_WALLS.flatMap((name): (readonly [string, (row: RowResult) => Cell])[] => [
  [`peak_inside_c_${name}`, (row) => wallOf(row, name)?.peakInsideAirC ?? null],
  [`margin_k_${name}`, (row) => wallOf(row, name)?.marginK ?? null],
]);

/** Only where rows may bring bearings of their own: "8: 61.3/3.7" is the wall at 8 degrees, its peak and its margin. */
const OWN_WALLS = [
  'own_walls',
  ({ site, result }: RowResult): Cell =>
    site.compass ? null : result.walls.map((wall) => `${wall.name}: ${wall.peakInsideAirC}/${wall.marginK}`).join('; '),
] as const;

function resultColumns({ columns }: RowSettings) {
  return [...RESULT_COLUMNS, ...WALL_COLUMNS, ...(columns.bearings === undefined ? [] : [OWN_WALLS])];
}

/** Names of the columns of the table as they stand in the results. A feature holds its walls as a list beside them. */
export function inputNames(settings: OutputSettings): string[] {
  const own = [
    'row',
    ...resultColumns(settings).map(([name]) => name),
    ...(settings.format === 'geojson' ? ['walls'] : []),
  ];
  return namesBeside(columnNames(settings.header), own);
}

/** What stands before the first result. */
export function resultsHead(settings: OutputSettings, bom: boolean): string {
  if (settings.format === 'geojson') return '{"type":"FeatureCollection","features":[';
  const names = ['row', ...inputNames(settings), ...resultColumns(settings).map(([name]) => name)];
  return `${bom ? '\ufeff' : ''}${csv([names], settings.delimiter)}`;
}

/** What stands behind the last result: in GeoJSON what all of them rest on, as a member of its own (RFC 7946, section 6.1). */
export function resultsFoot(settings: OutputSettings, tally: Pick<Tally, 'climates'>): string {
  if (settings.format !== 'geojson') return '';
  return `\n],"assumptions":${JSON.stringify(screeningAssumptions(tally, settings, 'metric'))}}\n`;
}

/** Results as text. Each feature of GeoJSON is led by a comma; the first of a file loses it. */
export function resultsText(rows: readonly RowResult[], settings: OutputSettings): string {
  if (settings.format === 'geojson') {
    const names = inputNames(settings);
    return rows.map((row) => `,\n${JSON.stringify(feature(row, names))}`).join('');
  }
  const columns = resultColumns(settings);
  return csv(
    rows.map((row) => [row.record.row, ...row.record.cells, ...columns.map(([, value]) => value(row))]),
    settings.delimiter,
  );
}

function feature(row: RowResult, names: readonly string[]) {
  const given = row.record.cells.map((cell, k) => [names[k] ?? '', cell] as const);
  const told = RESULT_COLUMNS.map(([name, value]) => [name, value(row)] as const);
  const { latitudeDeg, longitudeDeg } = row.place;
  return {
    type: 'Feature',
    id: row.record.row,
    geometry: { type: 'Point', coordinates: [longitudeDeg, latitudeDeg] },
    properties: { row: row.record.row, ...Object.fromEntries([...given, ...told]), walls: row.result.walls },
  };
}

const REJECT_COLUMNS = ['row', 'line', 'column', 'value', 'reason'];

export function rejectsHead({ delimiter }: OutputSettings, bom: boolean): string {
  return `${bom ? '\ufeff' : ''}${csv([REJECT_COLUMNS], delimiter)}`;
}

/** What is wrong with rows, one line a problem. */
export function rejectsText(
  rejects: readonly { readonly record: TableRecord; readonly problems: readonly RowProblem[] }[],
  { delimiter }: OutputSettings,
): string {
  return csv(
    rejects.flatMap(({ record, problems }) =>
      problems.map(({ column, value, reason }) => [record.row, record.line, column, value, reason]),
    ),
    delimiter,
  );
}

const NUMBER_TEXT = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i;

/** Text that a spreadsheet would take for a formula gets an apostrophe before it; numbers stay as they are. */
function csv(rows: readonly (readonly Cell[])[], delimiter: string): string {
  return stringify(rows as Cell[][], {
    delimiter,
    escape_formulas: true,
    cast: { string: (text) => (NUMBER_TEXT.test(text) ? { value: text, escape_formulas: false } : text) },
  });
}
