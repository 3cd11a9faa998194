/** A screening as the page sees it, of what is kept of it and how far it is. */
import type { ScreeningProgress } from '../screening/screening.ts';
import type { JobRecord, Status } from './job-table.ts';

export interface ScreeningState {
  readonly id: string;
  readonly name: string;
  readonly status: Status;
  /** Why it failed. */
  readonly error: string | null;
  readonly createdAt: string;
  readonly startedAt: string | null;
  readonly endedAt: string | null;
  readonly rows: { readonly done: number; readonly rejected: number; readonly total: number | null };
  readonly ratePerS: number | null;
  readonly etaS: number | null;
  readonly origin: 'table' | 'grid';
}

export const isFinal = (status: Status): boolean => status !== 'waiting' && status !== 'running';

/** `progress` is that of the run under way; null where none is. */
export function screeningState(found: JobRecord, progress: ScreeningProgress | null): ScreeningState {
  const { id, name, status, error, createdAt, startedAt, endedAt, total, tally, origin } = found;
  const live = status === 'running' ? progress : null;
  const counted = live?.tally ?? tally;
  return {
    ...{ id, name, status, error, createdAt, startedAt, endedAt },
    rows: { done: counted.rows, rejected: counted.rejected, total: Math.max(total, counted.rows) },
    ratePerS: live?.rowsPerS ?? null,
    etaS: live?.leftS ?? null,
    origin,
  };
}
