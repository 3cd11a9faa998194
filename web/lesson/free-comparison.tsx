/** Two boxes of the trainer's choice: a site, a wall of it, and one difference. */
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { DEMO_SITE, type Difference, type DifferenceKind, type Site, type UnitSystem } from '../../model/index.ts';
import { resumedCopy } from '../sites/working-copies.ts';
import { ComparisonPanel } from './comparison/comparison-panel.tsx';
import { TaskProgress } from './task-progress.tsx';
import { useLessonTask } from './use-lesson-task.ts';

interface FreeComparisonProps {
  readonly units: UnitSystem;
  onZone(timeZone: string): void;
  leave(): void;
}

export function FreeComparison({ units, onZone, leave }: FreeComparisonProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  // What the site view works on at this moment; it is not changed here.
  const draft = useMemo<unknown>(() => resumedCopy()?.draft ?? DEMO_SITE, []);
  const asked = useLessonTask('site', draft);
  const site = asked.state.kind === 'result' ? asked.state.result : null;
  const zone = site?.place.timeZone;
  useEffect(() => {
    if (zone !== undefined) onZone(zone);
  }, [zone, onZone]);
  return (
    <div class="lesson-room">
      <header class="lesson-head">
        <h1 ref={heading} tabIndex={-1}>
          Two boxes, one difference
        </h1>
        <button type="button" onClick={leave}>
          Other lessons
        </button>
      </header>
      {site === null ? (
        <TaskProgress asked={asked} what="the site" />
      ) : (
        <>
          <p>
            Box A stands as at “{site.title}”, the site in the form of “One site”. Box B differs in one thing;
            everything else stays.
          </p>
          <Choosing site={site} units={units} />
        </>
      )}
    </div>
  );
}

function Choosing({ site, units }: { site: Site; units: UnitSystem }) {
  const [wallName, setWallName] = useState(site.walls[0]?.name ?? '');
  const [kind, setKind] = useState<DifferenceKind>('wall');
  const [index, setIndex] = useState(0);
  const input = useMemo(() => ({ site, wallName, units }), [site, wallName, units]);
  const asked = useLessonTask('choices', input);
  const kinds = asked.state.kind === 'result' ? asked.state.result : [];
  const chosen = kinds.find((one) => one.kind === kind) ?? kinds[0];
  const choice = chosen?.choices[index] ?? chosen?.choices[0];
  return (
    <>
      <div class="free-choices">
        <label>
          <span>Box A on wall</span>
          <select value={wallName} onChange={({ currentTarget }) => setWallName(currentTarget.value)}>
            {site.walls.map(({ name }) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </label>
        <label>
          <span>Box B has</span>
          <select
            value={chosen?.kind}
            onChange={({ currentTarget }) => {
              setKind(currentTarget.value as DifferenceKind);
              setIndex(0);
            }}
          >
            {kinds.map((one) => (
              <option key={one.kind} value={one.kind}>
                {one.label}
              </option>
            ))}
          </select>
        </label>
        <label>
          <span>namely</span>
          <select
            value={choice === undefined ? 0 : chosen?.choices.indexOf(choice)}
            onChange={({ currentTarget }) => setIndex(Number(currentTarget.value))}
          >
            {chosen?.choices.map(({ words }, k) => (
              <option key={words} value={k}>
                {words}
              </option>
            ))}
          </select>
        </label>
      </div>
      <TaskProgress asked={asked} what="the differences" />
      {choice && <Compared site={site} wallName={wallName} difference={choice.difference} units={units} />}
    </>
  );
}

interface ComparedProps {
  readonly site: Site;
  readonly wallName: string;
  readonly difference: Difference;
  readonly units: UnitSystem;
}

function Compared({ site, wallName, difference, units }: ComparedProps) {
  // A choice that is computed anew, as for other units, is the same one.
  const key = JSON.stringify(difference);
  const input = useMemo(() => ({ site, wallName, difference: JSON.parse(key) as Difference }), [site, wallName, key]);
  const asked = useLessonTask('compareSite', input);
  if (asked.state.kind !== 'result') return <TaskProgress asked={asked} what="the two boxes" />;
  const { result } = asked.state;
  return <ComparisonPanel comparison={result} units={units} title={result.title[units]} text="" />;
}
