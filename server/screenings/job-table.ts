/** Screenings in the database of the data folder. */
import type { Database } from 'better-sqlite3';
import { NO_TALLY, type Tally } from '../screening/tally.ts';
import type { JobSpec } from './job.ts';

export const STATUSES = ['waiting', 'running', 'done', 'cancelled', 'failed'] as const;

export type Status = (typeof STATUSES)[number];

export interface JobRecord {
  readonly id: string;
  readonly name: string;
  readonly origin: 'table' | 'grid';
  readonly status: Status;
  readonly error: string | null;
  readonly createdAt: string;
  readonly startedAt: string | null;
  readonly endedAt: string | null;
  /** Rows of the whole, about right for a table until it is done. */
  readonly total: number;
  readonly tally: Tally;
}

/** What changes in the course of a screening. */
export type JobChange = Partial<Pick<JobRecord, 'status' | 'error' | 'startedAt' | 'endedAt' | 'total' | 'tally'>>;

type Row = Omit<JobRecord, 'tally'> & { readonly tally: string };

const FIELDS =
  'id, name, origin, status, error, created_at AS createdAt, started_at AS startedAt, ended_at AS endedAt, total, tally';

const COLUMN_OF: Record<keyof JobChange, string> = {
  status: 'status',
  error: 'error',
  startedAt: 'started_at',
  endedAt: 'ended_at',
  total: 'total',
  tally: 'tally',
};

/** The statements about screenings. */
export function jobTable(db: Database) {
  const read = (row: Row): JobRecord => ({ ...row, tally: JSON.parse(row.tally) as Tally });
  const all = db.prepare<[], Row>(`SELECT ${FIELDS} FROM screening ORDER BY created_at DESC, rowid DESC`);
  const one = db.prepare<[string], Row>(`SELECT ${FIELDS} FROM screening WHERE id = ?`);
  const spec = db.prepare<[string], { job: string }>('SELECT job FROM screening WHERE id = ?');
  const insert = db.prepare(
    `INSERT INTO screening (id, name, origin, status, created_at, total, tally, job)
     VALUES (@id, @name, @origin, 'waiting', @createdAt, @total, @tally, @job)`,
  );
  const remove = db.prepare('DELETE FROM screening WHERE id = ?');
  // What was begun already comes first.
  const next = db.prepare<[], { id: string }>(
    `SELECT id FROM screening WHERE status = 'waiting' ORDER BY started_at IS NULL, created_at, rowid LIMIT 1`,
  );
  const requeue = db.prepare(`UPDATE screening SET status = 'waiting' WHERE status = 'running'`);
  return {
    list: () => all.all().map(read),
    find: (id: string): JobRecord | null => {
      const row = one.get(id);
      return row === undefined ? null : read(row);
    },
    spec: (id: string): JobSpec | null => {
      const row = spec.get(id);
      return row === undefined ? null : (JSON.parse(row.job) as JobSpec);
    },
    add: (job: Pick<JobRecord, 'id' | 'name' | 'origin' | 'createdAt' | 'total'> & { spec: JobSpec }) => {
      const { spec: made, ...rest } = job;
      insert.run({ ...rest, tally: JSON.stringify(NO_TALLY), job: JSON.stringify(made) });
    },
    change: (id: string, change: JobChange): void => {
      const keys = Object.keys(change) as (keyof JobChange)[];
      const values = keys.map((key) => (key === 'tally' ? JSON.stringify(change[key]) : change[key]));
      db.prepare(`UPDATE screening SET ${keys.map((key) => `${COLUMN_OF[key]} = ?`).join(', ')} WHERE id = ?`).run(
        ...values,
        id,
      );
    },
    remove: (id: string) => void remove.run(id),
    next: () => next.get()?.id ?? null,
    /** Those that ran when their process ended wait again. */
    requeue: () => void requeue.run(),
  };
}
