/** What the worker of the lessons has for a question of the page, and how far it is. */
import { createContext } from 'preact';
import { useContext, useEffect, useState } from 'preact/hooks';
import type { LessonTask, LessonTasks } from '../compute/lesson.ts';
import type { LessonComputer, Outcome } from '../compute/lesson-computer.ts';

/** From here on the page says that it computes and offers to stop. */
const SLOW_MS = 700;

export const ComputerContext = createContext<LessonComputer | null>(null);

export type TaskState<Task extends LessonTask> =
  | Outcome<Task>
  | { readonly kind: 'running' }
  | { readonly kind: 'slow' }
  | { readonly kind: 'stopped' };

export interface AskedTask<Task extends LessonTask> {
  readonly state: TaskState<Task>;
  cancel(): void;
  retry(): void;
}

/** Asks anew whenever `input` is another object; it must be kept between renders. */
export function useLessonTask<Task extends LessonTask>(task: Task, input: LessonTasks[Task]['input']): AskedTask<Task> {
  const computer = useContext(ComputerContext);
  const [attempt, setAttempt] = useState(0);
  const [held, setHeld] = useState<{
    readonly of: unknown;
    readonly state: TaskState<Task>;
    readonly end: () => void;
  }>();

  useEffect(() => {
    if (computer === null) return;
    const key = input;
    let timer: ReturnType<typeof setTimeout>;
    const settle = (state: TaskState<Task>) => {
      clearTimeout(timer);
      setHeld({ of: key, state, end });
    };
    const giveUp = computer.ask(task, input, settle);
    const end = () => {
      clearTimeout(timer);
      giveUp();
    };
    setHeld({ of: key, state: { kind: 'running' }, end });
    timer = setTimeout(() => setHeld({ of: key, state: { kind: 'slow' }, end }), SLOW_MS);
    return end;
  }, [computer, task, input, attempt]);

  // The result of the input before must not be shown for this one, not for a single frame.
  const state: TaskState<Task> = held?.of === input ? held.state : { kind: 'running' };
  return {
    state,
    cancel() {
      held?.end();
      setHeld({ of: input, state: { kind: 'stopped' }, end: () => {} });
    },
    retry: () => setAttempt((count) => count + 1),
  };
}
