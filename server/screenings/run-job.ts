/** One screening run to its end: the engine with the rows kept beside its files. */
import { existsSync } from 'node:fs';
import { isUnfinished, runScreening, type ScreeningProgress } from '../screening/screening.ts';
import type { Tally } from '../screening/tally.ts';
import { engineJob, type JobFiles, type JobSpec } from './job.ts';
import { labelColumn } from './matching.ts';
import { openRowWriter, removeRows } from './row-store.ts';

interface Job {
  readonly spec: JobSpec;
  readonly files: JobFiles;
  readonly usualWorkers: number | undefined;
}

interface Surroundings {
  readonly signal: AbortSignal;
  /** The counts that were kept last. */
  counted(): Tally;
  /** Keeps the counts of what is safe. */
  keep(tally: Tally): void;
  onProgress(progress: ScreeningProgress): void;
}

/**
 * Runs the engine to its end, or finds that it was at its end when the process before ended.
 * @throws ScreeningStopped, BadInput, errors of the disk
 */
export async function runJob({ spec, files, usualWorkers }: Job, around: Surroundings): Promise<Tally> {
  // The counts of the last commit are those of the whole.
  if (existsSync(files.results) && !isUnfinished(files.results)) return around.counted();
  const job = engineJob(spec, files, usualWorkers);
  if (job.unfinished === 'restart') removeRows(files.rows);
  const writer = openRowWriter(files.rows, { label: labelColumn(job.source.header, spec.columns) });
  try {
    const rows = {
      add: writer.add,
      commit(tally: Tally) {
        writer.commit();
        around.keep(tally);
      },
    };
    const { signal, onProgress } = around;
    const { tally } = await runScreening({ ...job, rows }, { signal, onProgress });
    return tally;
  } finally {
    writer.close();
  }
}
