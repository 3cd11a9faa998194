/** Reads the lesson again that this tab had open; one that is no longer to be had leads to the choice of lessons. */
import { useEffect } from 'preact/hooks';
import type { Lesson } from '../../model/index.ts';
import type { Source } from './lesson-memory.ts';
import { TaskProgress } from './task-progress.tsx';
import { useLessonTask } from './use-lesson-task.ts';

interface ReturningProps {
  readonly source: Source;
  open(lesson: Lesson, source: Source): void;
  leave(): void;
}

export function Returning({ source, open, leave }: ReturningProps) {
  const found = (lesson: Lesson | undefined) => {
    if (lesson === undefined) leave();
    else open(lesson, source);
  };
  if (source.kind === 'file') return <FromFile text={source.text} found={found} />;
  return <FromShipped index={source.kind === 'shipped' ? source.index : -1} found={found} />;
}

type Found = (lesson: Lesson | undefined) => void;

function FromFile({ text, found }: { readonly text: string; readonly found: Found }) {
  const asked = useLessonTask('open', text);
  const { state } = asked;
  useEffect(() => {
    if (state.kind === 'result') found(state.result);
    if (state.kind === 'problems' || state.kind === 'failed') found(undefined);
  }, [state, found]);
  return <TaskProgress asked={asked} what="the lesson" />;
}

function FromShipped({ index, found }: { readonly index: number; readonly found: Found }) {
  const asked = useLessonTask('shipped', null);
  const { state } = asked;
  useEffect(() => {
    if (state.kind === 'result') found(state.result[index]);
    if (state.kind === 'problems' || state.kind === 'failed') found(undefined);
  }, [state, index, found]);
  return <TaskProgress asked={asked} what="the lesson" />;
}
