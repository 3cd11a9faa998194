/** Who works on batches: worker threads, or this thread for a small table. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Piscina } from 'piscina';
import { type Batch, batchWorker, type Outcome } from './batch.ts';
import type { OutputSettings } from './output.ts';

export interface Pool {
  /** Batches that are worked on at once. */
  readonly width: number;
  run(batch: Batch): Promise<Outcome>;
  close(): Promise<void>;
}

/** Batches in the hands of each thread: one at work and one waiting, so that none stands idle between two. */
const PER_WORKER = 2;

/** The entry of the worker threads: beside the built program, or, run from the sources, in the last build. */
const ENTRIES = ['./screening-worker.js', '../../.build/server/screening-worker.js'];

/** A pool of `workers` threads; none means this thread. */
export function openPool(settings: OutputSettings, workers: number): Pool {
  if (workers === 0) {
    const work = batchWorker(settings);
    // Others have their turn between two batches.
    const run = (batch: Batch) => new Promise<void>((resolve) => setImmediate(resolve)).then(() => work(batch));
    return { width: 1, run, close: async () => {} };
  }
  const filename = ENTRIES.map((entry) => fileURLToPath(new URL(entry, import.meta.url))).find(existsSync);
  if (filename === undefined) throw new Error('the program is not built; npm run build does that');
  const pool = new Piscina({
    filename,
    workerData: settings,
    minThreads: workers,
    maxThreads: workers,
    // Options of this process may not suit a thread.
    execArgv: [],
  });
  return { width: workers * PER_WORKER, run: (batch) => pool.run(batch), close: () => pool.destroy() };
}
