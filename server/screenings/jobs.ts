/**
 * The screenings of a data folder: kept in its database, run one after the other, stopped and gone on with. A restart of the server
 * goes on with what ran, from its checkpoint.
 */
import { randomUUID } from 'node:crypto';
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { SiteError } from '../../model/index.ts';
import { BadInput } from '../bad-input.ts';
import { HOLD_FILE, SCREENINGS_FOLDER, TABLES_FOLDER } from '../data/folders.ts';
import { storageFailure } from '../data/storage-failure.ts';
import type { Store } from '../data/store.ts';
import { HttpError } from '../errors.ts';
import { isFull } from '../file-failure.ts';
import type { Station } from '../screening/climate-choice.ts';
import { type ScreeningProgress, ScreeningStopped } from '../screening/screening.ts';
import { failureSentence } from './failure.ts';
import { type JobFiles, type JobSpec, jobFiles, prepareJob, sourceOf } from './job.ts';
import { type JobChange, type JobRecord, jobTable } from './job-table.ts';
import { takeHold } from './ownership.ts';
import { problemsOfLines } from './problems.ts';
import type { Order } from './requests.ts';
import { runJob } from './run-job.ts';
import { isFinal, type ScreeningState, screeningState } from './screening-state.ts';
import { openTables, type Tables } from './tables.ts';
import { openWeatherFiles } from './weather-files.ts';

export interface Screenings {
  readonly tables: Tables;
  list(): ScreeningState[];
  /** @throws HttpError where there is none; so do all that take an id */
  state(id: string): ScreeningState;
  record(id: string): JobRecord;
  spec(id: string): JobSpec;
  files(id: string): JobFiles;
  add(order: Order): Promise<string>;
  cancel(id: string): Promise<ScreeningState>;
  resume(id: string): ScreeningState;
  remove(id: string): Promise<void>;
  /** Refuses where another process works on the screenings of this folder. @throws HttpError */
  mustHold(): void;
  /** Calls back at every change of a screening and when the server stops; gives back how to end that. */
  watch(id: string, onChange: () => void): () => void;
  readonly stopping: boolean;
  /** Stops what runs, with a checkpoint; a restart goes on with it. */
  stop(): Promise<void>;
}

export interface ScreeningsOptions {
  /** Largest table, bytes. */
  readonly mostTableBytes?: number;
  /** Worker threads of a screening that asks for none of its own; as many as cores when left out, 0 works in this thread. */
  readonly workers?: number;
  /** Told what a screening failed of, for a log. */
  readonly onFailed?: (id: string, error: unknown) => void;
}

export const DEFAULT_TABLE_BYTES = 500e6;

/** Another process may have let go of the folder since; changes that the database could not take are tried again. */
const LOOK_AGAIN_MS = 2000;

/** Of a state that another process changes. */
const LOOK_OVER_MS = 1000;

interface Running {
  readonly id: string;
  readonly stop: AbortController;
  /** Whether a person wants it cancelled, whatever else stops it. */
  cancelled: boolean;
  ended: Promise<void>;
  progress: ScreeningProgress | null;
}

