/**
 * A screening from its first row to its files: reads, has worker threads work, writes in the order of the rows, and can be stopped or
 * killed at any moment and gone on with.
 */
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import packageFile from '../../package.json';
import { BadInput } from '../bad-input.ts';
import type { ClimateSettings } from './climate-choice.ts';
import type { ColumnMatch } from './columns.ts';
import type { Format } from './output.ts';
import { type OutputSettings, type RowResult, rejectsHead, resultsFoot, resultsHead } from './output.ts';
import { openPool, type Pool } from './pool.ts';
import type { BatchQueue } from './queue.ts';
import type { BaseSite } from './row-site.ts';
import {
  GrowingFile,
  holdsBytes,
  makeFolder,
  placeFiles,
  type RunPaths,
  removeFolder,
  runPaths,
} from './run-folder.ts';
import { batchesOf, type Source } from './source.ts';
import { openSqliteQueue, QueueInUse } from './sqlite-queue.ts';
import { addTallies, NO_TALLY, type Tally } from './tally.ts';

export interface ScreeningJob {
  readonly source: Source;
  readonly columns: ColumnMatch;
  readonly base: BaseSite;
  readonly climate: ClimateSettings;
  readonly format: Format;
  /** Path of the results. */
  readonly out: string;
  /** Path of the rejected rows; beside the results where left out. */
  readonly rejects?: string | undefined;
  /** Worker threads; 0 works in this thread. */
  readonly workers: number;
  /** Gets the results as rows, beside the files. */
  readonly rows?: RowSink | undefined;
  /** What to do where an unfinished run has the same place: go on with it, throw it away, or refuse. */
  readonly unfinished: 'resume' | 'restart' | 'refuse';
}

/** Somebody who keeps the rows of a run. After a crash the rows since the last commit come again, the same as before. */
export interface RowSink {
  add(rows: readonly RowResult[]): void;
  /** Makes safe what was added, before the run relies on it; `tally` counts all rows so far. */
  commit(tally: Tally): void;
}

export interface ScreeningProgress {
  readonly tally: Tally;
  /** Rows of the whole; about right for a table. */
  readonly rows: number;
  /** 0 to 1. */
  readonly share: number;
  /** Rows a second in this run; null at first. */
  readonly rowsPerS: number | null;
  /** Seconds that are left; null at first. */
  readonly leftS: number | null;
}

export interface ScreeningSummary {
  readonly tally: Tally;
  readonly out: string;
  readonly rejects: string;
  /** Of this run. */
  readonly seconds: number;
  /** Rows that an earlier run had written. */
  readonly resumedAt: number;
}

/** Thrown when a screening was stopped; it can be gone on with. */
export class ScreeningStopped extends Error {
  override readonly name = 'ScreeningStopped';
  readonly tally: Tally;

  constructor(tally: Tally) {
    super(`stopped after ${tally.rows} rows`);
    this.tally = tally;
  }
}

export interface ScreeningOptions {
  readonly onProgress?: (progress: ScreeningProgress) => void;
  readonly signal?: AbortSignal | undefined;
}

/** What the checkpoint holds. */
interface Written {
  readonly outBytes: number;
  readonly rejectsBytes: number;
  readonly tally: Tally;
  /** Everything is written; the files go to their places. */
  readonly complete: boolean;
}

/** Output is made safe this often, ms, or when this much has gathered. */
const COMMIT_MS = 1000;
const COMMIT_BYTES = 8 * 1024 * 1024;

/** Batches let in for each one at work: enough that neither reader nor workers wait for the writer. */
const ROOM_PER_BATCH = 8;

const PROGRESS_MS = 200;

/**
 * Runs a screening to its end.
 * @throws BadInput where an unfinished run is in the way or was begun with other input; ScreeningStopped
 */
export async function runScreening(job: ScreeningJob, options: ScreeningOptions = {}): Promise<ScreeningSummary> {
  const began = performance.now();
  const paths = runPaths(job.out, job.rejects);
  settleUnfinished(job, paths);
  const settings = settingsOf(job);
  makeFolder(paths);
  const pool = openPool(settings, job.workers);
  try {
    const { queue, note, writeNote } = openQueue(paths, pool.width * ROOM_PER_BATCH);
    try {
      checkIdentity(job, note('identity'), paths);
      writeNote('identity', identityOf(job));
      const resumedAt = queue.checkpoint?.state.tally.rows ?? 0;
      const tally = await work({ job, paths, queue, pool, settings, options });
      queue.close();
      placeFiles(paths);
      removeFolder(paths);
      return { tally, out: paths.out, rejects: paths.rejects, seconds: (performance.now() - began) / 1000, resumedAt };
    } finally {
      queue.close();
    }
  } finally {
    await pool.close();
  }
}

interface Work {
  readonly job: ScreeningJob;
  readonly paths: RunPaths;
  readonly queue: BatchQueue<Written>;
  readonly pool: Pool;
  readonly settings: OutputSettings;
  readonly options: ScreeningOptions;
}

