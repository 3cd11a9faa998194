/** The door for a lesson file of the trainer's own; a bad one is told with everything that is wrong with it. */
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Lesson } from '../../model/index.ts';
import { FileDrop } from '../file-drop.tsx';
import type { Source } from './lesson-memory.ts';
import { ProblemTexts } from './problem-texts.tsx';
import { TaskProgress } from './task-progress.tsx';
import { useLessonTask } from './use-lesson-task.ts';

/** A lesson of sixty questions stays far below this. */
const MAX_FILE_BYTES = 2_000_000;

interface Chosen {
  readonly name: string;
  /** Null where the file was refused before it was read. */
  readonly text: string | null;
}

type Open = (lesson: Lesson, source: Source) => void;

export function LessonFile({ open }: { readonly open: Open }) {
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const choose = async (file: File) => {
    if (file.size > MAX_FILE_BYTES) setChosen({ name: file.name, text: null });
    else setChosen({ name: file.name, text: await file.text() });
  };
  return (
    <div class="lesson-file">
      <FileDrop label="Open a lesson file" accept=".json,application/json" choose={choose}>
        or drop one here. It is read in this browser and never leaves it.
      </FileDrop>
      {chosen?.text === null && (
        <p role="alert" class="file-refused">
          {chosen.name} was not opened: it is larger than 2 MB, too large for a lesson.
        </p>
      )}
      {chosen !== null && chosen.text !== null && (
        <Reading key={chosen.text} {...chosen} text={chosen.text} open={open} />
      )}
    </div>
  );
}

function Reading({ name, text, open }: { readonly name: string; readonly text: string; readonly open: Open }) {
  const input = useMemo(() => text, [text]);
  const asked = useLessonTask('open', input);
  const { state } = asked;
  const lesson = state.kind === 'result' ? state.result : null;
  useEffect(() => {
    if (lesson !== null) open(lesson, { kind: 'file', text });
  }, [lesson, text, open]);
  if (state.kind === 'problems') return <ProblemTexts title={`${name} was not opened`} problems={state.problems} />;
  if (state.kind === 'failed') {
    return (
      <p role="alert" class="file-refused">
        {name} was not opened: {state.message}
      </p>
    );
  }
  return <TaskProgress asked={asked} what={`what ${name} holds`} />;
}
