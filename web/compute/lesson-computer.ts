/** Has lessons computed in a worker of their own, one thing after the other; what is cancelled ends at once. */
import type { Problem } from '../../model/index.ts';
import type { LessonReply, LessonRequest, LessonTask, LessonTasks } from './lesson.ts';

export type Outcome<Task extends LessonTask> =
  | { readonly kind: 'result'; readonly result: LessonTasks[Task]['result'] }
  | { readonly kind: 'problems'; readonly problems: readonly Problem[] }
  | { readonly kind: 'failed'; readonly message: string };

export interface LessonComputer {
  /** Asks, and says how it came out; the returned function gives it up. */
  ask<Task extends LessonTask>(
    task: Task,
    input: LessonTasks[Task]['input'],
    settle: (outcome: Outcome<Task>) => void,
  ): () => void;
  dispose(): void;
}

interface Asked {
  readonly request: LessonRequest;
  settle(reply: LessonReply): void;
}

export function createLessonComputer(): LessonComputer {
  let worker: Worker | null = null;
  let lastId = 0;
  /** In the order in which they were asked: the first one is being computed. */
  let asked: Asked[] = [];

  function startWorker(): Worker {
    const started = new Worker(new URL('./lesson.worker.ts', import.meta.url), { type: 'module' });
    started.addEventListener('message', ({ data }: MessageEvent<LessonReply>) => settle(data));
    started.addEventListener('error', (event) => {
      event.preventDefault();
      const message = event.message || 'the computation could not start';
      stopWorker();
      const [first] = asked;
      if (first) settle({ id: first.request.id, kind: 'failed', message });
    });
    return started;
  }

  function stopWorker() {
    worker?.terminate();
    worker = null;
  }

  function settle(reply: LessonReply) {
    const [first] = asked;
    if (first?.request.id !== reply.id) return;
    asked = asked.slice(1);
    next();
    first.settle(reply);
  }

  function next() {
    const [first] = asked;
    if (first === undefined) return;
    worker ??= startWorker();
    worker.postMessage(first.request);
  }

  function giveUp(id: number) {
    const running = asked[0]?.request.id === id;
    asked = asked.filter(({ request }) => request.id !== id);
    if (!running) return;
    stopWorker();
    next();
  }

  return {
    ask(task, input, onOutcome) {
      lastId += 1;
      const id = lastId;
      const request = { id, task, input } as LessonRequest;
      asked.push({ request, settle: (reply) => onOutcome(reply as unknown as Outcome<typeof task>) });
      if (asked.length === 1) next();
      return () => giveUp(id);
    },
    dispose() {
      asked = [];
      stopWorker();
    },
  };
}
