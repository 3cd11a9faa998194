/** What a trainer may begin with: a lesson that comes with the program, one of their own, or two boxes of their choice. */
import type { Lesson, UnitSystem } from '../../model/index.ts';
import { LessonFile } from './lesson-file.tsx';
import type { Source } from './lesson-memory.ts';
import { TaskProgress } from './task-progress.tsx';
import { useLessonTask } from './use-lesson-task.ts';

interface StartProps {
  readonly units: UnitSystem;
  open(lesson: Lesson, source: Source): void;
  compareFreely(): void;
}

export function Start({ open, compareFreely }: StartProps) {
  const asked = useLessonTask('shipped', null);
  const lessons = asked.state.kind === 'result' ? asked.state.result : [];
  return (
    <div class="lesson-start">
      <h1>Why shade matters: a lesson</h1>
      <p>
        For a trainer with a projector. The trainees guess first; then the model computes the day, and both are held
        against each other.
      </p>
      <TaskProgress asked={asked} what="the lessons" />
      <ul class="lesson-cards">
        {lessons.map((lesson, index) => (
          <li key={lesson.title}>
            <h2>{lesson.title}</h2>
            <p>{lesson.text}</p>
            <p>
              {lesson.questions.length} questions, {lesson.comparisons.length} comparisons.
            </p>
            <button type="button" class="main-button" onClick={() => open(lesson, { kind: 'shipped', index })}>
              Begin “{lesson.title}”
            </button>
          </li>
        ))}
      </ul>
      <h2>Something of your own</h2>
      <LessonFile open={open} />
      <button type="button" onClick={compareFreely}>
        Compare two boxes freely
      </button>
    </div>
  );
}
