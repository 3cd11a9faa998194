/** What the page asks the server about screenings, and what the answers hold. */
import type { Assumption, UnitSystem } from '../../model/index.ts';
import { apiFetch } from '../session/session.ts';

export type Status = 'waiting' | 'running' | 'done' | 'cancelled' | 'failed';

/** A screening as it stands. */
export interface Screening {
  readonly id: string;
  readonly name: string;
  readonly status: Status;
  /** A sentence where it failed. */
  readonly error: string | null;
  readonly createdAt: string;
  readonly startedAt: string | null;
  readonly endedAt: string | null;
  /** `done` counts every row that was read, the rejected ones too. */
  readonly rows: { readonly done: number; readonly rejected: number; readonly total: number | null };
  readonly ratePerS: number | null;
  readonly etaS: number | null;
  readonly origin: 'table' | 'grid';
}

/** A row that would be rejected, and why. Rows count as in a spreadsheet; no column means the whole row. */
export interface RowProblem {
  readonly row: number;
  readonly column: string;
  readonly value: string;
  readonly reason: string;
}

/** Names of columns by names of fields. */
export type Matching = Readonly<Record<string, string | null>>;

/** The first rows of a table under a matching. */
export interface Preview {
  readonly firstRows: readonly (readonly string[])[];
  readonly problems: readonly RowProblem[];
  /** How many rows `problems` is about. */
  readonly rowsChecked: number;
}

/** An uploaded table. */
export interface Table extends Preview {
  readonly table: string;
  readonly name: string;
  readonly bytes: number;
  readonly separator: string;
  readonly encoding: string;
  readonly columns: readonly string[];
  readonly matching: Matching;
  readonly rowsEstimated: number;
}

export interface Check extends Preview {
  readonly unmatched: readonly string[];
}

/** What a column can be matched to. */
export interface Field {
  readonly field: string;
  readonly required: boolean;
  readonly what: string;
}

export interface Grid {
  readonly south: number;
  readonly west: number;
  readonly north: number;
  readonly east: number;
  readonly stepDeg: number;
}

export interface Settings {
  readonly climate?: string;
  readonly weather?: boolean;
  /** A site file whose box, limits and walls hold for every row. */
  readonly site?: unknown;
}

export type Order = { readonly name?: string; readonly settings?: Settings } & (
  | { readonly table: string; readonly matching: Matching }
  | { readonly grid: Grid }
);

export interface Summary {
  readonly counts: {
    readonly rows: number;
    readonly addresses: number;
    readonly insideLimit: number;
    readonly rejected: number;
    readonly blank: number;
  };
  readonly kitClasses: readonly { readonly kit: string; readonly label: string; readonly count: number }[];
  readonly marginHistogram: { readonly edgesK: readonly number[]; readonly counts: readonly number[] };
  /** Of all addresses. */
  readonly assumptions: readonly string[];
  /** What one of the rows is filled in with. */
  readonly example: { readonly row: number; readonly assumptions: readonly Assumption[] } | null;
  readonly climates: readonly { readonly used: string; readonly text: string; readonly count: number }[];
  readonly rejectReasons: readonly { readonly reason: string; readonly count: number }[];
}

/** Addresses in columns of equal length. */
export interface Points {
  readonly row: readonly number[];
  readonly latitudeDeg: readonly number[];
  readonly longitudeDeg: readonly number[];
  /** Null where no wall of the address is permitted. */
  readonly marginK: readonly (number | null)[];
  /** Index into `kits`. */
  readonly kit: readonly number[];
  readonly kits: readonly string[];
  /** Whether only the worst address of each small cell is among them. */
  readonly thinned: boolean;
  /** Addresses in all. */
  readonly total: number;
}

export interface Row {
  readonly row: number;
  readonly id: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly bestWall: string | null;
  readonly peakInsideAirC: number | null;
  readonly marginK: number | null;
  /** Share of the walls that keep the box inside its limits. */
  readonly shareInside: number;
  readonly remedy: string | null;
  readonly kit: string;
  readonly extra: Readonly<Record<string, string>>;
}

export interface Rows {
  readonly total: number;
  readonly rows: readonly Row[];
}

/** Why the server did not do what it was asked; its own sentences where it has some. */
export class ApiFailure extends Error {
  /** The HTTP status; 0 where no answer came. */
  readonly status: number;
  readonly problems: readonly string[];

