/** A lesson for a room of trainees: chosen or opened, guessed, compared, played, explained and printed. */
import { useEffect, useState } from 'preact/hooks';
import { type Lesson, usualUnits } from '../../model/index.ts';
import { createLessonComputer, type LessonComputer } from '../compute/lesson-computer.ts';
import type { ViewProps } from '../view-props.ts';
import { ExplainRoom } from './explain/explain-room.tsx';
import { FreeComparison } from './free-comparison.tsx';
import { rememberedSource, rememberOpened, type Source } from './lesson-memory.ts';
import { LessonRoom } from './lesson-room.tsx';
import { Returning } from './returning.tsx';
import { Start } from './start.tsx';
import { ComputerContext } from './use-lesson-task.ts';
import '../styles/lesson.css';
import '../styles/lesson-played.css';
import '../styles/lesson-print.css';

type Opened =
  | { readonly kind: 'start' }
  | { readonly kind: 'returning'; readonly source: Source }
  | { readonly kind: 'lesson'; readonly lesson: Lesson }
  | { readonly kind: 'free' };

/** The zone of the usual site of lessons, until a lesson with its own is open. */
const USUAL_ZONE = 'America/Phoenix';

/** What this tab had open before a reload or a look at another view. */
function reopened(): Opened {
  const source = rememberedSource();
  if (source === null) return { kind: 'start' };
  return source.kind === 'free' ? source : { kind: 'returning', source };
}

export function LessonView({ chosenUnits, onUnits }: ViewProps) {
  const [computer, setComputer] = useState<LessonComputer | null>(null);
  const [opened, setOpened] = useState<Opened>(reopened);
  const [zone, setZone] = useState(USUAL_ZONE);
  const units = chosenUnits ?? usualUnits(zone);

  useEffect(() => {
    const started = createLessonComputer();
    setComputer(started);
    return () => started.dispose();
  }, []);
  useEffect(() => onUnits(units), [units, onUnits]);

  const open = (lesson: Lesson, source: Source) => {
    setZone(lesson.site.place.timeZone);
    setOpened({ kind: 'lesson', lesson });
    rememberOpened(source);
  };
  const compareFreely = () => {
    setOpened({ kind: 'free' });
    rememberOpened({ kind: 'free' });
  };
  const leave = () => {
    setOpened({ kind: 'start' });
    rememberOpened(null);
  };

  if (computer === null) return null;
  return (
    <ComputerContext.Provider value={computer}>
      <ExplainRoom units={units}>
        <main class="lesson">
          {opened.kind === 'start' && <Start units={units} open={open} compareFreely={compareFreely} />}
          {opened.kind === 'returning' && <Returning source={opened.source} open={open} leave={leave} />}
          {opened.kind === 'lesson' && <LessonRoom lesson={opened.lesson} units={units} leave={leave} />}
          {opened.kind === 'free' && <FreeComparison units={units} onZone={setZone} leave={leave} />}
        </main>
      </ExplainRoom>
    </ComputerContext.Provider>
  );
}