/** Reader, workers and writer at once; the first that fails ends the others. */
async function work({ job, paths, queue, pool, settings, options }: Work): Promise<Tally> {
  const { signal, onProgress } = options;
  const start = queue.checkpoint?.state;
  if (start?.complete) return start.tally;
  if (start && !(holdsBytes(paths.outPart, start.outBytes) && holdsBytes(paths.rejectsPart, start.rejectsBytes))) {
    throw new BadInput([`${paths.folder}: files of the run are missing or cut short; --restart begins again`]);
  }
  const out = new GrowingFile(paths.outPart, start?.outBytes ?? 0);
  const rejects = new GrowingFile(paths.rejectsPart, start?.rejectsBytes ?? 0);
  let tally = start?.tally ?? NO_TALLY;
  let seq = queue.checkpoint?.seq ?? 0;
  let stopped = false;
  const progress = progressTeller(job.source.rows, tally.rows, onProgress);

  const commit = (complete: boolean): void => {
    out.sync();
    rejects.sync();
    job.rows?.commit(tally);
    queue.commit({ seq, state: { outBytes: out.bytes, rejectsBytes: rejects.bytes, tally, complete } });
  };
  const read = async (): Promise<void> => {
    for await (const batch of batchesOf(job.source, queue.pushed)) {
      if (stopped) return;
      await queue.push(batch);
    }
    await queue.push(null);
  };
  const serve = async (): Promise<void> => {
    for (let batch = await queue.take(); batch !== null && !stopped; batch = await queue.take()) {
      const outcome = await pool.run(batch);
      if (!stopped) await queue.done(outcome);
    }
  };
  const write = async (): Promise<void> => {
    let safeAt = performance.now();
    let safeBytes = out.bytes;
    for (let outcome = await queue.collect(); outcome !== null && !stopped; outcome = await queue.collect()) {
      const first = settings.format === 'geojson' && tally.screened === 0;
      out.append(first ? outcome.results.replace(/^,/, '') : outcome.results);
      rejects.append(outcome.rejects);
      job.rows?.add(outcome.rows ?? []);
      tally = addTallies(tally, outcome.tally);
      seq = outcome.seq + 1;
      progress(tally);
      if (performance.now() - safeAt < COMMIT_MS && out.bytes - safeBytes < COMMIT_BYTES) continue;
      commit(false);
      safeAt = performance.now();
      safeBytes = out.bytes;
    }
  };

  let stop = (_reason?: unknown): void => {};
  const stopping = new Promise<never>((_, reject) => {
    stop = (reason) => {
      stopped = true;
      reject(reason);
    };
  });
  // Nobody may wait for it any more.
  stopping.catch(() => {});
  const onAbort = () => stop(new ScreeningStopped(tally));
  signal?.addEventListener('abort', onAbort, { once: true });
  if (signal?.aborted) onAbort();
  try {
    if (start === undefined) {
      out.append(resultsHead(settings, job.source.bom));
      rejects.append(rejectsHead(settings, job.source.bom));
      commit(false);
    }
    const all = [read(), write(), ...Array.from({ length: pool.width }, serve)];
    await Promise.race([Promise.all(all), stopping]);
    out.append(resultsFoot(settings, tally));
    commit(true);
    progress(tally, true);
    return tally;
  } catch (error) {
    stopped = true;
    if (!(error instanceof ScreeningStopped)) throw error;
    commit(false);
    throw new ScreeningStopped(tally);
  } finally {
    signal?.removeEventListener('abort', onAbort);
    out.close();
    rejects.close();
  }
}

function progressTeller(rows: number, startRows: number, tell: ScreeningOptions['onProgress']) {
  const began = performance.now();
  let toldAt = Number.NEGATIVE_INFINITY;
  return (tally: Tally, last = false): void => {
    const now = performance.now();
    if (!tell || (!last && now - toldAt < PROGRESS_MS)) return;
    toldAt = now;
    const seconds = (now - began) / 1000;
    const rowsPerS = seconds > 1 ? (tally.rows - startRows) / seconds : null;
    const whole = last ? tally.rows : Math.max(rows, tally.rows);
    const leftS = rowsPerS ? (whole - tally.rows) / rowsPerS : null;
    tell({ tally, rows: whole, share: whole === 0 ? 1 : tally.rows / whole, rowsPerS, leftS });
  };
}

function settingsOf({ source, columns, base, climate, format, rows }: ScreeningJob): OutputSettings {
  const keepRows = rows !== undefined;
  return { header: source.header, delimiter: source.delimiter, columns, base, climate, format, keepRows };
}

/** What must not change between the parts of one run, each by its name for people. */
function identityOf(job: ScreeningJob): Record<string, string> {
  const hash = (value: unknown) => createHash('sha256').update(JSON.stringify(value)).digest('hex');
  return {
    'the table or grid': hash(job.source.identity),
    'the columns': hash(job.columns),
    'the site file': hash(job.base),
    'the climate': hash(job.climate),
    'the format': job.format,
    'the version of the program': packageFile.version,
  };
}

function checkIdentity(job: ScreeningJob, begun: Record<string, string> | null, { folder }: RunPaths): void {
  if (begun === null) return;
  const now = identityOf(job);
  const changed = Object.keys(now).filter((part) => now[part] !== begun[part]);
  if (changed.length === 0) return;
  throw new BadInput([
    `${folder}: cannot be gone on with, because ${changed.join(' and ')} changed since; --restart begins again`,
  ]);
}

function settleUnfinished({ unfinished }: ScreeningJob, paths: RunPaths): void {
  if (unfinished === 'restart') removeFolder(paths);
  // Without its queue, a folder is what a crash left of one that was made or taken away.
  if (!existsSync(paths.queue)) removeFolder(paths);
  else if (unfinished === 'refuse') {
    throw new BadInput([`${paths.folder}: an unfinished run; --resume goes on with it, --restart throws it away`]);
  }
}

/** Whether a run with results at `out` was begun and not finished. */
export const isUnfinished = (out: string): boolean => existsSync(runPaths(out).queue);

function openQueue(paths: RunPaths, room: number) {
  try {
    return openSqliteQueue<Written>(paths.queue, { room });
  } catch (error) {
    if (!(error instanceof QueueInUse)) throw error;
    throw new BadInput([`${paths.folder}: another run is at work on it`]);
  }
}
