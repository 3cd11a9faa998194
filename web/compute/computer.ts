/**
 * Runs computations in a worker. The latest input wins: while one runs, only the newest waiting request is kept, and
 * a run that has become slow is abandoned for it.
 */
import type { ComputeReply, ComputeRequest } from './protocol.ts';

export type ComputePhase = 'idle' | 'running' | 'slow';

export interface ComputerEvents {
  onReply(reply: ComputeReply): void;
  onPhase(phase: ComputePhase): void;
}

export interface Computer {
  request(request: Omit<ComputeRequest, 'id'>): void;
  /** Stops the running computation and forgets the waiting one. */
  cancel(): void;
  dispose(): void;
}

/** From here on the page says that it computes and offers to stop. */
const SLOW_MS = 1000;

export function createComputer({ onReply, onPhase }: ComputerEvents): Computer {
  let worker: Worker | null = null;
  let running: ComputeRequest | null = null;
  let waiting: ComputeRequest | null = null;
  let slow = false;
  let slowTimer: ReturnType<typeof setTimeout> | undefined;
  let lastId = 0;

  function startWorker(): Worker {
    const started = new Worker(new URL('./compute.worker.ts', import.meta.url), { type: 'module' });
    started.addEventListener('message', (event: MessageEvent<ComputeReply>) => settle(event.data));
    started.addEventListener('error', (event) => {
      event.preventDefault();
      const message = event.message || 'the computation could not start';
      // The next request starts a new worker, and not this event, or a file that is missing would be asked for forever.
      stopWorker();
      if (running !== null) settle({ id: running.id, kind: 'failed', message });
    });
    return started;
  }

  function runNext() {
    running = waiting;
    waiting = null;
    slow = false;
    clearTimeout(slowTimer);
    slowTimer = setTimeout(() => {
      slow = true;
      onPhase('slow');
    }, SLOW_MS);
    onPhase('running');
    worker ??= startWorker();
    worker.postMessage(running);
  }

  function settle(reply: ComputeReply) {
    if (reply.id !== running?.id) return;
    clearTimeout(slowTimer);
    running = null;
    // An answer to an older input would only flicker by.
    if (waiting !== null) return runNext();
    onPhase('idle');
    onReply(reply);
  }

  function abandon() {
    stopWorker();
    clearTimeout(slowTimer);
    running = null;
  }

  function stopWorker() {
    worker?.terminate();
    worker = null;
  }

  return {
    request(asked) {
      lastId += 1;
      // Whatever waited is older, also where the run it waited for is given up here.
      waiting = { ...asked, id: lastId };
      if (running !== null && slow) abandon();
      if (running === null) runNext();
    },
    cancel() {
      waiting = null;
      if (running === null) return;
      abandon();
      onPhase('idle');
    },
    dispose() {
      abandon();
    },
  };
}