  constructor(status: number, message: string, problems: readonly string[] = []) {
    super(message);
    this.name = 'ApiFailure';
    this.status = status;
    this.problems = problems;
  }
}

const UNREACHABLE = 'The server cannot be reached. Look at the connection and try again.';

/** Relative to the page, which may live below a path of a proxy. */
export const apiAddress = (path: string): string => `./api/${path}`;

const part = encodeURIComponent;

export async function storageThere(): Promise<boolean> {
  const { storage } = (await ask('health', 'object')) as { storage?: unknown };
  return storage === true;
}

export const askFields = (): Promise<readonly Field[]> => ask('tables/fields', 'length');

export const checkTable = (id: string, matching: Matching): Promise<Check> =>
  ask(`tables/${part(id)}/check`, 'firstRows', { method: 'POST', body: { matching } });

export const startScreening = async (order: Order): Promise<string> =>
  (await ask<{ id: string }>('screenings', 'id', { method: 'POST', body: order })).id;

export const listScreenings = async (): Promise<readonly Screening[]> =>
  (await ask<{ screenings: Screening[] }>('screenings', 'screenings')).screenings;

export const askScreening = (id: string): Promise<Screening> => ask(`screenings/${part(id)}`, 'status');

export const cancelScreening = (id: string): Promise<Screening> =>
  ask(`screenings/${part(id)}/cancel`, 'status', { method: 'POST' });

export const resumeScreening = (id: string): Promise<Screening> =>
  ask(`screenings/${part(id)}/resume`, 'status', { method: 'POST' });

export async function deleteScreening(id: string): Promise<void> {
  await ask(`screenings/${part(id)}`, null, { method: 'DELETE' });
}

export const askSummary = (id: string, units: UnitSystem, signal: AbortSignal): Promise<Summary> =>
  ask(`screenings/${part(id)}/summary?units=${units}`, 'counts', { signal });

export const askPoints = (id: string, signal: AbortSignal): Promise<Points> =>
  ask(`screenings/${part(id)}/points`, 'marginK', { signal });

export const askRows = (id: string, query: string, signal: AbortSignal): Promise<Rows> =>
  ask(`screenings/${part(id)}/rows?${query}`, 'rows', { signal });

export const askRow = (id: string, row: number, signal: AbortSignal): Promise<Row> =>
  ask(`screenings/${part(id)}/rows/${row}`, 'kit', { signal });

/** The site file of a row. */
export const askSite = (id: string, row: number): Promise<Readonly<Record<string, unknown>>> =>
  ask(`screenings/${part(id)}/rows/${row}/site`, 'place');

interface Ask {
  readonly method?: 'POST' | 'DELETE';
  readonly body?: unknown;
  readonly signal?: AbortSignal;
}

/** Asks and takes an answer that has a certain part; null where none is needed. */
async function ask<Answer>(path: string, needed: string | null, { method, body, signal }: Ask = {}): Promise<Answer> {
  const response = await apiFetch(apiAddress(path), {
    method: method ?? 'GET',
    ...(body !== undefined && { body: JSON.stringify(body), headers: { 'Content-Type': 'application/json' } }),
    ...(signal && { signal }),
  }).catch((error: unknown) => {
    throw signal?.aborted ? error : new ApiFailure(0, UNREACHABLE);
  });
  const answer: unknown = response.status === 204 ? null : await response.json().catch(() => undefined);
  if (!response.ok) throw failureIn(response.status, answer);
  return answerWith<Answer>(answer, needed);
}

/** The answer itself; something that is no answer of this server, such as the page of a proxy, is a failure. */
export function answerWith<Answer>(answer: unknown, needed: string | null): Answer {
  const whole = typeof answer === 'object' && answer !== null;
  if (needed !== null && !(whole && (needed === 'object' || needed in answer))) {
    throw new ApiFailure(0, 'What came back is no answer of this server. Try again, or reload the page.');
  }
  return answer as Answer;
}

/** What an answer with an error status says. */
export function failureIn(status: number, answer: unknown): ApiFailure {
  const { error, problems } = (answer ?? {}) as { error?: unknown; problems?: unknown };
  const listed = Array.isArray(problems)
    ? problems.map((problem) => String((problem as { message?: unknown }).message))
    : [];
  return new ApiFailure(status, typeof error === 'string' ? error : `The server answered with ${status}.`, listed);
}
