/** Bodies and queries of the screening routes. */
import { z } from 'zod';
import { KIT_CLASSES, type Problem, parseSite, SiteError, type SiteInput } from '../../model/index.ts';
import { HttpError } from '../errors.ts';
import { baseOf } from '../screening/base-site.ts';
import { CLIMATE_NAMES } from '../screening/climate-choice.ts';
import type { ColumnMatch } from '../screening/columns.ts';
import { refuseUnreadable } from '../screening/first-rows.ts';
import { GRID_HEADER, type Grid, gridSize, MOST_GRID_POINTS } from '../screening/grid.ts';
import type { BaseSite } from '../screening/row-site.ts';
import { readMatching, unmatched } from './matching.ts';
import { problemAt, problemsIn } from './problems.ts';
import { rowSettings } from './table-preview.ts';
import type { StoredTable, Tables } from './tables.ts';

export const MOST_WORKERS = 64;
const LONGEST_NAME = 200;

const Matching = z.record(z.string(), z.string().nullable(), 'names of columns by names of fields');

const degrees = (most: number, what: string) => z.number(what).min(-most, what).max(most, what);

const GridRequest = z.strictObject({
  south: degrees(90, '-90 to 90 degrees'),
  west: degrees(180, '-180 to 180 degrees'),
  north: degrees(90, '-90 to 90 degrees'),
  east: degrees(180, '-180 to 180 degrees'),
  stepDeg: z
    .number('above 0 and up to 90 degrees')
    .gt(0, 'above 0 and up to 90 degrees')
    .max(90, 'above 0 and up to 90 degrees'),
});

const Settings = z.strictObject({
  climate: z.enum(CLIMATE_NAMES as [string, ...string[]], CLIMATE_NAMES.join(', ')).optional(),
  site: z.record(z.string(), z.unknown(), 'what a site file holds').optional(),
  weather: z.boolean('true, false').optional(),
});

const workersAllowed = `whole numbers from 1 to ${MOST_WORKERS}`;

export const ScreeningRequest = z.strictObject({
  name: z.string('text').trim().min(1, 'text').max(LONGEST_NAME, `up to ${LONGEST_NAME} characters`).optional(),
  table: z.string('the id of an uploaded table').optional(),
  grid: GridRequest.optional(),
  matching: Matching.optional(),
  settings: Settings.optional(),
  workers: z.int(workersAllowed).min(1, workersAllowed).max(MOST_WORKERS, workersAllowed).optional(),
});

export const CheckRequest = z.strictObject({ matching: Matching });

/** What somebody wants screened, checked. */
export interface Order {
  readonly name: string;
  readonly from: { readonly table: StoredTable } | { readonly grid: Grid };
  readonly columns: ColumnMatch;
  readonly base: BaseSite;
  readonly climate: string | undefined;
  /** Whether the weather files of the data folder are to be used. */
  readonly weather: boolean;
  readonly workers: number | undefined;
}

/** @throws SiteError, HttpError */
export function checkRequest(body: unknown) {
  const { value, problems } = read(body, CheckRequest);
  if (value === null) throw new SiteError(problems);
  return value;
}

/**
 * Reads the body that starts a screening.
 * @throws SiteError with every problem; HttpError
 */
export function screeningRequest(body: unknown, tables: Tables): Order {
  const { value, problems } = read(body, ScreeningRequest);
  if (value === null) throw new SiteError(problems);
  const { table: id, grid, settings = {}, workers } = value;
  if (id === undefined && grid === undefined) problems.push(problemAt('table', id, 'a table or a grid is needed'));
  if (id !== undefined && grid !== undefined)
    problems.push(problemAt('grid', grid, 'a table and a grid do not go together'));
  if (settings.climate !== undefined && settings.weather) {
    problems.push(problemAt('settings.weather', true, 'does not go together with settings.climate'));
  }
  const base = problems.length > 0 || settings.site === undefined ? {} : baseIn(settings.site, problems);
  const order = { base, climate: settings.climate, weather: settings.weather ?? false, workers };
  if (grid !== undefined) {
    const read = gridOf(grid, problems);
    if (value.matching !== undefined) problems.push(problemAt('matching', value.matching, 'goes with a table only'));
    if (problems.length > 0) throw new SiteError(problems);
    const columns = { latitude: 0, longitude: 1 };
    problems.push(...unreadable('grid', [...GRID_HEADER], [], { columns, ...order }));
    return { name: value.name ?? 'Grid', from: { grid: read }, columns, ...order };
  }
  const table = tables.find(id ?? '');
  if (table === null) {
    if (id !== undefined)
      problems.push(problemAt('table', id, 'there is no such table; upload it again', 'the id of a table'));
    throw new SiteError(problems);
  }
  const { header, first } = table.file;
  const { columns, problems: wrong } = readMatching(header, value.matching);
  problems.push(...wrong);
  for (const key of unmatched(columns))
    problems.push(problemAt(`matching.${key}`, value.matching?.[key], `no column for the ${key}`));
  if (problems.length === 0) problems.push(...unreadable(table.name, header, first, { columns, ...order }));
  if (problems.length > 0) throw new SiteError(problems);
  return { name: value.name ?? table.name, from: { table }, columns, ...order };
}

