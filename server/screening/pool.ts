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

/** A pool of `workers` threads; none means this thread. `filename` is another entry than that of the build. */
export function openPool(settings: OutputSettings, workers: number, filename?: string): Pool {
  if (workers === 0) {
    const work = batchWorker(settings);
    // Others have their turn between two batches.
    const run = (batch: Batch) => new Promise<void>((resolve) => setImmediate(resolve)).then(() => work(batch));
    return { width: 1, run, close: async () => {} };
  }
  const pool = new Piscina({
    filename: filename ?? workerEntry('screening-worker'),
    workerData: settings,
    minThreads: workers,
    maxThreads: workers,
    // Options of this process may not suit a thread.
    execArgv: [],
  });
  // A thread that ends without a batch in its hands, such as one that cannot start, ends the screening, not the process.
  const waiting = new Set<(reason: unknown) => void>();
  let lost: Error | undefined;
  pool.on('error', (error: Error) => {
    lost = error;
    for (const fail of waiting) fail(error);
  });
  const run = (batch: Batch) =>
    new Promise<Outcome>((resolve, reject) => {
      if (lost !== undefined) {
        reject(lost);
        return;
      }
      waiting.add(reject);
      pool
        .run(batch)
        .then(resolve, reject)
        .finally(() => waiting.delete(reject));
    });
  return { width: workers * PER_WORKER, run, close: () => pool.destroy() };
}
