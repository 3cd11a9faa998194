/** Who works on the tasks of the API: threads beside the server (`pool.ts`), or this thread where no server runs. */
import { AdviceStopped } from '../advice.ts';
import { Abandoned } from './failures.ts';
import { type Answer, TASKS, type TaskInputs, type TaskName } from './tasks.ts';

export interface ComputeLoad {
  readonly threads: number;
  readonly running: number;
  readonly waiting: number;
}

export interface Compute {
  /**
   * Works on a task. Once `signal` fires nobody waits for it: it gives its place away and ends with `Abandoned`.
   * @throws SiteError for bad input; Overloaded, TimeLimitPassed, Abandoned
   */
  run<Name extends TaskName>(name: Name, input: TaskInputs[Name], signal: AbortSignal): Promise<Answer>;
  load(): ComputeLoad;
  close(): Promise<void>;
}

/** Works in this thread, one task after the other as they come: for tests and for apps that nobody else waits for. */
export function computeInThisThread(): Compute {
  return {
    run: async (name, input, signal) => {
      try {
        return await TASKS[name](input, () => signal.aborted);
      } catch (error) {
        throw error instanceof AdviceStopped ? new Abandoned() : error;
      }
    },
    load: () => ({ threads: 0, running: 0, waiting: 0 }),
    close: async () => {},
  };
}