/** A table of which none of the first rows can be read. */
function unreadable(
  name: string,
  header: readonly string[],
  first: StoredTable['file']['first'],
  { columns, base, climate }: Pick<Order, 'columns' | 'base' | 'climate'>,
): Problem[] {
  const settings = rowSettings(header, columns, base, { named: climate, stations: [] });
  return problemsIn(() => refuseUnreadable(name, first, settings), 'table');
}

function baseIn(site: Record<string, unknown>, problems: Problem[]): BaseSite {
  const wrong = problemsIn(() => parseSite(site), 'settings.site');
  problems.push(...wrong);
  return wrong.length > 0 ? {} : baseOf(site as unknown as SiteInput);
}

function gridOf({ south, west, north, east, stepDeg }: z.output<typeof GridRequest>, problems: Problem[]): Grid {
  const grid = { southDeg: south, westDeg: west, northDeg: north, eastDeg: east, stepDeg };
  if (south > north) problems.push(problemAt('grid.south', south, 'lies north of the north'));
  else if (gridSize(grid) > MOST_GRID_POINTS) {
    problems.push(
      problemAt('grid.stepDeg', stepDeg, `makes ${gridSize(grid)} points`, `up to ${MOST_GRID_POINTS} points`),
    );
  }
  return grid;
}

/** Orders that rows can be listed in. */
export const SORTS = ['row', 'margin', 'peak', 'bestWall', 'kit'] as const;

export const MOST_LISTED = 200;

const KIT_NAMES = KIT_CLASSES.map(({ name }) => name);

const whole = (least: number, most: number) => {
  const what = `whole numbers from ${least} to ${most}`;
  return z
    .string(what)
    .regex(/^\d{1,9}$/, what)
    .transform(Number)
    .refine((n) => n >= least && n <= most, what);
};

export const RowsQuery = z.strictObject({
  sort: z.enum(SORTS, SORTS.join(', ')).default('row'),
  order: z.enum(['asc', 'desc'], 'asc, desc').default('asc'),
  kit: z.enum(KIT_NAMES, KIT_NAMES.join(', ')).optional(),
  maxMarginK: z
    .string('a number')
    .refine((text) => text.trim() !== '' && Number.isFinite(Number(text)), 'a number, K')
    .transform(Number)
    .optional(),
  text: z.string('text').max(LONGEST_NAME, `up to ${LONGEST_NAME} characters`).optional(),
  offset: whole(0, 999_999_999).default(0),
  limit: whole(1, MOST_LISTED).default(50),
});

export type RowsQuery = z.output<typeof RowsQuery>;

/** @throws SiteError. A filter that is left empty filters nothing. */
export const rowsQuery = (query: Record<string, unknown>): RowsQuery => readQuery(query, RowsQuery);

export const SummaryQuery = z.strictObject({
  units: z.enum(['metric', 'us'], 'metric, us').optional(),
});

/** @throws SiteError */
export const summaryQuery = (query: Record<string, unknown>): z.output<typeof SummaryQuery> =>
  readQuery(query, SummaryQuery);

/** Reads the part of an address after its question mark; what is left empty counts as left out. */
function readQuery<Schema extends z.ZodObject>(query: Record<string, unknown>, schema: Schema): z.output<Schema> {
  const given = Object.entries(query).filter(([, value]) => value !== '');
  const isTwice = ([name, value]: [string, unknown]) => Array.isArray(value) && Object.hasOwn(schema.shape, name);
  const { value, problems } = read(Object.fromEntries(given.filter((one) => !isTwice(one))), schema);
  for (const [name, values] of given.filter(isTwice)) {
    problems.push(problemAt(name, values, 'was given more than once', 'one value'));
  }
  if (value === null || problems.length > 0) throw new SiteError(problems);
  return value;
}

function read<Schema extends z.ZodObject>(
  body: unknown,
  schema: Schema,
): { value: z.output<Schema> | null; problems: Problem[] } {
  if (body === undefined) throw new HttpError(415, 'the body must be JSON, content type application/json');
  const parsed = schema.safeParse(body, { reportInput: true });
  if (parsed.success) return { value: parsed.data, problems: [] };
  return {
    value: null,
    problems: parsed.error.issues.flatMap((issue) => problemsOf(issue, Object.keys(schema.shape))),
  };
}

/** The messages of the schemas above say what is allowed. */
function problemsOf(issue: z.core.$ZodIssue, fields: readonly string[]): Problem[] {
  const path = issue.path.join('.');
  if (issue.code === 'unrecognized_keys') {
    const allowed = path === '' ? fields.join(', ') : '';
    // Its name only: nobody knows what a field that does not belong here may hold.
    return issue.keys.map((key) => problemAt(path === '' ? key : `${path}.${key}`, key, 'unknown field', allowed));
  }
  if (path === '') return [problemAt('', issue.input, 'is no JSON object', `an object with ${fields.join(', ')}`)];
  const wrong = issue.input === undefined && issue.code === 'invalid_type' ? 'is missing' : 'is not allowed';
  const plainMessage = issue.message.startsWith('Invalid') ? '' : issue.message;
  return [problemAt(path, issue.input, wrong, plainMessage)];
}
