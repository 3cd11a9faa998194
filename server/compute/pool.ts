/**
 * Threads that work on the tasks of the API, so that the server goes on answering meanwhile. What cannot be worked on waits in a
 * bounded line. The line is kept here and not in piscina, because a waiting task is given up at once, and a running one only
 * when it is long: ending a thread and starting another costs more than a ranking.
 */
import { Piscina } from 'piscina';
import { SiteError } from '../../model/index.ts';
import { workerEntry } from '../worker-entry.ts';
import type { Compute } from './compute.ts';
import { Abandoned, Overloaded, TimeLimitPassed } from './failures.ts';
import { makePlaces } from './places.ts';
import type { Job, Outcome } from './worker.ts';

export interface PoolOptions {
  readonly threads: number;
  /** How many tasks may wait for a thread. */
  readonly room: number;
  /** How long a task may be worked on, s. */
  readonly limitS: number;
  /** A thread that needs more is ended alone, instead of the whole server, MB. */
  readonly memoryMb?: number;
  /** Told of a thread that ended without a task; another one takes its place. */
  readonly onLost?: (error: Error) => void;
  /** Another entry than that of the build. */
  readonly filename?: string;
}

/** How long a task that nobody waits for may go on, ms: a ranking ends sooner, an advice with many samples does not. */
const ABANDONED_GRACE_MS = 1000;

/** Many times what the largest site takes. */
const THREAD_MEMORY_MB = 1024;

/** Threads give way to the one that answers. */
const NICE = 5;

/** Share of a new time in the running mean. */
const NEWEST = 0.1;

export function openComputePool({
  threads,
  room,
  limitS,
  memoryMb = THREAD_MEMORY_MB,
  onLost = () => {},
  filename = workerEntry('compute-worker'),
}: PoolOptions): Compute {
  const pool = new Piscina<Job, Outcome>({
    filename,
    minThreads: threads,
    maxThreads: threads,
    niceIncrement: NICE,
    resourceLimits: { maxOldGenerationSizeMb: memoryMb },
    // Options of this process may not suit a thread.
    execArgv: [],
  });
  pool.on('error', onLost);
  const places = makePlaces({ places: threads, room });
  let meanS = 1;

  async function work(job: Job, abandoned: AbortSignal): Promise<Outcome> {
    const end = new AbortController();
    const limit = setTimeout(() => end.abort(new TimeLimitPassed(limitS)), limitS * 1000);
    let grace: NodeJS.Timeout | undefined;
    const startGrace = () => {
      grace = setTimeout(() => end.abort(new Abandoned()), ABANDONED_GRACE_MS);
    };
    abandoned.addEventListener('abort', startGrace, { once: true });
    const start = performance.now();
    try {
      return await pool.run(job, { signal: end.signal });
    } catch (error) {
      throw end.signal.aborted ? end.signal.reason : error;
    } finally {
      meanS += NEWEST * ((performance.now() - start) / 1000 - meanS);
      clearTimeout(limit);
      clearTimeout(grace);
      abandoned.removeEventListener('abort', startGrace);
    }
  }

  return {
    run: async (name, input, signal) => {
      if (!(await places.take(signal))) throw new Overloaded(Math.max(1, Math.ceil((room * meanS) / threads / 2)));
      try {
        const outcome = await work({ name, input }, signal);
        if (signal.aborted) throw new Abandoned();
        if ('problems' in outcome) throw new SiteError(outcome.problems);
        return outcome.answer;
      } finally {
        places.giveBack();
      }
    },
    load: () => ({ threads, running: places.taken, waiting: places.waiting }),
    close: () => pool.destroy(),
  };
}
