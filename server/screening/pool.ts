/** Who works on batches: worker threads, or this thread for a small table. */
import { Piscina } from 'piscina';
import { workerEntry } from '../worker-entry.ts';
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

/** A pool of `workers` threads; none means this thread. */
export function openPool(settings: OutputSettings, workers: number): Pool {
  if (workers === 0) {
    const work = batchWorker(settings);
    // Others have their turn between two batches.
    const run = (batch: Batch) => new Promise<void>((resolve) => setImmediate(resolve)).then(() => work(batch));
    return { width: 1, run, close: async () => {} };
  }
  const pool = new Piscina({
    filename: workerEntry('screening-worker'),
    workerData: settings,
    minThreads: workers,
    maxThreads: workers,
    // Options of this process may not suit a thread.
    execArgv: [],
  });
  return { width: workers * PER_WORKER, run: (batch) => pool.run(batch), close: () => pool.destroy() };
}
