/** The handout of a lesson: computed on request, shown as it will be printed, and printed. */
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Lesson, UnitSystem } from '../../../model/index.ts';
import { TaskProgress } from '../task-progress.tsx';
import { useLessonTask } from '../use-lesson-task.ts';
import { HandoutPages } from './handout-pages.tsx';

export function HandoutPanel({ lesson, units }: { lesson: Lesson; units: UnitSystem }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const input = useMemo(() => ({ lesson, units }), [lesson, units]);
  const asked = useLessonTask('handout', input);
  return (
    <section class="handout-panel">
      <h2 ref={heading} tabIndex={-1}>
        Handout
      </h2>
      <p>
        One page for each comparison, then the equations with values, and the exercises; their computed solutions stand
        on pages of their own at the end, so that they can be handed out later. Printed in black and white, curves keep
        their dashes.
      </p>
      <TaskProgress asked={asked} what="the handout" />
      {asked.state.kind === 'result' && (
        <>
          <button type="button" class="main-button" onClick={() => print()}>
            Print the handout
          </button>
          <HandoutPages handout={asked.state.result} units={units} />
        </>
      )}
    </section>
  );
}
