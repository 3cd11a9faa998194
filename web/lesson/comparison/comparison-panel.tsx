/** Two boxes side by side: the difference in words, curves on the same axes, a table of figures, and the day played. */
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Comparison, UnitSystem } from '../../../model/index.ts';
import { unbroken } from '../../site/words.ts';
import { Player } from '../played/player.tsx';
import { Statements } from '../statements.tsx';
import { ComparisonTable } from './comparison-table.tsx';
import { type Curve, DayCurves } from './day-curves.tsx';

/** More at once would not be read. */
const MOST_STATEMENTS = 4;

interface ComparisonPanelProps {
  readonly comparison: Comparison;
  readonly units: UnitSystem;
  readonly title: string;
  readonly text: string;
}

export function ComparisonPanel({ comparison, units, title, text }: ComparisonPanelProps) {
  const { a, b, summary, notes, statements } = comparison;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const boxes = useMemo(() => comparedBoxes(comparison, units), [comparison, units]);
  const [step, setStep] = useState(() => peakStep(comparison));
  const words = unbroken(summary[units]);
  return (
    <article class="comparison">
      <h2 ref={heading} tabIndex={-1}>
        {title}
      </h2>
      {text !== '' && <p class="comparison-text">{text}</p>}
      <div class="comparison-top">
        <DayCurves
          curves={boxes}
          units={units}
          description={`Curves of the air inside two boxes. ${words}`}
          step={step}
        />
        <ComparisonTable comparison={comparison} units={units} />
      </div>
      <p class="comparison-summary">{words}</p>
      <Statements statements={statements} units={units} most={MOST_STATEMENTS} />
      <ul class="comparison-notes">
        {notes.map((note) => (
          <li key={note.metric}>{unbroken(note[units])}</li>
        ))}
      </ul>
      <Player key={`${a.wallName} ${b.wallName}`} boxes={boxes} units={units} step={step} onStep={setStep} />
    </article>
  );
}

export function comparedBoxes({ a, b }: Comparison, units: UnitSystem): Curve[] {
  return [
    { letter: 'A', label: a.label[units], played: a.played },
    { letter: 'B', label: b.label[units], played: b.played },
  ];
}

/** The moment at which box A is hottest: there is the most to see. */
function peakStep({ a }: Comparison): number {
  const { stepsUtc, peakAtUtc } = a.played.result;
  return Math.max(
    0,
    stepsUtc.findIndex((utc) => utc.getTime() === peakAtUtc.getTime()),
  );
}