/** Opens the screenings of a store and goes on with what ran. */
export function openScreenings(store: Store, options: ScreeningsOptions = {}): Screenings {
  const folder = join(store.folder, SCREENINGS_FOLDER);
  mkdirSync(folder, { recursive: true });
  const tables = openTables({
    folder: join(store.folder, TABLES_FOLDER),
    mostBytes: options.mostTableBytes ?? DEFAULT_TABLE_BYTES,
  });
  const weather = openWeatherFiles(store.folder, options.workers ?? availableParallelism());
  const table = jobTable(store.db);
  const watchers = new Map<string, Set<() => void>>();
  /** Changes that the database could not take. */
  const unsaved = new Map<string, JobChange>();
  let hold: ReturnType<typeof takeHold> = null;
  let running: Running | null = null;
  let stopping = false;

  const files = (id: string): JobFiles => jobFiles(join(folder, id));
  const now = (): string => new Date().toISOString();
  const tell = (id: string): void => {
    for (const onChange of [...(watchers.get(id) ?? [])]) onChange();
  };

  function record(id: string): JobRecord {
    const found = table.find(id);
    if (found === null) throw new HttpError(404, 'there is no such screening');
    return { ...found, ...unsaved.get(id) };
  }

  function change(id: string, changes: JobChange): void {
    try {
      table.change(id, { ...unsaved.get(id), ...changes });
      unsaved.delete(id);
    } catch (error) {
      if (storageFailure(error) === undefined) throw error;
      unsaved.set(id, { ...unsaved.get(id), ...changes });
    }
    tell(id);
  }

  const stateOf = (found: JobRecord): ScreeningState =>
    screeningState(found, running?.id === found.id ? running.progress : null);

  function mustHold(): void {
    if (stopping) throw new HttpError(503, 'the server is stopping');
    if (hold === null) throw new HttpError(503, 'another process of the server works on the screenings of this folder');
  }

  /** Starts the one that waits longest, unless one runs. What fails here is tried again by and by. */
  function next(): void {
    if (running !== null || stopping || hold === null) return;
    try {
      const id = table.next();
      // What the database could not take comes first, or one that failed for lack of room would begin over and over.
      if (id === null || unsaved.has(id)) return;
      const one: Running = {
        id,
        stop: new AbortController(),
        cancelled: false,
        ended: Promise.resolve(),
        progress: null,
      };
      running = one;
      change(id, { status: 'running', error: null, startedAt: record(id).startedAt ?? now(), endedAt: null });
      one.ended = run(one)
        .catch(log(id))
        .finally(() => {
          running = null;
          tell(id);
          next();
        });
    } catch (error) {
      running = null;
      log('')(error);
    }
  }

  const log = (id: string) => (error: unknown) => options.onFailed?.(id, error);

  async function run(one: Running): Promise<void> {
    const { id } = one;
    try {
      const tally = await runJob(
        { spec: specOf(id), files: files(id), usualWorkers: options.workers },
        {
          signal: one.stop.signal,
          counted: () => record(id).tally,
          keep: (tally) => table.change(id, { tally }),
          onProgress: (progress) => {
            one.progress = progress;
            tell(id);
          },
        },
      );
      change(id, { status: 'done', tally, total: tally.rows, endedAt: now() });
    } catch (error) {
      if (error instanceof ScreeningStopped) {
        // A stop of the server leaves it running: the next start goes on with it.
        if (one.cancelled || !stopping) change(id, { status: 'cancelled', tally: error.tally, endedAt: now() });
        return;
      }
      log(id)(error);
      change(id, { status: 'failed', error: failureSentence(error), endedAt: now() });
    }
  }

  function specOf(id: string): JobSpec {
    const spec = table.spec(id);
    if (spec === null) throw new HttpError(404, 'there is no such screening');
    return spec;
  }

  /** Once the folder is this process's: what ran goes on, and what nobody knows of goes. */
  function takeOver(): void {
    tables.tidy();
    table.requeue();
    const known = new Set(table.list().map(({ id }) => id));
    for (const entry of readdirSync(folder, { withFileTypes: true })) {
      if (entry.isDirectory() && !known.has(entry.name)) rmSync(join(folder, entry.name), { recursive: true });
    }
    next();
  }

  function tryToHold(): void {
    hold = takeHold(join(folder, HOLD_FILE));
    if (hold === null) return;
    try {
      takeOver();
    } catch (error) {
      hold.release();
      hold = null;
      // Later it may be possible again.
      if (storageFailure(error) === undefined) throw error;
      log('')(error);
    }
  }

  /** The weather files as they are; the server may have begun to stop when they are read. */
  async function stationsNow(): Promise<Station[]> {
    try {
      return await weather.read();
    } catch (error) {
      if (error instanceof BadInput) throw new SiteError(problemsOfLines(error, 'settings.weather'));
      if (!stopping) throw error;
      return [];
    } finally {
      mustHold();
    }
  }

  tryToHold();
  const timer = setInterval(() => {
    try {
      for (const id of unsaved.keys()) change(id, {});
      if (hold === null) tryToHold();
      else next();
    } catch (error) {
      log('')(error);
    }
  }, LOOK_AGAIN_MS);
  timer.unref();

  return {
    tables,
    list: () => table.list().map((found) => stateOf({ ...found, ...unsaved.get(found.id) })),
    state: (id) => stateOf(record(id)),
    record,
    spec: specOf,
    files,
    async add(order) {
      mustHold();
      const stations = order.weather ? await stationsNow() : [];
      const id = randomUUID();
      const at = files(id);
      try {
        const spec = prepareJob(order, at, stations);
        const origin = 'grid' in order.from ? 'grid' : 'table';
        table.add({ id, name: order.name, origin, createdAt: now(), total: sourceOf(spec, at).rows, spec });
      } catch (error) {
        rmSync(at.folder, { recursive: true, force: true });
        if (isFull(error)) throw new HttpError(507, 'the disk of the server is full; the screening was not kept');
        throw error;
      }
      next();
      return id;
    },
    async cancel(id) {
      mustHold();
      const { status } = record(id);
      if (isFinal(status)) throw new HttpError(409, `the screening is ${status}; there is nothing to cancel`);
      if (running?.id === id) {
        running.cancelled = true;
        running.stop.abort();
        await running.ended;
      } else change(id, { status: 'cancelled', endedAt: now() });
      return stateOf(record(id));
    },
    resume(id) {
      mustHold();
      const { status } = record(id);
      if (status !== 'cancelled' && status !== 'failed') {
        throw new HttpError(409, `the screening is ${status}; one that was cancelled or failed can be gone on with`);
      }
      change(id, { status: 'waiting', error: null, endedAt: null });
      next();
      return stateOf(record(id));
    },
    async remove(id) {
      mustHold();
      record(id);
      if (running?.id === id) {
        running.stop.abort();
        await running.ended;
      }
      // A folder that nobody knows of is taken away at the next start; a screening without its files would be of no use.
      table.remove(id);
      unsaved.delete(id);
      rmSync(files(id).folder, { recursive: true, force: true });
      tell(id);
    },
    mustHold,
    watch(id, onChange) {
      const those = watchers.get(id) ?? new Set();
      watchers.set(id, those.add(onChange));
      const look = hold === null ? setInterval(onChange, LOOK_OVER_MS) : undefined;
      return () => {
        clearInterval(look);
        those.delete(onChange);
        if (those.size === 0) watchers.delete(id);
      };
    },
    get stopping() {
      return stopping;
    },
    async stop() {
      if (stopping) return;
      stopping = true;
      clearInterval(timer);
      running?.stop.abort();
      await Promise.all([running?.ended, weather.close()]);
      for (const id of [...watchers.keys()]) tell(id);
      hold?.release();
      hold = null;
    },
  };
}
