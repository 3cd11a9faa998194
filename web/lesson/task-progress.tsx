/** What stands in the place of a result that is not there: progress with a way to stop, what is wrong, or another try. */
import type { LessonTask } from '../compute/lesson.ts';
import { ProblemTexts } from './problem-texts.tsx';
import type { AskedTask } from './use-lesson-task.ts';

export function TaskProgress<Task extends LessonTask>({ asked, what }: { asked: AskedTask<Task>; what: string }) {
  const { state, cancel, retry } = asked;
  switch (state.kind) {
    case 'result':
      return null;
    case 'running':
      return (
        <p role="status" class="lesson-wait">
          Computing {what} …
        </p>
      );
    case 'slow':
      return (
        <div role="status" class="lesson-wait">
          <span>Computing {what} …</span>
          <progress aria-label={`Computing ${what}`} />
          <button type="button" onClick={cancel}>
            Cancel
          </button>
        </div>
      );
    case 'stopped':
      return (
        <p role="status" class="lesson-wait">
          <span>Stopped.</span>
          <button type="button" onClick={retry}>
            Compute {what}
          </button>
        </p>
      );
    case 'problems':
      return <ProblemTexts title={`${what} cannot be computed`} problems={state.problems} />;
    case 'failed':
      return (
        <p role="alert" class="lesson-wait">
          <span>The computation failed: {state.message}</span>
          <button type="button" onClick={retry}>
            Try again
          </button>
        </p>
      );
  }
}
