/** The wall from above with the sun of a chosen hour: a picture to drag the sun in, a slider, and the same in words. */
import { useId, useMemo, useState } from 'preact/hooks';
import { formatQuantity, type UnitSystem } from '../../../model/index.ts';
import { placeClock } from '../place-clock.ts';
import { unbroken } from '../words.ts';
import { dayAndMonth } from './day-and-month.ts';
import { KeySign } from './key-sign.tsx';
import { Patterns, Swatch } from './patterns.tsx';
import { drawnBox, instantAt, planChart, planReachM, reachesBeyond } from './plan-chart.ts';
import { PlanDrawing } from './plan-drawing.tsx';
import { sunWords } from './sun-words.ts';
import { listed, type Thing, thingOf, thingsAround } from './things.ts';
import type { WallView } from './use-pictures.ts';
import { useWidth } from './use-width.ts';

/** Room round the circle for the sun and the names of the directions, px. */
const RIM_PX = 30;
const LARGEST_PX = 560;

export function PlanPicture({ view, units }: { view: WallView; units: UnitSystem }) {
  const { diagram, plan, result } = view;
  const id = useId();
  const { ref, widthPx } = useWidth();
  // The hottest moment of the day until somebody chooses another one.
  const [chosen, setChosen] = useState<number | null>(null);
  const index = Math.min(chosen ?? instantAt(plan.sun, result.day.peakAtUtc), plan.sun.length - 1);
  const things = useMemo(() => thingsAround(diagram, plan), [diagram, plan]);
  const reachM = planReachM(plan);
  const chart = planChart(Math.min(widthPx, LARGEST_PX), RIM_PX, reachM);
  const box = drawnBox(plan, chart);
  const sun = plan.sun[index];
  if (sun === undefined) return null;
  const words = sunWords(sun, { plan, diagram, things });
  const drawn = things.filter(({ kind }) => kind !== 'wall' && kind !== 'skyline');
  const beyond = cutOff(view, things, reachM);
  return (
    <section class="picture plan" aria-labelledby={`${id}-heading`}>
      <h3 id={`${id}-heading`}>Plan, from above</h3>
      <div ref={ref}>
        <PlanDrawing
          plan={plan}
          chart={chart}
          box={box}
          things={things}
          index={index}
          onIndex={setChosen}
          units={units}
          prefix={id}
          patterns={<Patterns prefix={id} things={things} />}
          title={`Plan of wall ${plan.wall}, north up`}
          description={words}
        />
      </div>
      <label class="hour-choice">
        <span>Time on {dayAndMonth(plan.date, units)}</span>
        <input
          type="range"
          min={0}
          max={plan.sun.length - 1}
          step={1}
          value={index}
          aria-valuetext={placeClock(plan.timeZone).time(sun.utc)}
          onInput={({ currentTarget }) => setChosen(Number(currentTarget.value))}
        />
      </label>
      <p class="sun-words" aria-live="polite">
        {unbroken(words)}
      </p>
      <ul class="picture-key">
        {drawn.map((thing) => (
          <li key={thing.letter}>
            <Swatch prefix={id} thing={thing} /> {thing.name}
            {heightText(view, thing, units)}
          </li>
        ))}
        <li>
          <KeySign>
            <path class="wall-line" d="M2 12H34" />
          </KeySign>
          the wall itself
        </li>
        <li>
          <KeySign>
            <path class="lit-side" d="M4 12H32" />
          </KeySign>
          side of the box or time of day with sun on it
        </li>
      </ul>
      <p>
        Move the slider, or drag the sun round the circle. Dashed outlines lie overhead.
        {box.enlarged > 1 && ` The box is drawn ${box.enlarged.toFixed(1)} times as large as it is.`}
        {plan.endless && ' The wall is taken to run on without end.'}
        {beyond.length > 0 && ` Cut off at the circle, or farther away: ${listed(beyond)}.`}
      </p>
    </section>
  );
}

/** Names of what the plan does not show whole. */
function cutOff({ plan }: WallView, things: readonly Thing[], reachM: number): string[] {
  const beyond = plan.shapes.filter(({ outline }) => reachesBeyond(outline, reachM));
  const building = plan.building !== null && reachesBeyond(plan.building, reachM);
  return things
    .filter((thing) => (thing.kind === 'building' ? building : beyond.some((shape) => thingOf([thing], shape))))
    .map(({ name }) => name);
}

function heightText({ plan }: WallView, thing: Thing, units: UnitSystem): string {
  const tops = plan.shapes.filter((shape) => thingOf([thing], shape)).map(({ topM }) => topM);
  return tops.length === 0 ? '' : unbroken(`, ${formatQuantity('length', Math.max(...tops), units, 1)} high`);
}
